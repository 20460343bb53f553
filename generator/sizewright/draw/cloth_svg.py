"""In: a cloth and the colours of its yarns. Out: a picture of it as it comes off the needles.

Where the piece has an edge there is paper beyond it; where it goes on, so does the picture, up to its frame.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil, floor

import svg

from sizewright.draw.cloth_layout import laid_out
from sizewright.draw.glyphs import W, Yarn, edge_loop
from sizewright.draw.stretches import Stretches, Token, yarn_paths
from sizewright.draw.svg_parts import PAPER, box, filled, named
from sizewright.draw.yarn_colours import shaded
from sizewright.read.notation.cables import Crossing
from sizewright.work.cloth import Cloth, ClothRow

LARGEST = 60_000  # letters; a picture that would be longer shows less of the cloth
_DEEP = 0.7  # how dark it is between stitches
_MARGIN = 44  # units of paper beyond an edge
_CROPPED = 6  # units off the outermost stitches where the cloth goes on
_PURLED = "pPdDIvS"


@dataclass(frozen=True, slots=True)
class Extent:
    """How many stitches and rows a picture shows at most."""

    stitches: int
    rows: int


def cloth_svg(
    cloth: Cloth, colours: Mapping[str, str], *, ratio: float, name: str, swatch: bool, extent: Extent
) -> str:
    """The picture; `ratio` is the height of a row to the width of a stitch, `colours` has #rrggbb for every yarn.

    A `swatch` goes on beyond all edges of its picture.
    """
    shown, rows = "", extent.rows
    while not shown or (len(shown) > LARGEST and rows > 1):
        part = cloth if rows >= len(cloth.rows) else replace(cloth, rows=cloth.rows[:rows], finished=False)
        shown = _Picture(part, colours, ratio, extent.stitches, swatch=swatch).drawn(name)
        rows = len(part.rows) * 4 // 5
    return shown


class _Picture:
    def __init__(self, cloth: Cloth, colours: Mapping[str, str], ratio: float, widest: int, *, swatch: bool) -> None:
        self._cloth = cloth
        self._colours = colours
        self._ground = next(iter(colours.values()))
        self._height = W * ratio
        self._layout = laid_out(cloth, widest, swatch=swatch)
        self._downs = [round(lift * W / ratio) for lift in self._layout.lifts]

    def drawn(self, name: str) -> str:
        stretches = Stretches(self._height, "s")
        rows = [self._row(number, stretches) for number in range(len(self._cloth.rows))]
        view = self._view()
        drawing = svg.SVG(
            viewBox=svg.ViewBoxSpec(*view),
            width=round(view[2] / 2),
            height=round(view[3] / 2),
            extra={"role": "img"},
            elements=[
                named(name),
                filled(box(*view), PAPER),
                filled(self._shape(), shaded(self._ground, _DEEP)),
                svg.Defs(elements=stretches.drawn),
                *self._edges(),
                *rows,
            ],
        )
        return str(drawing)

    @property
    def _total(self) -> float:
        return len(self._cloth.rows) * self._height

    def _top(self, number: int) -> float:
        return self._total - (number + 1) * self._height

    def _view(self) -> tuple[int, int, int, int]:
        """What is shown: up to the frame where the cloth goes on, with a margin where it ends."""
        layout, reach = self._layout, max(map(abs, self._downs), default=0)
        left, right, below, above = layout.goes_on
        x0 = layout.left * W + (_CROPPED if left else -_MARGIN)
        x1 = layout.right * W - (_CROPPED if right else -_MARGIN)
        y0 = reach if above else -reach - _MARGIN
        y1 = self._total + (-reach if below else reach + _MARGIN)
        return floor(x0), ceil(y0), ceil(x1 - x0), max(1, floor(y1 - y0))

    def _shape(self) -> str:
        """The ground between the stitches, a little within the edges of every row."""
        if all(self._layout.goes_on):
            return box(*self._view())
        shapes = []
        for number, (start, row) in enumerate(zip(self._layout.starts, self._cloth.rows, strict=True)):
            y = self._top(number)
            if self._downs:
                points = [((start + place + 0.5) * W, y + down) for place, down in enumerate(self._downs)]
                upper = " ".join(f"{x:.0f} {level:.0f}" for x, level in points)
                lower = " ".join(f"{x:.0f} {level + self._height:.0f}" for x, level in reversed(points))
                shapes.append(f"M{upper} {lower}z")
            else:
                shapes.append(box(round(start * W + 4), round(y), len(row.looks) * W - 8, ceil(self._height)))
        return "".join(shapes)

    def _row(self, number: int, stretches: Stretches) -> svg.Element:
        row, start = self._cloth.rows[number], self._layout.starts[number]
        below = self._cloth.rows[number - 1].looks if number else ""
        tokens = self._tokens(row, below)
        first = max(0, floor(self._layout.left - start) - 1)
        return stretches.shown(tokens[first:], self._downs[first:], (start + first) * W, self._top(number))

    def _tokens(self, row: ClothRow, below: str) -> list[Token]:
        tokens = []
        for look, name, stands in zip(row.looks, row.colours, row.stands_on, strict=True):
            under = below[round(stands)] if look in "kKi" and 0 <= round(stands) < len(below) else ""
            colour = self._colours.get(name, self._ground)
            tokens.append(Token(look, colour, on_purl=under != "" and under in _PURLED))
        for cabled in row.crossings:
            for place, (moved, in_front) in enumerate(_moves(cabled.crossing), start=cabled.start):
                tokens[place] = replace(tokens[place], moved=moved * W, in_front=in_front)
        return tokens

    def _edges(self) -> Iterator[svg.Element]:
        """The loops of the cast-on edge, and of the bound-off one."""
        _, _, below, above = self._layout.goes_on
        rows, starts = self._cloth.rows, self._layout.starts
        yarn = Yarn()
        if not below and rows:
            yarn += self._loops(starts[0], len(rows[0].looks), self._total + self._height * 0.3)
        if not above and rows:
            yarn += self._loops(starts[-1], len(rows[-1].looks), -self._height * 0.12)
        if yarn.body:
            yield from yarn_paths(yarn, self._colours.get(rows[0].colours[0], self._ground))

    def _loops(self, start: float, count: int, y: float) -> Yarn:
        yarn = Yarn()
        for place in range(max(0, floor(self._layout.left - start) - 1), count):
            down = self._downs[place] if self._downs else 0
            yarn += edge_loop((start + place + 0.5) * W, y + down)
        return yarn


def _moves(crossing: Crossing) -> Sequence[tuple[int, bool]]:
    """For each stitch of a cable, from the left: how far to the right its foot lies, and whether it lies in front."""
    front, middle, back = len(crossing.front), len(crossing.middle), len(crossing.back)
    in_front, behind, between = (
        [(back + middle, True)] * front,
        [(-front - middle, False)] * back,
        [(0, False)] * middle,
    )
    if crossing.to_left:
        return [*in_front, *between, *behind]
    return [*((-moved, over) for moved, over in behind), *between, *((-moved, over) for moved, over in in_front)]
