"""Armholes and the caps sewn into them, necks and shoulders: worked row by row, and measured by a method of its own."""

import re
from fractions import Fraction
from math import hypot

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.grade.shaping.carried_out import in_words, knitted, members

from sizewright.grade.shaping.plan import Impossible
from sizewright.grade.shaping.set_in import slope
from sizewright.work.worked import Entry

STITCH_GAUGE, ROW_GAUGE = Fraction(22, 10), Fraction(30, 10)
GAUGES = (STITCH_GAUGE, ROW_GAUGE)


def rows_of(entries: tuple[Entry, ...]) -> int:
    return sum(entry.rows[0] for entry in entries)


@given(st.integers(40, 220), st.integers(2, 30), st.integers(0, 60), st.data())
@settings(max_examples=80, deadline=None)
def test_any_armhole_comes_out(across: int, away: int, spare: int, data: st.DataObject) -> None:
    chest, over = across + 2 * away, 2 * away + 1 + spare
    lines = in_words("armhole", chest, across, over, *GAUGES, whole=data.draw(st.booleans()))
    entries = knitted(f"Cast on {chest} sts.", *lines)
    assert (entries[-1].after, rows_of(entries)) == ((across,), over)


def test_the_edge_of_an_armhole() -> None:
    """By hand: 5 sts bound off are 2.2727 cm, 5 slopes over 2 rows and a stitch 5 × 0.80683, 46 rows 15.3333 cm."""
    found = members("armhole", 100, 80, 56, *GAUGES)
    assert found["edge"] == pytest.approx(5 / 2.2 + 5 * hypot(2 / 3, 1 / 2.2) + 46 / 3, abs=1e-5)


def cap_edge(found: dict[str, Fraction]) -> float:
    """The edge of a cap by its numbers, in floating point."""
    width, height = 1 / float(STITCH_GAUGE), 1 / float(ROW_GAUGE)
    number = {name: float(value) for name, value in found.items()}
    fast = (number["decreases"] - number["slow"]) * hypot(number["fast_every"] * height, width)
    slow = number["slow"] * hypot(number["slow_every"] * height, width)
    top = number["steps"] * hypot(2 * height, 2 * width)
    return (2 * number["bind_off"] + number["top"]) * width + 2 * (fast + slow + top)


@given(st.integers(40, 130), st.integers(2, 10), st.integers(250, 600), st.data())
@settings(max_examples=80, deadline=None)
def test_any_cap_is_as_long_as_its_armhole(sleeve: int, bound: int, edge: int, data: st.DataObject) -> None:
    values = (sleeve, bound, Fraction(edge, 10), *GAUGES)
    try:
        found = members("sleeve_cap", *values)
    except Impossible:
        assume(condition=False)
    assert abs(found["off"]) <= 1
    assert cap_edge(found) == pytest.approx(float(Fraction(edge, 10) + found["off"]), abs=1e-4)
    entries = knitted(f"Cast on {sleeve} sts.", *in_words("sleeve_cap", *values, whole=data.draw(st.booleans())))
    assert (entries[-2].after[0], rows_of(entries)) == (int(found["top"]), int(found["cap_rows"]))
    assert found["height"] == found["cap_rows"] / ROW_GAUGE


def test_a_cap_for_its_armhole() -> None:
    """Common practice, no source: a cap is about two thirds of its armhole in height."""
    underarm = members("armhole", 100, 80, 56, *GAUGES)
    found = members("sleeve_cap", 72, underarm["bind_off"], 2 * underarm["edge"], *GAUGES)
    assert abs(found["off"]) < Fraction(1, 2)
    assert Fraction(55, 100) < found["height"] / underarm["depth"] < Fraction(80, 100)


@given(st.integers(0, 10**6), st.integers(0, 10**6))
def test_a_slope_is_its_square_root_rounded_down(rise: int, across: int) -> None:
    found = slope(Fraction(rise, 1000), Fraction(across, 1000))
    exact = Fraction(rise, 1000) ** 2 + Fraction(across, 1000) ** 2
    assert found**2 <= exact < (found + Fraction(1, 10**6)) ** 2


@given(st.integers(2, 60), st.integers(4, 80), st.integers(0, 40), st.data())
@settings(max_examples=80, deadline=None)
def test_any_neck_comes_out(shoulder: int, neck: int, spare: int, data: st.DataObject) -> None:
    across = neck + 2 * shoulder
    try:
        found = members("neckline", across, neck, 200)
    except Impossible:
        assume(condition=False)
    over = 200 - int(found["even"]) + spare
    lines = in_words("neckline", across, neck, over, whole=data.draw(st.booleans()))
    entries = knitted(f"Cast on {across} sts.", *lines)
    ends = [place for place, entry in enumerate(entries) if entry.label == "Bind off"]
    assert [entries[place].before for place in ends] == [(shoulder,), (shoulder,)]
    assert [rows_of(entries[: ends[0]]), rows_of(entries[ends[0] :])] == [over, over]
    assert found["centre"] + 2 * (2 * found["twos"] + found["ones"]) == neck


@given(st.integers(12, 40), st.integers(12, 60), st.integers(0, 15), st.integers(3, 5), st.data())
@settings(max_examples=20, deadline=None)
def test_both_sides_of_a_neck_end_in_sloped_shoulders(
    shoulder: int, neck: int, spare: int, turns: int, data: st.DataObject
) -> None:
    """The first side has an odd number of rows, so that its slope begins at the armhole; the second one row more."""
    across, whole = neck + 2 * shoulder, data.draw(st.booleans())
    over = 200 - int(members("neckline", across, neck, 200)["even"]) + 2 * spare
    slopes = ("shoulder_slope_on_wrong_side", "shoulder_slope")
    sides = [
        (*in_words(f"neckline_{side}_side", across, neck, rows, whole=whole), *in_words(slope, shoulder, 2 * turns))
        for side, rows, slope in zip(("first", "second"), (over, over + 1), slopes, strict=True)
    ]
    entries = knitted(f"Cast on {across} sts.", *sides[0], "Bind off all sts.", *sides[1], "Bind off all sts.")
    ends = [place for place, entry in enumerate(entries) if entry.label == "Bind off"]
    assert [entries[place].before for place in ends] == [(shoulder,), (shoulder,)]
    rows = [rows_of(entries[: ends[0]]), rows_of(entries[ends[0] :])]
    assert rows == [over + 2 * turns + 1, over + 1 + 2 * turns + 1]


@given(st.integers(1, 70), st.integers(3, 14), st.sampled_from(("RS", "WS")), st.data())
@settings(max_examples=80, deadline=None)
def test_any_shoulder_is_sloped_evenly(shoulder: int, turns: int, side: str, data: st.DataObject) -> None:
    name, before = ("shoulder_slope_on_wrong_side", ("Row 1: Knit.",)) if side == "WS" else ("shoulder_slope", ())
    assume(shoulder > turns)
    found = {key: int(value) for key, value in members(name, shoulder, 2 * turns).items()}
    steps = [
        found["first"],
        *[found["step"]] * (found["again"] + 1),
        *[found["then_step"]] * (found["then_again"] + 1),
        found["last"],
    ]
    assert (len(steps), sum(steps)) == (turns + 1, shoulder)
    assert max(steps) - min(steps) <= 1
    assert steps == sorted(steps, reverse=True)
    entries = knitted(
        f"Cast on {shoulder} sts.", *before, *in_words(name, shoulder, 2 * turns, whole=data.draw(st.booleans()))
    )
    assert entries[-1].after == (shoulder,)
    assert rows_of(entries) == len(before) + 2 * turns + 1


@pytest.mark.parametrize(
    ("name", "values", "said"),
    [
        ("armhole", (80, 80, 56, *GAUGES), "80 sts at the chest are no more than 80 sts across"),
        ("armhole", (99, 80, 56, *GAUGES), "19 stitches less across cannot be worked in pairs"),
        ("armhole", (82, 80, 56, *GAUGES), "1 st at a side is too little for an armhole"),
        ("armhole", (140, 80, 20, *GAUGES), "15 decreases every other row take 31 rows, the armhole has 20."),
        ("sleeve_cap", (72, 30, 40, *GAUGES), "6 at least must be left between."),
        ("sleeve_cap", (130, 5, 25, *GAUGES), "longer than the armhole's 25 cm at the nearest; take fewer sleeve"),
        ("sleeve_cap", (24, 2, 60, *GAUGES), "shorter than the armhole's 60 cm at the nearest; take more sleeve"),
        ("sleeve_cap", (72, 5, 0, *GAUGES), "armhole edge is 0; it must be more."),
        ("neckline", (80, 80, 24), "a neck of 80 sts leaves no shoulders in 80 sts."),
        ("neckline", (80, 31, 24), "49 stitches beside the neck cannot be worked in pairs"),
        ("neckline", (80, 4, 24), "leaves 1 to be shaped at either side"),
        ("neckline", (80, 32, 12), "the neck takes 13 rows, there are 12"),
        ("shoulder_slope", (25, 7), "7 rows of short rows cannot be worked in pairs, one at either end; 6 or 8 can."),
        ("shoulder_slope", (25, 4), "4 rows are 2 turns; a slope needs 6 rows at least."),
        ("shoulder_slope", (5, 10), "5 sts cannot be worked in 6 steps; at most 8 rows fit."),
    ],
)
def test_what_cannot_be_done_is_said(name: str, values: tuple[int | Fraction, ...], said: str) -> None:
    with pytest.raises(Impossible, match=re.escape(said)):
        members(name, *values)
