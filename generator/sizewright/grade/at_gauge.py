"""In: a graded pattern and a gauge that comes out otherwise. Out: what its finished measurements are then.

The counts stay those that are printed, since that is what is knitted; what was worked out from them through a gauge
moves. So a count, and a plain number, keeps its value, and every other quantity is worked out again by its formula.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.units import COUNTS, PLAIN, Dimension
from sizewright.grade.evaluate import Evaluator
from sizewright.grade.graded import Graded, Measured
from sizewright.grade.moved import is_gauge
from sizewright.grade.worth import Fault, Worth, spread


@dataclass(frozen=True, slots=True)
class Shifted:
    """A finished measurement by size, in base units, where the gauge comes out otherwise."""

    measured: Measured
    values: tuple[Fraction, ...]


def at_gauge(graded: Graded, kind: Dimension, by: Fraction) -> tuple[Shifted, ...]:
    """The finished measurements where each gauge of a kind has so many more to the cm; what has no value is left out.

    Takes STITCH_GAUGE or ROW_GAUGE; `by` may be less than nothing.
    """
    evaluator = Evaluator(graded.sizes, dict(_known(graded, kind, by)), set(), {})
    found = []
    for measured in graded.finished:
        try:
            worth = evaluator.formula(measured.told.formula)[0]
        except Fault:
            continue
        found.append(Shifted(measured, spread(worth.values, len(measured.finished.values))))
    return tuple(found)


def _known(graded: Graded, kind: Dimension, by: Fraction) -> Iterator[tuple[str, Worth]]:
    """Every name with its value; quantities stand behind those they rely on."""
    known: dict[str, Worth] = {}
    evaluator = Evaluator(graded.sizes, known, set(), {})
    for name, named in graded.quantities.items():
        dimension, values = named.result.dimension, named.result.values
        worth = Worth(dimension, values)
        if is_gauge(named) and dimension == kind:
            worth = Worth(dimension, tuple(value + by for value in values))
        elif named.formula is not None and dimension not in (*COUNTS, PLAIN):
            try:
                worth = evaluator.formula(named.formula)[0]
            except Fault:  # a gauge that comes to nothing, or what relies on one: it has no value then
                continue
        known[name] = worth
        yield name, worth
