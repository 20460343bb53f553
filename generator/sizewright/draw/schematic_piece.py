"""In: a piece of a schematic, and the letters of its edges. Out: it drawn at any scale: outlines, lines and labels.

Its points are turned from exact cm into px once, at one px a cm; y grows downwards.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from sizewright.base.printing import Series, printed
from sizewright.draw.dimension_lines import Box, Placed, Wanted, placed
from sizewright.grade.graded import DrawnEdge, DrawnPiece
from sizewright.grade.schematic.shape import Dimension, Outline, Path, Point

Pair = tuple[float, float]
Steps = tuple[tuple[Pair, ...], ...]  # a path: where it begins, then its steps, lines of one point and curves of three
_AIR = 3.0  # px around everything


@dataclass(frozen=True, slots=True)
class Lettered:
    """A measurement of a piece, by its name, with the letter it has on the drawing and the sizes that are drawn."""

    letter: str
    piece: str
    edge: DrawnEdge
    places: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Trace:
    """The outline of one size: its place among the sizes, the closed line, and lines upon it, in px."""

    place: int
    closed: Steps
    lines: tuple[Steps, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """One piece drawn: the largest outline first, the lines for all sizes together and those of each by itself."""

    name: str
    box: Box
    traces: tuple[Trace, ...]
    together: tuple[Placed, ...]
    alone: Mapping[int, tuple[Placed, ...]]


@dataclass(frozen=True, slots=True)
class _Size:
    """One size of a piece at one px a cm: its box, its measurements, and what they come to by letter."""

    place: int
    outline: Outline
    box: Box
    measures: tuple[Wanted, ...]
    words: Mapping[str, tuple[Series, ...]]


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece made ready: its sizes, the largest first, and the words for all of them by letter."""

    name: str
    sizes: tuple[_Size, ...]
    words: Mapping[str, tuple[Series, ...]]
    box: Box

    def of_size(self, place: int) -> Iterator["Piece"]:
        """The piece as one size has it, where it has one."""
        for size in self.sizes:
            if size.place == place:
                yield Piece(self.name, (size,), size.words, size.box)

    def figure(self, scale: float, *, told: bool) -> Figure:
        """The piece at a scale in px a cm; `told` is whether the labels for all sizes have more than their letter."""
        box, together, alone = self.labelled(scale, told=told)
        traces = tuple(_trace(size.place, size.outline, scale) for size in self.sizes)
        return Figure(self.name, box, traces, together, alone)

    def labelled(self, scale: float, *, told: bool) -> tuple[Box, tuple[Placed, ...], Mapping[int, tuple[Placed, ...]]]:
        """The lines and labels at a scale, and the box around everything."""
        box = self.box.scaled(scale)
        together = placed(_wanted(self.sizes[0], self.words if told else {}, scale), box)
        several = self.sizes if len(self.sizes) > 1 else ()
        alone = {size.place: placed(_wanted(size, size.words, scale), size.box.scaled(scale)) for size in several}
        for group in (together, *alone.values()):
            for part in (part for one in group for part in one.boxes):
                box = box.with_(part)
        return Box(box.left - _AIR, box.upper - _AIR, box.right + _AIR, box.lower + _AIR), together, alone


def made_ready(piece: DrawnPiece, legend: Sequence[Lettered], *, metric_first: bool) -> Piece:
    """A piece that is drawn for one size at least; `legend` are its own measurements."""
    places = tuple(piece.outlines)
    letters = {one.edge.edge.name: one.letter for one in legend}
    words: dict[str, tuple[Series, ...]] = {}
    alone: dict[int, dict[str, tuple[Series, ...]]] = {place: {} for place in places}
    for one in legend:
        read = tuple(one.edge.values.values[place] for place in places)
        series = printed(read, one.edge.values.dimension, metric_first=metric_first)
        words[one.letter] = series
        for at, place in enumerate(places):
            alone[place][one.letter] = _alone(series, at)
    sizes = [_size(place, outline, letters, alone[place]) for place, outline in piece.outlines.items()]
    sizes.sort(key=lambda size: -size.box.area)
    box = sizes[0].box
    for size in sizes:
        box = box.with_(size.box)
    return Piece(piece.name, tuple(sizes), words, box)


def _alone(series: Sequence[Series], at: int) -> tuple[Series, ...]:
    """What one size measures."""
    return tuple(Series((one.values[at if len(one.values) > 1 else 0],), one.unit) for one in series)


def _size(place: int, outline: Outline, letters: Mapping[str, str], words: Mapping[str, tuple[Series, ...]]) -> _Size:
    points = [_px(point) for point in outline.closed.points]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    measures = tuple(_measure(one, letters) for one in outline.dimensions if one.edge in letters and one.length)
    return _Size(place, outline, Box(min(xs), min(ys), max(xs), max(ys)), measures, words)


def _measure(one: Dimension, letters: Mapping[str, str]) -> Wanted:
    return Wanted(one.side, _px(one.start), _px(one.end), letters[one.edge], ())


def _wanted(size: _Size, words: Mapping[str, tuple[Series, ...]], scale: float) -> tuple[Wanted, ...]:
    return tuple(
        Wanted(one.side, _scaled(one.start, scale), _scaled(one.end, scale), one.letter, words.get(one.letter, ()))
        for one in size.measures
    )


def _px(point: Point) -> Pair:
    return float(point[0]), -float(point[1])


def _scaled(point: Pair, scale: float) -> Pair:
    return point[0] * scale, point[1] * scale


def _trace(place: int, outline: Outline, scale: float) -> Trace:
    return Trace(place, _traced(outline.closed, scale), tuple(_traced(line, scale) for line in outline.lines))


def _traced(path: Path, scale: float) -> Steps:
    return tuple(tuple(_scaled(_px(point), scale) for point in step) for step in ((path.start,), *path.steps))
