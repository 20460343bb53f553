"""The yarn every size needs: from the stitches worked, a swatch and a ball, exact.

Source of the area method and of its example: jenniesitsandknits.blogspot.com (2008): 60 yd knit 8 x 12 in, 96 sq in; a
vest of 473 and 528 sq in, together 1001, takes 1001 x 60 / 96 = 625.6 yd. (The balls at its end are summed
wrongly, and not used.) The rest is arithmetic of our own, counted by hand beside each check.
"""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.run import work
from sizewright.work.yarn_need import Amount, YarnNeed

YARD = Fraction("91.44")  # cm; 16 CFR 500.19(a)


def needs(yarn: str, rows: str = "Rows 1 to 98: Knit.", sizes: str = "{}", more: str = "") -> tuple[YarnNeed, ...]:
    """The yarns of a piece of 100 stitches, cast on and bound off."""
    gauge = "gauge: {stitches: 20 st / 10 cm, rows: 30 row / 10 cm}\n"
    header = f"---\ntitle: A\nsizes: {sizes}\n{more or gauge}yarn: {yarn}\n---\n"
    project = read_text(f"{header}```work\nCast on 100 sts.\n{rows}\nBind off all sts.\n```\n", "a.md")
    assert project.findings == ()
    return work(grade(project.patterns[0])).yarns


def test_the_published_example_by_area() -> None:
    """At 4 sts and 6 rows to the inch 473 sq in are 22 in (88 sts) by 21.5 in, and 528 sq in are 22 in by 24 in."""
    lines = "Cast on 88 sts.\nRows 1 to {}: Knit.\nBind off all sts.\n"
    body = "```work\n" + lines.format(129 - 2) + lines.format(144 - 2) + "```\n"
    header = """---
title: Vest
gauge: {stitches: 4 st / 1 in, rows: 6 row / 1 in}
yarn: {swatch: {width: 8 in, height: 12 in, length: 60 yd}}
---
"""
    project = read_text(header + body, "a.md")
    assert project.findings == ()
    (vest,) = work(grade(project.patterns[0])).yarns
    assert vest.stitches == (1001 * 4 * 6,)
    assert vest.worked == (Amount(Fraction(1001 * 60, 96) * YARD, None, None),)
    assert vest.worked[0].length is not None
    assert round(float(vest.worked[0].length / YARD), 1) == 625.6


def test_mass_length_and_balls_follow_from_each_other() -> None:
    """10000 stitches at 12 g for 2400 are 50 g; a ball of 50 g has 105 m, so 105 m and one ball; 10 % more is two."""
    (need,) = needs("{length: 105 m, mass: 50 g, swatch: {stitches: 2400 st, mass: 12 g}, reserve: 10 %}")
    assert need.stitches == (10_000,)
    assert need.worked == (Amount(Fraction(10_500), Fraction(50), 1),)
    assert need.reserved == (Amount(Fraction(11_550), Fraction(55), 2),)
    assert need.reserve_takes_ball(0)
    assert need.over(0) == Amount(Fraction(1_050), Fraction(5), None)
    (by_length,) = needs("{length: 105 m, mass: 50 g, swatch: {stitches: 2400 st, length: 25.2 m}, reserve: 10 %}")
    assert (by_length.worked, by_length.reserved) == (need.worked, need.reserved)


@pytest.mark.parametrize(
    ("ball", "expected"),
    [
        ("", Amount(None, Fraction(50), None)),
        ("mass: 20 g, ", Amount(None, Fraction(50), 3)),
        ("length: 105 m, ", Amount(None, Fraction(50), None)),  # grams say nothing about metres without the ball's mass
    ],
)
def test_what_the_ball_does_not_tell_is_left_out(ball: str, expected: Amount) -> None:
    (need,) = needs(f"{{{ball}swatch: {{stitches: 2400 st, mass: 12 g}}}}")
    assert need.worked == need.reserved == (expected,)


def test_a_swatch_of_two_gauges_is_counted_by_the_one_it_names() -> None:
    """20 x 30 sts and rows over 10 cm are 600 stitches in 100 sq cm, 10 x 20 are 200."""
    gauge = "{{stitches: {} st / 10 cm, rows: {} row / 10 cm}}"
    gauges = f"gauge: {{a: {gauge.format(20, 30)}, b: {gauge.format(10, 20)}}}\n"
    swatch = "{{swatch: {{width: 10 cm, height: 10 cm, gauge: {}, length: 6 m}}}}"
    (a,), (b,) = (needs(swatch.format(name), more=gauges) for name in "ab")
    assert [one.worked[0].length for one in (a, b)] == [10_000, 30_000]


def test_without_a_swatch_there_are_stitches_and_no_amounts() -> None:
    (need,) = needs("{length: 105 m, mass: 50 g, reserve: 10 %}")
    assert (need.stitches, need.worked, need.reserved) == ((10_000,), (), ())


STITCHES = "swatch: {stitches: 100 st, length: 1 m}"


def test_every_stitch_is_of_one_yarn() -> None:
    yarn = f"{{main: {{{STITCHES}}}, contrast: {{{STITCHES}}}, C: {{{STITCHES}}}}}"
    rows = """Row 1: *K1 MC, k1 CC; rep from * to end.
Rows 2 to 7 (CC): Knit.
Rows 8 to 10: *K3 C, k2 MC; rep from * to end."""
    found = needs(yarn, rows)
    # MC: the cast-on, 50, and 40 in each of rows 8 to 10. CC: 50, six rows, the bind-off, being in hand. C: 60 each.
    assert [need.stitches for need in found] == [(100 + 50 + 120,), (50 + 600 + 100,), (180,)]
    assert sum(need.stitches[0] for need in found) == 12 * 100
    assert not any(need.incomplete[0] for need in found)


def test_yarns_held_together_are_both_needed() -> None:
    found = needs(f"{{main: {{{STITCHES}}}, halo: {{called: main, {STITCHES}}}}}")
    assert [need.worked[0].length for need in found] == [10_000, 10_000]


def test_stitches_in_a_yarn_nobody_answers_to_leave_the_amounts_incomplete() -> None:
    rows = "Rows 1 to 4 (3, 4): Knit.\nRow 5 (B): Knit."
    found = needs(f"{{main: {{{STITCHES}}}, contrast: {{{STITCHES}}}}}", rows, "{S: {}, M: {}, L: {}}")
    assert [need.incomplete for need in found] == [(True, True, True)] * 2


def test_rows_told_in_words_leave_the_amounts_of_their_sizes_incomplete() -> None:
    body = """```work
Cast on 10 sts.
```

::: sizes L
```work
Work a flower.   # declared: 10 sts, 4 rows
```
:::
"""
    header = f"---\ntitle: A\nsizes: {{S: {{}}, L: {{}}}}\nyarn: {{{STITCHES}}}\n---\n"
    (need,) = work(grade(read_text(header + body, "a.md").patterns[0])).yarns
    assert need.incomplete == (False, True)


@given(rows=st.integers(1, 400), reserves=st.tuples(st.integers(0, 100), st.integers(0, 100)), ball=st.integers(1, 900))
def test_more_reserve_never_needs_less(rows: int, reserves: tuple[int, int], ball: int) -> None:
    low, high = (
        needs(f"{{length: {ball} m, mass: 50 g, {STITCHES}, reserve: {share} %}}", f"Rows 1 to {rows}: Knit.")[0]
        for share in sorted(reserves)
    )
    for less, more in ((low.worked[0], low.reserved[0]), (low.reserved[0], high.reserved[0])):
        assert less.length is not None
        assert more.length is not None
        assert less.length <= more.length
        assert (less.balls or 0) <= (more.balls or 0)
        # so many balls are enough, and one fewer is not
        assert (more.balls or 0) * ball * 100 >= more.length > ((more.balls or 0) - 1) * ball * 100


def test_a_bigger_size_takes_more() -> None:
    (need,) = needs(f"{{{STITCHES}}}", "Rows 1 to 96 (98, 118): Knit.", "{S: {}, M: {}, L: {}}")
    assert [amount.length for amount in need.worked] == [9_800, 10_000, 12_000]


@settings(max_examples=8, deadline=None)
@given(st.lists(st.integers(1, 80), min_size=2, max_size=4))
def test_pieces_together_take_what_each_takes_alone(rows: list[int]) -> None:
    """Each piece of 100 sts is cast on, knitted and bound off; `needs` begins and ends the first and the last."""
    yarn = "{length: 105 m, mass: 50 g, swatch: {stitches: 2400 st, mass: 12 g}}"
    alone = [needs(yarn, f"Rows 1 to {count}: Knit.")[0] for count in rows]
    seams = "\nBind off all sts.\nCast on 100 sts.\n"
    (together,) = needs(yarn, seams.join(f"Rows 1 to {count}: Knit." for count in rows))
    assert together.stitches == (sum(need.stitches[0] or 0 for need in alone),)
    for measure in ("length", "mass"):
        assert getattr(together.worked[0], measure) == sum(getattr(need.worked[0], measure) for need in alone)
