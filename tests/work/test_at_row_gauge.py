"""In: parts worked to lengths and by counts. Out: how long they are at another row gauge; the sums stand beside."""

from collections.abc import Sequence
from fractions import Fraction
from math import floor

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.at_row_gauge import Stretch, Tall, tall
from sizewright.work.faults import LengthPassed
from sizewright.work.run import work
from sizewright.work.worked import Part

HEADER = """---
title: Sock
gauge: {stitches: 30 st / 10 cm, rows: 40 row / 10 cm}
---
```grade
leg = 10 cm
```
## Leg
```work
Cast on 60 sts. Join to work in the round.
Rnd 1: Knit.
LINES
```
"""


def parts(*lines: str) -> tuple[Part, ...]:
    worked = work(grade(read_text(HEADER.replace("LINES", "\n".join(lines))).patterns[0]))
    assert [fault for fault in worked.faults if not isinstance(fault, LengthPassed)] == []
    return worked.parts


def tall_at(part: Part, gauge: Fraction) -> Tall:
    assert part.rows[0] is not None
    return tall(part.rows[0], part.stretches[0], gauge)


@pytest.mark.parametrize(
    ("lines", "rows", "fewer", "more"),
    [
        # 20 rounds are 5 cm; at 32 to 10 cm they are 6.25 cm, at 50 they are 4
        (["Work even in stockinette for 19 rounds."], 20, "25/4", "4"),
        # to 10 cm: 40 rounds, whatever the gauge makes of them
        (["Rep Rnd 1 until piece measures {leg}."], 40, "10", "10"),
        # to 10 cm, and 20 rounds behind it
        (["Rep Rnd 1 until piece measures {leg}.", "Work even in stockinette for 20 rounds."], 60, "65/4", "14"),
        # 36 rounds are 9 cm, at 32 to 10 cm 11.25: beyond the 10 cm, so none are worked to it
        (["Work even in stockinette for 35 rounds.", "Rep Rnd 1 until piece measures {leg}."], 40, "45/4", "10"),
        # 5 cm from here on what is counted
        (
            ["Work even in stockinette for 19 rounds.", "Rep Rnd 1 until piece measures 5 cm from here."],
            40,
            "45/4",
            "9",
        ),
        # nothing to do at the pattern's gauge, since 44 rounds are 11 cm; at 50 to 10 cm they are 8.8
        (["Work even in stockinette for 43 rounds.", "Rep Rnd 1 until piece measures {leg}."], 44, "55/4", "10"),
    ],
)
def test_counted_rows_move_and_lengths_do_not(lines: list[str], rows: int, fewer: str, more: str) -> None:
    (part,) = parts(*lines)
    assert (part.gauge, part.rows) == ("row_gauge", (rows,))
    assert tall_at(part, Fraction(4)).rows == rows
    for per_cm, length in ((Fraction("3.2"), Fraction(fewer)), (Fraction(5), Fraction(more))):
        assert tall_at(part, per_cm) == Tall(length, floor(length * per_cm + Fraction(1, 2)))


@st.composite
def stretches(draw: st.DrawFn) -> tuple[int, tuple[Stretch, ...]]:
    """Rows, some of them worked to a length at 4 to the cm."""
    rows, found = draw(st.integers(1, 30)), list[Stretch]()
    for _ in range(draw(st.integers(0, 3))):
        since = draw(st.sampled_from([0, rows]))
        length = Fraction(draw(st.integers(1, 120)), 4)
        last = max(rows, since + int(length * 4))
        found.append(Stretch(rows, last, since, length))
        rows = last + draw(st.integers(0, 20))
    return rows, tuple(found)


@settings(max_examples=100, deadline=None)
@given(stretches())
def test_at_its_own_gauge_a_part_is_as_long_as_its_rows(made: tuple[int, Sequence[Stretch]]) -> None:
    rows, worked_to = made
    assert tall(rows, worked_to, Fraction(4)) == Tall(Fraction(rows, 4), rows)
