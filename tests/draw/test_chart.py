"""A chart as data: what stands in its cells is what its rows say, where it is read from, and what is repeated.

Old shale and honeycomb are those of `tests/work/test_published_stitch_patterns.py`, whose sources stand there; the
small laces, cables and colours are our own. How a chart is read (right-side rows and all rounds from the right,
wrong-side rows from the left, the right side shown) is common practice, no source.
"""

import re
from collections import Counter

import pytest

from sizewright.draw.cable_symbols import cable_symbol
from sizewright.draw.chart import Chart, ChartRow, Frame, chart, worked_in
from sizewright.draw.symbols import SYMBOLS, symbol_of
from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.read.notation.cables import crossing_of
from sizewright.work.blocks import stitch_blocks
from sizewright.work.counts import Counts
from sizewright.work.recording import recorded
from sizewright.work.widths import Tried, fitting

SIGNS = {"knit": ".", "purl": "-", "yarn over": "O", "slip": "V"}
SIGNS |= {"decrease to the right": "/", "decrease to the left": "\\", "centred double decrease": "^"}

OLD_SHALE = """Row 1 (RS): Knit.
Row 2: K3, purl to last 3 sts, k3.
Row 3: K3, *[k2tog] 3 times, [yo, k1] 6 times, [k2tog] 3 times; rep from * to last 3 sts, k3.
Row 4: Knit."""
HONEYCOMB = """Row 1 (RS): *P1, sl 1 wyib; rep from * to last st, p1.
Row 2: Purl.
Row 3: *P2, sl 1 wyib, p1; rep from * to last st, p1.
Row 4: Purl."""
CHANGING = """Row 1 (RS): K1, *k1, yo, k1, yo, k1; rep from * to last st, k1.
Row 2: Purl.
Row 3: K1, *ssk, k1, k2tog; rep from * to last st, k1.
Row 4: Purl."""
CABLES = """Row 1 (RS): P2, *k4, p2; rep from * to end.
Row 2: K2, *p4, k2; rep from * to end.
Row 3: P2, *C4F, p2; rep from * to end.
Row 4: K2, *p4, k2; rep from * to end."""
COLOURS = """Rnd 1 (main): Knit.
Rnd 2 (contrast): *K3, sl 1 wyib; rep from * to end.
Rnd 3 (contrast): *P3, sl 1 wyib; rep from * to end."""
ALL = {
    "old shale": OLD_SHALE,
    "honeycomb": HONEYCOMB,
    "changing": CHANGING,
    "cables": CABLES,
    "colours": COLOURS,
    "three from one": "Row 1 (RS): *(K1, p1, k1) in next st, k3tog; rep from * to end.\nRow 2: Purl.",
    "bound off": "Row 1 (RS): Bind off 1 st, k to last 4 sts, k4, cast on 1 st.",
}


def charted(lines: str, multiple: int = 0, plus: int = 0, header: str = "title: A") -> Chart:
    project = read_text(f"---\n{header}\n---\n```stitch X\n{lines}\n```\n", "a.md")
    assert project.findings == ()
    graded = grade(project.patterns[0])
    rows = stitch_blocks(graded)["x"]
    widths = [recorded(rows, width, Counts(graded, 0)) for width in fitting(Tried(rows, Counts(graded, 0)))[:3]]
    drawn = chart("X", multiple, plus, widths)
    assert drawn is not None
    return drawn


def grid(drawn: Chart) -> list[str]:
    """The chart as it is seen, the upper row first; # is no stitch, ? another sign."""
    return ["".join(signs(row, drawn.columns)) for row in reversed(drawn.rows)]


def signs(row: ChartRow, columns: int) -> list[str]:
    seen = ["#"] * columns
    for cell in row.cells:
        for column in range(cell.column, cell.column + cell.over):
            assert seen[column] == "#", "two cells stand in one place"
            seen[column] = SIGNS.get(cell.symbol.name, "?")
    return seen


def test_old_shale() -> None:
    drawn = charted(OLD_SHALE, 18, 6)
    assert grid(drawn) == [
        "------------------------",
        "...///.O.O.O.O.O.O///...",
        "---..................---",
        "........................",
    ]
    assert drawn.frame == Frame(3, 18)
    assert [entry.words for entry in drawn.key] == ["knit on RS, purl on WS", "knit on WS", "k2tog", "yarn over"]
    assert [row.from_left for row in drawn.rows] == [False, True, False, True]
    assert not drawn.has_gaps
    assert drawn.yarns == ()


def test_honeycomb() -> None:
    drawn = charted(HONEYCOMB)
    assert grid(drawn) == [".....", "--V--", ".....", "-V-V-"]
    assert drawn.frame is not None
    assert drawn.frame.width == 4
    assert [entry.words for entry in drawn.key] == ["purl", "slip wyib", "purl on WS"]


def test_stitches_stand_over_one_another_where_the_count_changes() -> None:
    drawn = charted(CHANGING, 3, 2)
    assert grid(drawn) == ["..#.#..", "./#.#\\.", ".......", "..O.O.."]
    assert (drawn.has_gaps, drawn.frame) == (True, Frame(1, 5))
    assert [(row.before, row.after) for row in drawn.rows] == [(5, 7), (7, 7), (7, 5), (5, 5)]


def test_a_cable_is_one_sign_over_its_stitches() -> None:
    drawn = charted(CABLES, 6, 2)
    (cable,) = [cell for row in drawn.rows for cell in row.cells if cell.cell.term == "C4F"]
    assert (cable.column, cable.over, cable.symbol.over) == (2, 4, 4)
    assert drawn.frame == Frame(2, 6)


def test_two_colours_have_a_letter_each_and_a_slipped_stitch_the_colour_below() -> None:
    drawn = charted(COLOURS, 4)
    assert drawn.yarns == (("main", "M"), ("contrast", "C"))
    colours = [[cell.cell.colour[0] for cell in row.cells] for row in drawn.rows]
    assert colours == [list("mmmm"), list("mccc"), list("mccc")]


def test_yarns_of_one_letter_do_not_share_it() -> None:
    yarns = "title: A\nyarn: {cream: {fibre: wool}, coral: {fibre: wool}}"
    drawn = charted("Row 1 (cream): K2.\nRow 2 (coral): K2.\nRow 3 (A): K2.\nRow 4 (MC): K2.", header=yarns)
    letters = [letter for _, letter in drawn.yarns]
    assert len(set(letters)) == len(letters) == 4
    assert {"A", "MC"} <= set(letters)


def test_rounds_are_all_read_from_the_right() -> None:
    flat, rounds = charted("Row 1: K1, p2.\nRow 2: K2, p1."), charted("Rnd 1: K1, p2.\nRnd 2: K2, p1.")
    assert (grid(flat), [row.from_left for row in flat.rows]) == (["--.", "--."], [False, True])
    assert (grid(rounds), [row.from_left for row in rounds.rows]) == (["-..", "--."], [False, False])


def test_what_is_not_repeated_in_columns_has_no_frame() -> None:
    whole = "Row 1 (RS): *K2, p1; rep from * to end.\nRow 2: *K1, p2; rep from * to end."
    assert charted(whole).frame == Frame(0, 3)
    # The cables of one row stand between those of the other: every frame would cut through one of them.
    between = "Row 1 (RS): *C4F; rep from * to end.\nRow 2: Purl.\nRow 3: K2, *C4F; rep from * to last 2 sts, k2."
    assert charted(between).frame is None
    assert charted("Row 1 (RS): K2, p3.").frame is None  # a panel of one count


@pytest.mark.parametrize("name", ALL)
def test_cells_and_counts_agree(name: str) -> None:
    for row in charted(ALL[name]).rows:
        cells = [cell.cell for cell in worked_in(row)]
        assert sum(cell.uses for cell in cells) == row.before
        assert sum(cell.makes for cell in cells) == row.after


@pytest.mark.parametrize("name", ALL)
def test_the_chart_read_as_words_is_the_same_rows(name: str) -> None:
    """The signs of a row, read from the side it is worked from, are words that make the same stitches again."""
    drawn = charted(ALL[name])
    label = "Rnd" if drawn.rows[0].in_the_round else "Row"
    lines = [f"{label} {row.number}{_side(row)}: {', '.join(map(_word, worked_in(row)))}." for row in drawn.rows]
    again = charted("\n".join(line.replace("sl wyib", "sl 1 wyib") for line in lines))
    assert grid(again) == grid(drawn)
    for row, other in zip(drawn.rows, again.rows, strict=True):
        assert [cell.cell.looks for cell in row.cells] == [cell.cell.looks for cell in other.cells]


def _side(row: ChartRow) -> str:
    return "" if row.in_the_round else " (WS)" if row.wrong_side else " (RS)"


def _word(cell: object) -> str:
    term, manner = getattr(cell, "cell").term, getattr(cell, "cell").manner  # noqa: B009
    spelled = {"k": "k1", "p": "p1", "bind off": "bind off 1 st", "cast on": "cast on 1 st"}.get(term, term)
    return f"{spelled} {manner}".strip().replace("in 1 st", "in next st")


def test_a_pattern_that_turns_in_mid_row_or_is_too_large_has_no_chart() -> None:
    graded = grade(read_text("---\ntitle: A\n---\n```stitch X\nRow 1 (RS): K90.\n```\n", "a.md").patterns[0])
    wide = recorded(stitch_blocks(graded)["x"], 90, Counts(graded, 0))
    assert chart("X", 0, 0, [wide]) is None
    assert chart("X", 0, 0, []) is None


def test_no_sign_stands_for_two_things_on_one_side() -> None:
    for side in ("right", "wrong"):
        terms = Counter(term for symbol in SYMBOLS for term in getattr(symbol, side))
        assert max(terms.values()) == 1
    shapes = [(symbol.lines, symbol.filled, symbol.over) for symbol in SYMBOLS if symbol.name != "two from one purled"]
    assert len(set(shapes)) == len(shapes)


@pytest.mark.parametrize(("right", "wrong"), [("k", "p"), ("p", "k"), ("k2tog", "p2tog"), ("ssk", "ssp"), ("yo", "yo")])
def test_what_looks_the_same_has_one_sign_on_both_sides(right: str, wrong: str) -> None:
    assert symbol_of(right, wrong_side=False) == symbol_of(wrong, wrong_side=True) is not None


def test_stitches_without_a_sign_each_get_one_of_their_own() -> None:
    drawn = charted("Row 1: (K1, p1) in next st, (p1, k1) in next st, (k1, yo) in next st, k3tog, k2tog.")
    own = [cell.symbol for cell in drawn.rows[0].cells if "in 1 st" in cell.cell.term]
    assert len({(symbol.lines, symbol.filled) for symbol in own}) == 3
    assert all(symbol.lines or symbol.filled for symbol in own)


def test_a_crossing_is_told_in_the_key() -> None:
    words = [entry.words for entry in charted(CABLES.replace("C4F", "C4B"), 6, 2).key]
    assert "C4B: slip 2 to a cable needle, hold behind, k2, then k2 from it" in words


def test_the_strand_in_front_is_unbroken_and_the_one_behind_is_not() -> None:
    crossing = crossing_of("C6F")
    assert crossing is not None
    path = cable_symbol(crossing, "C6F", wrong_side=False).lines
    lines = re.findall(r"M[\d.]+ ([\d.]+)l(-?[\d.]+) (-?[\d.]+)", path)
    whole = [float(across) for _, across, up in lines if abs(float(up)) > 16]
    parts = [float(across) for _, across, up in lines if abs(float(up)) <= 16]
    assert whole == [-60, -60]  # over three cells to the left
    assert len(parts) == 2
    assert all(across > 0 for across in parts)
