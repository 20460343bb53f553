"""Whatever a plan is given, it is worked out or refused in a sentence; no number of it is below zero."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizewright.base.units import COUNTS, LENGTH, PLAIN, ROW_GAUGE, STITCH_GAUGE
from sizewright.grade.shaping.plan import Argument, Impossible, Plan
from sizewright.grade.shaping.table import PLANS

SIGNED = ("off", "longer")  # how much longer one edge is than another, below zero where it is shorter


def values_of(argument: Argument) -> st.SearchStrategy[Fraction]:
    """Values a designer might give by mistake: 0, small, large, and now and then below zero or not whole."""
    if argument.dimensions[0] in (STITCH_GAUGE, ROW_GAUGE, LENGTH) or not argument.whole:
        return st.builds(Fraction, st.integers(0, 800), st.just(10))
    likely = st.integers(0, 200) if argument.default is None else st.integers(0, 6)
    odd = st.builds(Fraction, st.integers(-3, 9), st.just(2))
    return st.one_of(st.builds(Fraction, likely), st.builds(Fraction, likely), odd)


@pytest.mark.parametrize("plan", PLANS.values(), ids=lambda plan: plan.name)
@given(data=st.data())
@settings(max_examples=40, deadline=None)
def test_worked_out_or_refused(plan: Plan, data: st.DataObject) -> None:
    values = [data.draw(values_of(argument), argument.name) for argument in plan.arguments]
    found: tuple[Fraction, ...] = ()
    said = ""
    try:
        found = plan.worked(values)
    except Impossible as reason:
        said = str(reason)
    assert bool(found) != said.endswith(".")
    for member, value in zip(plan.members, found, strict=False):
        if member.name in SIGNED or member.dimension not in (*COUNTS, PLAIN):
            continue
        assert value >= 0, member.name
        assert value.denominator == 1, member.name
