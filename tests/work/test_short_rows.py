"""Short rows, plain, wrapped and German, flat and in the round: the count stays right, and a place must be there.

That a turn leaves the stitches beyond it waiting, a wrap adds no stitch and a double stitch is one: common practice.
"""

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.blocks import stitch_blocks
from sizewright.work.maker import Maker
from sizewright.work.needle import Needle
from sizewright.work.run import work
from sizewright.work.worked import Worked


def knitted(lines: str) -> Worked:
    project = read_text(f"---\ntitle: A\n---\n```work\n{lines}\n```\n", "a.md")
    assert [finding.message for finding in project.findings] == []
    return work(grade(project.patterns[0]))


def needle(lines: str) -> Needle:
    project = read_text(f"---\ntitle: A\n---\n```work\n{lines}\n```\n", "a.md")
    assert [finding.message for finding in project.findings] == []
    graded = grade(project.patterns[0])
    maker = Maker(graded, 0, stitch_blocks(graded))
    assert maker.make().faults == []
    assert maker.needle is not None
    return maker.needle


def faults(lines: str) -> list[str]:
    return [type(fault).__name__ for fault in knitted(lines).faults]


FLAT = {
    "wrapped": """Cast on 20 sts.
Row 1 (RS): K to last 4 sts, w&t.
Row 2 (WS): P to last 4 sts, w&t.
Row 3 (RS): K to 2 sts before wrapped st, wrap and turn.
Row 4 (WS): P to 2 sts before last wrapped st, w&t.
Row 5 (RS): K to end, picking up wraps and knitting them together with the sts they wrap. (20 sts)
Row 6 (WS): P to end, picking up all wraps. (20 sts)""",
    "German": """Cast on 20 sts.
Row 1 (RS): K to last 4 sts, turn.
Row 2 (WS): MDS, p to last 4 sts, turn.
Row 3 (RS): Mds, k to 2 sts before double st, turn.
Row 4 (WS): MDS, p to 2 sts before last DS, turn.
Row 5 (RS): MDS, k to end, knitting double sts as one. (20 sts)
Row 6 (WS): P to end, working all double sts as one. (20 sts)""",
    "turned at the end": """Cast on 20 sts.
Row 1 (RS): K to last 4 sts, turn, mds.
Row 2 (WS): P to last 4 sts, turn, make double stitch.
Row 3 (RS): K to 2 sts before DS, turn, mds.
Row 4 (WS): P to 2 sts before DS, turn, mds.
Row 5 (RS): K to end, knitting double sts as one. (20 sts)
Row 6 (WS): P to end, working all double sts as one. (20 sts)""",
    "growing": """Cast on 20 sts.
Row 1 (RS): K12, w&t.
Row 2 (WS): P4, w&t.
Row 3 (RS): K to wrapped st, knit wrap together with wrapped st, k1, w&t.
Row 4 (WS): P to wrapped st, purl wrapped st together with its wrap, p1, w&t.
Row 5 (RS): K to 2 sts past last wrapped st, w&t.
Row 6 (WS): P to 2 sts past last turn, w&t.
Row 7 (RS): K to end, picking up wraps. (20 sts)
Row 8 (WS): Purl, picking up wraps. (20 sts)""",
    "in one row": """Cast on 20 sts.
Row 1 (RS): K16, turn, p12, turn, k to end. (20 sts)
Row 2 (WS): Purl. (20 sts)
Row 3 (RS): K to last 4 sts, turn, [p to last 4 sts, turn, k to 2 sts before last turn, turn] once, p to end.
Row 4 (RS): Knit. (20 sts)""",
}


@pytest.mark.parametrize("lines", FLAT.values(), ids=FLAT)
def test_flat(lines: str) -> None:
    done = needle(lines)
    assert (done.total, done.behind) == (20, b"")
    assert [pin for pin in done.pins if pin.place not in (0, 20)] == []


def test_where_the_turns_lie() -> None:
    """Of 20, row 1 leaves 4, row 2 leaves 4, row 3 ends 2 before the wrapped one: 20 - 4 - 4 - 2 are worked."""
    lines = FLAT["wrapped"].split("\n")
    third = needle("\n".join(lines[:4]))
    assert (len(third.left), len(third.behind)) == (14, 6)
    german = needle("\n".join(FLAT["German"].split("\n")[:4]))
    assert (len(german.left), len(german.behind)) == (13, 7)  # the double stitch is left too
    late = needle("\n".join(FLAT["turned at the end"].split("\n")[:4]))
    assert (len(late.left), len(late.behind)) == (12, 8)  # and the one doubled now lies behind already


ROUND = {
    "before the end": """Cast on 20 sts. Place marker and join to work in the round.
Rnd 1: Knit.
Short Row 1 (RS): K15, w&t.
Short Row 2 (WS): P10, w&t.
Short Row 3 (RS): K to 2 sts before wrapped st, w&t.
Short Row 4 (WS): P to 2 sts before wrapped st, w&t.
Next Row (RS): K to end, picking up wraps.
Rnd 2: Knit, picking up wraps. (20 sts)""",
    "across the beginning": """Cast on 20 sts. Place BOR marker and join to work in the round.
Short Row 1 (RS): K5, turn.
Short Row 2 (WS): MDS, p to BOR marker, sm, p5, turn.
Short Row 3 (RS): MDS, k to m, sm, k to DS, k DS as one, k1, turn.
Short Row 4 (WS): MDS, p to m, sm, p to 1 st past last double st, turn.
Short Row 5 (RS): MDS, k to BOR marker.
Rnd 1: Knit, knitting double sts as one. (20 sts)
Rnd 2: Knit to BOR marker, sm. (20 sts)""",
    "in one round": """Cast on 20 sts. Join in the round.
Rnd 1: K10, turn, p5, turn, k to end. (20 sts)
Rnd 2: K20.""",
    "back to the beginning": """Cast on 20 sts. Join in the round.
Rnd 1: Knit.
Next Row (RS): K10, turn.
Next Row (WS): P to end.
Rnd 2: K20. (20 sts)""",
}


@pytest.mark.parametrize("lines", ROUND.values(), ids=ROUND)
def test_in_the_round(lines: str) -> None:
    done = needle(lines)
    assert (done.total, done.behind, done.turned_back) == (20, b"", False)


@pytest.mark.parametrize(
    ("row", "fault"),
    [
        ("Row 1 (RS): K to last turn, turn.", "NoTurn"),
        ("Row 1 (RS): K to 3 sts before wrapped st, w&t.", "NoTurn"),
        ("Row 1 (RS): K10, turn.\nRow 2 (WS): P to 2 sts before wrapped st, turn.", "NoTurn"),
        ("Row 1 (RS): K10, turn.\nRow 2 (WS): P5, w&t.\nRow 3 (RS): K to wrapped st.", "NoTurn"),
        ("Row 1 (RS): K10, turn.\nRow 2 (WS): P.\nRow 3 (RS): K to 11 sts before last turn, turn.", "TooFew"),
        ("Row 1 (RS): K10, w&t.\nRow 2 (RS): P10.", "WrongSide"),
        ("Row 1 (RS): K10, turn.\nRow 2 (WS): P11.", "TooFew"),
        ("Row 1 (RS): K10, turn, p5.", "LeftOver"),
    ],
)
def test_a_place_that_is_not_there(row: str, fault: str) -> None:
    assert faults(f"Cast on 20 sts.\n{row}") == [fault]


def test_a_short_row_of_a_round_on_the_wrong_side() -> None:
    assert faults("Cast on 20 sts. Join in the round.\nRow 1 (RS): K10, turn.\nRow 2 (RS): P5, turn.") == ["WrongSide"]


def test_markers_beyond_a_turn_stay() -> None:
    lines = """Cast on 20 sts.
Row 1 (RS): K5, pm, k10, pm, k5.
Row 2 (WS): P to m, sm, p2, turn.
Row 3 (RS): K to m, sm, k to end.
Row 4 (WS): P to m, sm, p to m, sm, p to end. (20 sts)"""
    assert faults(lines) == []
