"""In: rows as one size works them. Out: its course: every direction in working order, its rows folded to spells.

The ledger tells of directions as they are written, for all sizes; the course tells what one size has to do next.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from sizewright.read.notation.direction_tree import Direction, Even, Extent, Meanwhile, RepeatRows, Row, Spaced


@dataclass(frozen=True, slots=True)
class Pass:
    """One working of a written row: `rows` it counts for (more where it is turned), and the stitches around it."""

    row: Row
    rows: int
    before: int
    after: int
    in_the_round: bool

    def like(self, other: "Pass") -> bool:
        """Whether the other one is the same row again, with the same change of the count."""
        return (
            (self.row is other.row or self.row == other.row)
            and self.rows == other.rows
            and self.after - self.before == other.after - other.before
        )


@dataclass(frozen=True, slots=True)
class Spell:
    """Rows worked one after the other, all of them `times` times; `passes` are those of the first time."""

    passes: tuple[Pass, ...]
    times: int

    @property
    def rows(self) -> int:
        """The rows that are worked."""
        return self.times * sum(one.rows for one in self.passes)


@dataclass(frozen=True, slots=True)
class Leg:
    """One direction as one size works it: under which heading, in which block of instructions (from 0), with what rows.

    `rows` are those of the ledger. `again` is 0 the first time, 1 where a part is made for the second time, and so on.
    """

    direction: Direction
    heading: str
    block: int
    before: int | None
    after: int | None
    rows: int
    spells: tuple[Spell, ...] = ()
    again: int = 0


def noted(spells: list[Spell], passes: Sequence[Pass], times: int) -> None:
    """Adds rows worked so many times to a course; what goes on in the same way makes the last spell longer."""
    if not passes or times <= 0:
        return
    last = spells[-1] if spells else None
    if last is not None and _alike(last.passes, passes):
        spells[-1] = Spell(last.passes, last.times + times)
    else:
        spells.append(Spell(tuple(passes), times))


def _alike(first: Sequence[Pass], second: Sequence[Pass]) -> bool:
    return len(first) == len(second) and all(map(Pass.like, first, second))


def is_idle(leg: Leg, *, untold: bool) -> bool:
    """Whether a size has nothing to do in a direction of rows; `untold` says that nobody knows how many they are."""
    direction = leg.direction
    if leg.rows or leg.spells or untold or not isinstance(direction, Row | RepeatRows | Even | Spaced | Meanwhile):
        return False
    return not (isinstance(direction, Even) and direction.extent == Extent())
