"""In: words and numbers. Out: them put together in the trade's notation: "3 sts", "twice more", "to last 3 sts"."""

from collections.abc import Iterable, Iterator

from sizewright.read.inserts import Insert, LinePiece, Told, joined
from sizewright.read.notation.kinds import Landmark
from sizewright.read.notation.place_parser import BOR
from sizewright.read.notation.tree import Count, Place


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


def number(count: Count) -> LinePiece:
    """A count by itself."""
    return str(count.value) if isinstance(count.value, int) else count.value


def stitches(count: Count) -> Told:
    """ "3 sts", "1 st"."""
    return said(number(count), " st" if count.value == 1 else " sts")


def times(count: Count, *, more: bool = False) -> Told:
    """ "once", "twice more", "3 times", "6 more times"."""
    behind = " more" if more else ""
    if count.value in (1, 2):
        return (f"{'once' if count.value == 1 else 'twice'}{behind}",)
    if isinstance(count.value, Insert) and count.value.style is not None and count.value.style.text == "times":
        return said(count.value, behind)  # "{turns:times}" says "times" itself
    return said(number(count), f"{behind} times")


def place(to: Place) -> Told:
    """ "to end", "to last 3 sts", "to m", "to 2 sts before m"."""
    before = to.before
    if to.landmark is Landmark.END:
        last = ("st",) if before is not None and before.value == 1 else None
        return ("to end",) if before is None else said("to last ", last or stitches(before))
    name = marker(to.name) if to.landmark is Landmark.MARKER else to.landmark.value
    if to.past is not None:
        return said("to ", stitches(to.past), f" past {name}")
    return (f"to {name}",) if before is None else said("to ", stitches(before), f" before {name}")


def marker(name: str) -> str:
    """ "m", "marker A", "BOR marker", "raglan marker"."""
    if not name:
        return "m"
    return f"marker {name.upper()}" if len(name) == 1 or name.isdecimal() else f"{named(name)} marker"


def named(name: str) -> str:
    """The name of a marker in words: "BOR" for that at the beginning of the round."""
    return name.upper() if len(name) == 1 or name == BOR else name
