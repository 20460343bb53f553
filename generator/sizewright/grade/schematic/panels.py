"""The pieces of a body knitted flat in schematics: front and back, and the two fronts of a cardigan."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

from sizewright.base.language import later
from sizewright.grade.schematic.shape import (
    HALF,
    Demand,
    Dimension,
    Edge,
    Edges,
    Outline,
    Path,
    Point,
    Shape,
    Side,
    across,
    at_most,
    below,
    detail,
    level,
    path,
    same_as,
    symmetric,
)

_ZERO, _THIRD = Fraction(0), Fraction(1, 3)
_OTHER = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT}


def _round(edges: Edges, scale: Fraction) -> tuple[Point, ...]:
    """The curve of a round neck from the shoulder to its lowest point, in the middle, at x = 0."""
    neck, length, deep = edges["neck"] * scale, edges["length"], edges["neck_depth"]
    return ((neck, length - deep * HALF), (neck * HALF, length - deep), (_ZERO, length - deep))


def _pointed(edges: Edges, _: Fraction) -> tuple[Point, ...]:
    """The straight edge of a neck that comes to a point."""
    return ((_ZERO, edges["length"] - edges["neck_depth"]),)


Neck = Callable[[Edges, Fraction], tuple[Point, ...]]


def _from_the_middle(edges: Edges, scale: Fraction, neck: Neck) -> Path:
    """The right half of a piece, from its middle at x = 0; `scale` is what of its edges that half is."""
    hem, width, shoulders = (edges[name] * scale for name in ("hem", "width", "shoulders"))
    armhole, tip = edges["armhole"], edges["length"] - edges["slope"]
    underarm, side = tip - armhole, width - shoulders
    return path(
        (hem, _ZERO),
        (width, underarm),
        (
            (shoulders + side * HALF, underarm),
            (shoulders, underarm + armhole / 12),
            (shoulders, underarm + armhole / 3),
        ),
        (shoulders, tip),
        (edges["neck"] * scale, edges["length"]),
        neck(edges, scale),
    )


def _upright(edges: Edges, scale: Fraction) -> tuple[Dimension, ...]:
    """The measurements beside a piece."""
    hem, width, shoulders, neck = (edges[name] * scale for name in ("hem", "width", "shoulders", "neck"))
    length, deep, tip = edges["length"], edges["neck_depth"], edges["length"] - edges["slope"]
    edge = -hem if scale == HALF else _ZERO
    top = -neck if scale == HALF else neck
    return (
        Dimension("length", Side.LEFT, (edge, _ZERO), (top, length)),
        Dimension("neck_depth", Side.LEFT, (_ZERO, length - deep), (top, length)),
        Dimension("armhole", Side.RIGHT, (width, tip - edges["armhole"]), (shoulders, tip)),
        Dimension("slope", Side.RIGHT, (shoulders, tip), (neck, length)),
        Dimension("ribbing", Side.RIGHT, (hem, _ZERO), (hem, edges["ribbing"])),
    )


def _at_ribbing(edges: Edges) -> Fraction:
    """How wide a piece is at the end of its ribbing."""
    underarm = edges["length"] - edges["slope"] - edges["armhole"]
    return edges["hem"] + (edges["width"] - edges["hem"]) * edges["ribbing"] / underarm


def _whole(neck: Neck) -> Callable[[Edges], Outline]:
    """A front or back."""

    def outline(edges: Edges) -> Outline:
        half = {name: edges[name] / 2 for name in ("hem", "width", "shoulders", "neck")}
        tip = edges["length"] - edges["slope"]
        dimensions = (
            across("width", Side.BELOW, half["width"], tip - edges["armhole"]),
            across("hem", Side.BELOW, half["hem"], _ZERO),
            across("neck", Side.ABOVE, half["neck"], edges["length"]),
            across("shoulders", Side.ABOVE, half["shoulders"], tip),
            *_upright(edges, HALF),
        )
        lines = level(_at_ribbing(edges) / 2, edges["ribbing"])
        return Outline(symmetric(_from_the_middle(edges, HALF, neck)), lines, dimensions)

    return outline


def _half(neck: Neck, *, turned: bool) -> Callable[[Edges], Outline]:
    """A left front seen from outside, its front edge at the left, at x = 0; a right one is `turned`."""

    def outline(edges: Edges) -> Outline:
        one, tip = Fraction(1), edges["length"] - edges["slope"]
        widths = (
            ("width", Side.BELOW, tip - edges["armhole"]),
            ("hem", Side.BELOW, _ZERO),
            ("neck", Side.ABOVE, edges["length"]),
            ("shoulders", Side.ABOVE, tip),
        )
        flat = (Dimension(name, side, (_ZERO, y), (edges[name], y)) for name, side, y in widths)
        right = _from_the_middle(edges, one, neck)
        closed = path((_ZERO, _ZERO), right.start, *right.steps)
        ribbing = edges["ribbing"]
        lines = (path((_ZERO, ribbing), (_at_ribbing(edges), ribbing)),) if ribbing else ()
        found = Outline(closed, lines, (*flat, *_upright(edges, one)))
        return _turned(found) if turned else found

    return outline


def _turned(outline: Outline) -> Outline:
    """With left and right exchanged."""

    def point(one: Point) -> Point:
        return -one[0], one[1]

    def line(one: Path) -> Path:
        return Path(point(one.start), tuple(tuple(map(point, step)) for step in one.steps))

    dimensions = tuple(
        replace(one, side=_OTHER.get(one.side, one.side), start=point(one.start), end=point(one.end))
        for one in outline.dimensions
    )
    return Outline(line(outline.closed), tuple(map(line, outline.lines)), dimensions)


_DEMANDS = (
    at_most("shoulders", "width"),
    below("neck", "shoulders"),
    below("neck_depth", "length"),
    Demand(
        "armhole",
        "less than length without slope",
        ("length", "slope"),
        lambda edges: edges["armhole"] + edges["slope"] < edges["length"],
    ),
    Demand(
        "ribbing",
        "less than length below the armhole",
        ("length", "armhole"),
        lambda edges: edges["ribbing"] + edges["armhole"] + edges["slope"] < edges["length"],
    ),
)


def _shape(name: str, page: str, outline: Callable[[Edges], Outline], *, deep: bool = True) -> Shape:
    depth = Edge("neck_depth", later("Neck depth")) if deep else detail("neck_depth", later("Neck depth"))
    edges = (
        Edge("width", later("Width")),
        Edge("length", later("Length to shoulder")),
        Edge("neck", later("Neck width")),
        depth,
        Edge("armhole", later("Armhole depth"), same_as("length", _THIRD)),
        Edge("shoulders", later("Width at shoulders"), same_as("width"), needs="armhole"),
        detail("slope", later("Shoulder slope")),
        Edge("hem", later("Width of lower edge"), same_as("width")),
        detail("ribbing", later("Ribbing")),
    )
    return Shape(name, page, edges, _DEMANDS, outline)


def _front(side: str) -> str:
    return (
        f"The {side} front of a cardigan, as it is worn: `neck` and `shoulders` are its own, from its front edge; the "
        f"neck is {{neck}}. `{{name}} = {{name}}(width = …, length = …, neck = …, neck_depth = …, armhole = …)`"
    )


PANELS = (
    _shape(
        "front",
        "A front knitted flat. `front = front(width = …, length = …, neck = …, neck_depth = …, armhole = …)`",
        _whole(_round),
    ),
    _shape(
        "v_front",
        "A front whose neck comes to a point. "
        "`front = v_front(width = …, length = …, neck = …, neck_depth = …, armhole = …)`",
        _whole(_pointed),
    ),
    _shape(
        "back",
        "A back knitted flat. `back = back(width = …, length = …, neck = …, armhole = …)`",
        _whole(_round),
        deep=False,
    ),
    *(
        _shape(f"{kind}{side}_front", _front(side).format(neck=words, name=f"{kind}{side}_front"), outline)
        for kind, words, neck in (("", "round", _round), ("v_", "straight, as one that comes to a point", _pointed))
        for side, outline in (("left", _half(neck, turned=False)), ("right", _half(neck, turned=True)))
    ),
)
