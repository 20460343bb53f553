"""The gap that a turn in mid row leaves: the next row of that side is worked to it; a row to the end closes it."""

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.run import work
from sizewright.work.worked import Worked


def knitted(lines: str) -> Worked:
    project = read_text(f"---\ntitle: A\n---\n```work\n{lines}\n```\n", "a.md")
    assert [finding.message for finding in project.findings] == []
    return work(grade(project.patterns[0]))


def test_a_heel_is_turned_from_gap_to_gap() -> None:
    """Source: craicnyarn.com 2016: of a flap over half of 64 sts, 18 are left when the heel is turned."""
    lines = """Cast on 32 sts.
Row 1 (RS): K17, ssk, k1, turn.
Row 2 (WS): Sl 1, p3, p2tog, p1, turn.
Row 3 (RS): Sl 1, k to 1 st before gap, ssk, k1, turn.
Row 4 (WS): Sl 1, p to 1 st before gap, p2tog, p1, turn.
Rep Rows 3 and 4 5 more times. (18 sts)"""
    worked = knitted(lines)
    assert worked.faults == ()
    assert worked.entries[-1].after == (18,)


def test_each_short_row_ends_before_the_last() -> None:
    """Counted by hand: 20 sts cast on, turns with 4, 9 and 14 left; 16, 11 and 6 are knitted, and purled back."""
    lines = """Cast on 20 sts.
Row 1 (RS): K to last 4 sts, turn.
Row 2 (WS): Purl.
Row 3 (RS): K to 5 sts before gap, turn.
Row 4 (WS): Purl.
Rep Rows 3 and 4 once more."""
    worked = knitted(lines)
    assert worked.faults == ()
    assert worked.stitches[""] == (20 + 2 * (16 + 11 + 6),)


def test_rows_skipped_along_an_edge_give_no_stitch() -> None:
    """Source: knittinghelp.com t/124191: 71 sts along 88 rows are (pick up 4, skip 1) 17 times, then 3."""
    lines = "Cast on 1 st.\nRow 1: [Pick up and knit 4 sts, skip 1 row] 17 times, pick up and knit 3 sts, k1. (72 sts)"
    worked = knitted(lines)
    assert worked.faults == ()
    assert worked.entries[-1].after == (72,)
