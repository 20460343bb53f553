"""Rows recorded stitch by stitch are the rows the engine works in runs, and the cloth shows their faces.

Faces follow from what a knit and a purl are (common practice, no source); the stitch patterns are those of
`test_published_stitch_patterns.py`, whose sources stand there.
"""

import pytest
from tests.work.test_published_stitch_patterns import PATTERNS

from sizewright.grade.graded import Graded
from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.read.notation.cables import Crossing
from sizewright.work.blocks import stitch_blocks
from sizewright.work.cloth import TALLEST, Cabled, Cloth, pattern_cloth, piece_cloth
from sizewright.work.counts import Counts
from sizewright.work.faults import Stopped
from sizewright.work.needle import Needle
from sizewright.work.recording import Cell, RecordedRow, Recording, recorded
from sizewright.work.row_work import RowWork
from sizewright.work.stitch_patterns import measured

HEADER = "---\ntitle: A\ngauge: {stitches: 20 st / 10 cm, rows: 30 row / 10 cm}\nsizes: {S: {}, M: {}}\n---\n"


def read(text: str) -> Graded:
    project = read_text(HEADER + text, "a.md")
    assert project.findings == ()
    return grade(project.patterns[0])


def rows_of(lines: str, width: int) -> tuple[RecordedRow, ...]:
    graded = read(f"```stitch X\n{lines}\n```\n")
    return recorded(stitch_blocks(graded)["x"], width, Counts(graded, 0))


def piece(lines: str, size: int = 0) -> Cloth:
    cloth = piece_cloth(read(f"```work\n{lines}\n```\n"), size)
    assert cloth is not None
    return cloth


def terms(row: RecordedRow) -> str:
    return " ".join(cell.term for cell in row.cells)


@pytest.mark.parametrize("name", PATTERNS)
def test_recording_leaves_the_needle_as_working_does(name: str) -> None:
    _, multiple, plus, lines = PATTERNS[name]
    graded = read("```stitch X\n" + "\n".join(lines) + "\n```\n")
    rows, counts = stitch_blocks(graded)["x"], Counts(graded, 0)
    width = plus + multiple * 3
    worked, watched = (Needle(b"k" * width, in_the_round=rows[0].in_the_round) for _ in range(2))
    recording = Recording(watched, counts)
    for row in rows:
        RowWork(worked, counts, row.label, row.span).work(row.actions)
        recording.row(row)
        assert watched == worked
        last = recording.rows[-1]
        made = "".join(cell.looks for cell in last.cells).encode()
        assert made == (worked.left if last.in_the_round else worked.left[::-1])
        assert (last.before - sum(cell.uses for cell in last.cells), last.after) == (0, worked.total)


def test_what_is_done_and_what_is_seen() -> None:
    (row,) = rows_of("Row 1 (WS): K2, p1, p2tog, ssp, yo twice.", 7)
    assert row.wrong_side
    assert terms(row) == "k k p p2tog ssp yo yo"
    assert "".join(cell.looks for cell in row.cells) == "ppk/\\oo"


@pytest.mark.parametrize(
    ("lines", "width", "cell"),
    [
        ("Row 1: Sl 1, k2tog, psso.", 3, Cell("sk2p", 3, "\\")),
        ("Row 1: Sl 1, k1, psso.", 2, Cell("skp", 2, "\\")),
        ("Row 1: Sl 2, k1, p2sso.", 3, Cell("s2kp", 3, "\\")),
        ("Row 1: Sl 1, k3tog, psso.", 4, Cell("sl1, k3tog, psso", 4, "\\")),
        ("Row 1: (K1, p1, k1) in next st.", 1, Cell("(k1, p1, k1) in 1 st", 1, "kpk")),
        ("Row 1: Bind off 1 st.", 1, Cell("bind off", 1, "")),
    ],
)
def test_what_is_one_thing_to_do_is_one_cell(lines: str, width: int, cell: Cell) -> None:
    (row,) = rows_of(lines, width)
    assert row.cells == (cell,)


def test_a_slipped_stitch_keeps_the_colour_below() -> None:
    first, second, third = rows_of(
        "Row 1 (main): Knit.\nRow 2 (contrast): *P3, sl 1; rep from * to end.\nRow 3: Sl 1, k3, sl 4.", 8
    )
    assert {cell.colour for cell in first.cells} == {"main"}
    assert [cell.colour for cell in second.cells] == [*["contrast"] * 3, "main"] * 2
    assert [cell.colour for cell in third.cells] == ["main", *["contrast"] * 3, "main", *["contrast"] * 3]


def test_a_turn_leaves_stitches_on_both_sides() -> None:
    cloth = piece("Cast on 6 sts.\nRow 1 (RS): K4, turn.\nRow 2 (WS): P2, turn.\nRow 3 (RS): Knit to end.")
    assert [row.looks for row in cloth.rows] == ["sskkkk", "sskkss", "kkkkss"]


FACES = {
    "stockinette flat": ("Row 1 (RS): Knit.\nRow 2 (WS): Purl.", ["kkkk", "kkkk"]),
    "stockinette in the round": ("Join in the round.\nRnd 1: Knit.\nRnd 2: Knit.", ["kkkk", "kkkk"]),
    "garter flat": ("Row 1 (RS): Knit.\nRow 2 (WS): Knit.", ["kkkk", "pppp"]),
    "garter in the round": ("Join in the round.\nRnd 1: Knit.\nRnd 2: Purl.", ["kkkk", "pppp"]),
    "rib flat": ("Row 1 (RS): K3, p1.\nRow 2 (WS): K1, p3.", ["pkkk", "pkkk"]),
    "rib in the round": ("Join in the round.\nRnd 1: *K3, p1; rep from *.\nRnd 2: As they appear.", ["pkkk", "pkkk"]),
    "wrong side first": ("Row 1 (WS): K3, p1.", ["pppk"]),
}


@pytest.mark.parametrize("name", FACES)
def test_the_faces_of_the_cloth(name: str) -> None:
    lines, looks = FACES[name]
    assert [row.looks for row in piece(f"Cast on 4 sts.\n{lines}").rows] == looks


def test_where_stitches_stand() -> None:
    right, made, wrong = piece(
        "Cast on 5 sts.\nRow 1 (RS): K2tog, k3.\nRow 2 (WS): P2, yo, p2.\nRow 3 (RS): K3, k2tog."
    ).rows
    assert list(right.stands_on) == [0, 1, 2, 3.5]  # k2tog is worked first, at the right end
    assert (made.looks, list(made.stands_on)) == ("kkokk", [0, 1, 1.5, 2, 3])
    assert list(wrong.stands_on) == [0.5, 2, 3, 4]


def test_a_cable_keeps_its_place() -> None:
    (row,) = piece("Cast on 10 sts.\nRow 1 (RS): K1, C4F, k5.").rows
    assert row.crossings == (Cabled(5, Crossing(to_left=True, front="kk", back="kk")),)


def test_a_cable_of_the_wrong_side_is_seen_from_the_right_one() -> None:
    _, row = piece("Cast on 10 sts.\nRow 1 (RS): Knit.\nRow 2 (WS): P1, 2/1 LPC, p6.").rows
    assert row.crossings == (Cabled(1, Crossing(to_left=True, front="k", back="pp")),)


def test_a_tall_piece_is_shown_from_its_edge_up_and_only_the_first_piece() -> None:
    tall = piece("Cast on 4 sts.\nRows 1 to 900: Knit.\nCast on 9 sts.\nRow 1: Knit.")
    assert (len(tall.rows), tall.finished, tall.widest) == (TALLEST, False, 4)
    small = piece("Cast on 4 sts.\nRows 1 to 5: Knit.\nBind off all sts.\nCast on 9 sts.\nRow 1: Knit.")
    assert (len(small.rows), small.finished) == (5, True)


def test_each_size_has_its_own_cloth() -> None:
    assert [piece("Cast on 4 (6) sts.\nRow 1: Knit.", size).cast_on for size in (0, 1)] == [4, 6]


def test_a_pattern_without_rows_has_no_cloth() -> None:
    assert piece_cloth(read("Words.\n"), 0) is None


def test_a_stitch_pattern_over_some_repeats() -> None:
    graded = read("```stitch X\nRnd 1: *K1, p1; rep from * to end.\nRnd 2: Knit.\nRnd 3: Purl.\n```\n")
    assert measured(graded.pattern.body[0], graded).multiple == 2  # type: ignore[arg-type]  # the only piece
    cloth = pattern_cloth(stitch_blocks(graded)["x"], 4, 4, graded)
    assert [row.looks for row in cloth.rows] == ["pkpk", "kkkk", "pppp", "pkpk"]
    with pytest.raises(Stopped):
        pattern_cloth(stitch_blocks(graded)["x"], 5, 4, graded)


def test_stitches_worked_and_then_held_leave_the_recorded_needle_too() -> None:
    (row,) = rows_of("Row 1: K2, yo, k2tog, place these 4 sts on hold, k2.", 6)
    assert (row.before, row.after, row.left) == (6, 2, 0)
    assert "".join(cell.looks for cell in row.cells) == "kk"
