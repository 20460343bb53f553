"""A stitch pattern over a part of a row: faces, counts, and the row that comes next.

What a row does to its own stitches follows from its words; that a panel leaves the stitches beside it alone, and that
each of its rows comes once, is how patterns write it (common practice, no source).
"""

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.blocks import stitch_blocks
from sizewright.work.cloth import piece_cloth
from sizewright.work.maker import Maker
from sizewright.work.needle import Needle

BLOCKS = """---
title: A
---
```stitch Mistle Cable
Rnds 1, 2 and 4: P2, k4, p2.
Rnd 3: P2, C4F, p2.
```
```stitch Flat Cable
Row 1 (RS): P2, k4, p2.
Row 2 (WS): K2, p4, k2.
Row 3 (RS): P2, C4F, p2.
Row 4 (WS): K2, p4, k2.
```
```stitch Fan
Rnd 1: *Yo, k2; rep from * to end.
Rnd 2: Knit.
Rnd 3: *K2tog, k1; rep from * to end.
```
```stitch Ridges
Rnd 1: *K1, p1; rep from * to end.
Rnd 2: Purl.
Rnd 3: Knit.
```
"""
FLAT = b"kkkkkkppkkkkppkkkkkk"


def source(lines: str) -> str:
    return f"{BLOCKS}```work\n{lines}\n```\n"


def needle(lines: str) -> Needle:
    """The needles behind some instructions."""
    project = read_text(source(lines), "a.md")
    assert project.findings == ()
    graded = grade(project.patterns[0])
    maker = Maker(graded, 0, stitch_blocks(graded))
    assert maker.make().faults == []
    assert maker.needle is not None
    return maker.needle


def crossed(lines: str) -> list[int]:
    """The rows in which stitches crossed, from 0."""
    cloth = piece_cloth(grade(read_text(source(lines), "a.md").patterns[0]), 0)
    assert cloth is not None
    return [number for number, row in enumerate(cloth.rows) if row.crossings]


FLAT_ROWS = """Cast on 20 sts.
Row 1 (RS): K6, work Row 1 of Flat Cable over next 8 sts, k to end.
Row 2 (WS): P6, work Flat Cable over next 8 sts, p to end.
Rep Rows 1 and 2 {} times."""
WRITTEN_OUT = """Cast on 20 sts.
Row 1 (RS): K6, work Flat Cable over next 8 sts, k to end.
Row 2 (WS): P6, work 8 sts in Flat Cable, p to end.
Rep Rows 1 and 2 3 times."""
AROUND = """Cast on 20 sts. Join in the round.
Rnd 1: K6, pm, work Mistle Cable over next 8 sts, pm, k to end.
Rnd 2: K to m, sm, work Mistle Cable between markers, sm, k to end.
Rep Rnd 2 6 times."""


def test_a_cable_panel_in_stockinette_flat() -> None:
    worked = needle(WRITTEN_OUT)
    assert (worked.left, worked.rows, worked.panels) == (FLAT, 8, {"flat cable": 0})
    assert crossed(WRITTEN_OUT) == [2, 6]


def test_a_cable_panel_in_stockinette_in_the_round() -> None:
    worked = needle(AROUND)
    assert (worked.left, worked.rows, worked.markers) == (FLAT, 8, [6, 14])
    assert crossed(AROUND) == [2, 6]


def test_a_row_that_is_named_is_worked_each_time_and_the_next_follows_it() -> None:
    assert crossed(FLAT_ROWS.format(3)) == []
    again = "Cast on 8 sts. Join in the round.\nRnd 1: Work Rnd 3 of Mistle Cable to end.\nRep Rnd 1 2 times."
    assert crossed(again) == [0, 1, 2]
    assert needle(again).panels == {"mistle cable": 3}


@pytest.mark.parametrize(
    ("rounds", "middle"), [(1, b"kpkp"), (2, b"pppp"), (3, b"kkkk"), (4, b"kpkp"), (5, b"pppp"), (3000, b"kkkk")]
)
def test_a_repeat_of_many_rounds_ends_at_the_right_one(rounds: int, middle: bytes) -> None:
    lines = f"""Cast on 8 sts. Join in the round.
Rnd 1: K2, work Ridges over next 4 sts, k2.
Rep Rnd 1 {rounds - 1} times."""
    worked = needle(lines if rounds > 1 else lines.partition("\nRep")[0])
    assert (worked.left, worked.rows) == (b"kk" + middle + b"kk", rounds)


def test_counts_follow_a_panel_whose_count_changes() -> None:
    lines = """Cast on 10 sts. Join in the round.
Rnd 1: K2, pm, work Fan over next 6 sts, pm, k2. (13 sts)
Rnd 2: K to m, sm, work Fan between markers, sm, k to end. (13 sts)
Rnd 3: K to m, sm, work Fan between markers, sm, k to end. (10 sts)"""
    worked = needle(lines)
    assert (worked.total, worked.markers) == (10, [2, 8])


def test_two_panels_of_one_pattern_in_a_row_are_at_the_same_row() -> None:
    lines = """Cast on 12 sts. Join in the round.
Rnd 1: [Work Ridges over next 4 sts, k2] twice.
Rnd 2: Work Ridges over next 4 sts, k2, work Ridges over next 4 sts, k2."""
    assert needle(lines).left == b"ppppkkppppkk"
