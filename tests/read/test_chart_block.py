"""In: charts drawn in the source. Out: the rows written from them say what the cells say, and are read back alike."""

from pathlib import Path

import pytest
from tests.read.notation_again import lines_of, source, without_places

from sizewright.read.folder import read_text
from sizewright.read.notation.direction_tree import Row
from sizewright.read.pattern import StitchBlock, WorkBlock
from sizewright.work.blocks import block_rows

SIGNS = Path(__file__).parents[1] / "language" / "clean" / "unreadable-chart.md"


def chart(*lines: str) -> StitchBlock:
    """The block of a chart in a pattern of its own."""
    project = read_text("\n".join(("---", "title: A", "---", "```chart B", *lines, "```", "")), "a.md")
    assert project.findings == ()
    (block,) = (piece for piece in project.patterns[0].body if isinstance(piece, StitchBlock))
    return block


def written(*lines: str) -> list[str]:
    """The rows written from a chart."""
    return ["".join(map(str, line.pieces)) for line in chart(*lines).lines]


def test_right_side_rows_are_read_from_the_right_and_wrong_side_rows_from_the_left() -> None:
    """Common practice, no source: a chart shows the right side, so a purl sign on the wrong side is a knit stitch."""
    assert written("2 [ - | | ]", "  [ - / o ] 1") == [
        "Row 1 (RS): *Yo, k2tog, p1; rep from * to end.",
        "Row 2 (WS): *K1, p2; rep from * to end.",
    ]


def test_edges_stand_outside_the_frame() -> None:
    assert written("Worked in the round.", "| [ o / ] - - 1")[1] == (
        "Rnd 1: P2, *k2tog, yo; rep from * to last st, k1."
    )


def test_a_panel_without_a_frame_is_worked_once() -> None:
    assert written("Panel of 5 sts.", "| o / | | 3", "| | o / | 1")[1:] == [
        "Row 1 (RS): K1, k2tog, yo, k2.",
        "Row 3 (RS): K2, k2tog, yo, k1.",
    ]
    assert written("Panel of 5 sts.", "| [ o / ] | | 1")[1] == "Row 1 (RS): K2, *k2tog, yo; rep from * to last st, k1."


def test_a_cable_takes_as_many_cells_as_it_leaves_stitches_and_no_stitch_takes_none() -> None:
    assert written("Worked in the round.", "C = 2/2 LC", "[ C C C C _ | ] 1")[1] == (
        "Rnd 1: *K1, 2/2 LC; rep from * to end."
    )


@pytest.mark.parametrize("manner", ["sl wyif on RS, sl wyib on WS", "sl 1 pwise wyif on RS, sl 1 pwise wyib on WS"])
def test_the_manner_of_slipping_is_kept(manner: str) -> None:
    first, second = written(f"s = {manner}", "2 [ s | ]", "  [ | s ] 1")
    assert "wyif" in first
    assert "wyib" in second


def test_rows_written_from_charts_are_read_back_alike() -> None:
    project = read_text(SIGNS.read_text(encoding="utf-8"), "a.md")
    blocks = [piece for piece in project.patterns[0].body if isinstance(piece, StitchBlock)]
    assert len(blocks) > 3
    for block in blocks:
        rows = tuple(one for one in block.directions if isinstance(one, Row))
        again = source(lines_of(rows))
        assert again.findings == ()
        (back,) = (piece for piece in again.patterns[0].body if isinstance(piece, WorkBlock))
        assert without_places(back.directions) == without_places(rows), block.name.text


def test_rows_of_the_same_words_are_written_once_and_worked_one_by_one() -> None:
    cells = ("| | 5", "| | 4", "| | 3", "o / 2", "| | 1")
    block = chart("Worked in the round.", *cells)
    lines = ["".join(map(str, line.pieces)) for line in block.lines[1:]]
    assert lines == ["Rnds 1 and 3 to 5: Knit.", "Rnd 2: *K2tog, yo; rep from * to end."]
    assert [row.numbers.listed for row in block_rows(block.directions)] == [(1,), (2,), (3,), (4,), (5,)]
    again = source("\n".join(lines))
    (back,) = (piece for piece in again.patterns[0].body if isinstance(piece, WorkBlock))
    assert without_places(block_rows(back.directions)) == without_places(block_rows(block.directions))
