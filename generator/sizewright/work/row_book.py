"""In: rows as they are written, and directions that speak of them. Out: the rows a direction means."""

import re
from collections.abc import Sequence

from sizewright.base.place import Span
from sizewright.read.notation.direction_tree import Even, Numbers, RepeatRows, Row
from sizewright.read.notation.fabric_names import usual_fabric
from sizewright.read.notation.tree import Action
from sizewright.read.pattern import Pattern
from sizewright.read.source_terms import country_of_source
from sizewright.work.as_set import Underway, as_set, panel_of, place_behind
from sizewright.work.fabrics import fabric_rows
from sizewright.work.faults import NoRow, Stopped, WrongCount
from sizewright.work.needle import Needle
from sizewright.work.patterns import Patterns
from sizewright.work.rowing import ENDLESS

_OF_BLOCK = re.compile(r"(.+) row (\d+)")  # "moss row 2"


class RowBook:
    """The rows of one part of a piece, and the stitch patterns of the whole."""

    def __init__(self, source: Pattern, patterns: Patterns, size: int) -> None:
        self._source = source
        self._patterns = patterns
        self._size = size
        self._numbered: dict[int, Row] = {}
        self._written: list[Row] = []
        self._named: dict[str, Row] = {}
        self._worked_at: dict[str, int] = {}
        self.underway: Underway | None = None
        self.gap = False  # a row of this part was not understood, so one that is missing is told already

    def turn_page(self) -> None:
        """A new part begins: its numbered rows are its own; a row with a name may be called from other parts."""
        self._numbered, self._written, self._worked_at, self.gap = {}, [], {}, False
        self.underway = None

    def note(self, row: Row, times: int) -> None:
        """A row has been written and worked, or so many alike ("Rows 3 to {last}") have.

        A row 1 begins the numbers anew: those of before cannot be called any more.
        """
        alike = min(times, ENDLESS)
        first = row.numbers.first
        numbers = (*row.numbers.listed, *(range(first, first + alike) if row.numbers.last is not None else ()))
        if 1 in numbers:
            self._numbered.clear()
        self._numbered.update(dict.fromkeys(numbers, row))
        self._written.extend([row] * alike)
        if row.name:
            self._named[row.name] = row

    def note_even(self, rows: Sequence[Row], count: int) -> None:
        """So many rows of a fabric were worked: "rep last 2 rows" may mean them."""
        self._written.extend(rows[number % len(rows)] for number in range(min(count, ENDLESS)))

    def went_on(self, direction: RepeatRows | Even, rows: int, count: int) -> None:
        """So many rows of a direction were worked, with so many stitches left: which row of a pattern comes next."""
        here, self.underway = self.underway, None
        if isinstance(direction, Even) and here is not None and self._as_set(direction):
            self.underway = here.behind(rows, count) if here.count == count else here
            return
        name = self._patterns.found(direction.of if isinstance(direction, RepeatRows) else direction.fabric)
        block = self._patterns.blocks.get(name, ()) if name is not None else ()
        place = place_behind(direction, rows, block) if block else None
        if name is not None and place is not None:
            self.underway = Underway(name, block, place, count)

    def came_between(self, *, shaped: bool) -> None:
        """Other rows were worked: shaping in a stitch pattern, or another fabric."""
        self.underway = self.underway.shaped if self.underway is not None and shaped else None

    def _as_set(self, direction: Even) -> bool:
        return as_set(direction) and self._patterns.found(direction.fabric) is None

    def unclear(self, direction: Even, needle: Needle) -> str:
        """The stitch pattern of which it is not known what "in pattern as set" goes on with; "" where it is known."""
        if not self._as_set(direction) or usual_fabric(direction.fabric) == "even":  # without shaping, no more is said
            return ""
        if self.underway is not None:
            return self.underway.name if self.underway.count != needle.total else ""
        names = (panel_of(row) for row in self._written[-2:])
        return next((name for name in names if self._patterns.found(name) is not None), "")

    def worked(self, row: Row, rows: int) -> None:
        """A row that may be called by its name was worked; so many rows are done with it."""
        if row.name:
            self._worked_at[row.name] = rows

    def worked_at(self, row: Row) -> int | None:
        """How many rows were done when a row of this name was worked last."""
        return self._worked_at.get(row.name)

    def named(self, name: str, span: Span) -> Row:
        """The row of this name, as it was written last. Raises `Stopped`."""
        if name == "last row" and self._written:
            return self._written[-1]
        of_block = _OF_BLOCK.fullmatch(name)
        if name not in self._named and of_block is not None and of_block[1] in self._patterns.blocks:
            rows = [row for row in self.block(of_block[1], span) if int(of_block[2]) in row.numbers.listed]
            if rows:
                return rows[0]
        if name not in self._named:
            raise Stopped(None if self.gap else NoRow(span, self._size, name, tuple(self._named)))
        return self._named[name]

    def numbered(self, numbers: Numbers, span: Span) -> tuple[Row, ...]:
        """The rows of these numbers, those written last. Raises `Stopped`."""
        lacking = [str(number) for number in numbers.listed if number not in self._numbered]
        if lacking and self.gap:
            raise Stopped(None)
        if lacking or not numbers.listed:
            raise Stopped(NoRow(span, self._size, ", ".join(lacking)))
        return tuple(self._numbered[number] for number in numbers.listed)

    def repeated(self, direction: RepeatRows) -> tuple[Row, ...]:
        """The rows that are to be worked again. Raises `Stopped`."""
        if direction.of:
            wanted = direction.numbers.listed if direction.numbers is not None else ()
            block = self.block(direction.of, direction.span)
            lacking = set(wanted) - {number for row in block for number in row.numbers.listed}
            if lacking:
                raise Stopped(NoRow(direction.span, self._size, ", ".join(map(str, sorted(lacking)))))
            if direction.back > 1 and direction.back != len(block):
                fault = WrongCount(direction.span, self._size, direction.of, "rows", direction.back, len(block))
                raise Stopped(fault)
            return tuple(row for row in block if not wanted or set(row.numbers.listed) & set(wanted))
        if direction.name:
            return (self.named(direction.name, direction.span),)
        if direction.numbers is not None:
            return self.numbered(direction.numbers, direction.span)
        if len(self._written) < direction.back:
            raise Stopped(NoRow(direction.span, self._size, ""))
        return tuple(self._written[-direction.back :])

    def block(self, name: str, span: Span) -> tuple[Row, ...]:
        """The rows of a stitch block. Raises `Stopped`."""
        return self._patterns.rows(name, span, self._size)

    def fabric(self, direction: Even, needle: Needle) -> tuple[Row, ...]:
        """The rows of a stitch block, which is what the author means by its name, or of a fabric that all know.

        The one that comes next is the first. Raises `Stopped`.
        """
        name, rounds = direction.fabric, bool(needle.in_the_round)
        country = country_of_source(self._source) if "moss" in name.casefold() else None
        if self.underway is not None and self.underway.count == needle.total and self._as_set(direction):
            return self.underway.coming
        known = fabric_rows(name, direction.span, in_the_round=rounds, country=country)
        if known is None or self._patterns.found(name) is not None:
            return self.block(name, direction.span)
        if len(known) == 2 and needle.wrong_side and not needle.in_the_round:
            known = known[::-1]
        return tuple(_plain_row(actions, direction.span) for actions in known)


def _plain_row(actions: tuple[Action, ...], span: Span) -> Row:
    return Row(span, "these rows", Numbers(), None, in_the_round=False, actions=actions)
