"""In: the stitches below and above an armhole, the sleeve, and the gauges. Out: an armhole and the cap that is sewn in.

The two are matched by the length of their edges: a stitch bound off counts its width, a decrease the slope over the
rows to the next one, a row even its height. Slopes are square roots, to a millionth of a centimetre, rounded down.
"""

from dataclasses import dataclass
from fractions import Fraction
from math import isqrt

from sizewright.base.printing import decimal
from sizewright.base.units import LENGTH
from sizewright.grade.shaping.over_rows import paired
from sizewright.grade.shaping.plan import (
    Argument,
    Impossible,
    Member,
    Plan,
    Result,
    gauges,
    of_rows,
    of_stitches,
    plain,
    rows,
    share,
    stitches,
)
from sizewright.grade.shaping.yokes import nearest

_FINE = 10**6  # parts of a centimetre
_TALLEST = Fraction(4, 5)  # of one armhole's edge: a cap is less tall than its armhole (common practice, no source)
_EASED = Fraction(1)  # cm that are eased in when a cap is sewn (common practice, no source)


def slope(rise: Fraction, across: Fraction) -> Fraction:
    """The length of a slope, in cm."""
    return Fraction(isqrt(int((rise * rise + across * across) * _FINE * _FINE)), _FINE)


def _armhole(
    chest: int, across: int, row_count: int, stitch_gauge: Fraction, row_gauge: Fraction, bound: Fraction
) -> Result:
    """One armhole edge of a back or front: stitches bound off at once, then a decrease every other row."""
    if across >= chest:
        raise Impossible(f"{chest} sts at the chest are no more than {across} sts across above the armholes.")
    away = paired(chest - across, "stitches less across")
    return edge_of(away, across, row_count, stitch_gauge, row_gauge, bound)


def edge_of(
    away: int, across: int, row_count: int, stitch_gauge: Fraction, row_gauge: Fraction, bound: Fraction
) -> Result:
    """One edge at which so many stitches go, in so many rows. Raises `Impossible`."""
    if away < 2:
        raise Impossible(f"{away} st at a side is too little for an armhole: one bound off, one decreased at least.")
    bind_off = min(max(1, nearest(away * bound)), away - 1)
    decreases = away - bind_off
    used = 2 + 2 * decreases - 1
    if used > row_count:
        raise Impossible(f"{decreases} decreases every other row take {used} rows, the armhole has {row_count}.")
    width, height = 1 / stitch_gauge, 1 / row_gauge
    edge = bind_off * width + decreases * slope(2 * height, width) + (row_count - 2 * decreases) * height
    even = row_count - used
    counts = {"bind_off": bind_off, "decreases": decreases, "again": decreases - 1, "even": even, "left": across}
    return {**counts, "edge": edge, "depth": row_count * height}


@dataclass(frozen=True, slots=True)
class _Side:
    """One side of a cap above its first bind-off: decreases over twice `half` rows, then steps of two bound off."""

    decreases: int
    half: int
    steps: int

    @property
    def each(self) -> tuple[int, int]:
        """Half the shorter interval between two decreases, and how many times the longer one comes."""
        return divmod(self.half, self.decreases)

    def length(self, width: Fraction, height: Fraction) -> Fraction:
        """The length of the edge."""
        each, slow = self.each
        fast = (self.decreases - slow) * slope(2 * each * height, width)
        return fast + slow * slope((2 * each + 2) * height, width) + self.steps * slope(2 * height, 2 * width)

    def members(self) -> dict[str, int]:
        """The numbers of the sentence: intervals shorter at both ends of the curve than in its middle."""
        each, slow = self.each
        fast = self.decreases - slow
        curve = {"fast_every": 2 * each, "first": fast // 2, "slow_every": 2 * each + 2, "slow": slow}
        top = {"last": fast - fast // 2 - 1, "even": 2 * each - 1, "steps_again": self.steps - 1}
        return {"decreases": self.decreases, "steps": self.steps, **curve, **top}


def _cap(
    sleeve: int, bind_off: int, edge: Fraction, stitch_gauge: Fraction, row_gauge: Fraction, top_share: Fraction
) -> Result:
    """The cap whose edge is next to the armhole's in length, as few steps at its top as that allows."""
    inside = sleeve - 2 * bind_off
    top = nearest(sleeve * top_share)
    top -= (inside - top) % 2
    away = (inside - top) // 2
    if top < 1 or away < 3:
        raise Impossible(
            f"of {sleeve} sts {2 * bind_off} are bound off below and {top} at the top; 6 at least must be left between."
        )
    width, height = 1 / stitch_gauge, 1 / row_gauge
    wanted = (edge - (2 * bind_off + top) * width) / 2
    side = _nearest_side(away, wanted, int(edge / 2 * _TALLEST / height), width, height)
    off = 2 * (side.length(width, height) - wanted)
    if abs(off) > _EASED:
        raise Impossible(_no_cap(off, edge))
    cap_rows = 2 + 2 * side.half + 2 * side.steps
    measured = {"height": cap_rows * height, "off": off}
    return {"bind_off": bind_off, "top": top, **side.members(), "cap_rows": cap_rows, **measured}


def _no_cap(off: Fraction, edge: Fraction) -> str:
    more, mend = ("longer", "fewer") if off > 0 else ("shorter", "more")
    by = f"{decimal(abs(off), 1)} cm {more} than the armhole's {decimal(edge, 1)} cm"
    return f"the edge of the cap comes out {by} at the nearest; take {mend} sleeve stitches, or an armhole to match."


def _nearest_side(away: int, wanted: Fraction, tallest: int, width: Fraction, height: Fraction) -> _Side:
    """The side with the fewest steps that can be so short, over the rows that bring it nearest to the length "
    "wanted."""
    most = (away - 1) // 2
    steep = (_Side(away - 2 * steps, away - 2 * steps, steps) for steps in range(1, most + 1))
    least = next((side for side in steep if side.length(width, height) <= wanted), None)
    steps = least.steps if least is not None else most
    decreases = away - 2 * steps
    halves = range(decreases, max(decreases, tallest // 2 - steps - 1) + 1)
    sides = [_Side(decreases, half, steps) for half in halves]
    return min(sides, key=lambda side: abs(side.length(width, height) - wanted))


SET_IN = (
    Plan(
        "armhole",
        (stitches("chest"), stitches("across"), rows("over"), *gauges(), share("bound_share", 50)),
        (
            *of_stitches("bind_off"),
            *plain("decreases", "again"),
            *of_rows("even"),
            *of_stitches("left"),
            Member("edge", LENGTH),
            Member("depth", LENGTH),
        ),
        _armhole,
        "The armholes of a back or front: the stitches at the chest, those across above, and the rows from the first "
        "bind-off to the shoulder: `armhole(100 st, 80 st, 56 row, stitch_gauge, row_gauge)`. Of the 10 sts that go at "
        "either side half (or the last value) are bound off, 5 are decreased every other row; 45 rows stay even. "
        "`edge` is the length of one edge, to be given to `sleeve_cap`. Source: common practice, no source.",
    ),
    Plan(
        "sleeve_cap",
        (
            stitches("sleeve"),
            stitches("bound", least=1),
            Argument("armhole_edge", (LENGTH,), whole=False, positive=True),
            *gauges(),
            share("top_share", 25),
        ),
        (
            *of_stitches("bind_off", "top"),
            *plain("decreases", "steps"),
            *of_rows("fast_every"),
            *plain("first"),
            *of_rows("slow_every"),
            *plain("slow", "last", "steps_again"),
            *of_rows("even", "cap_rows"),
            Member("height", LENGTH),
            Member("off", LENGTH),
        ),
        _cap,
        "The cap of a set-in sleeve with an edge as long as the armhole it is sewn into: its stitches, those bound off "
        "at either side (as many as at the armhole) and the armhole's edge, back and front together: `sleeve_cap(72 "
        "st, underarm.bind_off, front.edge + back.edge, stitch_gauge, row_gauge)`. A quarter of the sleeve (or the "
        "last value) is bound off at the top, below it two stitches at a time in as few steps as will do; below these "
        "a stitch is decreased at either end every 2nd, 4th … row, more often at both ends of the curve than in its "
        "middle, over as many rows as bring the two edges nearest. `off` is by how much the cap is longer (below zero: "
        "shorter); more than 1 cm is refused. Source: common practice, no source; the lengths are exact to a "
        "millionth of a centimetre.",
    ),
)
