"""In: the stitches of half a front, or of a front that is divided. Out: its armhole, its round neck, a neck to a point.

A left and a right front are called as they are worn: on the right side of a left front a row begins at the armhole and
ends at the neck; on that of a right front the other way round.
"""

from fractions import Fraction

from sizewright.base.units import LENGTH
from sizewright.grade.shaping.necks import curve, fit_into
from sizewright.grade.shaping.over_rows import INTERVALS, intervals
from sizewright.grade.shaping.plan import (
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
from sizewright.grade.shaping.set_in import edge_of
from sizewright.grade.shaping.yokes import nearest


def _armhole(
    chest: int, across: int, row_count: int, stitch_gauge: Fraction, row_gauge: Fraction, bound: Fraction
) -> Result:
    """The one armhole edge of half a front."""
    if across >= chest:
        raise Impossible(f"{chest} sts at the chest are no more than {across} sts across above the armhole.")
    return edge_of(chest - across, across, row_count, stitch_gauge, row_gauge, bound)


def _round_neck(across: int, neck: int, row_count: int, centre_share: Fraction) -> Result:
    """The stitches at the front edge bound off at once, then two at a time for half of the rest, then single ones."""
    if neck >= across:
        raise Impossible(f"a neck of {neck} sts leaves no shoulder in {across} sts.")
    centre = max(1, nearest(neck * centre_share))
    side, shoulder = neck - centre, across - neck
    if side < 3 or shoulder < 2:
        raise Impossible(
            f"a neck of {neck} sts with {centre} bound off at once leaves {side} to be shaped, {shoulder} sts of "
            "shoulder; 3 and 2 at least are needed."
        )
    return {"centre": centre, "shoulder": shoulder, **curve(side, row_count)}


def _point(across: int, neck: int, row_count: int) -> Result:
    """One side after the other, a stitch at a time; a stitch in the middle of an odd neck is bound off."""
    if neck >= across:
        raise Impossible(f"a neck of {neck} sts leaves no shoulders in {across} sts.")
    if (across - neck) % 2:
        near = f"{neck - 1} or {neck + 1}"
        raise Impossible(f"{across} sts with a neck of {neck} leave no two shoulders alike; a neck of {near} does.")
    shoulder, side = (across - neck) // 2, neck // 2
    if side < 1 or shoulder < 2:
        raise Impossible(
            f"a neck of {neck} sts leaves {side} to be decreased at either side, {shoulder} sts of shoulder; 1 and 2 "
            "at least are needed."
        )
    fit_into(2 + 2 * side - 1, row_count, "begin lower")
    counts = {"first": shoulder + side, "rest": across - shoulder - side, "centre": neck % 2, "shoulder": shoulder}
    return {**counts, "decreases": side, **intervals(side - 1, row_count - 3, 2).result()}


_ARMHOLE_PAGE = (
    "The armhole of a {side} front of a cardigan, as it is worn: its stitches at the chest, those above the armhole, "
    "and the rows to the shoulder or to the first of the neck: `{name}(52 st, 42 st, 56 row, stitch_gauge, "
    "row_gauge)`. Of the 10 sts that go half (or the last value) are bound off, 5 are decreased every other row; 45 "
    "rows stay even. Where as many stitches go as at either side of the back, the edges are alike. `edge` is the "
    "length of the edge, to be given to `sleeve_cap`, and where the neck begins before the shoulder, with the height "
    "of its rows: `front.edge + neck_rows / row_gauge`. Source: common practice, no source."
)
_NECK_PAGE = (
    "The round neck of a {side} front of a cardigan, as it is worn: its stitches, those that go for the neck, and the "
    "rows from the first of the neck to the shoulder: `{name}(40 st, 16 st, 24 row)`. Half of the neck (or the last "
    "value) is bound off at once: 8; of the other 8 2 × 2 are bound off at the neck edge, 4 are decreased every other "
    "row. The shoulder stays on the needle, to be bound off or sloped: `{slope}` suits it, behind {rows}. It serves "
    "the {side} half of a divided front or back too. Source: common practice, no source."
)
_ARMHOLE = (
    *of_stitches("bind_off"),
    *plain("decreases", "again"),
    *of_rows("even"),
    *of_stitches("left"),
    Member("edge", LENGTH),
    Member("depth", LENGTH),
)
_NECK = (*of_stitches("centre"), *plain("twos", "again", "ones", "then"), *of_rows("even"), *of_stitches("shoulder"))
_SLOPES = {
    "left": ("shoulder_slope_on_wrong_side", "an odd number of rows"),
    "right": ("shoulder_slope", "an even number of rows"),
}

FRONTS = (
    *(
        Plan(
            f"{side}_front_armhole",
            (stitches("chest"), stitches("across"), rows("over"), *gauges(), share("bound_share", 50)),
            _ARMHOLE,
            _armhole,
            _ARMHOLE_PAGE.format(side=side, name=f"{side}_front_armhole"),
        )
        for side in _SLOPES
    ),
    *(
        Plan(
            f"{side}_front_neck",
            (stitches("across"), stitches("neck", least=1), rows("over"), share("centre_share", 50)),
            _NECK,
            _round_neck,
            _NECK_PAGE.format(side=side, name=f"{side}_front_neck", slope=slope, rows=behind),
        )
        for side, (slope, behind) in _SLOPES.items()
    ),
    Plan(
        "v_neckline",
        (stitches("across"), stitches("neck", least=1), rows("over")),
        (*of_stitches("first", "rest", "centre", "shoulder"), *plain("decreases"), *INTERVALS),
        _point,
        "A neck that comes to a point, one side after the other: the stitches across, those of the neck, and the rows "
        "from its first row to the shoulder: `v_neckline(80 st, 32 st, 56 row)`. 16 sts are decreased at either side, "
        "one in the 3rd row and 15 behind it over 53 rows: every 2nd row 4 times, every 4th row 11 times, and a row "
        "even. The middle stitch of an odd neck is bound off. At the point of a cardigan `decrease_at_end` and "
        "`decrease_at_beginning` do as much for the two fronts. Source: common practice, no source; the intervals are "
        "those of `decrease_at_end`.",
    ),
)
