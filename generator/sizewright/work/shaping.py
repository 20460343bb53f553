"""In: a row that comes every so often. Out: it worked, with the rows between worked even."""

from sizewright.read.notation.direction_tree import Even, Extent, Numbers, Row, Spaced, Spacing
from sizewright.read.notation.kinds import Side
from sizewright.work.counts import Counts
from sizewright.work.faults import NeverReached, Stopped
from sizewright.work.needle import Needle
from sizewright.work.row_book import RowBook
from sizewright.work.rowing import ENDLESS, Rowing


class Shaping:
    """Works shaping in one size."""

    def __init__(self, counts: Counts, rowing: Rowing, book: RowBook) -> None:
        self._counts = counts
        self._rowing = rowing
        self._book = book

    def spaced(self, needle: Needle, direction: Spaced) -> None:
        """All of the direction. Raises `Stopped`."""
        row = self.row_of(direction)
        for place, spacing in enumerate(direction.spacings):
            first = place == 0
            if spacing.times is not None:
                for done in range(min(self._counts(spacing.times), ENDLESS)):
                    self.next(needle, direction, row, spacing, first=first and not done)
            elif spacing.until is not None:
                self.until(needle, direction, row, spacing, self._counts(spacing.until), first=first)

    def until(self, needle: Needle, direction: Spaced, row: Row, spacing: Spacing, wanted: int, *, first: bool) -> None:
        """The row every so often until so many stitches are there. Raises `Stopped`."""
        while (off := needle.total - wanted) != 0:
            self.next(needle, direction, row, spacing, first=first)
            first = False
            if abs(needle.total - wanted) >= abs(off) or (needle.total - wanted) * off < 0:
                raise Stopped(NeverReached(direction.span, self._counts.size, wanted, needle.total))

    def next(self, needle: Needle, direction: Spaced, row: Row, spacing: Spacing, *, first: bool) -> None:
        """The rows worked even, and the row of shaping behind them, which must fall on its side."""
        self.even(needle, direction, self.rows_before(needle, row, spacing, first=first))
        self._rowing.judge_called_side(needle, row, direction.span)
        self._rowing.again(needle, [row], 1)
        self._book.worked(row, needle.rows)

    def row_of(self, direction: Spaced) -> Row:
        """The row that is called, or that the words make. Raises `Stopped`."""
        span, words = direction.span, direction.words
        if direction.name:
            return self._book.named(direction.name, span)
        return Row(span, "this row", Numbers(), None, in_the_round=False, actions=direction.actions, name=words)

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

    def even(self, needle: Needle, direction: Spaced, rows: int) -> None:
        """So many rows in the fabric that is named, or as established."""
        if rows:
            even = Even(direction.span, direction.fabric or "pattern", Extent())
            self._rowing.partly(needle, self._book.fabric(even, needle), rows)
