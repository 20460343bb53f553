"""In: a chart as data, and the colour of each yarn. Out: it drawn, and each sign of its key drawn.

The ground is white and the ink dark in every surrounding, as on paper. All signs of an ink are one path, so that a
large chart stays small.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import svg

from sizewright.base.language import later, tr
from sizewright.base.language import named as told_as
from sizewright.draw.chart import Chart, ChartCell, Frame
from sizewright.draw.chart_words import reading
from sizewright.draw.svg_parts import (
    FONT,
    GREY,
    GRID,
    INK,
    PAPER,
    box,
    described,
    filled,
    is_dark,
    named,
    stroked,
    words,
)
from sizewright.draw.symbols import CELL, Symbol, moved

_SIDE, _TOP, _FOOT = 30, 4, 22  # units beside the grid for row numbers, above it, and below for stitch numbers
_STROKE, _BOLD = 1.9, 3.2  # lines of a sign, and of the frame around the repeat
# Half the width of a capital, in ems of the typeface: the renderer of PDFs cannot centre letters that have places each.
_HALF, _HALVES = 0.33, {"I": 0.15, "J": 0.26, "M": 0.42, "W": 0.46}
NO_STITCH = later("no stitch: pass over it")


@dataclass(frozen=True, slots=True)
class _Place:
    x: float
    y: float
    cell: ChartCell
    dark: bool


def chart_svg(chart: Chart, colours: Mapping[str, str], scale: float) -> str:
    """The chart; `colours` has #rrggbb for the yarns of a chart that has several, `scale` is pixels a unit."""
    width, height = chart.columns * CELL + _SIDE * 2, len(chart.rows) * CELL + _TOP + _FOOT
    places = tuple(_places(chart, colours))
    drawing = svg.SVG(
        viewBox=svg.ViewBoxSpec(0, 0, width, height),
        width=round(width * scale),
        height=round(height * scale),
        class_=["chart"],
        extra={"role": "img", "font-family": FONT},
        elements=[
            named(chart_name(chart)),
            described(_description(chart)),
            filled(box(0, 0, width, height), PAPER),
            *_grounds(chart, places, colours),
            *_signs(places),
            *_letters(chart, places),
            *_numbers(chart),
            *_frame(chart),
        ],
    )
    return str(drawing)


def chart_name(chart: Chart) -> str:
    """The words that stand for a chart."""
    of = tr("Chart of {name}, in mirror image") if chart.mirrored else tr("Chart of {name}")
    size = tr(
        "{columns} stitches by {rows} rows; the rows are also written out", columns=chart.columns, rows=len(chart.rows)
    )
    return f"{of.format(name=told_as(chart.name))}, {size}"


def _description(chart: Chart) -> str:
    frame = (tr("The {n} stitches of the repeat are framed.", n=chart.multiple),) if chart.frame else ()
    return " ".join((reading(chart), *frame, tr("What is worked in each row stands in the written rows.")))


def _places(chart: Chart, colours: Mapping[str, str]) -> Iterator[_Place]:
    several = len(chart.yarns) > 1
    for number, row in enumerate(chart.rows):
        y = _TOP + (len(chart.rows) - 1 - number) * CELL
        for cell in row.cells:
            colour = colours.get(cell.cell.colour, PAPER) if several else PAPER
            yield _Place(_SIDE + cell.column * CELL, y, cell, is_dark(colour))


def _grounds(chart: Chart, places: Sequence[_Place], colours: Mapping[str, str]) -> Iterator[svg.Element]:
    """No-stitch cells grey, the others in the colour of their yarn where there are several, with lines around them."""
    yield filled(box(_SIDE, _TOP, chart.columns * CELL, len(chart.rows) * CELL), GREY if chart.has_gaps else PAPER)
    boxes: dict[str, list[str]] = {}
    for place in places:
        colour = colours.get(place.cell.cell.colour, PAPER) if len(chart.yarns) > 1 else PAPER
        boxes.setdefault(colour, []).append(box(place.x, place.y, place.cell.over * CELL, CELL))
    for colour, shapes in boxes.items():
        yield filled("".join(shapes), colour)
    yield stroked("".join(shape for shapes in boxes.values() for shape in shapes), GRID, 0.8)


def _signs(places: Sequence[_Place]) -> Iterator[svg.Element]:
    """The signs, one path for all of a kind and ink."""
    lines: dict[bool, list[str]] = {}
    shapes: dict[bool, list[str]] = {}
    for place in places:
        symbol = place.cell.symbol
        for path, found in ((symbol.lines, lines), (symbol.filled, shapes)):
            if path:
                found.setdefault(place.dark, []).append(moved(path, place.x, place.y))
    for dark, paths in lines.items():
        yield stroked("".join(paths), PAPER if dark else INK, _STROKE)
    for dark, paths in shapes.items():
        yield filled("".join(paths), PAPER if dark else INK)


def _letters(chart: Chart, places: Sequence[_Place]) -> Iterator[svg.Element]:
    """The letter of its yarn in every cell: large in an empty one, in the corner beside a sign."""
    letters = dict(chart.yarns)
    lines: dict[tuple[float, str, bool, bool], list[float]] = {}
    for place in places if letters else ():
        symbol = place.cell.symbol
        empty = not (symbol.lines or symbol.filled)
        key = (place.y, letters[place.cell.cell.colour], empty, place.dark)
        middle = place.x + place.cell.over * CELL - (CELL / 2 if empty else 3.6)
        lines.setdefault(key, []).append(middle)
    for (y, letter, empty, dark), across in lines.items():
        size, below = (10, 13.6) if empty else (6.5, 18)
        ink = PAPER if dark else INK
        if len(letter) == 1:
            half = _HALVES.get(letter, _HALF) * size
            along = " ".join(f"{x - half:.1f}" for x in across)
            yield words(letter * len(across), along, y + below, size, anchor="start", fill=ink)
        else:
            yield from (words(letter, x, y + below, size * 0.8, fill=ink) for x in across)


def _numbers(chart: Chart) -> Iterator[svg.Element]:
    """Row numbers on the side a row is worked from, stitch numbers below from where a right-side row begins."""
    right = _SIDE + chart.columns * CELL
    yield from _row_numbers(chart, left=True, x=_SIDE - 5)
    yield from _row_numbers(chart, left=False, x=right + 5)
    for number in range(1, chart.columns + 1):
        if chart.columns <= 12 or number == 1 or number % 5 == 0:
            along = (number - 0.5) * CELL
            x = _SIDE + along if chart.mirrored else right - along
            yield words(str(number), x, _TOP + len(chart.rows) * CELL + 15, 11)


def _row_numbers(chart: Chart, *, left: bool, x: float) -> Iterator[svg.Element]:
    """The numbers of the rows that are read from that side."""
    for place, row in enumerate(chart.rows):
        if row.from_left == left:
            y = _TOP + (len(chart.rows) - 1 - place) * CELL + 14.5
            yield words(str(row.number), x, y, 12, anchor="end" if left else "start")


def gutter_svg(chart: Chart, scale: float, *, left: bool) -> str:
    """The row numbers of one side by themselves, to stay in view while a chart is scrolled; "" where there are none.

    Their ground leaves free what the frame of the repeat takes beside the grid, so that it is not cut at the edge.
    """
    numbers = list(_row_numbers(chart, left=left, x=_SIDE - 5 if left else 5))
    if not numbers:
        return ""
    height = len(chart.rows) * CELL + _TOP + _FOOT
    drawing = svg.SVG(
        viewBox=svg.ViewBoxSpec(0, 0, _SIDE, height),
        width=round(_SIDE * scale),
        height=round(height * scale),
        class_=["gutter", "at-left" if left else "at-right"],
        elements=[filled(box(0 if left else _BOLD / 2, 0, _SIDE - _BOLD / 2, height), PAPER), *numbers],
        extra={"aria-hidden": "true", "font-family": FONT},
    )
    return str(drawing)


def row_place(chart: Chart, place: int) -> tuple[float, float]:
    """Where a row of a chart lies, from the lowest up: its upper edge and its height, as shares of the drawing's."""
    height = len(chart.rows) * CELL + _TOP + _FOOT
    return (_TOP + (len(chart.rows) - 1 - place) * CELL) / height, CELL / height


def _frame(chart: Chart) -> Iterator[svg.Element]:
    """The repeat, framed boldly, in front of everything."""
    frame = chart.frame or Frame(0, chart.columns)
    height = len(chart.rows) * CELL
    yield stroked(box(_SIDE, _TOP, chart.columns * CELL, height), INK, 1.2)
    if chart.frame:
        yield stroked(box(_SIDE + frame.start * CELL, _TOP, frame.width * CELL, height), INK, _BOLD)


def key_svg(symbol: Symbol, meaning: str, scale: float) -> str:
    """One sign of a key; `meaning` are the words beside it, which stand for it on paper."""
    return _key_cell(symbol.over, PAPER, moved(symbol.lines, 1, 1), moved(symbol.filled, 1, 1), meaning, scale)


def no_stitch_svg(scale: float) -> str:
    """The grey cell of a key."""
    return _key_cell(1, GREY, "", "", tr(NO_STITCH), scale)


def yarn_svg(colour: str, letter: str, name: str, scale: float) -> str:
    """A yarn of a key: its colour and its letter."""
    ink = PAPER if is_dark(colour) else INK
    letters = words(letter, 1 + CELL / 2, 14.6, 10 if len(letter) == 1 else 8, fill=ink)
    return _key_cell(1, colour, "", "", name, scale, letters)


def _key_cell(over: int, ground: str, lines: str, shapes: str, meaning: str, scale: float, *more: svg.Element) -> str:
    width = over * CELL
    elements: list[svg.Element] = [
        named(tr("Sign: {meaning}", meaning=meaning)),
        filled(box(1, 1, width, CELL), ground),
    ]
    elements.append(stroked(box(1, 1, width, CELL), GRID, 0.8))
    if lines:
        elements.append(stroked(lines, INK, _STROKE))
    if shapes:
        elements.append(filled(shapes, INK))
    drawing = svg.SVG(
        viewBox=svg.ViewBoxSpec(0, 0, width + 2, CELL + 2),
        width=round((width + 2) * scale),
        height=round((CELL + 2) * scale),
        elements=[*elements, *more],
        extra={"aria-hidden": "true", "font-family": FONT},
    )
    return str(drawing)
