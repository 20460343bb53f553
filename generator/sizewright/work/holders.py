"""In: stitches that wait on holders. Out: those meant by a name or a count, and those that were forgotten."""

import re
from collections.abc import Iterator, Sequence

from sizewright.base.place import Span
from sizewright.work.faults import Forgotten
from sizewright.work.needle import Held, Needle

_SILENT = re.compile(r"\b(?:sts?|stitch(?:es)?|held|hold|holder|the|on|from|waiting|remaining|rem|live)\b")


def plain_name(words: str) -> str:
    """What stitches are held for, without the words that say only that they are held."""
    return " ".join(_SILENT.sub(" ", words.casefold()).split())


def held_as(held: Sequence[Held], name: str, count: int | None, *, nameless: bool) -> Held | None:
    """The stitches held under a name: of that very name, else of one that shares its words.

    Without a name those held last; `nameless` says that those held without one may be meant by any.
    """
    fitting = [one for one in held if count in (None, len(one.looks))]
    if not name:
        return fitting[-1] if fitting else None
    words = set(name.split())
    exact = [one for one in fitting if one.name == name]
    alike = [one for one in fitting if one.name and (words <= set(one.name.split()) or set(one.name.split()) <= words)]
    others = [one for one in reversed(fitting) if not one.name] if nameless else []
    return next(iter((*exact, *alike, *others)), None)


def off_holders(held: list[Held], sets: Sequence[tuple[int, str]]) -> int:
    """Takes counted sets of stitches off the holders of their names, and gives how many are not held under any."""
    left = 0
    for count, words in sets:
        name = plain_name(words)
        found = held_as(held, name, count, nameless=False) if name else None
        if found is not None:
            held.remove(found)
        else:
            left += count
    return left


def names_of(held: Sequence[Held]) -> tuple[str, ...]:
    """What waits, in words: "40 sts (sleeve)"."""
    return tuple(f"{len(one.looks)} sts" + (f" ({one.name})" if one.name else "") for one in held)


def forgotten(needle: Needle, last: Span | None, size: int) -> Iterator[Forgotten]:
    """What is still on a holder or on the needle when the pattern ends, with its `last` direction."""
    for one in needle.held:
        place = one.place or last
        if place is not None and one.traced:
            yield Forgotten(place, size, len(one.looks), "" if one.live else one.name or "on hold")
    if needle.total and last is not None:
        yield Forgotten(last, size, needle.total, "")
