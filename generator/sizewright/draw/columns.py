"""In: rows stitch by stitch. Out: the column of a chart each stitch stands in, so that stitches stand over one another.

A row of as many stitches as the one below takes its columns. Where the count changes, the columns of the widest row are
shared out so that every stitch stands as near as can be to what it was worked into; what stays free is no stitch.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor, inf

from sizewright.work.recording import Cell, RecordedRow

_TORN = 0.75  # what it costs, in columns, to part the stitches of one cell
# A decrease stands over the one of its stitches that lies on top: leaning right it is the left one.
_LEANS = {"/": -0.1, "d": -0.1, "\\": 0.1, "D": 0.1}


@dataclass(frozen=True, slots=True)
class Shown:
    """A cell of a row as the right side shows it, from the left: its columns, and which of them go on upwards."""

    cell: Cell
    columns: tuple[int, ...]

    @property
    def live(self) -> tuple[int, ...]:
        """The columns of the stitches it left on the needle."""
        return self.columns if self.cell.makes else ()


@dataclass(frozen=True, slots=True)
class _Wanted:
    """One column to be found: where it would best be in stitches of the row below, and whether its cell goes on."""

    below: float
    joined: bool


def width_of(cell: Cell) -> int:
    """The columns a cell takes: one for each stitch it leaves, or, where it leaves none, for each it took."""
    return cell.makes or cell.uses


def columned(rows: Sequence[RecordedRow]) -> tuple[tuple[Shown, ...], ...]:
    """The cells of every row, from left to right, with their columns.

    The rows come back to the count they begin with, as those of a stitch pattern do: below the first lies the last.
    """
    widths = [sum(map(width_of, row.cells)) for row in rows]
    columns, widest = max(widths), widths.index(max(widths))
    shown: dict[int, tuple[Shown, ...]] = {widest: _shared(rows[widest], list(range(columns)))}
    for step in range(1, len(rows)):
        place, below = (widest + step) % len(rows), (widest + step - 1) % len(rows)
        live = [column for one in shown[below] for column in one.live]
        shown[place] = _shared(rows[place], _found(_wanted(rows[place]), live, columns))
    return tuple(shown[place] for place in range(len(rows)))


def _seen(row: RecordedRow) -> tuple[Cell, ...]:
    return row.cells if row.wrong_side else row.cells[::-1]


def _shared(row: RecordedRow, columns: list[int]) -> tuple[Shown, ...]:
    shown, at = [], 0
    for cell in _seen(row):
        shown.append(Shown(cell, tuple(columns[at : at + width_of(cell)])))
        at += width_of(cell)
    return tuple(shown)


def _wanted(row: RecordedRow) -> list[_Wanted]:
    wanted, at = [], 0
    for cell in _seen(row):
        width = width_of(cell)
        for place in range(width):
            below = at - 0.5 + (place + 0.5) * cell.uses / width
            wanted.append(_Wanted(below + _LEANS.get(cell.looks, 0.0), joined=place > 0))
        at += cell.uses
    return wanted


def _found(wanted: Sequence[_Wanted], live: Sequence[int], columns: int) -> list[int]:
    """The columns, each further right than the one before, that lie nearest to where they would best be."""
    if len(wanted) == len(live):
        return list(live)
    best: list[list[tuple[float, int]]] = []  # by stitch and column: the least cost, and the column of the one before
    for number, one in enumerate(wanted):
        ideal = _column_at(one.below, live)
        costs: list[tuple[float, int]] = []
        least, before = (0.0, -1) if number == 0 else (inf, -1)
        for column in range(columns):
            if number and column and best[-1][column - 1][0] <= least - 1e-9:
                least, before = best[-1][column - 1][0], column - 1
            torn = _TORN if one.joined and before != column - 1 else 0.0
            costs.append((least + torn + abs(column - ideal), before))
        best.append(costs)
    return _traced(best)


def _traced(best: Sequence[Sequence[tuple[float, int]]]) -> list[int]:
    if not best:
        return []
    column = min(range(len(best[-1])), key=lambda place: best[-1][place][0])
    found = [column]
    for costs in reversed(best[1:]):
        column = costs[column][1]
        found.append(column)
    return found[::-1]


def _column_at(place: float, live: Sequence[int]) -> float:
    """The column of a place among the stitches below, between two of them for one between."""
    if not live:
        return place
    low, high = (live[min(max(end, 0), len(live) - 1)] for end in (floor(place), ceil(place)))
    beside = min(0.0, place) + max(0.0, place - (len(live) - 1))
    return low + (high - low) * (place - floor(place)) + beside
