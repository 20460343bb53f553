"""What lies on the needle looks as it was worked, from both sides, and rows are counted by the gauge.

Faces follow from what a knit and a purl are (common practice, no source): a stitch knitted on the wrong side shows its
purl face on the right side; flat rows are worked back over the one before, from its end.
"""

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.blocks import stitch_blocks
from sizewright.work.maker import Maker
from sizewright.work.needle import Needle
from sizewright.work.run import work
from sizewright.work.worked import Worked

HEADER = "---\ntitle: A\ngauge: {stitches: 20 st / 10 cm, rows: 30 row / 10 cm}\n---\n"


def needle(lines: str, text: str = "") -> Needle:
    """The needles behind some instructions."""
    project = read_text(f"{HEADER}{text}\n\n```work\n{lines}\n```\n", "a.md")
    assert project.findings == ()
    graded = grade(project.patterns[0])
    maker = Maker(graded, 0, stitch_blocks(graded))
    assert maker.make().faults == []
    assert maker.needle is not None
    return maker.needle


def worked(body: str) -> Worked:
    project = read_text(HEADER + body, "a.md")
    assert project.findings == ()
    return work(grade(project.patterns[0]))


@pytest.mark.parametrize(
    ("lines", "looks"),
    [
        ("Cast on 4 sts.\nRow 1 (RS): K3, p1.", b"pkkk"),  # the last stitch worked is the first of the next row
        ("Cast on 4 sts.\nRow 1 (RS): Knit.\nRow 2 (WS): K1, p3.", b"kkkp"),
        ("Cast on 4 sts.\nRow 1 (RS): K3, p1.\nRow 2 (WS): Knit the knits and purl the purls.", b"kkkp"),
        ("Cast on 4 sts.\nRow 1 (RS): K3, p1.\nRow 2 (WS): Purl the knits and knit the purls.", b"pppk"),
        ("Cast on 4 sts. Join in the round.\nRnd 1: K3, p1.\nRnd 2: As they appear.", b"kkkp"),
        ("Cast on 4 sts.\nRow 1 (RS): K3, p1. Join in the round.", b"kkkp"),  # not turned: the RS row comes first again
        ("Cast on 4 sts.\nRow 1 (RS): K3, p1. Join.\nRnd 1: K2, p2.", b"kkpp"),
        ("Cast on 4 sts.\nRow 1 (RS): K4.\nRow 2 (WS): K1, p3. Join.\nRnd 1: As they appear.", b"kkkp"),
        ("Cast on 4 sts.\nRow 1 (RS): K2tog, yo, k2.", b"kko/"),
        ("Cast on 3 sts.\nRow 1 (RS): Sl 1, k2tog, psso.", b"\\"),
    ],
)
def test_the_looks_of_the_stitches(lines: str, looks: bytes) -> None:
    assert needle(lines).left == looks


def test_a_turn_leaves_the_rest_for_the_row_after_the_next() -> None:
    short = needle("Cast on 6 sts.\nRow 1 (RS): K4, turn.")
    assert (short.left, short.behind) == (b"kkkk", b"kk")
    after = needle("Cast on 6 sts.\nRow 1 (RS): K4, turn.\nRow 2 (WS): Purl.\nRow 3 (RS): Knit. (6 sts)")
    assert (after.total, after.behind) == (6, b"")


def test_rows_to_a_length_from_the_cast_on_edge() -> None:
    """3 rows to the cm: 10 cm are 30 rows, of which 2 stand above; 4.2 cm are 12.6 rows, the nearest whole is 13."""
    lines = "Cast on 8 sts.\nRow 1: Knit.\nRow 2: Purl.\nRep Rows 1 and 2 until piece measures {} cm."
    assert worked(f"```work\n{lines.format(10)}\n```\n").entries[-1].rows == (28,)
    assert worked(f"```work\n{lines.format(4.2)}\n```\n").entries[-1].rows == (11,)


def test_rows_that_change_nothing_are_counted_with_their_stitches() -> None:
    done = worked("```work\nCast on 8 sts. Join in the round.\nRnd 1: Knit.\nRep Rnd 1 99 more times.\n```\n")
    assert done.entries[-1].rows == (99,)
    assert done.stitches[""] == (808,)  # 100 rounds and the cast-on


def test_a_length_from_the_end_of_a_section_or_of_a_part() -> None:
    """Section Cuff takes 6 rows; 2 cm from its end are 6 rows more, 2 cm of the cuff alone are reached already."""
    body = "## Cuff\n\n```work\nCast on 8 sts.\nRows 1 to 6: Knit.\n```\n\n## Hand\n\n```work\nRow 1: Knit.\n{}\n```\n"
    ends = worked(body.format("Rep Row 1 until piece measures 2 cm from end of cuff."))
    assert ends.entries[-1].rows == (5,)
    begins = worked(body.format("Rep Row 1 until hand measures 4 cm."))
    assert begins.entries[-1].rows == (11,)
    cuff = worked(body.format("Rep Row 1 until piece measures 2 cm from cuff."))
    assert cuff.entries[-1].rows == (0,)


def test_a_declared_count_is_believed_and_said_to_be_so() -> None:
    done = worked("```work\nCast on 8 sts.\nWork the panel.   # declared: 12 sts, 4 rows\nRow 1: Knit. (12 sts)\n```\n")
    assert done.faults == ()
    assert [(entry.after, entry.rows, entry.declared) for entry in done.entries] == [
        ((8,), (0,), False),
        ((12,), (4,), True),
        ((12,), (1,), False),
    ]


def test_stitches_are_held_and_taken_up() -> None:
    lines = """Cast on 10 sts.
Row 1: K2, place next 4 sts on hold, cast on 1 st, k to end. (7 sts)
Bind off all sts.
Place the 4 held sts on needles.
Row 1: K4, pick up and knit 2 sts across the gap. (6 sts)"""
    done = worked(f"```work\n{lines}\n```\n")
    assert done.faults == ()
    assert done.entries[-1].after == (6,)
    wrong = worked(f"```work\n{lines.replace('the 4 held', 'the 5 held')}\n```\n")
    assert [(type(fault).__name__, getattr(fault, "held", None)) for fault in wrong.faults] == [("NoStitches", (4,))]


def test_stitches_are_counted_by_yarn() -> None:
    body = "```work\nCast on 10 sts. Join in the round.\nRnd 1: *3A, 2B; rep from * to end.\nRnd 2 (main): Knit.\n```\n"
    assert worked(body).stitches == {"": (10,), "A": (6,), "B": (4,), "main": (10,)}


@pytest.mark.parametrize("rows", [1, 2, 3])
@pytest.mark.parametrize(
    ("text", "name", "first", "other"),
    [
        # US moss stitch, rows 1 and 4 alike, 2 and 3 alike: knittingmagic.biz. British moss: every row alike on an odd
        # number of stitches (stitchandstory.com; there on an even one). The name in the UK of the US one: from memory.
        ("Bind off loosely in the end.", "moss stitch", (2, 3), "P1, *k1, p1; rep from * to end."),
        ("Cast off loosely in the end.", "double moss stitch", (2, 3), "P1, *k1, p1; rep from * to end."),
        ("Cast off loosely in the end.", "moss stitch", (), ""),
        ("Bind off loosely in the end.", "seed stitch", (), ""),
    ],
)
def test_moss_stitch_is_what_it_is_in_the_country_of_the_text(
    text: str, name: str, first: tuple[int, ...], other: str, rows: int
) -> None:
    plain = "K1, *p1, k1; rep from * to end."
    begun = f"Cast on 5 sts.\nRow 1 (RS): {plain}\n"
    written = "".join(f"Row {row}: {other if row in first else plain}\n" for row in range(2, rows + 2))
    by_name = needle(f"{begun}Work in {name} for {rows} {'rows' if rows > 1 else 'row'}.", text)
    assert by_name.left == needle(begun + written, text).left
