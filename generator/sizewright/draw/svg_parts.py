"""In: words and shapes. Out: the parts of a drawing that every drawing is made of, safe to stand in a page."""

from dataclasses import dataclass
from typing import ClassVar
from xml.sax.saxutils import escape

import svg

# The renderer of PDFs sees no style of the page inside a drawing, so each drawing names its own.
FONT = "'Atkinson Hyperlegible','DejaVu Sans',sans-serif"
INK, PAPER, GRID, GREY = "#1b1b1b", "#ffffff", "#8a8a8a", "#c9c9c9"


@dataclass
class Shape(svg.PathData):
    """Path data that is written already."""

    command: ClassVar[str] = ""
    data: str

    def __str__(self) -> str:
        return self.data


def filled(data: str, fill: str) -> svg.Path:
    """A path in one colour."""
    return svg.Path(d=[Shape(data)], fill=fill)


def stroked(data: str, stroke: str, width: float) -> svg.Path:
    """Lines of one width and colour, with round ends."""
    return svg.Path(
        d=[Shape(data)],
        fill="none",
        stroke=stroke,
        stroke_width=width,
        stroke_linecap="round",
        stroke_linejoin="round",
    )


def box(x: float, y: float, width: float, height: float) -> str:
    """The path of a rectangle."""
    return f"M{x:g} {y:g}h{width:g}v{height:g}h{-width:g}z"


def named(text: str) -> svg.Title:
    """The name of a drawing, the words that stand for it."""
    return svg.Title(text=escape(text))


def described(text: str) -> svg.Desc:
    """More words for a drawing."""
    return svg.Desc(text=escape(text))


def words(text: str, x: str | float, y: float, size: float, *, anchor: str = "middle", fill: str = INK) -> svg.Text:
    """Words at a place; `x` may be a list of places, one for each letter."""
    places = {"x": x if isinstance(x, str) else f"{x:g}", "y": f"{y:g}", "text-anchor": anchor}
    return svg.Text(text=escape(text), fill=fill, font_size=size, extra=places)


def is_dark(colour: str) -> bool:
    """Whether light signs are easier to see on a colour (#rrggbb) than dark ones: the luminance of WCAG 2.2."""
    red, green, blue = (int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5))
    parts = [value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4 for value in (red, green, blue)]
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2] < 0.179
