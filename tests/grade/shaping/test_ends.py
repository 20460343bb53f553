"""Crowns, heels and gussets: published socks, and every sentence worked."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.grade.shaping.carried_out import in_words, knitted, members

from sizewright.grade.shaping.plan import Impossible


def held(heel: int, instep: int) -> tuple[str, ...]:
    """A heel that is turned, with the instep on its holder; two rows."""
    return (
        f"Cast on {heel + instep} sts. Join to work in the round.",
        f"Next Rnd: K{heel}, place next {instep} sts on hold for instep, turn.",
        "Next Row (WS): Purl.",
    )


def test_a_published_sock() -> None:
    """Source: craicnyarn.com 2016: 64 sts, flap of 28 rows, 18 left after the turn; 78, and 64 after 7 rounds."""
    assert knitted("Cast on 32 sts.", *in_words("heel_turn", 32))[-1].after == (18,)
    found = {name: int(value) for name, value in members("sock_gusset", 18, 32, 28, 64).items()}
    assert (found["pick_up"], found["total"], found["decreases"]) == (14, 78, 7)
    entries = knitted(*held(18, 32), *in_words("sock_gusset", 18, 32, 28, 64))
    assert [entry.after[0] for entry in entries if entry.label.startswith("Pick-up")] == [78]
    assert (entries[-1].after, sum(entry.rows[0] for entry in entries)) == ((64,), 2 + 14)


def test_a_sock_by_its_gauge() -> None:
    """Source: slippedstitches.wordpress.com: 7 in at 8 sts to the inch are 56 sts; its heel is worked over half."""
    assert 7 * 8 == 56
    assert knitted("Cast on 28 sts.", *in_words("heel_turn", 56 // 2))[-1].after == (16,)


@given(st.integers(12, 80), st.data())
@settings(max_examples=100, deadline=None)
def test_any_heel_is_turned(heel: int, data: st.DataObject) -> None:
    found = members("heel_turn", heel)
    entries = knitted(f"Cast on {heel} sts.", *in_words("heel_turn", heel, whole=data.draw(st.booleans())))
    assert entries[-1].after[0] == int(found["left"])
    assert heel / 2 + 1 < found["left"] <= heel / 2 + 4
    assert sum(entry.rows[0] for entry in entries) == 2 * found["decreases"]
    # nothing is left beside the turn: all stitches are knitted, from end to end
    knitted(f"Cast on {heel} sts.", *in_words("heel_turn", heel), f"Next Row (RS): K{found['left']}.")


@given(st.integers(6, 40), st.integers(8, 60), st.integers(2, 30), st.integers(1, 20), st.data())
@settings(max_examples=100, deadline=None)
def test_any_gusset_comes_out(left: int, instep: int, pairs: int, decreases: int, data: st.DataObject) -> None:
    total = left + instep + 2 * pairs
    around = total - 2 * decreases
    if around - instep < left + 4:
        return
    lines = in_words("sock_gusset", left, instep, 2 * pairs, around, whole=data.draw(st.booleans()))
    entries = knitted(*held(left, instep), *lines)
    assert entries[-1].after == (around,)
    assert sum(entry.rows[0] for entry in entries) == 2 + 2 * decreases


@given(st.integers(2, 10), st.integers(1, 20), st.integers(1, 20), st.integers(0, 30), st.data())
@settings(max_examples=120, deadline=None)
def test_any_crown_comes_out(sections: int, decreases: int, last: int, spare: int, data: st.DataObject) -> None:
    count, left, rounds = sections * (decreases + last), sections * last, decreases + 1 + spare
    found = members("hat_crown", count, sections, left, rounds)
    lines = in_words("hat_crown", count, sections, left, rounds, whole=data.draw(st.booleans()))
    entries = knitted(f"Cast on {count} sts. Pm and join to work in the round.", *lines)
    assert entries[-1].after == (left,)
    assert sum(entry.rows[0] for entry in entries) == rounds
    assert 1 + found["slow"] + found["fast"] == decreases


@pytest.mark.parametrize(("parts", "left"), [(4, 72), (3, 48), (2, 24)])
def test_a_crown_in_three_rounds(parts: int, left: int) -> None:
    """Source: interweave.com, “Hat-Crown Decreases Explained”: of 96, three rounds leave 75, 50 and 25 %."""
    counts = {4: 96, 3: 72, 2: 48}
    count = counts[parts]
    words = in_words("decrease_evenly_in_round", count, count // parts)
    plain = f"k{parts - 2}, " if parts > 2 else ""
    assert words == (f"[{plain}k2tog] 24 times.",)
    assert knitted(f"Cast on {count} sts. Join to work in the round.", *words)[-1].after == (left,)


@pytest.mark.parametrize(
    ("name", "values", "said"),
    [
        ("hat_crown", (97, 8, 16, 20), "97 sts are no multiple of 8 sections; 96 and 104 are."),
        ("hat_crown", (96, 8, 15, 20), "15 sts are no multiple of 8 sections; 8 and 16 are."),
        ("hat_crown", (96, 8, 96, 20), "96 sts cannot be left of 96; from 8 to 88 can."),
        ("hat_crown", (96, 8, 0, 20), "0 sts cannot be left of 96"),
        ("hat_crown", (96, 8, 16, 10), "10 decrease rounds and one that sets markers are more than 10 rounds."),
        ("hat_crown", (96, 0, 16, 10), "sections is 0; it must be at least 2."),
        ("heel_turn", (10,), "10 sts are too few to turn a heel; it takes 12 at least."),
        ("sock_gusset", (18, 32, 27, 64), "a flap of 27 rows"),
        ("sock_gusset", (18, 32, 28, 63), "15 stitches over cannot be worked in pairs"),
        ("sock_gusset", (18, 32, 28, 80), "78 sts behind the heel are no more than 80 sts for the foot"),
        (
            "sock_gusset",
            (18, 62, 28, 64),
            "2 sts of the sole are too few behind 18 of the heel",
        ),
    ],
)
def test_what_cannot_be_done_is_said(name: str, values: tuple[int, ...], said: str) -> None:
    with pytest.raises(Impossible, match=re.escape(said)):
        members(name, *values)
