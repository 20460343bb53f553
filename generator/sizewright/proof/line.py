"""In: nothing. Out: what a pattern says to a reader, line by line and for each size, ready to be compared."""

from dataclasses import dataclass
from enum import StrEnum

from sizewright.base.place import Span


class Kind(StrEnum):
    """What a line is."""

    FACT = "fact"  # of the header: gauge, needles, yarn, measurements
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

    def differs(self, size: int, other: "Line", place: int) -> bool:
        """Whether it says something else to a size than the other line to the size at its place there."""
        if self.counts[size] != other.counts[place]:
            return True
        before, after = (line.promise[at] if line.promise else "" for line, at in ((self, size), (other, place)))
        return "" not in (before, after) and before != after or "" not in (self.side, other.side) and self.side != other.side
