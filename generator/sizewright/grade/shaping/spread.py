"""In: a count of stitches and how many changes are made among them. Out: plans that spread them evenly.

The gaps between changes are of two lengths at most, one apart. Those there are fewer of stand by themselves, as far
apart as they can, each behind a run of the others; the runs, too, are of two lengths at most, one apart.
"""

from dataclasses import dataclass

from sizewright.grade.shaping.plan import Impossible, Plan, Result, number, of_stitches, plain, stitches


@dataclass(frozen=True, slots=True)
class Gaps:
    """So many gaps of `short` stitches, and so many of one more."""

    short: int
    shorts: int
    longs: int

    @property
    def lengths(self) -> tuple[int, ...]:
        """The lengths there are, the one there is least of first."""
        found = sorted(
            (often, gap) for gap, often in ((self.short, self.shorts), (self.short + 1, self.longs)) if often
        )
        return tuple(gap for _, gap in found)

    def less(self, length: int) -> "Gaps":
        """The gaps but one of that length."""
        if length == self.short:
            return Gaps(self.short, self.shorts - 1, self.longs)
        return Gaps(self.short, self.shorts, self.longs - 1)


def gaps(total: int, count: int) -> Gaps:
    """So many stitches in so many gaps, which must be one at least, as even as whole stitches allow."""
    short, longs = divmod(total, count)
    return Gaps(short, count - longs, longs)


def interleaved(found: Gaps) -> Result:
    """Gaps in the order they are worked: runs of the length there is more of, each closed by one of the other.

    "[[gap] run times, other] times, [[gap] then_run times, other] then_times"; no gap at all is times 0.
    """
    often, seldom = max(found.shorts, found.longs), min(found.shorts, found.longs)
    gap, other = found.short, found.short + 1
    if found.longs > found.shorts:
        gap, other = other, gap
    if not seldom:
        return {"gap": gap, "run": 0, "other": gap, "times": often, "then_run": 0, "then_times": 0}
    run, longer = divmod(often, seldom)
    if not longer:
        return {"gap": gap, "run": run, "other": other, "times": seldom, "then_run": 0, "then_times": 0}
    shorter = seldom - longer
    return {"gap": gap, "run": run + 1, "other": other, "times": longer, "then_run": run, "then_times": shorter}


RHYTHM = (*of_stitches("gap"), *plain("run"), *of_stitches("other"), *plain("times", "then_run", "then_times"))


def in_round(plain_stitches: int, changes: int) -> Result:
    """Whole gaps, one a change."""
    return interleaved(gaps(plain_stitches, changes))


def along_row(plain_stitches: int, changes: int) -> Result:
    """Half a gap at either end, whole ones between; of two lengths the even one is halved."""
    found = gaps(plain_stitches, changes)
    halved = next((gap for gap in found.lengths if gap % 2 == 0), found.lengths[0])
    start = halved // 2
    return {"start": start, **interleaved(found.less(halved)), "end": halved - start}


def between(plain_stitches: int, changes: int) -> Result:
    """Whole gaps before the first change, between the changes and behind the last: one more than there are "
    "changes."""
    found = gaps(plain_stitches, changes + 1)
    end = found.lengths[0]
    return {**interleaved(found.less(end)), "end": end}


def _some(changes: int, word: str) -> None:
    if not changes:
        raise Impossible(f"0 {word} are none; leave this row to the sizes that have some.")


def decreased(count: int, changes: int) -> int:
    """The stitches beside so many decreases."""
    _some(changes, "decreases")
    if 2 * changes > count:
        raise Impossible(
            f"{changes} decreases take {2 * changes} sts, there are {count}; at most {count // 2} fit into one row."
        )
    return count - 2 * changes


def _increased(count: int, changes: int, edges: int) -> int:
    """All stitches stand beside increases; m1 is made between two of them."""
    _some(changes, "increases")
    if changes > count - edges:
        raise Impossible(
            f"{changes} increases do not fit between {count} sts; at most {max(count - edges, 0)} fit into one row."
        )
    return count


def _decrease_row(count: int, decreases: int) -> Result:
    return along_row(decreased(count, decreases), decreases)


def _decrease_round(count: int, decreases: int) -> Result:
    return in_round(decreased(count, decreases), decreases)


def _increase_row(count: int, increases: int) -> Result:
    return along_row(_increased(count, increases, 1), increases)


def _increase_round(count: int, increases: int) -> Result:
    return in_round(_increased(count, increases, 0), increases)


def _increase_sections(count: int, increases: int) -> Result:
    return between(_increased(count, increases, 1), increases)


ENDS = (*of_stitches("start"), *RHYTHM, *of_stitches("end"))

SPREADS = (
    Plan(
        "decrease_evenly",
        (stitches("count"), number("decreases")),
        ENDS,
        _decrease_row,
        "Decreases spread evenly along a flat row, with half a gap at either end: `decrease_evenly(96 st, 8)`. 96 − 2 "
        "× 8 = 80 sts stand beside the decreases, so 8 gaps of 10, one of them halved: k5, k2tog, [k10, k2tog] 7 "
        "times, k5. Source: common practice, no source; sums as in an even division.",
    ),
    Plan(
        "decrease_evenly_in_round",
        (stitches("count"), number("decreases")),
        RHYTHM,
        _decrease_round,
        "Decreases spread evenly around, whole gaps only: `decrease_evenly_in_round(100 st, 12)`. 100 − 2 × 12 = 76 "
        "sts in 12 gaps: 8 of 6 and 4 of 7, [[k6, k2tog] 2 times, k7, k2tog] 4 times. Source: common practice, no "
        "source; sums as in an even division.",
    ),
    Plan(
        "increase_evenly",
        (stitches("count"), number("increases")),
        ENDS,
        _increase_row,
        "Increases (m1, between two stitches) spread evenly along a flat row, with half a gap at either end: "
        "`increase_evenly(40 st, 4)` is k5, m1, [k10, m1] 3 times, k5. Source: common practice, no source; dummies.com "
        "divides the same 40 sts into 5 sections, see `increase_between`.",
    ),
    Plan(
        "increase_evenly_in_round",
        (stitches("count"), number("increases")),
        RHYTHM,
        _increase_round,
        "Increases (m1) spread evenly around, whole gaps only: `increase_evenly_in_round(48 st, 6)` is 6 groups of 8 "
        "sts with an increase in each, 54 sts. Source: moderndailyknitting.com, “Evenly Across”.",
    ),
    Plan(
        "increase_between",
        (stitches("count"), number("increases")),
        (*RHYTHM, *of_stitches("end")),
        _increase_sections,
        "Increases (m1) between sections alike, one section more than there are increases: `increase_between(60 st, "
        "5)` is 6 sections of 10 sts, 65 sts. Sources: wolfandturtle.net 2005; dummies.com, “Increase at several "
        "points” (40 sts, 4 increases: 5 of 8 sts).",
    ),
)
