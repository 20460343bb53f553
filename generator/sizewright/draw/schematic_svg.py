"""In: a piece of a schematic as a drawing. Out: it as SVG, what belongs to one size in the class of that size.

A style sheet shows the lines of one size in place of those of all; where it does not reach, as on paper, the colours
are those that stand here and all sizes are shown.
"""

from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal
from xml.sax.saxutils import escape

import svg

from sizewright.base.printing import Series, as_text
from sizewright.draw.dimension_lines import SIZE, Label, Line, Placed
from sizewright.draw.schematic_piece import Figure, Trace
from sizewright.draw.svg_parts import FONT, named
from sizewright.draw.text_size import ABOVE, UNDER

_INK, _FAINT, _TINT = "#1b1d22", "#767268", "#223d7d"
_SHADE = 0.06  # of the tint on each size: where outlines lie one in another, the smaller the darker


def figure_svg(figure: Figure, title: str) -> str:
    """One piece; `title` are the words that stand for it."""
    box = figure.box
    width, height = box.width, box.height
    drawing = svg.SVG(
        viewBox=svg.ViewBoxSpec(_n(box.left), _n(box.upper), _n(width), _n(height)),
        width=_n(width),
        height=_n(height),
        class_=["piece"],
        extra={"role": "img", "font-family": FONT, "font-size": f"{SIZE:g}"},
        elements=[
            named(title),
            *(_trace(trace) for trace in figure.traces),
            svg.G(class_=["zp"] if figure.alone else None, elements=_measured(figure.together)),
            *(
                svg.G(class_=["zo", f"z{place}"], display="none", elements=_measured(one))
                for place, one in sorted(figure.alone.items())
            ),
        ],
    )
    return str(drawing)


def _trace(trace: Trace) -> svg.G:
    """The outline of one size, and the lines upon it."""
    outline = svg.Path(
        d=_path(trace.closed, closed=True),
        class_=["outline"],
        fill=_TINT,
        fill_opacity=_SHADE,
        stroke=_INK,
        stroke_width=1.1,
        stroke_linejoin="round",
    )
    lines = [
        svg.Path(d=_path(line), class_=["fold"], fill="none", stroke=_INK, stroke_width=0.8, stroke_dasharray=[3, 2])
        for line in trace.lines
    ]
    return svg.G(class_=["z", f"z{trace.place}"], elements=[outline, *lines])


def _path(steps: Sequence[Sequence[tuple[float, float]]], *, closed: bool = False) -> list[svg.PathData]:
    ((x, y),), *rest = steps
    data: list[svg.PathData] = [svg.M(_n(x), _n(y))]
    for step in rest:
        numbers = [_n(number) for point in step for number in point]
        data.append(svg.L(*numbers) if len(step) == 1 else svg.C(*numbers))
    return [*data, svg.Z()] if closed else data


def _measured(placed: Iterable[Placed]) -> list[svg.Element]:
    """Lines with their ticks, one path; the thin lines that lead to them, another; then the labels."""
    every = tuple(placed)
    lines = [line for one in every for line in (one.line, *one.ticks)]
    leaders = [line for one in every for line in one.leaders]
    return [
        *_lines(leaders, "leader", _FAINT, 0.6, dashes=[1, 2]),
        *_lines(lines, "dimension", _INK, 0.9),
        *(_label(one.label) for one in every),
    ]


def _lines(
    lines: Sequence[Line], name: str, stroke: str, width: float, dashes: list[Decimal | float | int] | None = None
) -> list[svg.Element]:
    if not lines:
        return []
    data: list[svg.PathData] = [
        part for line in lines for part in (svg.M(_n(line.x1), _n(line.y1)), svg.L(_n(line.x2), _n(line.y2)))
    ]
    return [svg.Path(d=data, class_=[name], fill="none", stroke=stroke, stroke_width=width, stroke_dasharray=dashes)]


def _label(label: Label) -> svg.Text:
    base = (ABOVE - UNDER) / 2 * SIZE  # from the middle of a line of text down to its base line
    x, y = (label.x + base, label.y) if label.turned else (label.x, label.y + base)
    letter = svg.TSpan(text=escape(label.letter), font_weight="bold")
    turn: list[svg.Transform] | None = [svg.Rotate(-90, _n(x), _n(y))] if label.turned else None
    elements: list[svg.Element] = [letter, *_measure(label.series)]
    return svg.Text(x=_n(x), y=_n(y), transform=turn, text_anchor="middle", fill=_INK, elements=elements)


def _measure(series: Sequence[Series]) -> Iterator[svg.Element]:
    """What is measured; a style sheet may leave one unit system, with what stands between the two taken away."""
    for place, one in enumerate(series):
        yield svg.TSpan(text=" / " if place else "\u00a0", class_=["between"] if place else None)
        system = [one.system] if len(series) > 1 else None
        yield svg.TSpan(text=escape(as_text((one,))), class_=system)


def _n(number: float) -> float | int:
    """A number of a drawing: to a thousandth of a px, without idle zeros."""
    rounded = round(number, 3)
    return int(rounded) if rounded == int(rounded) else rounded
