"""In: words and numbers. Out: them put together in the trade's notation: "3 sts", "twice more", "to last 3 sts"."""

from collections.abc import Iterable, Iterator

from sizewright.base.language import later, tr_as
from sizewright.read.inserts import Insert, LinePiece, Told, joined
from sizewright.read.notation.kinds import Landmark
from sizewright.read.notation.phrasing import number as number  # noqa: PLC0414 -- one of these pieces
from sizewright.read.notation.phrasing import phrase, phrase_as, phrase_many
from sizewright.read.notation.place_parser import BOR
from sizewright.read.notation.tree import Count, Place
from sizewright.read.notation.usual_names import marker_name

_ONCE = {
    (1, False): later("once"),
    (2, False): later("twice"),
    (1, True): later("once more"),
    (2, True): later("twice more"),
}
# What is worked to it, before it, and past it.
_GAPS = {
    Landmark.TURN: (
        later("to last turn"),
        later("to {stitches} before last turn"),
        later("to {stitches} past last turn"),
    ),
    Landmark.WRAPPED: (
        later("to wrapped st"),
        later("to {stitches} before wrapped st"),
        later("to {stitches} past wrapped st"),
    ),
    Landmark.DOUBLE: (
        later("to double st"),
        later("to {stitches} before double st"),
        later("to {stitches} past double st"),
    ),
}


def said(*parts: LinePiece | Told) -> Told:
    """Some pieces as one."""
    return joined(_flat(parts))


def _flat(parts: Iterable[LinePiece | Told]) -> Iterator[LinePiece]:
    for part in parts:
        if isinstance(part, tuple):
            yield from part
        else:
            yield part


def listed(parts: Iterable[Told], sign: str = ", ") -> Told:
    """Some pieces with a sign between."""
    found: list[LinePiece | Told] = []
    for part in parts:
        found.extend((sign, part) if found else (part,))
    return said(*found)


def capitalised(words: Told) -> Told:
    """The words with their first letter a capital, also behind "*" and brackets; a number in front stays as it is."""
    first = words[0] if words else None
    if not isinstance(first, str):
        return words
    place = len(first) - len(first.lstrip("*[( "))
    return (f"{first[:place]}{first[place : place + 1].upper()}{first[place + 1 :]}", *words[1:])


def behind_label(words: Told) -> Told:
    """The words of a row behind its label, with a capital where the language writes one there."""
    return (
        capitalised(words)
        if tr_as("whether words behind the label of a row begin with a capital", "yes") == "yes"
        else words
    )


def stitches(count: Count) -> Told:
    """ "3 sts", "1 st"."""
    return phrase_many("{n} st", "{n} sts", count)


def times(count: Count, *, more: bool = False) -> Told:
    """ "once", "twice more", "3 times", "6 more times"."""
    if isinstance(count.value, int) and count.value in (1, 2):
        return phrase(_ONCE[count.value, more])
    if isinstance(count.value, Insert) and count.value.style is not None and count.value.style.text == "times":
        return phrase("{times} more", times=count.value) if more else (count.value,)  # it says "times" itself
    if more:
        return phrase("{n} more times", n=number(count))
    return phrase("{n} times", n=number(count))


def place(to: Place) -> Told:
    """ "to end", "to last 3 sts", "to m", "to 2 sts before m"."""
    before = to.before
    if to.landmark is Landmark.END:
        return phrase("to end") if before is None else phrase_many("to last st", "to last {n} sts", before)
    if to.landmark is Landmark.MARKER:
        where = marker(to.name)
        return (
            phrase("to {marker}", marker=where)
            if before is None
            else phrase("to {stitches} before {marker}", stitches=stitches(before), marker=where)
        )
    if to.landmark is Landmark.WORKED and to.past is not None:
        return phrase_many("until {n} st is on right needle", "until {n} sts are on right needle", to.past)
    plain, short_of, past = _GAPS[to.landmark]
    if to.past is not None:
        return phrase(past, stitches=stitches(to.past))
    return phrase(plain) if before is None else phrase(short_of, stitches=stitches(before))


def marker(name: str) -> Told:
    """ "m", "marker A", "BOR marker", "raglan marker"."""
    if not name:
        return phrase_as("marker", "m")
    if name == BOR:
        return phrase("BOR marker")
    return (
        phrase("marker {name}", name=name.upper()) if single(name) else phrase("{name} marker", name=marker_name(name))
    )


def single(name: str) -> bool:
    """Whether a marker is called by a letter or a number."""
    return len(name) == 1 or name.isdecimal()
