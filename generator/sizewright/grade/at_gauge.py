"""In: a graded pattern and gauges that come out otherwise. Out: what its finished measurements are then.

What is knitted as printed keeps its value (`as_knitted`), and every other quantity is worked out again by its formula.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.units import Dimension
from sizewright.grade.as_knitted import as_knitted
from sizewright.grade.evaluate import Evaluator
from sizewright.grade.graded import Graded, Measured
from sizewright.grade.moved import is_gauge
from sizewright.grade.worth import Fault, Worth, spread

Gauges = Mapping[str, Fraction]  # by the name of each in formulas, in stitches or rows to the cm


@dataclass(frozen=True, slots=True)
class Shifted:
    """A finished measurement by size, in base units, where the gauge comes out otherwise."""

    measured: Measured
    values: tuple[Fraction, ...]


def shifted(graded: Graded, kind: Dimension, by: Fraction) -> Gauges:
    """Each gauge of a kind (STITCH_GAUGE, ROW_GAUGE) with so many more to the cm; `by` may be less than nothing."""
    gauges = {name: named.result for name, named in graded.quantities.items() if is_gauge(named)}
    return {name: one.values[0] + by for name, one in gauges.items() if one.dimension == kind}


def at_gauge(graded: Graded, gauges: Gauges) -> tuple[Shifted, ...]:
    """The finished measurements where these gauges are met and no other changes; what has no value is left out.

    One that is read back from what is knitted stays as printed where no gauge behind it changes: the little that the
    rounding of a row moved it is not the gauge's.
    """
    knitted = as_knitted(graded)
    own = {name: Worth(named.result.dimension, named.result.values) for name, named in graded.quantities.items()}
    before = Evaluator(graded.sizes, own, set(), {})
    after = Evaluator(graded.sizes, _known(graded, gauges, knitted.kept), set(), {})
    found = []
    for measured in graded.finished:
        tree = knitted.read_back.get(measured.told.span)
        try:
            worth = after.formula(measured.told.formula)[0]
            if tree is not None and (read_back := after.tree(tree)) != before.tree(tree):
                worth = read_back
        except Fault:
            continue
        found.append(Shifted(measured, spread(worth.values, len(measured.finished.values))))
    return tuple(found)


def _known(graded: Graded, gauges: Gauges, kept: frozenset[str]) -> Mapping[str, Worth]:
    """Every name with its value; quantities stand behind those they rely on."""
    known: dict[str, Worth] = {}
    evaluator = Evaluator(graded.sizes, known, set(), {})
    for name, named in graded.quantities.items():
        worth = Worth(named.result.dimension, named.result.values)
        if name in gauges:
            worth = Worth(worth.dimension, spread((gauges[name],), len(worth.values)))
        elif named.formula is not None and name not in kept:
            try:
                worth = evaluator.formula(named.formula)[0]
            except Fault:  # a gauge that comes to nothing, or what relies on one: it has no value then
                continue
        known[name] = worth
    return known
