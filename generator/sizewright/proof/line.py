"""In: nothing. Out: what a pattern says to a reader, line by line and for each size, ready to be compared."""

from dataclasses import dataclass
from enum import StrEnum

from sizewright.base.place import Span


class Kind(StrEnum):
    """What a line is."""

    FACT = "fact"  # of the header: gauge, needles, yarn, measurements
    DRAWN = "drawn"  # an edge of a schematic
    CAST_ON = "cast-on"
    ROW = "row"
    DIRECTION = "direction"
    TEXT = "text"  # a sentence with a number in it


@dataclass(frozen=True, slots=True)
class Line:
    """One thing that is said. All tuples are by size; None where a size does not read it.

    `said` is how it reads; `counts` is what counts in it: its numbers and stitches, whatever the words. A `promise`
    behind it and the `side` of a row may be left unsaid ("") without saying anything else.
    """

    kind: Kind
    section: str
    name: str
    span: Span
    said: tuple[str | None, ...]
    counts: tuple[str | None, ...]
    promise: tuple[str, ...] = ()
    side: str = ""

    def promised(self, size: int) -> str:
        """The count behind it in a size, "" where none is said."""
        return self.promise[size] if self.promise else ""

    def differs(self, size: int, other: "Line", place: int) -> bool:
        """Whether it says something else to a size than the other line to the size at its place there."""
        if self.counts[size] != other.counts[place]:
            return True
        return _contrary(self.promised(size), other.promised(place)) or _contrary(self.side, other.side)


def _contrary(before: str, after: str) -> bool:
    """Whether both say something, and not the same."""
    return "" not in (before, after) and before != after
