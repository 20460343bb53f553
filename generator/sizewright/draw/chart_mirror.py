"""In: a chart. Out: its mirror image, for a knitter who works from the left needle's side: from left to right.

Left-handed here means that every movement is mirrored. The words of a row then stay as they are, and the fabric is the
mirror image: a k2tog leans to the left, a cable held in front crosses to the right, RS rows run from left to right. So
cells change their places and signs are reflected, while numbers and letters are written the right way round (common
practice, no source).
"""

import re
from dataclasses import replace

from sizewright.base.language import later, tr
from sizewright.draw.chart import Chart, ChartCell, ChartRow, Frame, KeyEntry
from sizewright.draw.symbols import CELL, Symbol

_PART = re.compile(r"([MlchvaZz])([^MlchvaZz]*)")
_NUMBER = re.compile(r"-?\d*\.?\d+")
_WAY = re.compile(r"(crossing)?.*to the (left|right)")
_OTHER = {"left": "right", "right": "left"}
_GOES = {
    (True, "left"): later("crosses to the left"),
    (True, "right"): later("crosses to the right"),
    (False, "left"): later("leans to the left"),
    (False, "right"): later("leans to the right"),
}


def mirrored(chart: Chart) -> Chart:
    """The chart in mirror image; that of the mirror image has the shapes of the first again."""
    frame = chart.frame and Frame(chart.columns - chart.frame.start - chart.frame.width, chart.frame.width)
    rows = tuple(_row(row, chart.columns) for row in chart.rows)
    return replace(chart, rows=rows, frame=frame, key=tuple(map(_entry, chart.key)), mirrored=not chart.mirrored)


def _row(row: ChartRow, columns: int) -> ChartRow:
    cells = tuple(_cell(cell, columns) for cell in reversed(row.cells))
    return replace(row, cells=cells, from_left=not row.from_left)


def _cell(cell: ChartCell, columns: int) -> ChartCell:
    return replace(cell, column=columns - cell.column - cell.over, symbol=mirrored_symbol(cell.symbol))


def _entry(entry: KeyEntry) -> KeyEntry:
    """An entry of the key; which way a sign now goes is said, as the words beside it are those of the other hand."""
    symbol = mirrored_symbol(entry.symbol)
    way = _WAY.fullmatch(symbol.name)
    if way is None:
        return KeyEntry(symbol, entry.words)
    return KeyEntry(symbol, f"{entry.words} ({tr(_GOES[bool(way[1]), way[2]])})")


def mirrored_symbol(symbol: Symbol) -> Symbol:
    """A sign reflected, under the name of where it goes."""
    width = symbol.over * CELL
    name = re.sub("(?<=to the )(left|right)", lambda way: _OTHER[way[0]], symbol.name)
    return replace(symbol, name=name, lines=_reflected(symbol.lines, width), filled=_reflected(symbol.filled, width))


def _reflected(path: str, width: int) -> str:
    """A path reflected within its cells: only `M` is absolute, every other step changes its sign across."""
    return "".join(
        _step(step[1], [float(number) for number in _NUMBER.findall(step[2])], width) for step in _PART.finditer(path)
    )


def _step(command: str, numbers: list[float], width: int) -> str:
    match command:
        case "M":
            numbers[0] = width - numbers[0]
        case "h":
            numbers[0] = -numbers[0]
        case "l" | "c":
            numbers[::2] = [-number for number in numbers[::2]]
        case "a":  # radii, turn, large arc, which way round, then the step across and down
            for at in range(0, len(numbers), 7):
                numbers[at + 4] = 1 - numbers[at + 4]
                numbers[at + 5] = -numbers[at + 5]
    return command + " ".join(f"{number:.6g}" for number in numbers)
