"""In: a header. Out: the names it gives to formulas: the body measurements of the sizes, and the gauges."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sizewright.base.finding import Finding
from sizewright.base.place import Span
from sizewright.base.units import spoken
from sizewright.grade.graded import Named, Values
from sizewright.grade.rules import REPEATED_NAME, WRONG_UNITS
from sizewright.grade.worth import spread
from sizewright.read.pattern import Gauge, Measure, Pattern, Size


@dataclass(frozen=True, slots=True)
class Given:
    """The names every size has, and those that some sizes lack, with the place of the first size that does.

    `failed` are names that have no value for a reason the findings tell.
    """

    names: tuple[Named, ...]
    lacking: Mapping[str, tuple[Span, tuple[str, ...]]]
    failed: frozenset[str]
    findings: tuple[Finding, ...]

    def place(self, name: str) -> Span | None:
        """Where a name is given, or None."""
        return next((named.span for named in self.names if named.name == name), None)


def given_names(pattern: Pattern, count: int) -> Given:
    """The names of a header; `count` is how many values each has."""
    sizes = pattern.header.sizes
    names = list(dict.fromkeys(name for size in sizes for name in size.measurements))
    unlike = {name: finding for name in names if (finding := _unlike(sizes, name))}
    lacking: dict[str, tuple[Span, tuple[str, ...]]] = {}
    given: dict[str, Named] = {}
    for name in names:
        without = [size for size in sizes if name not in size.measurements]
        if without and name not in unlike:
            lacking[name] = (without[0].span, tuple(size.name for size in without))
        elif name not in unlike:
            given[name] = _measurement(name, sizes)
    gauges = [one for gauge in pattern.header.gauges for one in _gauge(gauge, count)]
    repeated = [_repeated(one, given[one.name]) for one in gauges if one.name in given]
    given |= {one.name: one for one in gauges if one.name not in given}
    return Given(tuple(given.values()), lacking, frozenset(unlike), (*unlike.values(), *repeated))


def _unlike(sizes: tuple[Size, ...], name: str) -> Finding | None:
    """The finding where two sizes measure different kinds of thing by the same name."""
    having = [size for size in sizes if name in size.measurements]
    first, *others = (size.measurements[name] for size in having)
    for size, other in zip(having[1:], others, strict=True):
        if other.quantity.dimension != first.quantity.dimension:
            kinds = spoken(other.quantity.dimension), spoken(first.quantity.dimension)
            message = f"“{name}” of {size.name} is {kinds[0]}, but that of {having[0].name} is {kinds[1]}."
            return WRONG_UNITS.at(other.span, message, "Measure the same in every size.", (size.name,))
    return None


def _repeated(gauge: Named, before: Named) -> Finding:
    message = f"“{gauge.name}” is given to the sizes already, in {before.span.line_near(gauge.span)}."
    return REPEATED_NAME.at(gauge.span, message, "Keep the one for each size, or the one for all.")


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
