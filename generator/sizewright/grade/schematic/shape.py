"""What a shape of a schematic is: its edges, what must hold between them, and the outline they give, exact, in cm.

An outline lies flat and upright: x to the right, y up, the middle of its lower edge at 0, 0 (of half a front, its front
edge). What is knitted in the round lies folded, so it is half as wide as it measures around.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

Point = tuple[Fraction, Fraction]
Edges = Mapping[str, Fraction]

HALF = Fraction(1, 2)


class Side(StrEnum):
    """Where the line of a measurement stands: across above or below the outline, upright to its left or right."""

    ABOVE = "above"
    BELOW = "below"
    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True)
class Edge:
    """A measurement of a shape by its name in the source, and its label for readers.

    Without `usual` it must be given. With it, it may be left out: it is then not labelled, and drawn as `usual` says
    from the edges before it. One that may be nothing is a detail that some sizes, or all, may lack. One that `needs`
    another has no place without it.
    """

    name: str
    label: str
    usual: Callable[[Edges], Fraction] | None = None
    may_be_nothing: bool = False
    needs: str = ""


@dataclass(frozen=True, slots=True)
class Demand:
    """What must hold between edges for the outline to be one: in words that follow "must be", and whether it does."""

    edge: str
    words: str
    others: tuple[str, ...]
    holds: Callable[[Edges], bool]


@dataclass(frozen=True, slots=True)
class Path:
    """Where it begins, and its steps: one point is a straight line to it, three a curve (cubic Bézier) to the last."""

    start: Point
    steps: tuple[tuple[Point, ...], ...]

    @property
    def points(self) -> tuple[Point, ...]:
        """All its points; the path lies within the smallest box around them."""
        return (self.start, *(point for step in self.steps for point in step))


@dataclass(frozen=True, slots=True)
class Dimension:
    """The line of a measurement between two points, across or upright as its side has it.

    Its length is `share` of the edge: half of one that goes around.
    """

    edge: str
    side: Side
    start: Point
    end: Point
    share: Fraction = Fraction(1)

    @property
    def length(self) -> Fraction:
        """How long it is, in cm, as drawn."""
        axis = 0 if self.side in (Side.ABOVE, Side.BELOW) else 1
        return abs(self.end[axis] - self.start[axis])


@dataclass(frozen=True, slots=True)
class Outline:
    """A piece of one size: its closed outline, lines upon it such as the end of a ribbing, and its measurements."""

    closed: Path
    lines: tuple[Path, ...]
    dimensions: tuple[Dimension, ...]


@dataclass(frozen=True, slots=True)
class Shape:
    """A shape by the name it has in the source. `page` says what it is, and with which edges it is written."""

    name: str
    page: str
    edges: tuple[Edge, ...]
    demands: tuple[Demand, ...]
    outline: Callable[[Edges], Outline]

    @property
    def names(self) -> tuple[str, ...]:
        """The names of its edges, in their order."""
        return tuple(edge.name for edge in self.edges)

    def filled(self, given: Edges) -> Edges:
        """All edges of one size, those left out as they are usual."""
        edges: dict[str, Fraction] = {}
        for edge in self.edges:
            if edge.name in given:
                edges[edge.name] = given[edge.name]
            elif edge.usual is not None:
                edges[edge.name] = edge.usual(edges)
        return edges


# What many shapes have.


def nothing(_: Edges) -> Fraction:
    """The usual value of a detail: it is not there."""
    return Fraction(0)


def same_as(name: str, share: Fraction = Fraction(1)) -> Callable[[Edges], Fraction]:
    """The usual value of an edge that is like another, or a share of it."""
    return lambda edges: edges[name] * share


def detail(name: str, label: str, needs: str = "") -> Edge:
    """An edge that may be nothing."""
    return Edge(name, label, nothing, may_be_nothing=True, needs=needs)


def below(edge: str, other: str, share: Fraction = Fraction(1)) -> Demand:
    """One edge must be less than another, or than a share of it."""
    said = other.replace("_", " ") if share == 1 else f"{_SHARES[share]} {other.replace('_', ' ')}"
    return Demand(edge, f"less than {said}", (other,), lambda edges: edges[edge] < edges[other] * share)


def at_most(edge: str, other: str) -> Demand:
    """One edge must not be more than another."""
    words = f"no more than {other.replace('_', ' ')}"
    return Demand(edge, words, (other,), lambda edges: edges[edge] <= edges[other])


_SHARES = {HALF: "half of"}


def path(start: Point, *steps: Point | tuple[Point, ...]) -> Path:
    """A path; a step of one point may be written as the point."""
    return Path(start, tuple(map(_step, steps)))


def _step(step: Point | tuple[Point, ...]) -> tuple[Point, ...]:
    match step:
        case (Fraction() as x, Fraction() as y):
            return ((x, y),)
        case _:
            return step


def symmetric(right: Path) -> Path:
    """The whole of an outline whose right half is given, from its lowest point to its highest."""
    before = [right.start, *(step[-1] for step in right.steps)]
    back = [
        tuple(_mirrored(point) for point in (*reversed(step[:-1]), start))
        for start, step in zip(before, right.steps, strict=False)
    ]
    top = before[-1]
    across = () if top[0] == 0 else ((_mirrored(top),),)
    return Path(right.start, (*right.steps, *across, *reversed(back)))


def _mirrored(point: Point) -> Point:
    return -point[0], point[1]


def across(edge: str, side: Side, half: Fraction, y: Fraction, share: Fraction = Fraction(1)) -> Dimension:
    """A measurement across a symmetric piece, from `half` left of the middle to `half` right of it."""
    return Dimension(edge, side, (-half, y), (half, y), share)


def level(half: Fraction, y: Fraction) -> tuple[Path, ...]:
    """A line across a symmetric piece, such as the end of its ribbing; none at the very edge."""
    return (path((-half, y), (half, y)),) if y else ()
