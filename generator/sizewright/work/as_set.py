"""In: rows of a stitch pattern that were worked. Out: those that "in pattern as set" goes on with, where known."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from sizewright.base.place import Span
from sizewright.read.notation.direction_tree import Even, RepeatRows, Row
from sizewright.read.notation.fabric_names import usual_fabric
from sizewright.read.notation.tree import Follow, Panel

_AS_SET = ("pattern", "as established", "as set", "even")


@dataclass(frozen=True, slots=True)
class UnclearPattern:
    """Work goes on "in pattern as set", and which row of the stitch pattern `of` comes next is not known."""

    span: Span
    size: int
    words: str
    of: str


@dataclass(frozen=True, slots=True)
class Underway:
    """A stitch pattern that is worked over all stitches: its rows, the place of the one that comes next, the count.

    A count of -1, which no needle has, says that shaping has come between.
    """

    name: str
    rows: tuple[Row, ...]
    place: int
    count: int

    @property
    def coming(self) -> tuple[Row, ...]:
        """Its rows, the one that comes next first."""
        return (*self.rows[self.place :], *self.rows[: self.place])

    @property
    def shaped(self) -> "Underway":
        """The same behind shaping: which row comes next over the other count is not told."""
        return replace(self, count=-1)

    def behind(self, rows: int, count: int) -> "Underway":
        """The same when so many of its rows more were worked, with so many stitches left."""
        return Underway(self.name, self.rows, (self.place + rows) % len(self.rows), count)


def as_set(direction: Even) -> bool:
    """Whether a fabric is the one that is worked already: "in pattern as set"."""
    return usual_fabric(direction.fabric) in _AS_SET


def place_behind(direction: RepeatRows | Even, rows: int, block: Sequence[Row]) -> int | None:
    """The place of the row that comes next behind so many rows of a stitch pattern; None where it is not known."""
    if isinstance(direction, Even) or direction.numbers is None:
        return rows % len(block)
    listed = direction.numbers.listed
    return listed[(rows - 1) % len(listed)] % len(block) if rows and listed else None


def keeps_on(row: Row) -> bool:
    """Whether a row says "in pattern" of some of its stitches."""
    return any(isinstance(action, Follow) for action in row.actions)


def panel_of(row: Row) -> str:
    """The stitch pattern that a row works over a part of its stitches; "" of one that works none."""
    return next((action.name for action in row.actions if isinstance(action, Panel)), "")
