"""In: a formula. Out: the gauge its count was worked out with, so that a count can be told as a length."""

from collections.abc import Iterable
from fractions import Fraction

from sizewright.base.units import LENGTH, Dimension, per
from sizewright.grade.graded import Graded
from sizewright.read.formula import Formula


def gauge_behind(graded: Graded, formula: Formula, counted: Dimension) -> Fraction | None:
    """The one gauge (counts to the cm) a formula relies on, at any distance; else the pattern's only one; else None."""
    gauges = _gauges(graded, counted)
    reached = graded.behind(formula)
    used = [values for name, values in gauges.items() if name in reached]
    return _only(used or gauges.values())


def only_gauge(graded: Graded, counted: Dimension) -> Fraction | None:
    """The pattern's gauge for a kind of count, where it has one only, the same in every size."""
    return _only(_gauges(graded, counted).values())


def _only(gauges: Iterable[tuple[Fraction, ...]]) -> Fraction | None:
    found = {value for values in gauges for value in values}
    return found.pop() if len(found) == 1 else None


def _gauges(graded: Graded, counted: Dimension) -> dict[str, tuple[Fraction, ...]]:
    return {
        name: named.result.values
        for name, named in graded.quantities.items()
        if named.formula is None and named.result.dimension == per(counted, LENGTH)
    }
