"""What a proof tells of a number: how far rounding moved it, who relies on it, what another gauge would make of it.

The expected values are arithmetic, given beside them.
"""

from collections.abc import Callable
from fractions import Fraction

import pytest

from sizewright.base.units import ROW_GAUGE, STITCH_GAUGE
from sizewright.grade.at_gauge import at_gauge, shifted
from sizewright.grade.graded import Graded
from sizewright.grade.moved import Moved, gauges_behind, moved
from sizewright.grade.reliance import Kind, reliance
from sizewright.grade.run import grade
from sizewright.read.folder import read_text

HEADER = """---
title: Cowl
sizes:
  S: {head: 52 cm}
  M: {head: 56 cm}
  L: {head: 60 cm}
  XL: {head: 64 cm}
gauge: {stitches: 20 st / 10 cm, rows: 25 row / 10 cm}
finished:
  - {label: Around, value: around, body: head}
  - {label: Depth, value: depth}
  - {label: Worked depth, value: rows / row_gauge}
---
```grade
sts = head * stitch_gauge, nearest multiple of 18
around = sts / stitch_gauge
depth = 10 (10, 12, 12) cm
rows = depth * row_gauge, up to even
half = depth / 2, nearest 4 cm
repeats = sts / 18 st
require sts fits multiple of 18
```
Cast on {sts} stitches, and again {sts / 2}.
```schematic
cowl = tube(around = around, length = depth)
```
"""
Read = Callable[[str], Graded]


@pytest.fixture(scope="module")
def cowl() -> Graded:
    graded = grade(read_text(HEADER).patterns[0])
    assert graded.findings == ()
    return graded


def fractions(*values: float | str) -> tuple[Fraction, ...]:
    return tuple(map(Fraction, values))


def of(graded: Graded, name: str) -> Moved | None:
    return moved(graded, graded.quantities[name])


def test_how_far_rounding_moved_a_count(cowl: Graded) -> None:
    # 104, 112, 120, 128 sts become 108, 108, 126, 126 (18 x 6, 6, 7, 7); at 2 sts to the cm a stitch is half a cm.
    # Sizes lie 8 sts apart before rounding: only 6 is more than half of that.
    how = of(cowl, "sts")
    assert how == Moved(fractions(4, -4, 6, -2), fractions(2, -2, 3, -1), (2,))


def test_a_count_of_rows_goes_through_the_row_gauge(cowl: Graded) -> None:
    # 25, 25, 30, 30 rows, up to even: 26, 26, 30, 30; a row is 0.4 cm
    assert of(cowl, "rows") == Moved(fractions(1, 1, 0, 0), fractions("2/5", "2/5", 0, 0), ())


def test_a_length_is_told_in_cm(cowl: Graded) -> None:
    # 5, 5, 6, 6 cm become 4, 4, 8, 8 (a tie goes up); only between M and L is there a step, of 1 cm
    assert of(cowl, "half") == Moved(fractions(-1, -1, 2, 2), fractions(-1, -1, 2, 2), (1, 2))


def test_what_no_formula_rounds_is_not_moved(cowl: Graded) -> None:
    assert [of(cowl, name) for name in ("head", "stitch_gauge", "around", "depth")] == [None] * 4


def test_which_gauge_a_number_changes_with(cowl: Graded) -> None:
    behind = {name: [one.name for one in gauges_behind(cowl, named)] for name, named in cowl.quantities.items()}
    assert behind["sts"] == behind["around"] == behind["repeats"] == ["stitch_gauge"]
    assert behind["rows"] == ["row_gauge"]
    assert behind["head"] == behind["depth"] == behind["stitch_gauge"] == []


def test_with_several_gauges_only_the_one_behind_a_count_turns_it_into_a_length() -> None:
    text = """---
title: Mitt
gauge: {body: {stitches: 20 st / 10 cm}, cuff: {stitches: 25 st / 10 cm}}
---
```grade
cuff_sts = 20.5 cm * cuff.stitches, nearest whole
body_sts = 20.6 cm * body.stitches, nearest whole
free = 9 st / 2, nearest whole
both = 1 cm * (cuff.stitches + body.stitches), nearest whole
```
"""
    graded = grade(read_text(text).patterns[0])
    # 51.25 sts become 51: a quarter of 0.4 cm less; 41.2 become 41: a fifth of half a cm less
    assert of(graded, "cuff_sts") == Moved(fractions("-1/4"), fractions("-1/10"), ())
    assert of(graded, "body_sts") == Moved(fractions("-1/5"), fractions("-1/10"), ())
    assert of(graded, "free") == Moved(fractions("1/2"), None, ())
    assert of(graded, "both") == Moved(fractions("1/2"), None, ())


def test_who_relies_on_a_quantity(cowl: Graded) -> None:
    uses = reliance(cowl)
    told = [(use.kind, use.called, use.span.line) for use in uses["sts"]]
    assert told == [
        (Kind.QUANTITY, "around", 16),
        (Kind.QUANTITY, "repeats", 20),
        (Kind.TEXT, "", 23),
        (Kind.TEXT, "", 23),
        (Kind.PROMISE, "", 21),
    ]
    assert [(use.kind, use.called) for use in uses["depth"]] == [
        (Kind.QUANTITY, "rows"),
        (Kind.QUANTITY, "half"),
        (Kind.DRAWING, "cowl"),
        (Kind.FINISHED, "Depth"),
    ]
    assert [(use.kind, use.called) for use in uses["head"]] == [(Kind.QUANTITY, "sts"), (Kind.FINISHED, "Around")]
    assert uses["repeats"] == ()


def test_another_gauge_moves_what_is_worked_out_from_printed_counts(cowl: Graded) -> None:
    # 108 and 126 sts at 21 to 10 cm are 1080/21 and 60 cm, at 19 they are 1080/19 and 1260/19 cm
    tight = {one.measured.label: one.values for one in at_gauge(cowl, shifted(cowl, STITCH_GAUGE, Fraction(1, 10)))}
    loose = {one.measured.label: one.values for one in at_gauge(cowl, shifted(cowl, STITCH_GAUGE, Fraction(-1, 10)))}
    assert tight["Around"] == fractions("1080/21", "1080/21", 60, 60)
    assert loose["Around"] == fractions("1080/19", "1080/19", "1260/19", "1260/19")
    assert tight["Depth"] == loose["Depth"] == fractions(10, 10, 12, 12)
    assert tight["Worked depth"] == fractions("52/5", "52/5", 12, 12)


def test_and_another_row_gauge_what_is_counted_in_rows(cowl: Graded) -> None:
    # 26 and 30 rows at 26 to 10 cm are 10 and 150/13 cm
    found = {one.measured.label: one.values for one in at_gauge(cowl, shifted(cowl, ROW_GAUGE, Fraction(1, 10)))}
    assert found["Worked depth"] == fractions(10, 10, "150/13", "150/13")
    assert found["Around"] == fractions(54, 54, 63, 63)


def test_a_gauge_that_comes_to_nothing_has_no_measurements(cowl: Graded) -> None:
    nothing = shifted(cowl, STITCH_GAUGE, Fraction(-2))
    assert [one.measured.label for one in at_gauge(cowl, nothing)] == ["Depth", "Worked depth"]


def test_an_asked_for_depth_is_read_back_from_its_rows(cowl: Graded) -> None:
    # 26 rows were worked out from a depth of 10 cm: at 26 to 10 cm they are 10 cm, at 20 they are 13
    by_rows = {
        rows: {one.measured.label: one.values for one in at_gauge(cowl, {"row_gauge": Fraction(rows, 10)})}["Depth"]
        for rows in (26, 20)
    }
    assert by_rows == {26: fractions(10, 10, "150/13", "150/13"), 20: fractions(13, 13, 15, 15)}


KNITTED = """---
title: Sock
sizes:
  S: {foot: 22 cm}
  L: {foot: 26 cm}
gauge: {stitches: 30 st / 10 cm, rows: 42 row / 10 cm}
finished:
  - {label: Foot, value: foot_long}
  - {label: Leg, value: leg}
  - {label: Cuff, value: cuff}
  - {label: Above, value: above}
---
```grade
foot_long  = foot - 1 cm
toe_rounds = 21 row
toe_length = toe_rounds / row_gauge
to_toe     = foot_long - toe_length, nearest 0.5 cm
leg        = 15 cm
cuff       = leg / 3
above      = to_toe + toe_length
```
```work
Cast on 60 sts. Join to work in the round.
Rnd 1: Knit.
Rep Rnd 1 until piece measures {leg}.
Rep Rnd 1 until piece measures {to_toe} from here.
```
"""


def test_a_length_worked_to_is_knitted_as_printed_whatever_the_gauge() -> None:
    # 21 rounds at 42 to 10 cm are 5 cm, at 30 they are 7: the toe is 2 cm longer, and so is the foot
    graded = grade(read_text(KNITTED).patterns[0])
    assert graded.findings == ()
    found = {one.measured.label: one.values for one in at_gauge(graded, {"row_gauge": Fraction(3)})}
    assert found == {
        "Foot": fractions(23, 27),
        "Leg": fractions(15, 15),
        "Cuff": fractions(5, 5),
        "Above": fractions(23, 27),
    }


def test_what_two_numbers_tell_otherwise_is_not_read_back() -> None:
    twice = KNITTED.replace("until piece measures {leg}", "until piece measures {foot_long - 3 cm}")
    graded = grade(read_text(twice).patterns[0])
    found = {one.measured.label: one.values for one in at_gauge(graded, {"row_gauge": Fraction(3)})}
    assert found["Foot"] == fractions(21, 25)


def test_each_named_gauge_moves_its_own_fabric() -> None:
    text = """---
title: Two fabrics
gauge:
  body: {stitches: 20 st / 10 cm, rows: 28 row / 10 cm}
  cuff: {stitches: 25 st / 10 cm, rows: 32 row / 10 cm}
finished:
  - {label: Body, value: 100 st / body.stitches}
  - {label: Cuff, value: 50 st / cuff.stitches}
---
"""
    graded = grade(read_text(text).patterns[0])
    found = {one.measured.label: one.values for one in at_gauge(graded, {"cuff.stitches": Fraction(2)})}
    assert found == {"Body": fractions(50), "Cuff": fractions(25)}
