"""Changes spread along a row or round: published sums, an independent method, and the printed sentence knitted."""

import re
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.grade.shaping.carried_out import in_words, knitted, members

from sizewright.grade.shaping.plan import Impossible
from sizewright.grade.shaping.table import PLANS
from sizewright.read.plans import MEMBER, PLAN_WORDS

DECREASES = ("decrease_evenly", "decrease_evenly_in_round")
INCREASES = ("increase_evenly", "increase_evenly_in_round", "increase_between")


def sections(found: dict[str, Fraction]) -> list[int]:
    """The whole gaps in working order, read from the members as the sentence reads."""
    number = {name: int(value) for name, value in found.items()}
    first = [*[number["gap"]] * number["run"], number["other"]] * number["times"]
    return first + [*[number["gap"]] * number["then_run"], number["other"]] * number["then_times"]


def test_four_increases_over_40_sts() -> None:
    """Source: dummies.com, "Increase at several points": 40 sts, 4 increases: 5 sections of 8."""
    found = members("increase_between", 40, 4)
    assert [*sections(found), int(found["end"])] == [8] * 5
    assert sum(sections(members("increase_evenly", 40, 4))) == 30  # the other layout: 5 sts before and behind


def test_five_increases_over_60_sts() -> None:
    """Source: wolfandturtle.net 2005: k10, m1 five times, k10; 65 sts."""
    found = members("increase_between", 60, 5)
    assert [*sections(found), int(found["end"])] == [10] * 6
    assert knitted("Cast on 60 sts.", *in_words("increase_between", 60, 5))[-1].after == (65,)


def test_six_increases_over_48_sts() -> None:
    """Source: moderndailyknitting.com, "Evenly Across": groups of 8 with one increase in each, 54 sts."""
    assert sections(members("increase_evenly_in_round", 48, 6)) == [8] * 6
    lines = ("Cast on 48 sts. Join to work in the round.", *in_words("increase_evenly_in_round", 48, 6))
    assert knitted(*lines)[-1].after == (54,)
    assert knitted("Cast on 48 sts.", *in_words("increase_evenly", 48, 6))[-1].after == (54,)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        (
            "decrease_evenly",
            "K5, k2tog, [k10, k2tog] 7 times, k5.",
        ),
        (
            "decrease_evenly_in_round",
            "[k10, k2tog] 8 times.",
        ),
    ],
)
def test_the_words(name: str, words: str) -> None:
    """Sums by hand: 96 − 2 × 8 = 80 = 8 × 10."""
    assert in_words(name, 96, 8) == (words,)


def spread_apart(total: int, count: int) -> list[int]:
    """The same number of gaps by a method of its own: places rounded down, as a line is drawn on a grid of points."""
    places = [total * step // count for step in range(count + 1)]
    return [after - before for before, after in pairwise(places)]


@given(st.integers(1, 400), st.data())
@settings(max_examples=1000, deadline=None)
def test_whole_gaps_are_those_of_a_line_on_a_grid(changes: int, data: st.DataObject) -> None:
    plain = data.draw(st.integers(0, 2000))
    found = sections(members("decrease_evenly_in_round", plain + 2 * changes, changes))
    assert sorted(found) == sorted(spread_apart(plain, changes))
    fewest = min(set(found), key=found.count)
    if len(set(found)) == 2 and found.count(fewest) * 2 < len(found):
        seldom = [-1, *(place for place, gap in enumerate(found) if gap == fewest)]
        runs = [after - before for before, after in pairwise(seldom)]
        assert max(runs) - min(runs) <= 1  # the odd gaps stand evenly apart, not all of them first
        assert seldom[-1] == len(found) - 1


@given(st.sampled_from(DECREASES + INCREASES), st.integers(1, 300), st.data())
@settings(max_examples=300, deadline=None)
def test_all_stitches_are_spoken_for_and_gaps_differ_by_one(name: str, changes: int, data: st.DataObject) -> None:
    count = data.draw(st.integers(2 * changes, 3000))
    found = members(name, count, changes)
    whole = sections(found)
    ends = [int(found[end]) for end in ("start", "end") if end in found]
    assert sum(whole) + sum(ends) + (2 * changes if name in DECREASES else 0) == count
    assert len(whole) + ("start" in found) == changes
    gaps = [*whole, sum(ends)] if ends else whole  # two halves make one gap, a whole end is one
    assert max(gaps) - min(gaps) <= 1
    if "start" in found:
        assert 0 <= ends[1] - ends[0] <= 1
    if name in INCREASES:
        assert min([*whole, *ends]) >= 1  # m1 is made between two stitches


@given(st.sampled_from(DECREASES + INCREASES), st.integers(1, 60), st.data())
@settings(max_examples=150, deadline=None)
def test_the_sentence_knitted_gives_the_count(name: str, changes: int, data: st.DataObject) -> None:
    count = data.draw(st.integers(2 * changes, 600))
    join = " Join to work in the round." if "round" in name else ""
    after = count - changes if name in DECREASES else count + changes
    assert knitted(f"Cast on {count} sts.{join}", *in_words(name, count, changes, whole=data.draw(st.booleans())))[
        -1
    ].after == (after,)


@pytest.mark.parametrize(
    ("name", "values", "said"),
    [
        ("decrease_evenly", (10, 6), "6 decreases take 12 sts, there are 10; at most 5 fit"),
        ("decrease_evenly", (10, 0), "0 decreases are none"),
        ("decrease_evenly", (0, 1), "at most 0 fit"),
        ("decrease_evenly", (10, -1), "decreases is −1; it must be at least 0"),
        ("decrease_evenly", ("21/2", 2), "count is 10.5, which is not whole"),
        ("increase_evenly", (10, 10), "10 increases do not fit between 10 sts; at most 9 fit"),
        ("increase_evenly_in_round", (10, 11), "at most 10 fit"),
        ("increase_between", (0, 1), "at most 0 fit"),
    ],
)
def test_what_cannot_be_done_is_said(name: str, values: tuple[int | str, ...], said: str) -> None:
    with pytest.raises(Impossible, match=re.escape(said)):
        members(name, *values)


def test_every_plan_has_its_own_words_for_every_number() -> None:
    """A member or argument that stands in no word would be a number no reader sees; names are those of a formula."""
    assert set(PLANS) == set(PLAN_WORDS)
    for plan in PLANS.values():
        words = " ".join(PLAN_WORDS[plan.name])
        spoken = {name for found in MEMBER.finditer(words) if (name := found["number"] or found["clause"])}
        known = {argument.name for argument in plan.arguments} | {member.name for member in plan.members}
        assert spoken <= {member.name for member in plan.members}, plan.name
        assert len(known) == len(plan.arguments) + len(plan.members), plan.name
        assert f"`{plan.name}(" in plan.page, plan.name
        assert "ource:" in plan.page or "ources:" in plan.page, plan.name
