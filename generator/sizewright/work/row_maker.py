"""In: directions that tell of rows. Out: the rows worked, in one size, as far as they say."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from sizewright.base.place import Span
from sizewright.grade.graded import Graded
from sizewright.read.notation.direction_tree import Apart, Even, Extent, Meanwhile, RepeatRows, Row, Spaced
from sizewright.read.notation.kinds import Side
from sizewright.work.as_set import UnclearPattern, keeps_on
from sizewright.work.at_row_gauge import Stretch
from sizewright.work.counts import Counts
from sizewright.work.faults import LengthPassed, Stopped, WrongSide
from sizewright.work.lengths import Lengths
from sizewright.work.made import Made, MadePart
from sizewright.work.needle import Needle
from sizewright.work.row_book import RowBook
from sizewright.work.row_parts import picks_up, side_picked_up
from sizewright.work.rowing import Rowing
from sizewright.work.sections import Sections
from sizewright.work.shaping import Ground, Shaping

Rows = Row | RepeatRows | Even | Spaced | Meanwhile


class RowMaker:
    """Works directions that tell of rows."""

    def __init__(self, graded: Graded, counts: Counts, book: RowBook, made: Made, sections: Sections) -> None:
        self.counts = counts
        self.book = book
        self.made = made
        self.sections = sections
        self.untold = False  # how many rows the direction means
        self.lengths = Lengths(graded, counts)
        self.stretches: list[Stretch] = []  # of the part that is worked
        self.rowing = Rowing(counts, made.faults)
        self.shaping = Shaping(counts, self.rowing, book)

    def work_by(self, rowing: Rowing) -> None:
        """From here on rows are worked by another way of working them."""
        self.rowing = rowing
        self.shaping = Shaping(self.counts, rowing, self.book)

    def apart(self, needle: Needle, direction: Apart) -> None:
        """A joined piece is worked in rows from here on."""
        needle.open()
        self.rowing.judge_promise(needle, direction.promise, "these words", needle.total)

    def part(self, piece: str, begun: Span, rows: int | None) -> MadePart:
        """The part that ends, `rows` None where they are not known."""
        stretches, self.stretches = tuple(self.stretches), []
        length = None if rows is None else self.lengths.measured(rows, piece)
        headings = tuple(self.sections.starts)
        return MadePart(piece, begun, rows, length, self.lengths.gauge(piece)[0], stretches, headings)

    def work(self, needle: Needle, direction: Rows) -> None:
        """Works one direction. Raises `Stopped`."""
        self.untold = False
        match direction:
            case Row():
                self.row(needle, direction)
            case RepeatRows() | Even():
                self.rows(needle, direction)
            case Spaced():
                self.spaced(needle, direction)
            case Meanwhile():
                self.meanwhile(needle, direction)
        if self.untold:
            self.made.uncounted.append(direction.span)

    def row(self, needle: Needle, row: Row) -> None:
        """One written row, or as many alike as its numbers say."""
        alike = [row]
        if row.like is not None:
            alike = [replace(row, actions=one.actions) for one in self.book.numbered(row.like, row.span)]
            row = alike[0]
        anew = not needle.total and picks_up(row.actions)
        if anew:
            self.sections.pick_up(needle.rows)
            self.rowing.show(needle, side_picked_up(row))
        self.rowing.judge_side(needle, row)
        times = 1
        if row.numbers.last is not None:
            times = max(0, self.counts(row.numbers.last) - row.numbers.first + 1)
        self.book.note(row, times)
        before, worked = needle.total, needle.rows
        self.rowing.partly(needle, alike, times)
        if needle.rows != worked:
            self.book.came_between(shaped=needle.total != before or keeps_on(row))
        needle.opened = needle.opened or (anew and bool(needle.in_the_round))  # rows or rounds, as their words say
        self.book.worked(row, needle.rows)
        self.rowing.judge_promise(needle, row.promise, row.label or "this row", before)

    def rows(self, needle: Needle, direction: RepeatRows | Even) -> None:
        """Rows that stand above, of a stitch pattern or of a fabric known by name, as far as is said."""
        before, worked = needle.total, needle.rows
        book = self.book
        self.begin(needle, direction.extent)
        self.judge_as_set(needle, direction)
        rows = book.fabric(direction, needle) if isinstance(direction, Even) else book.repeated(direction)
        if isinstance(direction, RepeatRows) and direction.name:
            self.rowing.judge_called_side(needle, rows[0], direction.span)
        if not (isinstance(direction, Even) and direction.extent == Extent()):  # "work in moss" says no rows yet
            self.extend(needle, rows, direction.extent, direction.span)
        if isinstance(direction, Even) and direction.extent.rows is not None:
            self.book.note_even(rows, self.counts(direction.extent.rows))
        book.went_on(direction, needle.rows - worked, needle.total)
        if len(rows) == 1:
            self.book.worked(rows[0], needle.rows)
        self.rowing.judge_promise(needle, direction.promise, "these rows", before)

    def judge_as_set(self, needle: Needle, direction: RepeatRows | Even) -> None:
        """What goes on "in pattern as set" must be known; where it is not, stitches are worked as they appear."""
        unclear = self.book.unclear(direction, needle) if isinstance(direction, Even) else ""
        if unclear and isinstance(direction, Even):
            self.made.faults.append(UnclearPattern(direction.span, self.counts.size, direction.fabric, unclear))

    def begin(self, needle: Needle, extent: Extent) -> None:
        """On which side a part begins is told by its words alone, be it by the side of its last row."""
        if needle.rows or needle.in_the_round:
            return
        side = extent.begins
        if side is None and extent.ends is not None and extent.rows is not None:
            odd = self.counts(extent.rows) % 2
            side = extent.ends if odd else (Side.WRONG if extent.ends is Side.RIGHT else Side.RIGHT)
        if side is not None:
            self.rowing.show(needle, side)

    def spaced(self, needle: Needle, direction: Spaced) -> None:
        """A row that comes every so often."""
        before = needle.total
        if direction.fabric:
            self.judge_as_set(needle, Even(direction.span, direction.fabric, Extent()))
        self.shaping.spaced(needle, direction)
        self.book.came_between(shaped=True)
        self.rowing.judge_promise(needle, direction.promise, "these rows", before)

    def meanwhile(self, needle: Needle, direction: Meanwhile) -> None:
        """Rows with shaping at the same time."""
        before, said = needle.total, direction.rows
        self.judge_as_set(needle, said)
        rows = self.book.fabric(said, needle) if isinstance(said, Even) else self.book.repeated(said)
        words = said.fabric if isinstance(said, Even) else said.of or said.words
        extent = said.extent
        endless = isinstance(said, Even) and extent == Extent()
        limit = None if endless else self.rows_of(needle, rows, extent, direction.span)
        if limit is not None or extent == Extent():
            self.shaping.together(needle, direction.shaping, Ground(rows, words, limit=limit))
            self.book.came_between(shaped=True)
        self.rowing.judge_promise(needle, direction.promise, "these rows", before)

    def rows_of(self, needle: Needle, rows: Sequence[Row], extent: Extent, span: Span) -> int | None:
        """How many rows an extent means, in words that stand there; None where a length has no row gauge."""
        if extent.left is not None:
            raise Stopped(None)
        if extent.rows is not None:
            return self.counts(extent.rows)
        if extent.typed_length or extent.length is not None:
            target = self.lengths.rows(extent, f"{self.sections.heading} {extent.since}")
            origin = self.sections.origin(extent.since, needle.rows)
            self.untold = target is None
            if target is None:
                return None
            count, length = max(0, origin + target[0] - needle.rows), target[1]
            self.judge_length(span, needle.rows - origin, *target)
            if needle.rows + count:
                self.stretches.append(Stretch(needle.rows, needle.rows + count, origin, length))
            return count
        return len(rows) * (1 if extent.times is None else self.counts(extent.times))

    def judge_length(self, span: Span, worked: int, wanted: int, length: Fraction) -> None:
        """A length that the piece has already, by more than the row that rounding may make."""
        if worked > wanted + 1 and wanted:
            self.made.faults.append(LengthPassed(span, self.counts.size, length, length * worked / wanted))

    def extend(self, needle: Needle, rows: tuple[Row, ...], extent: Extent, span: Span) -> None:
        """Rows as far as an extent says."""
        if extent.left is not None:
            self.rowing.until_left(needle, rows, self.counts(extent.left), span)
            self.judge_side(needle, extent.ends, not needle.wrong_side, span)
        elif extent.times is not None:
            self.rowing.again(needle, rows, self.counts(extent.times))
        else:
            count = self.rows_of(needle, rows, extent, span)
            by_length = extent.rows is None and extent.ends is not None and not needle.in_the_round
            if by_length and count is not None:  # at least the length: one row more, where the last must be on a side
                last_wrong = needle.wrong_side == bool(count % 2)
                count += last_wrong != (extent.ends is Side.WRONG)
            self.judge_side(needle, extent.begins, needle.wrong_side, span)
            self.rowing.partly(needle, rows, count or 0)
            if count is not None:
                self.judge_side(needle, extent.ends, not needle.wrong_side, span)

    def judge_side(self, needle: Needle, said: Side | None, wrong: bool, span: Span) -> None:  # noqa: FBT001 -- as it is
        """The first or the last of some rows must be on the side that is said; rounds have but one."""
        amiss = needle.in_the_round or (needle.side_known and wrong != (said is Side.WRONG))
        if said is not None and amiss:
            self.made.faults.append(WrongSide(span, self.counts.size, "this row", said.value))
