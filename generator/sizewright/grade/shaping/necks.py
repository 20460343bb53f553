"""In: the stitches across, and those of the neck or shoulder. Out: a neckline, and shoulders sloped by short rows."""

from fractions import Fraction

from sizewright.grade.shaping.over_rows import paired
from sizewright.grade.shaping.plan import Impossible, Plan, Result, of_rows, of_stitches, plain, rows, share, stitches
from sizewright.grade.shaping.yokes import nearest

_TURNS = 3  # so that there are two kinds of steps behind the first, and none of them is worked in vain


def _neckline(across: int, neck: int, row_count: int, centre_share: Fraction) -> Result:
    """The middle bound off at once, then two stitches at a time for half of the rest, then one every other row."""
    if neck >= across:
        raise Impossible(f"a neck of {neck} sts leaves no shoulders in {across} sts.")
    shoulder = paired(across - neck, "stitches beside the neck")
    centre = nearest(neck * centre_share)
    centre += (neck - centre) % 2
    side = (neck - centre) // 2
    if side < 3 or shoulder < 2:
        raise Impossible(
            f"a neck of {neck} sts with {centre} in the middle leaves {side} to be shaped at either side, "
            f"{shoulder} sts of "
            "shoulder; 3 and 2 at least are needed."
        )
    counts = {"first": shoulder + side, "rest": across - shoulder - side, "centre": centre, "shoulder": shoulder}
    return {**counts, **curve(side, row_count)}


def curve(side: int, row_count: int) -> Result:
    """One side of a neck above its first row: two stitches at a time for half of it, then one every other row.

    Raises `Impossible` where the rows are too few.
    """
    twos = max(1, side // 4)
    ones = side - 2 * twos
    used = 1 + 2 * twos + 2 * ones
    fit_into(used, row_count, "bind off more at once or go deeper")
    return {"twos": twos, "again": twos - 1, "ones": ones, "then": ones - 1, "even": row_count - used}


def fit_into(used: int, row_count: int, mend: str) -> None:
    """Raises `Impossible` where a neck takes more rows than there are."""
    if used > row_count:
        raise Impossible(f"the neck takes {used} rows, there are {row_count}; {mend}.")


def _slope(shoulder: int, row_count: int) -> Result:
    """Steps alike, one stitch more in as many of the first as there are stitches over."""
    turns = paired(row_count, "rows of short rows")
    if turns < _TURNS:
        raise Impossible(f"{row_count} rows are {turns} turns; a slope needs {2 * _TURNS} rows at least.")
    least, longer = divmod(shoulder, turns + 1)
    if not least:
        raise Impossible(
            f"{shoulder} sts cannot be worked in {turns + 1} steps; at most {2 * (shoulder - 1)} rows fit."
        )
    steps = [least + (place < longer) for place in range(turns + 1)]
    behind = steps[1:turns]
    times = behind.count(behind[0])
    if times == len(behind):
        times -= 1
    return {
        "first": steps[0],
        "step": behind[0],
        "again": times - 1,
        "then_step": behind[-1],
        "then_again": len(behind) - times - 1,
        "last": steps[-1],
        "total": shoulder,
    }


_SLOPE = (
    *of_stitches("first", "step"),
    *plain("again"),
    *of_stitches("then_step"),
    *plain("then_again"),
    *of_stitches("last", "total"),
)
_SLOPE_PAGE = (
    "A shoulder sloped by short rows that are turned at the armhole, begun on the {side} side: its stitches, and the "
    "rows of the slope, two a turn: `{name}(25 st, 8 row)` is 4 turns and 5 steps of 5 sts each. Where the steps "
    "cannot be alike, the first are one stitch longer. A last row over all stitches closes the gaps. Source: common "
    "practice, no source."
)


def _neck(name: str, page: str) -> Plan:
    """A neckline or one side of it: the same numbers, other words."""
    arguments = (stitches("across"), stitches("neck", least=1), rows("over"), share("centre_share", 50))
    counts = of_stitches("first", "rest", "centre", "shoulder")
    members = (*counts, *plain("twos", "again", "ones", "then"), *of_rows("even"))
    return Plan(name, arguments, members, _neckline, f"{page} Source: common practice, no source.")


NECKS = (
    _neck(
        "neckline",
        "A round neck, one side after the other: the stitches across, those of the neck, and the rows from its first "
        "row to the shoulder: `neckline(80 st, 32 st, 24 row)`. Half of the neck (or the last value) is bound off in "
        "the middle: 16; of the 8 at either side 2 × 2 are bound off at the neck edge, 4 are decreased every other "
        "row. Both shoulders are bound off straight.",
    ),
    _neck(
        "neckline_first_side",
        "The first side of a `neckline`, the left one as it is worn, up to its shoulder, which stays on the needle to "
        "be sloped: `neckline_first_side(80 st, 32 st, 25 row)`, then `shoulder_slope_on_wrong_side(24 st, 8 row)`. It "
        "takes an odd number of rows, so that the slope begins at the armhole.",
    ),
    _neck(
        "neckline_second_side",
        "The second side of a `neckline`, from the held stitches on, up to its shoulder, which stays on the needle: "
        "`neckline_second_side(80 st, 32 st, 26 row)`, then `shoulder_slope(24 st, 8 row)`. It has a row more than the "
        "first, so that its slope begins at the armhole too.",
    ),
    Plan(
        "shoulder_slope",
        (stitches("shoulder", least=1), rows("over")),
        _SLOPE,
        _slope,
        _SLOPE_PAGE.format(side="right", name="shoulder_slope"),
    ),
    Plan(
        "shoulder_slope_on_wrong_side",
        (stitches("shoulder", least=1), rows("over")),
        _SLOPE,
        _slope,
        _SLOPE_PAGE.format(side="wrong", name="shoulder_slope_on_wrong_side"),
    ),
)
