"""The pieces of garments in schematics: body, front and back, sleeve, and the two yokes."""

from fractions import Fraction

from sizewright.base.language import later
from sizewright.grade.schematic.shape import (
    HALF,
    Dimension,
    Edge,
    Edges,
    Outline,
    Path,
    Point,
    Shape,
    Side,
    across,
    below,
    detail,
    level,
    nothing,
    path,
    same_as,
    symmetric,
)

ZERO = Fraction(0)
_THIRD, _SIXTH = Fraction(1, 3), Fraction(1, 6)


def _body(edges: Edges) -> Outline:
    hem, waist, chest = (edges[name] / 4 for name in ("hem", "waist", "chest"))
    waist_height, length, ribbing = edges["waist_height"], edges["length"], edges["ribbing"]
    right = _waisted(hem, (waist, waist_height), (chest, length))
    dimensions = (
        across("chest", Side.ABOVE, chest, length, HALF),
        across("waist", Side.BELOW, waist, waist_height, HALF),
        across("hem", Side.BELOW, hem, ZERO, HALF),
        Dimension("length", Side.LEFT, (-hem, ZERO), (-chest, length)),
        Dimension("waist_height", Side.RIGHT, (hem, ZERO), (waist, waist_height)),
        Dimension("ribbing", Side.RIGHT, (hem, ZERO), (hem, ribbing)),
    )
    at_ribbing = hem + (waist - hem) * ribbing / waist_height
    if ribbing > waist_height:
        at_ribbing = waist + (chest - waist) * (ribbing - waist_height) / (length - waist_height)
    return Outline(symmetric(right), level(at_ribbing, ribbing), dimensions)


def _waisted(hem: Fraction, waist: Point, chest: Point) -> Path:
    """The right side of a body, straight where the waist lies on the line from hem to chest."""
    (narrow, height), (wide, length) = waist, chest
    if (narrow - hem) * length == (wide - hem) * height:
        return path((hem, ZERO), chest)
    pull, rise = height / 3, (length - height) / 3
    return path(
        (hem, ZERO),
        ((hem + (narrow - hem) * _THIRD, pull), (narrow, height - pull), waist),
        ((narrow, height + rise), (wide - (wide - narrow) * _THIRD, length - rise), chest),
    )


def _sleeve(edges: Edges) -> Outline:
    """Folded as it is worn, or open where it has a cap: then it is knitted flat."""
    length, cap, ribbing = edges["length"], edges["cap"], edges["ribbing"]
    share = Fraction(1) if cap else HALF
    cuff, arm, top = (edges[name] * share / 2 for name in ("cuff", "upper_arm", "cap_top"))
    sides = path((cuff, ZERO), (cuff, ribbing), (arm, length))
    if cap:
        curve = ((arm - (arm - top) * HALF, length), (top + (arm - top) * _THIRD, length + cap), (top, length + cap))
        sides = path((cuff, ZERO), (cuff, ribbing), (arm, length), curve)
    dimensions = (
        across("cuff", Side.BELOW, cuff, ZERO, share),
        across("upper_arm", Side.ABOVE, arm, length, share),
        across("cap_top", Side.ABOVE, top, length + cap, share),
        Dimension("length", Side.LEFT, (-cuff, ZERO), (-arm, length)),
        Dimension("cap", Side.RIGHT, (arm, length), (top, length + cap)),
        Dimension("ribbing", Side.RIGHT, (cuff, ZERO), (cuff, ribbing)),
    )
    return Outline(symmetric(sides), level(cuff, ribbing), dimensions)


def _yoke(edges: Edges) -> Outline:
    """Both edges hang through a little, as those of a ring do that is laid flat."""
    neck, bottom, depth = edges["neck"] / 4, edges["bottom"] / 4, edges["depth"]
    hang = depth / 5
    right = path(
        (ZERO, -hang),
        ((bottom * HALF, -hang), (bottom, -hang * HALF), (bottom, ZERO)),
        (neck, depth),
        ((neck, depth - hang * HALF), (neck * HALF, depth - hang), (ZERO, depth - hang)),
    )
    dimensions = (
        across("neck", Side.ABOVE, neck, depth, HALF),
        across("bottom", Side.BELOW, bottom, ZERO, HALF),
        Dimension("depth", Side.LEFT, (-bottom, ZERO), (-neck, depth)),
    )
    return Outline(symmetric(right), (), dimensions)


def _raglan(edges: Edges) -> Outline:
    """Front and back between the raglan lines, half of a sleeve at either side; the neck is shared out alike."""
    neck, depth, chest, arm = edges["neck"] / 4, edges["depth"], edges["chest"] / 4, edges["upper_arm"] / 2
    bottom = chest + arm
    at_neck = neck * chest / bottom
    lines = tuple(path((turn * chest, ZERO), (turn * at_neck, depth)) for turn in (1, -1))
    dimensions = (
        across("neck", Side.ABOVE, neck, depth, HALF),
        across("chest", Side.BELOW, chest, ZERO, HALF),
        Dimension("upper_arm", Side.BELOW, (chest, ZERO), (bottom, ZERO), HALF),
        Dimension("depth", Side.LEFT, (-bottom, ZERO), (-neck, depth)),
    )
    return Outline(symmetric(path((bottom, ZERO), (neck, depth))), lines, dimensions)


def _narrowed(edges: Edges) -> Fraction:
    return edges["chest"] * HALF + edges["hem"] * HALF


GARMENTS = (
    Shape(
        "body",
        "A body knitted in the round up to the underarm. `body = body(chest = …, length = …, hem = …)`",
        (
            Edge("chest", later("Chest, around")),
            Edge("length", later("Length to underarm")),
            Edge("hem", later("Hem, around"), same_as("chest")),
            Edge("waist", later("Waist, around"), _narrowed),
            Edge("waist_height", later("Hem to waist"), same_as("length", HALF), needs="waist"),
            detail("ribbing", later("Ribbing")),
        ),
        (below("waist_height", "length"), below("ribbing", "length")),
        _body,
    ),
    Shape(
        "sleeve",
        "A sleeve; with a cap it is drawn open, as it is knitted flat. "
        "`sleeve = sleeve(cuff = …, upper_arm = …, length = …)`",
        (
            Edge("cuff", later("Cuff, around")),
            Edge("upper_arm", later("Upper arm, around")),
            Edge("length", later("Sleeve length to underarm")),
            Edge("cap", later("Depth of cap"), nothing),  # in one size it cannot be knitted flat, in another round
            Edge("cap_top", later("Top of cap"), same_as("upper_arm", _SIXTH), needs="cap"),
            detail("ribbing", later("Cuff ribbing")),
        ),
        (below("ribbing", "length"), below("cap_top", "upper_arm")),
        _sleeve,
    ),
    Shape(
        "yoke",
        "A yoke knitted in the round. `yoke = yoke(neck = …, depth = …, bottom = …)`",
        (
            Edge("neck", later("Neck, around")),
            Edge("depth", later("Yoke depth")),
            Edge("bottom", later("Yoke, around its lower edge")),
        ),
        (below("neck", "bottom"),),
        _yoke,
    ),
    Shape(
        "raglan",
        "A yoke with raglan lines. `yoke = raglan(neck = …, depth = …, chest = …, upper_arm = …)`",
        (
            Edge("neck", later("Neck, around")),
            Edge("depth", later("Raglan depth")),
            Edge("chest", later("Chest, around")),
            Edge("upper_arm", later("Upper arm, around")),
        ),
        (below("neck", "chest"),),
        _raglan,
    ),
)
