"""In: a quantity of a graded pattern. Out: how far its own rounding moved it, in its unit and in cm by the gauge.

A count is turned into a length by the gauge its formula goes back to. Where it goes back to several, or to none in a
pattern that has several, no length is told: nothing says which fabric the count is knitted in.
"""

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sizewright.base.units import LENGTH, ROW_GAUGE, ROWS, STITCH_GAUGE, STITCHES, Dimension
from sizewright.grade.graded import Graded, Named

_GAUGES = {STITCHES: STITCH_GAUGE, ROWS: ROW_GAUGE}
GAUGES = (STITCH_GAUGE, ROW_GAUGE)


@dataclass(frozen=True, slots=True)
class Moved:
    """The value less the value before rounding, by size; `length` is the same in cm, None where that is not known.

    `far` are the places of the sizes that it moved by more than half of what lies between them and the next size.
    """

    by: tuple[Fraction, ...]
    length: tuple[Fraction, ...] | None
    far: tuple[int, ...]


def moved(graded: Graded, named: Named) -> Moved | None:
    """What rounding did to a quantity; None where its formula does not round."""
    if named.formula is None or named.formula.rounding is None:
        return None
    pairs = zip(named.result.values, named.result.unrounded, strict=True)
    by = tuple(value - unrounded for value, unrounded in pairs)
    far = tuple(place for place, one in enumerate(by) if _is_far(one, named.result.unrounded, place))
    return Moved(by, _length(graded, named, by), far)


def gauges_behind(graded: Graded, named: Named) -> tuple[Named, ...]:
    """The gauges that a quantity goes back to, at any distance."""
    names = () if named.formula is None else graded.behind(named.formula)
    return tuple(one for name, one in graded.quantities.items() if name in names and is_gauge(one))


def is_gauge(named: Named) -> bool:
    """Whether a quantity is a gauge of the header."""
    return named.formula is None and named.result.dimension in GAUGES


def gauge_of(graded: Graded, named: Named) -> Named | None:
    """The one gauge that a count is knitted to; None where nothing says which."""
    wanted: Dimension | None = _GAUGES.get(named.result.dimension)
    behind = [one for one in gauges_behind(graded, named) if one.result.dimension == wanted]
    every = [one for one in graded.quantities.values() if is_gauge(one) and one.result.dimension == wanted]
    found = behind or every
    return found[0] if len(found) == 1 else None


def _length(graded: Graded, named: Named, by: tuple[Fraction, ...]) -> tuple[Fraction, ...] | None:
    if named.result.dimension == LENGTH:
        return by
    gauge = gauge_of(graded, named)
    if gauge is None or not all(gauge.result.values):
        return None
    return tuple(one / per_cm for one, per_cm in zip(by, gauge.result.values, strict=True))


def _is_far(by: Fraction, unrounded: tuple[Fraction, ...], place: int) -> bool:
    steps = [abs(after - before) for before, after in pairwise(unrounded)]
    beside = [step for step in steps[max(0, place - 1) : place + 1] if step]
    return bool(beside) and abs(by) > min(beside) / 2
