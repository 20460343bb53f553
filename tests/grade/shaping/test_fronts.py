"""Half fronts and necks to a point, worked row by row: stitches and rows are those promised, at either side."""

import re
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.grade.shaping.carried_out import Value, in_words, knitted, members

from sizewright.grade.shaping.plan import Impossible
from sizewright.work.worked import Entry

GAUGES = (Fraction(22, 10), Fraction(30, 10))
SIDES = ("left", "right")
DRAWS = settings(max_examples=40, deadline=None)


def rows_of(entries: tuple[Entry, ...]) -> int:
    return sum(entry.rows[0] for entry in entries)


@pytest.mark.parametrize("side", SIDES)
@given(across=st.integers(5, 120), away=st.integers(2, 30), spare=st.integers(0, 60), data=st.data())
@DRAWS
def test_any_armhole_of_half_a_front_comes_out(
    side: str, across: int, away: int, spare: int, data: st.DataObject
) -> None:
    chest, over = across + away, 2 * away + 1 + spare
    name, values = f"{side}_front_armhole", (chest, across, over, *GAUGES)
    entries = knitted(f"Cast on {chest} sts.", *in_words(name, *values, whole=data.draw(st.booleans())))
    assert (entries[-1].after, rows_of(entries)) == ((across,), over)
    # where the back loses as many at either side, its edge is the same: the two are sewn together
    back = members("armhole", across + 2 * away, across, over, *GAUGES)
    assert {key: members(name, *values)[key] for key in back} == back


@pytest.mark.parametrize("side", SIDES)
@given(shoulder=st.integers(2, 60), neck=st.integers(4, 50), spare=st.integers(0, 40), data=st.data())
@DRAWS
def test_any_round_neck_of_half_a_front_comes_out(
    side: str, shoulder: int, neck: int, spare: int, data: st.DataObject
) -> None:
    across, name = shoulder + neck, f"{side}_front_neck"
    try:
        found = members(name, across, neck, 200)
    except Impossible:
        assume(condition=False)
    over = 200 - int(found["even"]) + spare
    assert found["centre"] + 2 * found["twos"] + found["ones"] == neck
    lines = in_words(name, across, neck, over, whole=data.draw(st.booleans()))
    entries = knitted(f"Cast on {across} sts.", *lines)
    assert (entries[-1].after, rows_of(entries)) == ((shoulder,), over)


@pytest.mark.parametrize(("side", "slope", "over"), [("left", "_on_wrong_side", 25), ("right", "", 24)])
def test_a_shoulder_is_sloped_towards_its_armhole(side: str, slope: str, over: int) -> None:
    """The short rows of either front are turned at the end of a row that begins at the neck, on their own side."""
    lines = in_words(f"{side}_front_neck", 40, 16, over) + in_words(f"shoulder_slope{slope}", 24, 8)
    entries = knitted("Cast on 40 sts.", *lines, "Bind off all sts.")
    assert (entries[-1].before, rows_of(entries)) == ((24,), over + 9)


@given(shoulder=st.integers(2, 60), neck=st.integers(2, 60), spare=st.integers(0, 80), data=st.data())
@DRAWS
def test_any_neck_to_a_point_comes_out(shoulder: int, neck: int, spare: int, data: st.DataObject) -> None:
    across, over = neck + 2 * shoulder, 2 * (neck // 2) + 1 + spare
    found = members("v_neckline", across, neck, over)
    lines = in_words("v_neckline", across, neck, over, whole=data.draw(st.booleans()))
    entries = knitted(f"Cast on {across} sts.", *lines)
    ends = [place for place, entry in enumerate(entries) if entry.label == "Bind off"]
    assert [entries[place].before for place in ends] == [(shoulder,), (shoulder,)]
    assert [rows_of(entries[: ends[0]]), rows_of(entries[ends[0] :])] == [over, over]
    assert found["centre"] + 2 * found["decreases"] == neck


def test_a_neck_to_a_point() -> None:
    """By hand: 16 decreases at either side, the first in row 3; 15 over 53 rows are 4 × 2 + 11 × 4, and 1 even."""
    found = members("v_neckline", 80, 32, 56)
    told = ("decreases", "every", "times", "then_every", "then_times", "even")
    assert [found[name] for name in told] == [16, 2, 4, 4, 11, 1]


@pytest.mark.parametrize("side", SIDES)
@given(
    away=st.integers(5, 40),
    neck=st.integers(4, 45),
    shoulder=st.integers(3, 50),
    spare=st.integers(0, 50),
    data=st.data(),
)
@DRAWS
def test_any_armhole_with_a_pointed_neck_comes_out(
    side: str, away: int, neck: int, shoulder: int, spare: int, data: st.DataObject
) -> None:
    across, over = shoulder + neck, 2 * max(away, neck) + 5 + spare
    name, values = f"{side}_front_v_neck", (across + away, across, neck, over, *GAUGES)
    try:
        found = members(name, *values)
    except Impossible:
        assume(condition=False)
    lines = in_words(name, *values, whole=data.draw(st.booleans()))
    entries = knitted(f"Cast on {across + away} sts.", *lines)
    assert (entries[-1].after, rows_of(entries)) == ((shoulder,), over)
    edge = members("armhole", across + 2 * away, across, over, *GAUGES)
    assert all(edge[key] == found[key] for key in ("bind_off", "decreases", "edge", "depth"))


def test_an_armhole_with_a_pointed_neck() -> None:
    """By hand: 5 + 5 at the armhole; 16 at the neck: 3 + 1 beside them, 12 over 43 rows: 1, 1 × 2, 10 × 4."""
    found = members("left_front_v_neck", 52, 42, 16, 56, *GAUGES)
    told = ("full", "again", "every", "times", "then_every", "then_times", "even", "shoulder")
    assert [found[name] for name in told] == [2, 0, 2, 1, 4, 10, 1, 26]


@pytest.mark.parametrize(
    ("name", "values", "said"),
    [
        ("left_front_armhole", (42, 42, 56, *GAUGES), "42 sts at the chest are no more than 42 sts across"),
        ("right_front_armhole", (43, 42, 56, *GAUGES), "1 st at a side is too little for an armhole"),
        ("left_front_armhole", (72, 42, 20, *GAUGES), "15 decreases every other row take 31 rows, the armhole has 20."),
        ("left_front_neck", (40, 40, 24), "a neck of 40 sts leaves no shoulder in 40 sts."),
        ("right_front_neck", (40, 4, 24), "leaves 2 to be shaped, 36 sts of shoulder; 3 and 2 at least are needed."),
        ("right_front_neck", (40, 16, 12), "the neck takes 13 rows, there are 12; bind off more at once or go deeper."),
        ("left_front_v_neck", (42, 42, 16, 56, *GAUGES), "42 sts at the chest are no more than 42 sts across"),
        (
            "left_front_v_neck",
            (52, 42, 41, 56, *GAUGES),
            "a neck of 41 sts leaves 1 sts of shoulder in 42 sts; it takes 3.",
        ),
        ("left_front_v_neck", (46, 42, 16, 56, *GAUGES), "2 decreases at the armhole are too few to be shared"),
        ("right_front_v_neck", (62, 42, 6, 56, *GAUGES), "a neck of 6 sts is decreased beside the 10 decreases"),
        ("right_front_v_neck", (52, 42, 30, 56, *GAUGES), "the neck takes 63 rows, there are 56; begin it below"),
        ("v_neckline", (80, 80, 24), "a neck of 80 sts leaves no shoulders in 80 sts."),
        ("v_neckline", (80, 31, 56), "80 sts with a neck of 31 leave no two shoulders alike; a neck of 30 or 32 does."),
        ("v_neckline", (80, 32, 30), "the neck takes 33 rows, there are 30; begin lower."),
        ("v_neckline", (81, 1, 30), "leaves 0 to be decreased at either side"),
    ],
)
def test_what_cannot_be_done_is_said(name: str, values: tuple[Value, ...], said: str) -> None:
    with pytest.raises(Impossible, match=re.escape(said)):
        members(name, *values)
