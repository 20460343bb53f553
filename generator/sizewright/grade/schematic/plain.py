"""The plain shapes of schematics: rectangle, triangle, circle and tube."""

from fractions import Fraction

from sizewright.base.language import later
from sizewright.grade.schematic.shape import (
    HALF,
    Dimension,
    Edge,
    Edges,
    Outline,
    Shape,
    Side,
    across,
    below,
    detail,
    level,
    path,
    same_as,
    symmetric,
)

ZERO = Fraction(0)
# How far the two middle points of a curve are drawn out to make it a quarter of a circle, to 3 parts in 10 000.
_ROUND = Fraction(5523, 10000)


def _rectangle(edges: Edges) -> Outline:
    half, length = edges["width"] / 2, edges["length"]
    outline = symmetric(path((half, ZERO), (half, length)))
    dimensions = (
        across("width", Side.BELOW, half, ZERO),
        Dimension("length", Side.LEFT, (-half, ZERO), (-half, length)),
    )
    return Outline(outline, (), dimensions)


def _triangle(edges: Edges) -> Outline:
    half, depth = edges["width"] / 2, edges["depth"]
    dimensions = (
        across("width", Side.ABOVE, half, depth),
        Dimension("depth", Side.LEFT, (ZERO, ZERO), (-half, depth)),
    )
    return Outline(path((ZERO, ZERO), (half, depth), (-half, depth)), (), dimensions)


def _circle(edges: Edges) -> Outline:
    across_it = edges["across"]
    half, pull = across_it / 2, across_it / 2 * _ROUND
    right = path(
        (ZERO, ZERO),
        ((pull, ZERO), (half, half - pull), (half, half)),
        ((half, half + pull), (pull, across_it), (ZERO, across_it)),
    )
    return Outline(symmetric(right), (), (across("across", Side.BELOW, half, half),))


def _tube(edges: Edges) -> Outline:
    lower, upper, length, ribbing = edges["hem"] / 4, edges["around"] / 4, edges["length"], edges["ribbing"]
    dimensions = (
        across("around", Side.ABOVE, upper, length, HALF),
        across("hem", Side.BELOW, lower, ZERO, HALF),
        Dimension("length", Side.LEFT, (-lower, ZERO), (-upper, length)),
        Dimension("ribbing", Side.RIGHT, (lower, ZERO), (lower, ribbing)),
    )
    at_ribbing = lower + (upper - lower) * ribbing / length
    return Outline(symmetric(path((lower, ZERO), (upper, length))), level(at_ribbing, ribbing), dimensions)


PLAIN = (
    Shape(
        "rectangle",
        "A scarf, blanket, pocket or any other rectangle. `scarf = rectangle(width = …, length = …)`",
        (Edge("width", later("Width")), Edge("length", later("Length"))),
        (),
        _rectangle,
    ),
    Shape(
        "triangle",
        "A shawl with three corners, its longest edge above. `shawl = triangle(width = …, depth = …)`",
        (Edge("width", later("Width")), Edge("depth", later("Depth"))),
        (),
        _triangle,
    ),
    Shape(
        "circle",
        "A round blanket or cushion. `blanket = circle(across = …)`",
        (Edge("across", later("Across")),),
        (),
        _circle,
    ),
    Shape(
        "tube",
        "A cowl, leg warmer or wristlet, knitted in the round. `cowl = tube(around = …, length = …)`",
        (
            Edge("around", later("Around")),
            Edge("length", later("Length")),
            Edge("hem", later("Lower edge, around"), same_as("around")),
            detail("ribbing", later("Ribbing")),
        ),
        (below("ribbing", "length"),),
        _tube,
    ),
)
