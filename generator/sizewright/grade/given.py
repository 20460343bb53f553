"""In: a header. Out: the names it gives to formulas: the body measurements of the sizes, and the gauges."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sizewright.base.place import Span
from sizewright.grade.graded import Named, Values
from sizewright.grade.worth import spread
from sizewright.read.pattern import Gauge, Measure, Pattern, Size


@dataclass(frozen=True, slots=True)
class Given:
    """The names every size has, and those that some sizes lack, with the place of the first size that does."""

    names: tuple[Named, ...]
    lacking: Mapping[str, tuple[Span, tuple[str, ...]]]

    def place(self, name: str) -> Span | None:
        """Where a name is given, or None."""
        return next((named.span for named in self.names if named.name == name), None)


def given_names(pattern: Pattern, count: int) -> Given:
    """The names of a header; `count` is how many values each has."""
    sizes = pattern.header.sizes
    names = list(dict.fromkeys(name for size in sizes for name in size.measurements))
    lacking: dict[str, tuple[Span, tuple[str, ...]]] = {}
    given: list[Named] = []
    for name in names:
        without = [size for size in sizes if name not in size.measurements or not _alike(sizes, name)]
        if without:
            lacking[name] = (without[0].span, tuple(size.name for size in without))
        else:
            given.append(_measurement(name, sizes))
    given.extend(one for gauge in pattern.header.gauges for one in _gauge(gauge, count))
    return Given(tuple(given), lacking)


def _alike(sizes: tuple[Size, ...], name: str) -> bool:
    """Whether all sizes that have a measurement measure the same kind of thing by it."""
    return len({size.measurements[name].quantity.dimension for size in sizes if name in size.measurements}) == 1


def _measurement(name: str, sizes: tuple[Size, ...]) -> Named:
    measures = [size.measurements[name] for size in sizes]
    values = tuple(measure.quantity.value for measure in measures)
    dimension = measures[0].quantity.dimension
    return Named(name, measures[0].span, Values(dimension, values, values), None, ())


def _gauge(gauge: Gauge, count: int) -> Iterator[Named]:
    names = (f"{gauge.name}.stitches", f"{gauge.name}.rows") if gauge.name else ("stitch_gauge", "row_gauge")
    for name, measure in zip(names, (gauge.stitches, gauge.rows), strict=True):
        if measure is not None:
            yield _named_gauge(name, measure, count)


def _named_gauge(name: str, measure: Measure, count: int) -> Named:
    values = spread((measure.quantity.value,), count)
    return Named(name, measure.span, Values(measure.quantity.dimension, values, values), None, ())
