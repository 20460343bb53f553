"""In: a stitch by its look. Out: the yarn of it as paths: what its loop shows on the right side of the cloth.

A stitch is `W` wide; x grows to the right, y downwards from the top of its row. Upper rows are drawn over lower ones,
as their loops come out of them. Coordinates are whole numbers, which keeps a picture small.
"""

from collections.abc import Sequence
from dataclasses import dataclass

W = 40  # units a stitch
_THICK = 10.4  # half of the yarn, in units, at its thickest

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Yarn:
    """Some lengths of yarn: their outlines, and the line of light along each."""

    body: str = ""
    light: str = ""

    def __add__(self, other: "Yarn") -> "Yarn":
        return Yarn(self.body + other.body, self.light + other.light)


@dataclass(frozen=True, slots=True)
class Glyph:
    """A stitch: the hole it leaves, the yarn that lies below and the yarn that lies over it."""

    yarn: Yarn
    over: Yarn = Yarn()
    hole: str = ""


def _path(points: Sequence[Point], end: str = "") -> str:
    """A path of curves: the first point, then three for each curve."""
    x, y = (round(value) for value in points[0])
    parts = [f"M{x} {y}c"]
    for place in range(1, len(points), 3):
        steps = [(round(px) - x, round(py) - y) for px, py in points[place : place + 3]]
        parts.append(" ".join(f"{dx} {dy}" for dx, dy in steps))
        x, y = x + steps[-1][0], y + steps[-1][1]
    return parts[0] + " ".join(parts[1:]).replace(" -", "-") + end


def leg(foot: Point, top: Point, bow: float = 0.0, thick: float = _THICK, blunt: float = 1.15) -> Yarn:
    """A leg of a loop: a drop that is pointed where it comes out of the stitch below.

    `bow` bends it to the right; `blunt` is how full it is near its foot.
    """
    (fx, fy), (tx, ty) = foot, top
    dx, dy = tx - fx, ty - fy
    length = max(1.0, (dx * dx + dy * dy) ** 0.5)
    nx, ny = -dy / length, dx / length

    def at(along: float, across: float) -> Point:
        bent = bow * 4 * along * (1 - along)
        return fx + dx * along + nx * across * thick + bent, fy + dy * along + ny * across * thick

    end, reach = at(1, 0), 1.55
    body = _path((foot, at(0.35, blunt), at(1, reach), end, at(1, -reach), at(0.35, -blunt), foot), "z")
    (x1, y1), (x2, y2) = at(0.26, 0), at(0.82, 0)
    return Yarn(body, f"M{x1:.0f} {y1:.0f}L{x2:.0f} {y2:.0f}")


def vee(x: float, y: float, height: float, foot: float, lean: float = 0.0) -> Yarn:
    """The two legs of a knit stitch whose top is at a place; its foot is so far below, moved sideways by `lean`."""
    foot, top, spread = y + foot, y - height * 0.1, W * 0.3
    left = leg((x + lean, foot), (x - spread, top), -2)
    return left + leg((x + lean, foot), (x + spread, top), 2)


def bump(x: float, y: float, height: float) -> Yarn:
    """The bump of a purl stitch: the head of the loop below lies in front of its feet."""
    low, rise, half, thin = y + height * 0.96, height * 1.06, W * 0.53, height * 0.16

    def at(across: float, level: float) -> Point:
        return x + half * across, level

    outer = (at(-0.92, low - rise), at(0.92, low - rise), at(1, low - thin))
    end = (at(1, low + thin), at(0.86, low + thin * 1.6), at(0.7, low + thin * 1.2))
    inner = (at(0.45, low - rise * 0.1), at(-0.45, low - rise * 0.1), at(-0.7, low + thin * 1.2))
    back = (at(-0.86, low + thin * 1.6), at(-1, low + thin), at(-1, low - thin))
    body = _path((at(-1, low - thin), *outer, *end, *inner, *back), "z")
    side, crest = low - rise * 0.28, low - rise * 0.6
    light = _path((at(-0.66, side), at(-0.36, crest), at(0.36, crest), at(0.66, side)))
    return Yarn(body, light)


def glyph(look: str, x: float, y: float, height: float, *, on_purl: bool = False) -> Glyph:  # noqa: PLR0911 -- one a look
    """The stitch of a look with the middle of its top at a place.

    A knit stitch `on_purl` comes out behind the bump of the stitch below, so that less of it is seen.
    """
    low, top = y + height * (1.12 if on_purl else 1.42), y - height * 0.05
    match look:
        case "p" | "I" | "S" | "v":
            return Glyph(bump(x, y, height))
        case "P":
            return Glyph(bump(x, y, height), leg((x - 6, low), (x + 4, y + height * 0.5), 0, 6))
        case "K" | "i":
            return Glyph(leg((x + 5, low), (x - W * 0.27, top), -4), leg((x - 5, low), (x + W * 0.27, top), 4))
        case "s":
            return Glyph(vee(x, y, height, height * 2.42))
        case "o":
            return _yarn_over(x, y, height)
        case "/" | "\\":
            way = 1 if look == "/" else -1
            under = leg((x + way * W * 0.55, low), (x + way * W * 0.2, y + height * 0.3), way * 2)
            return Glyph(under, vee(x, y, height, low - y, -way * W * 0.4))
        case "^":
            sides = (leg((x + way * W * 0.7, low), (x + way * W * 0.2, y + height * 0.35)) for way in (-1, 1))
            return Glyph(next(sides) + next(sides), vee(x, y, height, low - y))
        case "d" | "D":
            way = 1 if look == "d" else -1
            return Glyph(bump(x, y, height), leg((x - way * 9, low), (x + way * 7, y + height * 0.55), 0, 6))
        case _:
            return Glyph(vee(x, y, height, low - y))


def _yarn_over(x: float, y: float, height: float) -> Glyph:
    """A strand that lies over the needle: nothing below it, so that the next row hangs over a hole."""
    middle, across, down = y + height * 0.95, W * 0.34, height * 0.62
    hole = (
        f"M{x - across:.0f} {middle:.0f}a{across:.0f} {down:.0f} 0 1 0 {across * 2:.0f} 0"
        f"a{across:.0f} {down:.0f} 0 1 0 {-across * 2:.0f} 0z"
    )
    foot, top = y + height * 1.45, y + height * 0.02
    left = leg((x - W * 0.46, foot), (x - W * 0.3, top), -3, 5.5)
    return Glyph(left + leg((x + W * 0.46, foot), (x + W * 0.3, top), 3, 5.5), hole=hole)


def crossed(x: float, y: float, height: float, moved: float) -> Yarn:
    """A stitch of a cable: its top at a place, its foot so many units beside it, two rows further down."""
    foot, top, aside = y + height * 2.9, y - height * 0.1, W * 0.24
    left = leg((x + moved - 3, foot), (x - aside, top), 0, 11, 1.7)
    return left + leg((x + moved + 3, foot), (x + aside, top), 0, 11, 1.7)


def edge_loop(x: float, y: float) -> Yarn:
    """One loop of the edge where stitches are cast on or bound off."""
    return leg((x - W * 0.6, y + 5), (x + W * 0.42, y - 3), 0, 9)
