"""Stitches picked up along row ends: published sums, runs and parts; the printed sentence is worked."""

import re
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.grade.shaping.carried_out import in_words, knitted, members

from sizewright.grade.shaping.plan import Impossible
from sizewright.grade.shaping.spread import in_round

EDGE = ("Cast on 1 st.", "Row 1: K1.", "Bind off all sts.")


def runs(found: dict[str, Fraction]) -> list[int]:
    """The stitches of each run between two rows that are skipped."""
    number = {name: int(value) for name, value in found.items() if value.denominator == 1}
    first = [*[number["gap"]] * number["run"], number["other"]] * number["times"]
    then = [*[number["gap"]] * number["then_run"], number["other"]] * number["then_times"]
    return [*first, *then, number["end"]]


def picked_up(name: str, *values: int | str | Fraction) -> int | None:
    return knitted(*EDGE, f"Row 1: {in_words(name, *values)[0]}")[-1].after[0]


def test_three_for_every_four() -> None:
    """Source: kelbournewoolens.com 2015: 20 sts, 26 rows to 4 in: 10/13, so 3 of 4, 3 of 4 and 4 of 5."""
    found = members("pick_up_ratio", Fraction(20, 4), Fraction(26, 4))
    assert found == {"pick": 3, "of": 4, "exact": Fraction(10, 13)}
    exact = in_round(10, 3)  # 13 rows give 10 sts and skip 3, again and again
    assert (exact["gap"], exact["run"], exact["other"], exact["times"]) == (3, 2, 4, 1)


def test_71_along_88_rows() -> None:
    """Source: knittinghelp.com t/124191: (pick up 4, skip 1) 17 times is 68 sts over 85 rows, then 3."""
    found = members("pick_up", 71, 88)
    assert found["skips"] == 17
    assert runs(found) == [4] * 17 + [3]
    assert picked_up("pick_up", 71, 88) == 71


def test_a_band_that_fits_its_repeat() -> None:
    """By hand: 88 rows at 26 to 4 in are 13.538 in, 67.69 sts at 20 to 4 in; of 62, 66 and 70, 66 is nearest."""
    values = (88, Fraction(20, 4), Fraction(26, 4), 4, 2)
    found = members("pick_up_along", *values)
    assert found["total"] == 66
    assert found["longer"] == Fraction(66 * 4, 20) - Fraction(88 * 4, 26)
    assert picked_up("pick_up_along", *values) == 66


@given(st.integers(1, 400), st.data())
@settings(max_examples=300, deadline=None)
def test_runs_use_every_row_and_differ_by_one(rows: int, data: st.DataObject) -> None:
    count = data.draw(st.integers(rows // 2 + 1, rows))
    found = runs(members("pick_up", count, rows))
    assert sum(found) == count
    assert sum(found) + len(found) - 1 == rows
    assert max(found) - min(found) <= 1
    assert min(found) >= 1


@given(st.integers(20, 300), st.integers(1, 8), st.integers(0, 4), st.integers(70, 98))
@settings(max_examples=60, deadline=None)
def test_the_total_fits_and_is_picked_up(rows: int, multiple: int, plus: int, ratio: int) -> None:
    values = (rows, Fraction(ratio, 40), Fraction(100, 40), multiple, plus)
    asked = Fraction(rows * ratio, 100)
    fitting = [count for count in range(1, rows + multiple + plus) if count % multiple == plus % multiple]
    nearest = min(fitting, key=lambda count: (abs(count - asked), -count))
    if not rows // 2 + 1 <= nearest <= rows or nearest < plus:
        return
    found = members("pick_up_along", *values)
    assert found["total"] == nearest
    assert picked_up("pick_up_along", *values) == nearest


@given(st.integers(1, 8), st.integers(1, 300), st.data())
@settings(max_examples=60, deadline=None)
def test_the_parts_between_markers_are_alike(parts: int, count: int, data: st.DataObject) -> None:
    rows = data.draw(st.integers(max(count, parts), 400))
    found = {name: int(value) for name, value in members("pick_up_by_markers", count, rows, parts).items()}
    pieces = [
        (found[part], found[f"{part}_rows"])
        for part in ("first", "second", "third")
        for _ in range(found[f"{part}_times"])
    ]
    assert len(pieces) == parts
    for total, each in zip((count, rows), zip(*pieces, strict=True), strict=True):
        assert sum(each) == total
        assert max(each) - min(each) <= 1
    assert picked_up("pick_up_by_markers", count, rows, parts) == count


@pytest.mark.parametrize(
    ("name", "values", "said"),
    [
        ("pick_up", (89, 88), "88 rows give 88 sts at most, not 89."),
        ("pick_up", (44, 88), "44 sts are too few to skip single rows of 88; it takes 45 at least."),
        ("pick_up", (0, 88), "count is 0; it must be at least 1."),
        ("pick_up_ratio", (2, 0), "row gauge is 0; it must be more."),
        ("pick_up_ratio", (2, 1), "2 sts would come from each row"),
        ("pick_up_along", (4, 2, 3, 20), "4 rows ask for 2.67 sts; no multiple of 20 plus 0 is near."),
        ("pick_up_by_markers", (3, 3, 4), "3 rows cannot be marked in 4 parts."),
        ("pick_up_by_markers", (30, 20, 4), "20 rows give 20 sts at most, not 30."),
    ],
)
def test_what_cannot_be_done_is_said(name: str, values: tuple[int, ...], said: str) -> None:
    with pytest.raises(Impossible, match=re.escape(said)):
        members(name, *values)
