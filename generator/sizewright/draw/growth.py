"""In: the values of a quantity, one a size. Out: a small picture of how it grows, beside the table of its numbers."""

from collections.abc import Sequence
from fractions import Fraction

import svg

from sizewright.draw.svg_parts import named

WIDTH, HEIGHT, _EDGE = 120, 36, 5
_DOT, _RING = 2.2, 4.2


def growth_svg(values: Sequence[Fraction], title: str, *, astray: int | None = None) -> str:
    """A dot for each size, smallest first, joined by a line; a ring is around the one that is out of line.

    `title` are the words that stand for it. It takes the colour of the words around it. Takes two values or more.
    """
    points = _points(values)
    line = " ".join(f"{x:g},{y:g}" for x, y in points)
    dots: list[svg.Element] = [svg.Circle(cx=x, cy=y, r=_DOT, fill="currentColor") for x, y in points]
    if astray is not None:
        x, y = points[astray]
        dots.append(svg.Circle(cx=x, cy=y, r=_RING, fill="none", stroke="currentColor", stroke_width=1.2))
    drawing = svg.SVG(
        viewBox=svg.ViewBoxSpec(0, 0, WIDTH, HEIGHT),
        width=WIDTH,
        height=HEIGHT,
        class_=["growth"],
        extra={"role": "img"},
        elements=[
            named(title),
            svg.Polyline(extra={"points": line}, fill="none", stroke="currentColor", stroke_width=1, opacity=0.6),
            *dots,
        ],
    )
    return str(drawing)


def _points(values: Sequence[Fraction]) -> list[tuple[float, float]]:
    """Sizes at even distances; the smallest value at the bottom, or all in the middle where none is larger."""
    least, span = min(values), max(values) - min(values)
    across, up = Fraction(WIDTH - 2 * _EDGE, max(1, len(values) - 1)), HEIGHT - 2 * _EDGE
    return [
        (
            _rounded(_EDGE + place * across),
            _rounded(HEIGHT - _EDGE - ((value - least) / span if span else Fraction(1, 2)) * up),
        )
        for place, value in enumerate(values)
    ]


def _rounded(number: Fraction) -> float:
    return round(float(number), 1)
