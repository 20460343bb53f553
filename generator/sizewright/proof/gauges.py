"""In: a formula. Out: the gauge its count was worked out with, so that a count can be told as a length."""

from fractions import Fraction

from sizewright.base.units import LENGTH, Dimension, per
from sizewright.grade.graded import Graded
from sizewright.read.formula import Formula, names_in


def gauge_behind(graded: Graded, formula: Formula, counted: Dimension) -> Fraction | None:
    """The one gauge (counts to the cm) a formula relies on, at any distance; else the pattern's only one; else None."""
    gauges = _gauges(graded, counted)
    reached: set[str] = set()
    waiting = [name.name for name in (*names_in(formula.tree), *names_in(formula.rounding))]
    while waiting:
        name = waiting.pop()
        if name not in reached and name in graded.quantities:
            reached.add(name)
            waiting.extend(graded.quantities[name].relies_on)
    used = [value for name, value in gauges.items() if name in reached]
    found = used or list(gauges.values())
    return found[0] if len(set(found)) == 1 else None


def only_gauge(graded: Graded, counted: Dimension) -> Fraction | None:
    """The pattern's gauge for a kind of count, where it has one only."""
    found = set(_gauges(graded, counted).values())
    return found.pop() if len(found) == 1 else None


def _gauges(graded: Graded, counted: Dimension) -> dict[str, Fraction]:
    return {
        name: named.result.values[0]
        for name, named in graded.quantities.items()
        if named.formula is None and named.result.dimension == per(counted, LENGTH)
    }
