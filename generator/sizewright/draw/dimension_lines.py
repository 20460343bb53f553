"""In: the measurements of an outline, and its box on the drawing. Out: their lines and labels around it.

Lines upright stand left and right of the box, lines across above and below both, shorter ones nearer to it. On one
side a line and its label take a strip of their own wherever they would run into those of another. All in px, y down.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import assert_never

from sizewright.base.printing import Series, as_text
from sizewright.draw.text_size import HEIGHT, text_width
from sizewright.grade.schematic.shape import Side

SIZE = 13.0  # of the labels
_GAP = 9.0  # from the box to the first line
_TICK = 3.5  # either way from the end of a line
_LIFT = 4.5  # from a line to its label
_AIR = 4.0  # between labels, and from a label to the next line
_START = 3.0  # from the outline to the thin line that leads to the end of a measurement


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle: its left, upper, right and lower edge."""

    left: float
    upper: float
    right: float
    lower: float

    def with_(self, other: "Box") -> "Box":
        """The smallest box around both."""
        return Box(
            min(self.left, other.left),
            min(self.upper, other.upper),
            max(self.right, other.right),
            max(self.lower, other.lower),
        )

    def scaled(self, scale: float) -> "Box":
        """The same around 0, 0, larger or smaller."""
        return Box(self.left * scale, self.upper * scale, self.right * scale, self.lower * scale)

    @property
    def width(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From top to bottom."""
        return self.lower - self.upper

    @property
    def area(self) -> float:
        """How large it is."""
        return self.width * self.height


@dataclass(frozen=True, slots=True)
class Label:
    """A letter, and behind it what is measured, if anything; `turned` reads upwards. `x` and `y` are its middle."""

    letter: str
    series: tuple[Series, ...]
    x: float = 0.0
    y: float = 0.0
    turned: bool = False

    @property
    def text(self) -> str:
        """What is measured, in words."""
        return as_text(self.series)

    @property
    def width(self) -> float:
        """How long it is, in the direction it is read."""
        return text_width(f"{self.letter} {self.text}" if self.text else self.letter, SIZE)

    @property
    def box(self) -> Box:
        """The room it takes."""
        long, high = self.width / 2, HEIGHT * SIZE / 2
        across, down = (high, long) if self.turned else (long, high)
        return Box(self.x - across, self.y - down, self.x + across, self.y + down)


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    x1: float
    y1: float
    x2: float
    y2: float


@dataclass(frozen=True, slots=True)
class Wanted:
    """A measurement to be labelled: the side it stands on, its ends on the outline, its letter and what it measures."""

    side: Side
    start: tuple[float, float]
    end: tuple[float, float]
    letter: str
    series: tuple[Series, ...]


@dataclass(frozen=True, slots=True)
class Placed:
    """A measurement with its line, the ticks at its ends, thin lines that lead to them, and its label."""

    line: Line
    ticks: tuple[Line, Line]
    leaders: tuple[Line, ...]
    label: Label

    @property
    def boxes(self) -> tuple[Box, Box]:
        """The room that the line with its ticks takes, and that of the label."""
        lines = (self.line, *self.ticks)
        xs = [x for line in lines for x in (line.x1, line.x2)]
        ys = [y for line in lines for y in (line.y1, line.y2)]
        return Box(min(xs), min(ys), max(xs), max(ys)), self.label.box


def placed(wanted: Sequence[Wanted], box: Box) -> tuple[Placed, ...]:
    """The measurements in the order they are given, around a box that all their ends lie in."""
    found: list[Placed] = []
    for sides in ((Side.LEFT, Side.RIGHT), (Side.ABOVE, Side.BELOW)):
        before = tuple(found)
        for side in sides:
            found.extend(_on_side(side, [one for one in wanted if one.side is side], box, before))
    by_letter = {one.label.letter: one for one in found}
    return tuple(by_letter[one.letter] for one in wanted)


def _on_side(side: Side, wanted: Sequence[Wanted], box: Box, before: Sequence[Placed]) -> Iterator[Placed]:
    """The measurements of one side, shorter ones first; `before` are those of other sides."""
    upright = side in (Side.LEFT, Side.RIGHT)
    edge = {Side.LEFT: box.left, Side.RIGHT: box.right, Side.ABOVE: box.upper, Side.BELOW: box.lower}[side]
    outward = -1 if side in (Side.LEFT, Side.ABOVE) else 1
    stood = list(before)
    labels: list[Label] = []
    axis = 1 if upright else 0
    for one in sorted(wanted, key=lambda one: abs(one.end[axis] - one.start[axis])):
        at = edge + outward * _GAP
        low, high = _along(one, upright=upright)
        for box_before in (part for other in stood for part in other.boxes):
            from_, to, outer = _seen_from(side, box_before)
            if from_ < high + _AIR and low < to + _AIR:
                at = max(at * outward, outer * outward + _AIR + _TICK) * outward
        drawn = _drawn(one, at, outward, labels, upright=upright)
        stood.append(drawn)
        labels.append(drawn.label)
        yield drawn


def _seen_from(side: Side, box: Box) -> tuple[float, float, float]:
    """From where to where a box reaches along a side, and how far out."""
    match side:
        case Side.LEFT:
            return box.upper, box.lower, box.left
        case Side.RIGHT:
            return box.upper, box.lower, box.right
        case Side.ABOVE:
            return box.left, box.right, box.upper
        case Side.BELOW:
            return box.left, box.right, box.lower
    assert_never(side)


def _along(one: Wanted, *, upright: bool) -> tuple[float, float]:
    """From where to where a measurement and its label reach along their side."""
    axis = 1 if upright else 0
    low, high = sorted((one.start[axis], one.end[axis]))
    half = (HEIGHT * SIZE if upright and not one.series else Label(one.letter, one.series).width) / 2
    return min(low - _TICK, (low + high) / 2 - half), max(high + _TICK, (low + high) / 2 + half)


def _drawn(one: Wanted, at: float, outward: int, before: Sequence[Label], *, upright: bool) -> Placed:
    """The measurement with its line at `at`; leaders make room for the labels between it and the outline."""
    axis = 1 if upright else 0
    low, high = sorted((one.start[axis], one.end[axis]))
    label = Label(one.letter, one.series, turned=upright and bool(one.series))
    deep = label.width if upright and not label.turned else HEIGHT * SIZE
    middle, beside = (low + high) / 2, at + outward * (_LIFT + deep / 2)
    label = replace(label, x=beside, y=middle) if upright else replace(label, x=middle, y=beside)
    line = _line(upright, at, low, at, high)
    ticks = _line(upright, at - _TICK, low, at + _TICK, low), _line(upright, at - _TICK, high, at + _TICK, high)
    leaders = tuple(part for point in (one.start, one.end) for part in _leaders(point, at, outward, before, upright))
    return Placed(line, ticks, leaders, label)


def _leaders(
    point: tuple[float, float],
    at: float,
    outward: int,
    labels: Sequence[Label],
    upright: bool,  # noqa: FBT001 (the module's own)
) -> Iterator[Line]:
    """From a point of the outline out to the line of its measurement, broken where a label stands in the way."""
    axis = 0 if upright else 1
    along = point[1 - axis]
    first, last = sorted((point[axis] + outward * _START, at - outward * _TICK))
    if (at - point[axis]) * outward < _START + _TICK:
        return
    gaps = []
    for box in (label.box for label in labels):
        across = (box.upper, box.lower) if upright else (box.left, box.right)
        if across[0] - _AIR / 2 < along < across[1] + _AIR / 2:
            gaps.append((box.left, box.right) if upright else (box.upper, box.lower))
    for low, high in sorted(gaps):
        if low - _AIR / 2 > first:
            yield _line(upright, first, along, low - _AIR / 2, along)
        first = max(first, high + _AIR / 2)
    if first < last:
        yield _line(upright, first, along, last, along)


def _line(upright: bool, at: float, along: float, to_at: float, to_along: float) -> Line:  # noqa: FBT001 (the module's own)
    """A line told along a side and away from it: the two are x and y, in an order that the side decides."""
    return Line(at, along, to_at, to_along) if upright else Line(along, at, to_along, to_at)
