"""In: a formula. Out: the gauge its count was worked out with, so that a count can be told as a length."""

from fractions import Fraction

from sizewright.base.units import LENGTH, Dimension, per
from sizewright.grade.graded import Graded
from sizewright.read.formula import Formula, names_in


def gauge_behind(graded: Graded, formula: Formula, counted: Dimension) -> Fraction | None:
    """The one gauge (counts to the cm) a formula relies on, at any distance; else the pattern's only one; else None."""
    gauges = {
        name: named.result.values[0]
        for name, named in graded.quantities.items()
        if named.formula is None and named.result.dimension == per(counted, LENGTH)
    }
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
