"""In: the rows of a stitch pattern. Out: its chart as data: a grid as the right side shows it, its repeat and its key.

Rows stand from the lowest up. A cell's column is counted from the left, from 0; where a row has none, there is no
stitch.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import count, pairwise

from sizewright.base.language import in_english, tr
from sizewright.draw.cable_symbols import cable_symbol
from sizewright.draw.columns import Shown, columned
from sizewright.draw.symbols import Symbol, spare_symbol, spoken, symbol_of
from sizewright.read.notation.cables import crossing_of, crossing_words
from sizewright.read.notation.direction_tree import Row
from sizewright.read.notation.usual_names import yarn_name
from sizewright.work.cloth import seen
from sizewright.work.recording import Cell, RecordedRow

WIDEST, TALLEST = 64, 120  # columns and rows that can still be read


@dataclass(frozen=True, slots=True)
class ChartCell:
    """A sign over `over` columns from `column` on, the stitch it stands for as it was worked, and its yarn."""

    column: int
    over: int
    symbol: Symbol
    cell: Cell


@dataclass(frozen=True, slots=True)
class ChartRow:
    """One row; its number stands on the side it is worked from. `before` and `after` are the stitches on the needle.

    It is read `from_left` where it is a wrong-side row, in a mirrored chart where it is none; every round is like a
    right-side row. `written` is the row of the instructions it was worked from.
    """

    number: int
    wrong_side: bool
    in_the_round: bool
    before: int
    after: int
    cells: tuple[ChartCell, ...]
    from_left: bool
    written: Row


@dataclass(frozen=True, slots=True)
class KeyEntry:
    """One sign of the key, with what it stands for on the sides it is used on."""

    symbol: Symbol
    words: str


@dataclass(frozen=True, slots=True)
class Frame:
    """The columns that are repeated: the first of them from the left, and how many."""

    start: int
    width: int


@dataclass(frozen=True, slots=True)
class Chart:
    """A chart. `frame` is None where no columns are repeated alike in all rows; `yarns` are names with their letters.

    The pattern works over a multiple of so many stitches and `plus` more; `multiple` is 0 where only one count fits.
    A `mirrored` one is for knitting left-handed (see `chart_mirror`).
    """

    name: str
    columns: int
    rows: tuple[ChartRow, ...]
    frame: Frame | None
    multiple: int
    plus: int
    key: tuple[KeyEntry, ...]
    has_gaps: bool
    yarns: tuple[tuple[str, str], ...]
    mirrored: bool = False


def chart(name: str, multiple: int, plus: int, widths: Sequence[Sequence[RecordedRow]]) -> Chart | None:
    """The chart of rows worked over the narrowest counts that fit, one repeat apart; None where it cannot be drawn.

    The repeat is framed where the chart of the next count is this one with the framed columns twice.
    """
    if not widths or any(row.skipped or row.left for row in widths[0]) or not any(row.cells for row in widths[0]):
        return None
    grids = [columned(rows) for rows in widths]
    frame, chosen = None, 0
    for narrow, (before, after) in enumerate(pairwise(grids)):
        frame = _frame(before, after)
        if frame is not None:
            chosen = narrow
            break
    columns = _columns(grids[chosen])
    if columns > WIDEST or len(widths[chosen]) > TALLEST:
        return None
    return _Drawer(name, multiple, plus).chart(widths[chosen], grids[chosen], frame)


def _columns(grid: Sequence[Sequence[Shown]]) -> int:
    return 1 + max(column for row in grid for one in row for column in one.columns)


def _frame(narrow: Sequence[Sequence[Shown]], wide: Sequence[Sequence[Shown]]) -> Frame | None:
    """The columns of the narrow chart that the wide one has twice; of several the ones furthest to the right."""
    columns = _columns(narrow)
    width = _columns(wide) - columns
    pairs = [
        (_by_column(row, columns), _by_column(other, columns + width)) for row, other in zip(narrow, wide, strict=True)
    ]
    for start in range(columns - width, -1, -1):
        end = start + width
        whole = all(_between(row, start) and _between(row, end) for row, _ in pairs)
        if whole and all(other == [*row[:end], *row[start:]] for row, other in pairs):
            return Frame(start, width)
    return None


def _between(row: Sequence[tuple[Cell, int] | None], column: int) -> bool:
    """Whether no cell is cut at the left edge of a column."""
    here = row[column] if column < len(row) else None
    return here is None or here[1] == 0


def _by_column(row: Sequence[Shown], columns: int) -> list[tuple[Cell, int] | None]:
    """What stands in every column: the cell, and which part of it."""
    found: list[tuple[Cell, int] | None] = [None] * columns
    for one in row:
        for place, column in enumerate(one.columns):
            found[column] = (one.cell, place)
    return found


class _Drawer:
    """Gives every stitch its sign and collects the key."""

    def __init__(self, name: str, multiple: int, plus: int) -> None:
        self._name = name
        self._multiple = multiple
        self._plus = plus
        self._own: dict[tuple[str, bool], Symbol] = {}
        self._used: dict[Symbol, tuple[dict[str, None], dict[str, None]]] = {}

    def chart(self, rows: Sequence[RecordedRow], grid: Sequence[Sequence[Shown]], frame: Frame | None) -> Chart:
        columns, numbers = _columns(grid), _numbers(rows)
        drawn = tuple(
            ChartRow(
                number,
                row.wrong_side,
                row.in_the_round,
                row.before,
                row.after,
                tuple(self._cell(one, wrong_side=row.wrong_side) for one in shown if one.columns),
                row.wrong_side and not row.in_the_round,
                row.written,
            )
            for number, row, shown in zip(numbers, rows, grid, strict=True)
        )
        gaps = any(sum(len(one.columns) for one in shown) < columns for shown in grid)
        yarns = _lettered(drawn)
        return Chart(self._name, columns, drawn, frame, self._multiple, self._plus, self._key(), gaps, yarns)

    def _cell(self, shown: Shown, *, wrong_side: bool) -> ChartCell:
        cell = shown.cell
        over = shown.columns[-1] - shown.columns[0] + 1
        term = " ".join(filter(None, (cell.term, cell.manner)))
        symbol = self._symbol(cell, term, over, wrong_side=wrong_side)
        self._used.setdefault(symbol, ({}, {}))[wrong_side][term] = None
        return ChartCell(shown.columns[0], over, symbol, cell)

    def _symbol(self, cell: Cell, term: str, over: int, *, wrong_side: bool) -> Symbol:
        known = symbol_of(term, wrong_side=wrong_side)
        if known is not None and known.over == over:
            return known
        if (term, wrong_side) not in self._own:
            crossing = crossing_of(cell.term)
            if crossing is not None and crossing.over == over:
                symbol = cable_symbol(seen(crossing, wrong_side=wrong_side), term, wrong_side=wrong_side)
            else:
                symbol = spare_symbol(term, self._spares(), over, wrong_side=wrong_side)
            self._own[term, wrong_side] = symbol
        return self._own[term, wrong_side]

    def _spares(self) -> int:
        return sum(crossing_of(term) is None for term, _ in self._own)

    def _key(self) -> tuple[KeyEntry, ...]:
        return tuple(KeyEntry(symbol, _words(*sides)) for symbol, sides in self._used.items())


def _words(right: dict[str, None], wrong: dict[str, None]) -> str:
    """ "knit on RS, purl on WS"; where both sides do the same, or only one of them is used, no side is named."""
    on_right, on_wrong = ", ".join(map(_told, right)), ", ".join(map(spoken, wrong))
    if on_right == on_wrong or not on_wrong:
        return on_right
    if not on_right:
        return tr("{wrong} on WS", wrong=on_wrong)
    return tr("{right} on RS, {wrong} on WS", right=on_right, wrong=on_wrong)


def _told(term: str) -> str:
    """A term of the right side; a cable with how it is worked, unless its words say so already."""
    crossing = crossing_of(term) if in_english() else None  # elsewhere it goes by its name, which a page explains
    return spoken(term) if crossing is None or term.startswith("sl ") else f"{term}: {crossing_words(crossing)}"


def _numbers(rows: Sequence[RecordedRow]) -> list[int]:
    """The numbers the rows are written under; counted from 1 where any has none, or one comes twice."""
    written = [row.number for row in rows]
    return written if all(written) and len(set(written)) == len(written) else list(range(1, len(rows) + 1))


def _lettered(rows: Sequence[ChartRow]) -> tuple[tuple[str, str], ...]:
    """The yarns in the order they come, each with a short sign: its own where it has one, else its first letter."""
    names = dict.fromkeys(cell.cell.colour for row in rows for cell in row.cells)
    if len(names) < 2:
        return ()
    found: dict[str, str] = {}
    for name in names:
        told = yarn_name(name)
        wanted = told if 0 < len(told) < 3 else told[:1].upper()
        free = (chr(ord("A") + number) for number in count())
        while not wanted or wanted in found.values():
            wanted = next(free)
        found[name] = wanted
    return tuple(found.items())


def worked_in(row: ChartRow) -> tuple[ChartCell, ...]:
    """The cells of a row in the order they are worked."""
    return row.cells if row.from_left else row.cells[::-1]
