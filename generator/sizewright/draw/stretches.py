"""In: the stitches of a row as they look. Out: the row drawn; a stretch that comes again is drawn only once."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import svg

from sizewright.draw.glyphs import Glyph, W, Yarn, crossed, glyph
from sizewright.draw.svg_parts import Shape, filled
from sizewright.draw.yarn_colours import lit, shaded

_EDGE, _PLY, _LIGHT, _HOLE = 0.52, 0.16, 0.32, 1.0  # how dark outlines, twist and holes are, and how bright the light
_LONGEST = 24  # stitches of a stretch that is drawn once
# What it costs, in letters, to show a stretch again, and to draw one stitch. Shown again it is written in 26, but a
# browser makes all of its shapes anew: many short stretches are a picture of thousands of shapes.
_USE, _STITCH = 800, 230


@dataclass(frozen=True, slots=True)
class Token:
    """What one stitch looks like, wherever it stands.

    Its look, its colour (#rrggbb), whether it comes out of a purl; for one of a cable how many units its foot lies
    beside it, and whether it crosses in front.
    """

    look: str
    colour: str
    on_purl: bool = False
    moved: int = 0
    in_front: bool = False


@dataclass(slots=True)
class Stretches:
    """The stretches drawn so far, in rows so many units high; `prefix` begins their ids."""

    height: float
    prefix: str
    drawn: list[svg.Element] = field(default_factory=list)
    _ids: dict[tuple[Token, ...], str] = field(default_factory=dict)
    _rows: dict[tuple[Token, ...], str] = field(default_factory=dict)

    def shown(self, tokens: Sequence[Token], downs: Sequence[int], x: float, y: float) -> svg.Element:
        """A row, its first stitch beginning at a place; `downs` is how many units each stitch is let down, or empty."""
        row = tuple(tokens)
        if row not in self._rows:
            self._rows[row] = self._kept(list(self._row(row, downs)))
        return svg.Use(href=f"#{self._rows[row]}", x=round(x), y=round(y))

    def _kept(self, parts: list[svg.Element]) -> str:
        ident = f"{self.prefix}{len(self.drawn)}"
        self.drawn.append(svg.G(id=ident, elements=parts))
        return ident

    def _row(self, tokens: Sequence[Token], downs: Sequence[int]) -> Iterator[svg.Element]:
        at = 0
        while at < len(tokens):
            end = at + 1
            while downs and end < len(tokens) and downs[end] == downs[at]:
                end += 1
            length, times = self._cheapest(tokens[at : end if downs else len(tokens)])
            ident = self._id(tuple(tokens[at : at + length]))
            for _ in range(times):
                yield svg.Use(href=f"#{ident}", x=at * W or None, y=downs[at] or None if downs else None)
                at += length

    def _cheapest(self, tokens: Sequence[Token]) -> tuple[int, int]:
        """The length of the stretch these begin with, and how often it comes, that costs least for each stitch.

        A new stretch has to come twice at once, or be a single stitch, which every row can use.
        """
        best, cheapest = (1, 1), float("inf")
        for length in range(1, min(_LONGEST, len(tokens)) + 1):
            stretch = tuple(tokens[:length])
            times = 1
            while tuple(tokens[times * length : (times + 1) * length]) == stretch:
                times += 1
            known = stretch in self._ids
            cost = (0 if known else _STITCH * length) + _USE * times
            if (known or times > 1 or length == 1) and cost / (length * times) < cheapest:
                best, cheapest = (length, times), cost / (length * times)
        return best

    def _id(self, stretch: tuple[Token, ...]) -> str:
        if stretch not in self._ids:
            self._ids[stretch] = self._kept(list(self._parts(stretch)))
        return self._ids[stretch]

    def _parts(self, stretch: Sequence[Token]) -> Iterator[svg.Element]:
        """Holes first, then the yarn that lies below, then what lies over it; each in one path a colour."""
        holes: dict[str, str] = {}
        below: dict[str, Yarn] = {}
        over: dict[str, Yarn] = {}
        for place, token in enumerate(stretch):
            shape = self._glyph(token, (place + 0.5) * W)
            holes[token.colour] = holes.get(token.colour, "") + shape.hole
            below[token.colour] = below.get(token.colour, Yarn()) + shape.yarn
            over[token.colour] = over.get(token.colour, Yarn()) + shape.over
        for colour, hole in holes.items():
            if hole:
                yield filled(hole, shaded(colour, _HOLE))
        for layer in (below, over):
            for colour, yarn in layer.items():
                if yarn.body:
                    yield from yarn_paths(yarn, colour)

    def _glyph(self, token: Token, x: float) -> Glyph:
        if not token.moved:
            return glyph(token.look, x, 0, self.height, on_purl=token.on_purl)
        yarn = crossed(x, 0, self.height, token.moved)
        return Glyph(Yarn(), yarn) if token.in_front else Glyph(yarn)


def yarn_paths(yarn: Yarn, colour: str) -> Iterator[svg.Element]:
    """Yarn in a colour: its body with a dark edge, the twist of its plies, and the light on it."""
    light: list[svg.PathData] = [Shape(yarn.light)]
    yield svg.Path(d=[Shape(yarn.body)], fill=colour, stroke=shaded(colour, _EDGE), stroke_width=2.2)
    yield svg.Path(d=light, stroke=shaded(colour, _PLY), stroke_width=10, fill="none", stroke_dasharray=[1.8, 4.2])
    yield svg.Path(d=light, stroke=lit(colour, _LIGHT), stroke_width=3, stroke_linecap="round", fill="none")
