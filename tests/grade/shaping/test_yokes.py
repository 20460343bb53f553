"""Raglan and circular yokes: published counts, both rates of a raglan, every sentence knitted round by round."""

import re

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.grade.shaping.carried_out import in_words, knitted, members

from sizewright.grade.shaping.plan import Impossible


def test_a_yoke_by_percentages() -> None:
    """Source: handmadestitchbystitch.wordpress.com, after E. Zimmermann, Knitting Without Tears: K = 200."""
    assert members("yoke_shares", 200) == {"sleeve": 66, "underarm": 16, "yoke": 268, "neck": 80}
    assert in_words("yoke_shares", 200)[0].startswith("Note the counts: 66 sts for each sleeve, 16 of them")


def test_three_decreases_of_one_third() -> None:
    """Source: the same: 268 → 179 → 120 → 80."""
    entries = knitted("Cast on 268 sts. Join to work in the round.", *in_words("yoke_decreases", 268, 80, 64))
    assert [entry.after[0] for entry in entries if "Dec Rnd" in entry.label] == [179, 120, 80]
    assert sum(entry.rows[0] for entry in entries) == 64


@given(st.integers(60, 400), st.integers(30, 60), st.integers(4, 100), st.integers(1, 24), st.data())
@settings(max_examples=120, deadline=None)
def test_any_yoke_comes_out(yoke: int, percent: int, rounds: int, repeat: int, data: st.DataObject) -> None:
    neck = yoke * percent // 100
    try:
        lines = in_words("yoke_decreases", yoke, neck, rounds, repeat, whole=data.draw(st.booleans()))
    except Impossible:
        assume(condition=False)
    entries = knitted(f"Cast on {yoke} sts. Join to work in the round.", *lines)
    first, second, third = (entry.after[0] or 0 for entry in entries if "Dec Rnd" in entry.label)
    assert first % repeat == second % repeat == 0
    assert third == neck
    assert sum(entry.rows[0] for entry in entries) == rounds
    assert abs(first - (yoke - (yoke - neck) * 9 / 19)) <= repeat / 2


def raglan(body: int, sleeve: int, *lines: str) -> tuple[str, ...]:
    """A yoke with its markers: front, sleeve, back, sleeve."""
    total = 2 * (body + sleeve)
    markers = f"Rnd 1: K{body}, pm, k{sleeve}, pm, k{body}, pm, k to end."
    return (f"Cast on {total} sts. Pm and join to work in the round.", markers, *lines)


def test_a_raglan_at_two_rates() -> None:
    """By hand: 26 and 20 decreases; 25 and 19 behind the first over 58 rounds are 4 and 10 slow ones."""
    found = {name: int(value) for name, value in members("raglan", 104, 68, 52, 28, 60).items()}
    assert (found["even"], found["slow"], found["body"], found["again"], found["fast"]) == (1, 4, 2, 5, 9)
    assert (found["body_decreases"], found["sleeve_decreases"], found["left"]) == (26, 20, 160)
    # body: 4 + 9 and two in each of 6 cycles; sleeve: one in each
    assert (1 + 4 + 2 * 6 + 9, 1 + 4 + 6 + 9) == (26, 20)
    entries = knitted(*raglan(104, 68, *in_words("raglan", 104, 68, 52, 28, 60)))
    assert entries[-1].after == (160,)
    assert sum(entry.rows[0] for entry in entries) == 1 + 60


def test_a_raglan_from_the_neck_is_one_read_backwards() -> None:
    """By hand: the same 26 and 20 changes over the same 60 rounds, the fast ones first."""
    up = members("raglan", 104, 68, 52, 28, 60)
    down = members("raglan_from_neck", 52, 28, 104, 68, 60)
    times = ("slow", "body", "sleeve", "both", "neither", "again", "fast", "even")
    assert [down[name] for name in times] == [up[name] for name in times]
    assert [int(down[name]) for name in ("body_increases", "sleeve_increases", "total")] == [26, 20, 344]
    entries = knitted(*raglan(52, 28, *in_words("raglan_from_neck", 52, 28, 104, 68, 60)))
    full = [entry.after[0] for entry in entries if entry.label == "Full Inc Rnd"]
    assert (full[0], entries[-1].after) == (168, (344,))


def test_a_back_with_more_stitches_than_the_front() -> None:
    lines = in_words("raglan", 104, 68, 52, 28, 60, 6)
    markers = "Rnd 1: K104, pm, k68, pm, k110, pm, k to end."
    entries = knitted("Cast on 350 sts. Pm and join to work in the round.", markers, *lines)
    assert entries[-1].after == (166,)


@pytest.mark.parametrize("name", ["raglan", "raglan_from_neck"])
@given(
    changes=st.tuples(*[st.integers(2, 40)] * 2),
    small=st.tuples(*[st.integers(4, 60)] * 2),
    spare=st.integers(0, 40),
    data=st.data(),
)
@settings(max_examples=50, deadline=None)
def test_any_raglan_comes_out(
    name: str, changes: tuple[int, int], small: tuple[int, int], spare: int, data: st.DataObject
) -> None:
    most, least = max(changes) - 1, min(changes) - 1
    assume(most <= 2 * least and most > 1)
    rounds = 1 + 2 * most + spare
    wide = (small[0] + 2 * changes[0], small[1] + 2 * changes[1])
    (body, sleeve), after = (wide, small) if name == "raglan" else (small, wide)
    values = (body, sleeve, *after, rounds)
    # each section ends with its own count: k to each marker would not come out otherwise
    check = "Next Rnd: K{0}, sm, k{1}, sm, k{0}, sm, k{1}, sm.".format(*after)
    entries = knitted(*raglan(body, sleeve, *in_words(name, *values, whole=data.draw(st.booleans())), check))
    assert entries[-1].after == (2 * sum(after),)
    assert sum(entry.rows[0] for entry in entries) == 1 + rounds + 1


@pytest.mark.parametrize(
    ("name", "values", "said"),
    [
        ("raglan", (104, 68, 52, 28, 50), "26 decreases, one every 2nd round, need 51 rounds, there are 50; 25 fit."),
        ("raglan", (103, 68, 52, 28, 60), "51 decreases in the body cannot be worked in pairs"),
        ("raglan", (104, 68, 52, 66, 60), "26 decreases of the body and 1 of the sleeve are too far apart"),
        ("raglan", (104, 68, 104, 28, 60), "the body has 104 sts and should keep 104: there is nothing to decrease."),
        ("raglan", (104, 68, 52, 2, 60), "2 sts are left in the sleeve; the decreases at its two sides need 4."),
        ("raglan", (56, 32, 52, 28, 3), "fewer than 3 shaping rounds make no raglan line"),
        (
            "raglan_from_neck",
            (52, 1, 104, 68, 60),
            "the sleeve begins with 1 sts; the increases at its two sides need 2",
        ),
        ("raglan_from_neck", (52, 28, 52, 68, 60), "the body has 52 sts and should come to 52: there is nothing to"),
        ("raglan_from_neck", (52, 28, 105, 68, 60), "53 increases in the body cannot be worked in pairs"),
        ("raglan_from_neck", (52, 28, 104, 68, 50), "26 increases, one every 2nd round, need 51 rounds, there are 50"),
        ("yoke_shares", (200, "1/10", "1/5"), "40 sts held at each underarm are more than the sleeve's 20 sts"),
        ("yoke_decreases", (80, 80, 60), "the neck of 80 sts is no smaller than the yoke of 80 sts."),
        ("yoke_decreases", (268, 80, 3), "rounds is 3; it must be at least 4."),
        ("yoke_decreases", (90, 80, 60, 40), "with a repeat of 40 sts the counts would be 90, 80, 80, 80"),
        ("yoke_decreases", (268, 10, 60), "at most"),
    ],
)
def test_what_cannot_be_done_is_said(name: str, values: tuple[int | str, ...], said: str) -> None:
    with pytest.raises(Impossible, match=re.escape(said)):
        members(name, *values)
