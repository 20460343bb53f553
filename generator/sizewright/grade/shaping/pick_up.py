"""In: rows along an edge, and the gauges or the stitches wanted. Out: plans of picking stitches up along it."""

from fractions import Fraction

from sizewright.base.printing import decimal
from sizewright.base.units import LENGTH
from sizewright.grade.shaping.plan import (
    Impossible,
    Member,
    Plan,
    Result,
    gauges,
    number,
    of_rows,
    of_stitches,
    plain,
    rows,
    stitches,
)
from sizewright.grade.shaping.spread import RHYTHM, between

_LARGEST = 5  # rows in a ratio; more are not kept in mind while picking up (common practice, no source)


def _ratio(stitch_gauge: Fraction, row_gauge: Fraction) -> Result:
    """The nearest ratio in at most five rows; a row gives one stitch at most."""
    exact = stitch_gauge / row_gauge
    near = min(exact, Fraction(1)).limit_denominator(_LARGEST)
    if not near or exact > Fraction(11, 10):
        raise Impossible(
            f"{decimal(exact)} sts would come from each row; from a row end come one at most and one in five at least."
        )
    return {"pick": near.numerator, "of": near.denominator, "exact": exact}


def _runs(count: int, row_count: int) -> Result:
    """Stitches in runs, one row skipped between two of them."""
    skips = row_count - count
    if skips < 0:
        raise Impossible(f"{row_count} rows give {row_count} sts at most, not {count}.")
    if count < skips + 1:
        least = row_count // 2 + 1
        raise Impossible(f"{count} sts are too few to skip single rows of {row_count}; it takes {least} at least.")
    return {"skips": skips, **between(count, skips)}


def _along(row_count: int, stitch_gauge: Fraction, row_gauge: Fraction, multiple: int, plus: int) -> Result:
    """The total that fits, next to what the gauges ask for, and its runs."""
    edge = row_count / row_gauge
    repeats = (edge * stitch_gauge - plus) / multiple
    total = (2 * repeats.numerator + repeats.denominator) // (2 * repeats.denominator) * multiple + plus
    if total <= 0:
        asked = decimal(edge * stitch_gauge)
        raise Impossible(f"{row_count} rows ask for {asked} sts; no multiple of {multiple} plus {plus} is near.")
    return {"total": total, "longer": total / stitch_gauge - edge, **_runs(total, row_count)}


def _by_markers(count: int, row_count: int, parts: int) -> Result:
    """Parts of rows and their stitches, alike as far as whole numbers allow, the larger first."""
    if row_count < parts:
        raise Impossible(f"{row_count} rows cannot be marked in {parts} parts.")
    if count > row_count:
        raise Impossible(f"{row_count} rows give {row_count} sts at most, not {count}.")
    more_stitches, more_rows = count % parts, row_count % parts
    second = abs(more_stitches - more_rows)
    first = min(more_stitches, more_rows)
    each, deep = count // parts, row_count // parts
    return {
        "first": each + 1 if first else each,
        "first_rows": deep + 1 if first else deep,
        "first_times": first,
        "second": each + (more_stitches > more_rows),
        "second_rows": deep + (more_rows > more_stitches),
        "second_times": second,
        "third": each,
        "third_rows": deep,
        "third_times": parts - first - second,
    }


PICK_UPS = (
    Plan(
        "pick_up_ratio",
        gauges(),
        (*of_stitches("pick"), *of_rows("of"), Member("exact", LENGTH._replace(stitch=1, row=-1, length=0))),
        _ratio,
        "How many stitches to pick up for how many rows, from the two gauges, in at most 5 rows: "
        "`pick_up_ratio(stitch_gauge, row_gauge)`; `exact` is the exact ratio. With 20 sts and 26 rows to 4 in the "
        "ratio is 20/26 = 10/13: 3 sts for every 4 rows; worked out to the row, 3 of 4, 3 of 4 and 4 of 5 (see "
        "`pick_up`). Source: kelbournewoolens.com 2015.",
    ),
    Plan(
        "pick_up",
        (stitches("count", least=1), rows("over", least=1)),
        (*of_rows("skips"), *RHYTHM, *of_stitches("end")),
        _runs,
        "So many stitches picked up along so many rows, in runs with one row skipped between: `pick_up(71 st, 88 "
        "row)`. 88 − 71 = 17 rows are skipped: (pick up 4, skip 1) 17 times uses 85 rows and 68 sts, then 3. Source: "
        "knittinghelp.com, t/124191.",
    ),
    Plan(
        "pick_up_along",
        (rows("over", least=1), *gauges(), number("multiple", 1, least=1), stitches("plus", 0)),
        (
            *of_stitches("total"),
            Member("longer", LENGTH),
            *of_rows("skips"),
            *RHYTHM,
            *of_stitches("end"),
        ),
        _along,
        "Stitches picked up along so many rows, from the gauges, in a total that fits a multiple: `pick_up_along(88 "
        "row, stitch_gauge, row_gauge, 4, 2 st)`; `longer` is how much longer the band is than the edge (below zero: "
        "shorter). With 20 sts and 26 rows to 4 in, 88 rows ask for 67.7 sts; the multiple of 4 plus 2 next to it is "
        "66. Source: the sum follows from the gauges; the ratio from kelbournewoolens.com 2015.",
    ),
    Plan(
        "pick_up_by_markers",
        (stitches("count", least=1), rows("over", least=1), number("parts", 4, least=1)),
        tuple(
            member
            for part in ("first", "second", "third")
            for member in (*of_stitches(part), *of_rows(f"{part}_rows"), *plain(f"{part}_times"))
        ),
        _by_markers,
        "The edge in halves (2) or quarters (4, where it is left out), a marker at the end of each, so that stitches "
        "are counted part by part: `pick_up_by_markers(71 st, 88 row, 4)` is 18 sts over 22 rows three times and 17 "
        "sts over 22 rows once. Source: common practice, no source.",
    ),
)
