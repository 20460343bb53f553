"""In: the stitches of half a front and the rows of its armhole. Out: armhole and pointed neck begun in the same row.

At first a stitch goes at both edges in each right-side row, then at the armhole in each and at the neck in each other
one, then at the neck alone, in two intervals: as near to a straight edge of the neck as that comes.
"""

from fractions import Fraction

from sizewright.base.units import LENGTH
from sizewright.grade.shaping.necks import fit_into
from sizewright.grade.shaping.over_rows import INTERVALS, intervals
from sizewright.grade.shaping.plan import (
    Impossible,
    Member,
    Plan,
    Result,
    gauges,
    of_stitches,
    plain,
    rows,
    share,
    stitches,
)
from sizewright.grade.shaping.set_in import edge_of

_LEAST = 3  # decreases at the armhole, so that there are rows of both kinds
_SHOULDER = 3  # stitches, so that the last row with a decrease at both edges has six


def _front(chest: int, across: int, neck: int, row_count: int, *edge: Fraction) -> Result:
    """Both edges of half a front; `edge` is both gauges and what share of the armhole is bound off."""
    if across >= chest:
        raise Impossible(f"{chest} sts at the chest are no more than {across} sts across above the armhole.")
    if across - neck < _SHOULDER:
        left = max(across - neck, 0)
        raise Impossible(f"a neck of {neck} sts leaves {left} sts of shoulder in {across} sts; it takes {_SHOULDER}.")
    armhole = edge_of(chest - across, across, row_count, *edge)
    decreases = int(armhole["decreases"])
    if decreases < _LEAST:
        raise Impossible(
            f"{decreases} decreases at the armhole are too few to be shared with the neck; it takes {_LEAST}. Begin "
            "the neck above them, or bind off less."
        )
    full = _full(decreases, neck, row_count)
    cycles = (decreases - full) // 2
    alone = neck - full - cycles
    if alone < 1:
        raise Impossible(
            f"a neck of {neck} sts is decreased beside the {decreases} decreases of the armhole; {full + cycles + 1} "
            "at least go on above them."
        )
    used = 4 + 2 * (full - 1) + 4 * cycles + 1
    fit_into(used + 2 * (alone - 1), row_count, "begin it below the armhole")
    found = {"bind_off": armhole["bind_off"], "full": full - 1, "again": cycles - 1}
    told = {"decreases": decreases, "shoulder": across - neck, "edge": armhole["edge"], "depth": armhole["depth"]}
    return {**found, **intervals(alone - 1, row_count - used, 2).result(), **told}


def _full(decreases: int, neck: int, row_count: int) -> int:
    """In how many rows both edges are decreased at first: as many as a neck alone would have every 2nd row."""
    alone = max(0, 2 * neck - (row_count - 3) // 2)
    least = 2 - decreases % 2
    return min(max(alone - (alone - least) % 2, least), decreases - 2)


_PAGE = (
    "A {side} front of a cardigan, as it is worn, whose neck comes to a point and begins with the armhole: the "
    "stitches at the chest, those above the armhole, those that go for the neck, and the rows to the shoulder: "
    "`{name}(52 st, 42 st, 16 st, 56 row, stitch_gauge, row_gauge)`. At the armhole 5 sts are bound off (half of 10, "
    "or the last value) and 5 decreased every other row; of the 16 at the neck 4 go in these rows and 12 above them, 2 "
    "every other row and 10 every 4th. The shoulder of 26 sts stays on the needle, to be bound off or sloped. `edge` "
    "is the length of the armhole's edge, to be given to `sleeve_cap`. Source: common practice, no source."
)

V_FRONTS = tuple(
    Plan(
        f"{side}_front_v_neck",
        (
            *(stitches(name) for name in ("chest", "across")),
            stitches("neck", least=1),
            rows("over"),
            *gauges(),
            share("bound_share", 50),
        ),
        (
            *of_stitches("bind_off"),
            *plain("full", "again"),
            *INTERVALS,
            *plain("decreases"),
            *of_stitches("shoulder"),
            Member("edge", LENGTH),
            Member("depth", LENGTH),
        ),
        _front,
        _PAGE.format(side=side, name=f"{side}_front_v_neck"),
    )
    for side in ("left", "right")
)
