"""In: sums that designers and teachers have published. Out: the engine comes to the same figures."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from sizewright.grade.graded import Graded, Promise

INCH = Fraction("2.54")  # 16 CFR 500.19(a)


def value(graded: Graded, name: str) -> Fraction:
    """The one value of a quantity in a pattern of one size."""
    assert graded.findings == ()
    (only,) = graded.quantities[name].result.values
    return only


@pytest.mark.parametrize(
    ("stitches", "gauge", "inches", "published"),
    [
        # double-ewe-yarn.com: 184 sts planned at 4 to the inch, and what comes of other gauges
        (184, "4", "46", "46"),
        (184, "4.25", "43.29", "43.29"),
        (184, "4.5", "40.9", "41"),
        (184, "3.5", "52.6", "almost 53"),
        # jimmybeanswool.com 2012: 200 sts
        (200, "5", "40", "40"),
        (200, "4.5", "44.4", "44"),
        (200, "4", "50", "50"),
        # mathsmagics.com 2021: 160 sts
        (160, "4", "40", "40"),
        (160, "5", "32", "32"),
        (160, "3", "53.33", "53 1/3"),
    ],
)
def test_what_another_gauge_does_to_the_width(
    graded: Callable[..., Graded], stitches: int, gauge: str, inches: str, published: str
) -> None:
    header = f"gauge: {{stitches: {gauge} st / 1 in}}\n"
    found = graded(
        f"width = {stitches} st / stitch_gauge", f"same = finished({stitches} st, stitch_gauge)", header=header
    )
    width = value(found, "width") / INCH
    assert width == stitches / Fraction(gauge), published
    assert value(found, "same") == value(found, "width")
    places = len(inches.partition(".")[2])
    assert f"{float(width):.{places}f}" == inches


@pytest.mark.parametrize(
    ("around", "gauge", "stitches"),
    [
        ("19 in", "5 st / 1 in", 95),  # quiltnparty.com: a hat
        ("7 in", "8 st / 1 in", 56),  # slippedstitches.wordpress.com: a sock
        ("1 in", "24 st / 4 in", 6),  # common practice, no source: 24 sts over 4 in are 6 sts to the inch
    ],
)
def test_a_cast_on_is_width_times_gauge(graded: Callable[..., Graded], around: str, gauge: str, stitches: int) -> None:
    header = f"gauge: {{stitches: {gauge}}}\n"
    assert value(graded(f"cast_on = {around} * stitch_gauge", header=header), "cast_on") == stitches


def test_a_pattern_is_worked_at_a_gauge_of_ones_own(graded: Callable[..., Graded]) -> None:
    """Source: knit-nottingham.blogspot.com 2011: 126 + 2 seam sts at 5.5/in, own gauge 6.5: 149.5, so 149 + 2 = 151."""
    header = "gauge:\n  pattern: {stitches: 5.5 st / 1 in}\n  own: {stitches: 6.5 st / 1 in}\n"
    found = graded(
        "exact_width = 126 st / pattern.stitches",
        "width = exact_width, nearest 1 in",
        "across = width * own.stitches, down to whole",
        "cast_on = across + 2 st",
        header=header,
    )
    assert f"{float(value(found, 'exact_width') / INCH):.1f}" == "22.9"
    assert value(found, "width") == 23 * INCH
    assert found.quantities["across"].result.unrounded == (Fraction("149.5"),)
    assert value(found, "cast_on") == 151


@pytest.mark.parametrize(
    ("multiple", "published"),
    [
        ("6 plus 2", (8, 14, 20, 26, 32)),  # readknittingpatterns.com
        ("8 plus 2", (10, 18, 26, 34, 42, 50)),  # readknittingpatterns.com
    ],
)
def test_the_counts_that_fit_a_multiple(
    graded: Callable[..., Graded], multiple: str, published: tuple[int, ...]
) -> None:
    tried = range(published[0], published[-1] + 1)
    up = graded(*(f"n{count} = {count} st, up to multiple of {multiple}" for count in tried))
    down = graded(*(f"n{count} = {count} st, down to multiple of {multiple}" for count in tried))
    for count in tried:
        assert value(up, f"n{count}") == min(fit for fit in published if fit >= count)
        assert value(down, f"n{count}") == max(fit for fit in published if fit <= count)


def _kept(promise: Promise) -> bool:
    """Whether a count fits what the engine worked out for the promise."""
    (left,), (of,), (plus,) = promise.left.values, promise.of, promise.plus
    return (left - plus) % of == 0


def test_three_repeats_of_a_multiple_of_8_plus_1(graded: Callable[..., Graded]) -> None:
    """Source: ninasatmyhouse blog 2023: 8 x 3 + 1 = 25."""
    found = graded(
        "cast_on = 3 * 8 st + 1 st",
        "near = 27 st, nearest multiple of 8 plus 1",
        "require cast_on fits multiple of 8 plus 1",
        "require cast_on + 1 st fits multiple of 8 plus 1",
    )
    assert value(found, "cast_on") == value(found, "near") == 25
    assert [_kept(promise) for promise in found.promises] == [True, False]


def test_finished_ease_and_steps(graded: Callable[..., Graded]) -> None:
    """Ease is the finished less the body measurement (tincanknits.com, knotions.com).

    The counts are those of craftstarstudios.com, “On stitch counts”: 176 (192, 208, 224, 240, 256, 272), 16 apart.
    """
    header = "sizes: [A, B, C, D, E, F, G]\ngauge: {stitches: 20 st / 10 cm, rows: 30 row / 10 cm}\n"
    found = graded(
        "cast_on = 176 (192, 208, 224, 240, 256, 272) st",
        "body = 80 (90, 100, 110, 125, 130, 140) cm",
        "around = finished(cast_on, stitch_gauge)",
        "ease = ease_of(around, body)",
        "tall = finished(66 row, row_gauge)",
        "step = to_next(cast_on)",
        "least = smallest_step(body)",
        "most = largest_step(body)",
        "none = to_next(66 row)",
        header=header,
    )
    assert found.findings == ()
    values = {name: [int(one) for one in quantity.result.values] for name, quantity in found.quantities.items()}
    assert set(values["tall"]) == {22}
    assert values["around"] == [88, 96, 104, 112, 120, 128, 136]
    assert values["ease"] == [8, 6, 4, 2, -5, -2, -4]
    assert values["step"] == [16, 16, 16, 16, 16, 16, 0]
    assert (set(values["least"]), set(values["most"]), set(values["none"])) == ({5}, {15}, {0})
