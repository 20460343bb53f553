"""In: a row that comes every so often, alone or while other rows are worked. Out: it worked, the rows between even."""

from collections.abc import Sequence

from sizewright.base.place import Span
from sizewright.read.notation.direction_tree import Even, Extent, Numbers, Row, Spaced, Spacing
from sizewright.read.notation.kinds import Side
from sizewright.read.notation.tree import Action, Follow, Landmark, Manner, Place, Repeat, Work
from sizewright.work.counts import Counts
from sizewright.work.faults import NeverReached, NotTogether, Stopped, Unfinished
from sizewright.work.needle import Needle
from sizewright.work.row_book import RowBook
from sizewright.work.rowing import ENDLESS, Rowing


class Ground:
    """The rows worked between the rows of shaping, one after the other.

    Until the first row of shaping they are worked as they are written; behind it, over another count, as established.
    That is known where each stitch is worked for one; lace is not told what becomes of half a repeat.
    """

    def __init__(self, rows: Sequence[Row], words: str, *, limit: int | None) -> None:
        self.rows = rows
        self.words = words
        self.limit = limit  # rows there are in all, None where there are as many as the shaping takes
        self.done = 0
        self.shapings = 0

    def coming(self, span: Span, size: int) -> tuple[Row, ...]:
        """The rows that come next, again and again. Raises `Stopped`."""
        if self.shapings and not all(_over_any_count(row.actions) for row in self.rows):
            if not all(_one_for_one(row.actions) for row in self.rows):
                raise Stopped(NotTogether(span, size, self.words))
            as_established = Follow(span, Manner.ANY, None, Place(Landmark.END))
            return (Row(span, "this row", Numbers(), None, in_the_round=False, actions=(as_established,)),)
        first = self.done % len(self.rows)
        return (*self.rows[first:], *self.rows[:first])

    @property
    def left(self) -> int:
        """The rows still to come."""
        return ENDLESS if self.limit is None else self.limit - self.done


def _over_any_count(actions: Sequence[Action]) -> bool:
    """Whether a row is one thing from end to end: "Knit", as established."""
    return len(actions) == 1 and isinstance(actions[0], Work | Follow) and actions[0].place is not None


def _one_for_one(actions: Sequence[Action]) -> bool:
    """Whether each stitch is worked for one."""
    for action in actions:
        match action:
            case Work():
                if action.stitch.uses != action.stitch.makes:
                    return False
            case Repeat():
                if not _one_for_one((*action.actions, *action.ending)):
                    return False
            case Follow():
                pass
            case _:
                return False
    return True


class Shaping:
    """Works shaping in one size."""

    def __init__(self, counts: Counts, rowing: Rowing, book: RowBook) -> None:
        self._counts = counts
        self._rowing = rowing
        self._book = book

    def spaced(self, needle: Needle, direction: Spaced) -> None:
        """All of the direction, in its fabric or as established. Raises `Stopped`."""
        fabric = direction.fabric or "pattern"
        if not direction.fabric:
            self._book.came_between(shaped=True)  # rows between are worked as they appear
        rows = self._book.fabric(Even(direction.span, fabric, Extent()), needle)
        self.together(needle, direction, Ground(rows, fabric, limit=None))

    def together(self, needle: Needle, direction: Spaced, ground: Ground) -> None:
        """The shaping while the rows of the ground are worked, and what is left of those. Raises `Stopped`."""
        row = self.row_of(direction)
        for place, spacing in enumerate(direction.spacings):
            first = place == 0
            if spacing.times is not None:
                for done in range(min(self._counts(spacing.times), ENDLESS)):
                    self.next(needle, direction, row, spacing, ground, first=first and not done)
            elif spacing.until is not None:
                self.until(needle, direction, row, spacing, ground, first=first)
        if ground.limit is not None:
            self.even(needle, direction, ground, ground.left)

    def row_of(self, direction: Spaced) -> Row:
        """The row that is called, or that the words make. Raises `Stopped`."""
        span, words = direction.span, direction.words
        if direction.name:
            return self._book.named(direction.name, span)
        return Row(span, "this row", Numbers(), None, in_the_round=False, actions=direction.actions, name=words)

    def until(
        self, needle: Needle, direction: Spaced, row: Row, spacing: Spacing, ground: Ground, *, first: bool
    ) -> None:
        """The row every so often until so many stitches are there. Raises `Stopped`."""
        wanted = self._counts(spacing.until) if spacing.until is not None else 0
        while (off := needle.total - wanted) != 0:
            self.next(needle, direction, row, spacing, ground, first=first)
            first = False
            if abs(needle.total - wanted) >= abs(off) or (needle.total - wanted) * off < 0:
                raise Stopped(NeverReached(direction.span, self._counts.size, wanted, needle.total))

    def next(
        self, needle: Needle, direction: Spaced, row: Row, spacing: Spacing, ground: Ground, *, first: bool
    ) -> None:
        """The rows worked even, and the row of shaping behind them, which must fall on its side."""
        before = self.rows_before(needle, row, spacing, first=first)
        if before + 1 > ground.left:
            raise Stopped(Unfinished(direction.span, self._counts.size, ground.limit or 0, ground.shapings))
        self.even(needle, direction, ground, before)
        self._rowing.judge_called_side(needle, row, direction.span)
        self._rowing.again(needle, [row], 1)
        self._book.worked(row, needle.rows)
        ground.done += 1
        ground.shapings += 1

    def rows_before(self, needle: Needle, row: Row, spacing: Spacing, *, first: bool) -> int:
        """The rows worked even before the shaping comes next.

        They are counted from the last row of the kind, where no more rows have been worked since than lie between two;
        else from this place.
        """
        every = self._counts(spacing.every) if spacing.every is not None else 1
        if spacing.side is not None and not needle.in_the_round:
            here = needle.wrong_side == (spacing.side is Side.WRONG)
            return (0 if here else 1) + 2 * (every - 1)
        last = self._book.worked_at(row)
        if first and not spacing.here and last is not None and 0 <= needle.rows - last < every:
            return every - 1 - (needle.rows - last)
        return max(0, every - 1)

    def even(self, needle: Needle, direction: Spaced, ground: Ground, rows: int) -> None:
        """So many rows of the ground."""
        if rows:
            self._rowing.partly(needle, ground.coming(direction.span, self._counts.size), rows)
            ground.done += rows
