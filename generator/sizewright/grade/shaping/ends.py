"""In: the stitches of a hat or sock. Out: a crown in sections, a heel turn and the gusset behind it."""

from sizewright.grade.shaping.over_rows import paired
from sizewright.grade.shaping.plan import Impossible, Plan, Result, number, of_rows, of_stitches, plain, rows, stitches


def _crown(count: int, sections: int, left: int, rounds: int) -> Result:
    """A decrease in each section every 2nd round at first, every round at last."""
    for what in (count, left):
        if what % sections:
            near = what // sections * sections
            raise Impossible(f"{what} sts are no multiple of {sections} sections; {near} and {near + sections} are.")
    if not 0 < left < count:
        raise Impossible(f"{left} sts cannot be left of {count}; from {sections} to {count - sections} can.")
    decreases = (count - left) // sections
    behind, free = decreases - 1, rounds - 2
    if free < behind:
        raise Impossible(f"{decreases} decrease rounds and one that sets markers are more than {rounds} rounds.")
    slow = min(free - behind, behind)
    section = count // sections
    marks = {"section": section, "inner": sections - 1, "lost": sections, "decreases": decreases}
    return {**marks, "even": free - behind - slow, "slow": slow, "fast": behind - slow, "left_over": left}


def _heel(heel: int) -> Result:
    """The turn that leaves a little more than half, the sides one stitch a row narrower each."""
    pairs = (heel - 4) // 4
    if pairs < 2:
        raise Impossible(f"{heel} sts are too few to turn a heel; it takes 12 at least.")
    side = 2 * pairs + 1
    centre = heel - 2 * side
    return {
        "to_side": heel - side,
        "back": centre + 1,
        "decreases": pairs,
        "again": pairs - 2,
        "left": heel - 2 * pairs,
    }


def _gusset(heel_left: int, instep: int, flap: int, around: int) -> Result:
    """A stitch picked up for every two rows of the flap; two decreased every other round down to the foot."""
    if flap % 2:
        raise Impossible(
            f"a flap of {flap} rows gives no whole stitches, one for every two rows; {flap - 1} or {flap + 1} do."
        )
    picked = flap // 2
    total = heel_left + 2 * picked + instep
    if total <= around:
        raise Impossible(f"{total} sts behind the heel are no more than {around} sts for the foot: there is no gusset.")
    decreases = paired(total - around, "stitches over")
    if around - instep < heel_left + 4:
        sole = around - instep
        raise Impossible(
            f"{sole} sts of the sole are too few behind {heel_left} of the heel; it takes 4 more at least."
        )
    counts = {"heel": heel_left, "pick_up": picked, "top": instep, "total": total}
    return {**counts, "decreases": decreases, "again": decreases - 1, "foot": around}


ENDS = (
    Plan(
        "hat_crown",
        (stitches("count"), number("sections", least=2), stitches("left"), rows("rounds")),
        (
            *of_rows("even"),
            *of_stitches("section"),
            *plain("inner", "decreases"),
            *of_stitches("lost"),
            *plain("slow", "fast"),
            *of_stitches("left_over"),
        ),
        _crown,
        "A crown in sections, each a stitch narrower in a decrease round: the stitches, the sections, what is left, "
        "and the rounds: `hat_crown(96 st, 8, 16 st, 18 row)`. 80 sts are 10 decrease rounds, 7 behind the first every "
        "2nd round and 2 every round; the first round sets the markers. The round begins at a marker. Source: common "
        "practice, no source.",
    ),
    Plan(
        "heel_turn",
        (stitches("heel", least=1),),
        (*of_stitches("to_side", "back"), *plain("decreases", "again"), *of_stitches("left")),
        _heel,
        "The turn of a heel behind its flap: `heel_turn(32 st)` is worked from gap to gap with 7 decreases at either "
        "side and leaves 18. Source: craicnyarn.com 2016 (64 sts around, 18 left after the turn).",
    ),
    Plan(
        "sock_gusset",
        (
            stitches("heel_left", least=1),
            stitches("instep", least=1),
            rows("flap", least=2),
            stitches("around", least=1),
        ),
        (
            *of_stitches("heel", "pick_up", "top", "total"),
            *plain("decreases", "again"),
            *of_stitches("foot"),
        ),
        _gusset,
        "The gusset of a sock: the stitches left behind the heel turn, the instep, which waits on a holder, the rows "
        "of the flap and the stitches of the foot: `sock_gusset(18 st, 32 st, 28 row, 64 st)`. One stitch is picked up "
        "for every two rows at either side, 14; 18 + 14 + 32 + 14 = 78; 14 over are 7 rounds of two, every 2nd round. "
        "The round begins at the heel. Source: craicnyarn.com 2016.",
    ),
)
