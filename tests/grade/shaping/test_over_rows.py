"""Shaping over rows: published sleeves, both orders, right-side rows; the printed sentence is worked row by row."""

import re
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.grade.shaping.carried_out import in_words, knitted, members

from sizewright.grade.shaping.over_rows import OVER_ROWS
from sizewright.grade.shaping.plan import Impossible

NAMES = tuple(plan.name for plan in OVER_ROWS)


def rhythm(found: dict[str, Fraction]) -> tuple[int, ...]:
    return tuple(int(found[name]) for name in ("every", "times", "then_every", "then_times", "even"))


@pytest.mark.parametrize(
    ("count", "over", "shorter_first", "longer_first"),
    [
        # “Knitting and the Magic Formula”, getknitting.com: 36 a side over 140 rows
        (72, 140, (3, 4, 4, 32, 0), (4, 32, 3, 4, 0)),
        # designyourownsweater.blogspot.com 2007: 42 a side over 176 rows
        (84, 176, (4, 34, 5, 8, 0), (5, 8, 4, 34, 0)),
    ],
)
def test_published_sleeves(
    count: int, over: int, shorter_first: tuple[int, ...], longer_first: tuple[int, ...]
) -> None:
    assert rhythm(members("increase_at_both_ends", count, over, 1)) == shorter_first
    assert rhythm(members("increase_at_both_ends_slow_first", count, over, 1)) == longer_first
    assert rhythm(members("increase_at_end", count // 2, over, 1)) == shorter_first


def test_a_published_sleeve_from_gauge_to_top() -> None:
    """Source: designyourownsweater.blogspot.com 2007: cuff 26 cm and top 56 cm at 28 sts to 10 cm are 72 and 156."""
    assert rhythm(members("sleeve_taper", 72, 156, 176, 1)) == (4, 34, 5, 8, 0)
    entries = knitted("Cast on 72 sts.", *in_words("sleeve_taper", 72, 156, 176, 1))
    assert (entries[-1].after, sum(entry.rows[0] for entry in entries)) == ((156,), 176)


def test_a_sleeve_with_rows_even_behind() -> None:
    """Source: tessknits.com: 34 sts, 8 rows of seed, increases on row 9 and every 4th row 10 times; 62 rows, 56 sts."""
    found = members("increase_at_both_ends", 20, 40)  # the ten behind the first
    assert rhythm(found) == (4, 10, 6, 0, 0)
    lines = ("Cast on 34 sts.", "Work 8 rows in garter stitch.", "Inc 1 st at each end of next row. (36 sts)")
    entries = knitted(*lines, *in_words("increase_at_both_ends", 20, 40), "Work 13 rows even.")
    assert (entries[-1].after, sum(entry.rows[0] for entry in entries)) == ((56,), 62)


def by_brute_force(changes: int, over: int, step: int) -> set[tuple[int, int, int]]:
    """All ways to have so many intervals of two neighbouring multiples of `step` that use as many rows as they can."""
    used = over // step * step
    return {
        (each * step, changes - longer, longer)
        for each in range(1, over // step + 1)
        for longer in range(changes)
        if (changes - longer) * each * step + longer * (each + 1) * step == used
    }


@given(st.sampled_from((1, 2, 4)), st.integers(1, 30), st.data())
@settings(max_examples=200, deadline=None)
def test_the_intervals_are_the_only_ones(step: int, changes: int, data: st.DataObject) -> None:
    over = data.draw(st.integers(changes * step, 120))
    found = members("decrease_at_end", changes, over, step)
    chosen = tuple(int(found[name]) for name in ("every", "times", "then_times"))
    assert by_brute_force(changes, over, step) == {chosen}
    assert 0 <= found["even"] < step


@given(st.sampled_from(NAMES), st.integers(0, 40), st.sampled_from((1, 2)), st.data())
@settings(max_examples=150, deadline=None)
def test_the_sentence_worked_gives_count_and_rows(name: str, changes: int, step: int, data: st.DataObject) -> None:
    over = data.draw(st.integers(changes * step, 300))
    count = changes * 2 if "both" in name or "round" in name else changes
    found = members(name, count, over, step)
    join = " Join to work in the round." if "round" in name else ""
    entries = knitted(f"Cast on 200 sts.{join}", *in_words(name, count, over, step, whole=data.draw(st.booleans())))
    assert entries[-1].after == (200 + count if "increase" in name else 200 - count,)
    assert sum(entry.rows[0] for entry in entries) == over
    if step == 2:
        assert found["every"] % 2 == found["then_every"] % 2 == 0  # so that all fall on one side
    first, second = found["every"], found["then_every"]
    assert abs(first - second) == step
    assert ("slow_first" in name and found["then_times"] > 0) == (first > second)


@given(st.integers(1, 15), st.integers(1, 20), st.integers(0, 60))
@settings(max_examples=60, deadline=None)
def test_a_thumb_gusset_worked(start: int, increases: int, spare: int) -> None:
    over = increases + spare
    lines = ("Cast on 60 sts. Pm and join to work in the round.", f"Rnd 1: K20, pm, k{start}, pm, k to end.")
    entries = knitted(*lines, *in_words("thumb_gusset", start, start + 2 * increases, over))
    assert entries[-1].after == (60 + 2 * increases,)
    assert sum(entry.rows[0] for entry in entries) == 1 + over


@pytest.mark.parametrize(
    ("name", "values", "said"),
    [
        ("increase_at_both_ends", (84, 40, 1), "42 shaping rows need 42 rows, there are 40; at most 40 fit."),
        (
            "increase_at_both_ends",
            (84, 80),
            "42 shaping rows, 2 rows apart, need 84 rows, there are 80; at most 40 fit.",
        ),
        ("decrease_at_both_ends", (7, 80), "7 decreases cannot be worked in pairs, one at either end; 6 or 8 can."),
        ("decrease_at_end", (7, 0), "at most 0 fit"),
        ("decrease_at_end", (-7, 20), "count is −7"),
        ("decrease_at_end", (7, "41/2"), "over is 20.5, which is not whole"),
        ("decrease_at_end", (7, 20, 0), "step is 0; it must be at least 1"),
        ("sleeve_taper", (60, 59, 80), "60 sts to 59 sts are no increases"),
        ("sleeve_taper", (60, 75, 80), "60 to 75 sts is an odd number of increases; pairs of them lead to 74 or 76."),
        ("thumb_gusset", (0, 6, 30), "start is 0; it must be at least 1"),
        ("thumb_gusset", (5, 5, 30), "no increases"),
    ],
)
def test_what_cannot_be_done_is_said(name: str, values: tuple[int | str, ...], said: str) -> None:
    with pytest.raises(Impossible, match=re.escape(said)):
        members(name, *values)
