"""In: the stitches at both ends of a sleeve or gusset, and the rows between. Out: plans of increasing."""

from sizewright.grade.shaping.over_rows import INTERVALS, intervals, paired
from sizewright.grade.shaping.plan import Impossible, Plan, Result, of_rows, of_stitches, plain, rows, stitches


def _grown(start: int, end: int) -> int:
    """The increases in pairs from one count to the other."""
    if end <= start:
        raise Impossible(
            f"{start} sts to {end} sts are no increases; where they get fewer, take decrease_at_both_ends."
        )
    if (end - start) % 2:
        near = f"{end - 1} or {end + 1}"
        raise Impossible(f"{start} to {end} sts is an odd number of increases; pairs of them lead to {near}.")
    return paired(end - start, "increases")


def _sleeve(cuff: int, upper: int, over: int, step: int) -> Result:
    found = intervals(_grown(cuff, upper), over, step)
    return {**found.result(), "increases": found.times + found.then_times, "top": upper}


def _gusset(start: int, end: int, over: int) -> Result:
    found = intervals(_grown(start, end), over, 1)
    times = found.times + found.then_times
    return {**found.result(), "before": found.every - 1, "again": found.times - 1, "increases": times}


_SLEEVE_PAGE = (
    "The increases of a sleeve worked up from the cuff, a stitch at either {ends}, over so many {unit}s: `{name}(72 "
    "st, 156 st, 176 row, 1 row)`. The last value is what the intervals are a multiple of, {least} where it is left "
    "out. 84 more sts are 42 pairs; 176 = 42 × 4 + 8, so every 4th row 34 times and every 5th row 8 times. Source: "
    "designyourownsweater.blogspot.com 2007 (28 sts and 40 rows to 10 cm, cuff 26 cm, top 56 cm)."
)

TAPERS = (
    Plan(
        "sleeve_taper",
        (stitches("cuff", least=1), stitches("upper"), rows("over"), rows("step", 2, least=1)),
        (*INTERVALS, *plain("increases"), *of_stitches("top")),
        _sleeve,
        _SLEEVE_PAGE.format(name="sleeve_taper", ends="end of a row", unit="row", least="2 (right-side rows)"),
    ),
    Plan(
        "sleeve_taper_in_round",
        (stitches("cuff", least=1), stitches("upper"), rows("over"), rows("step", 1, least=1)),
        (*INTERVALS, *plain("increases"), *of_stitches("top")),
        _sleeve,
        _SLEEVE_PAGE.format(name="sleeve_taper_in_round", ends="side of the seam line", unit="round", least="1"),
    ),
    Plan(
        "thumb_gusset",
        (stitches("start", least=1), stitches("widest"), rows("over")),
        (*INTERVALS, *of_rows("before"), *plain("again", "increases")),
        _gusset,
        "A thumb gusset between two markers, from its first stitches to its widest, over so many rounds: "
        "`thumb_gusset(1 st, 15 st, 21 row)` is 7 increase rounds, one every 3rd round. Source: common practice, no "
        "source.",
    ),
)
