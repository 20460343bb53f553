"""In: plans with a number that is one in some size. Out: the words as they are said, on the page and row by row."""

import json
from collections.abc import Callable

import pytest
from bs4 import BeautifulSoup

from sizewright.base.language import language, speaking
from sizewright.publish.view import PatternView

ViewOf = Callable[[str, str], PatternView]
SIZES = "sizes: [S, M, L]\n"
# Sums by hand: 46 sts less 4 are 42 = 2 × 10 + 2 × 11; 45 less 4 are 41 = 3 × 10 + 11; 44 less 4 are 40 = 4 × 10.
CROWN = "```grade\ncrown = decrease_evenly_in_round(46 (45, 44) st, 4)\n```\n"
WORK = "```work\nCast on 46 sts.\nRnd 1: {crown}, knit to end.\nBind off.\n```\n"


def told(view: PatternView) -> list[str]:
    lines = [line for part in view.body.parts for line in part.lines]
    return [BeautifulSoup(f"{line.text}", "html.parser").get_text() for line in lines]


def test_what_is_worked_once_has_no_brackets(view_of: ViewOf) -> None:
    _, *crown, _ = told(view_of(SIZES, CROWN + WORK))
    assert crown == [
        "[k9, k2tog, k10, k2tog] twice, knit to end.",
        "[k9, k2tog] 3 times, k10, k2tog, knit to end.",
        "[k9, k2tog] 4 times, knit to end.",
    ]


def test_row_by_row_as_on_the_page(view_of: ViewOf) -> None:
    rows = json.dumps(json.loads(view_of(SIZES, CROWN + WORK).rows), ensure_ascii=False)
    assert "[k9, k2tog, k10, k2tog] twice" in rows
    assert "] once" not in rows


def test_in_another_language_too(view_of: ViewOf) -> None:
    with speaking(language("de", ())):
        _, first, second, *_ = told(view_of(SIZES, CROWN + WORK))
    assert first.startswith("[9 M re, 2 M re zus-str, 10 M re, 2 M re zus-str] zweimal")
    assert second.startswith("[9 M re, 2 M re zus-str] 3-mal, 10 M re, 2 M re zus-str")


@pytest.mark.parametrize(("over", "left"), [("177 (178, 176)", True), ("176 (176, 176)", False)])
def test_one_row_is_no_rows(view_of: ViewOf, over: str, *, left: bool) -> None:
    """By hand: shaping uses 176 rows up; one is left over of 177, two of 178, each told to its own size."""
    sleeve = f"```grade\nsleeve = sleeve_taper(72 st, 156 st, {over} row)\n```\n"
    view = view_of(SIZES, sleeve + "```work\nCast on 72 sts.\n{sleeve}\n```\n")
    even = [line for line in told(view) if "even" in line]
    assert not [line for line in even if "1 rows" in line]
    assert ("Work 1 row even." in even) == left


def test_a_row_begins_with_a_capital_whatever_a_size_leaves_out(view_of: ViewOf) -> None:
    """By hand: necks of 31, 32 and 31 sts: the odd ones have a stitch in the middle, which is bound off."""
    neck = "```grade\nneck = v_neckline(61 (62, 61) st, 31 (32, 31) st, 40 row)\n```\n"
    view = view_of(SIZES, neck + "```work\nCast on 61 (62, 61) sts.\n{neck}\n```\n")
    rows = [line for line in told(view) if line.endswith("st, k to end.") or line == "K to end."]
    assert rows == ["Bind offCast off 1 st, k to end.", "K to end."]


def test_how_often_is_told_once_behind_the_numbers_of_all_sizes(view_of: ViewOf) -> None:
    """By hand: of 10, 11 and 14 sts at either side half are bound off, 5, 6 and 7; one goes with the first row."""
    gauge = SIZES + "gauge: {stitches: 20 st / 10 cm, rows: 30 row / 10 cm}\n"
    arm = "```grade\narm = armhole(80 (86, 98) st, 60 (64, 70) st, 60 row, stitch_gauge, row_gauge)\n```\n"
    lines = told(view_of(gauge, arm + "```work\nCast on 80 (86, 98) sts.\n{arm}\n```\n"))
    rep = [line for line in lines if line.startswith("Rep Dec Row")]
    assert rep == ["Rep Dec Row every other row 4 (4, 6)\N{NO-BREAK SPACE}times."]


@pytest.mark.parametrize(
    ("over", "said"),
    [("84 (82, 80)", "every other row 42 (41, 40)"), ("84 (164, 80)", "every 2 (4, 2) rows 42 (41, 40)")],
)
def test_every_2_rows_are_every_other_row_where_all_sizes_have_them(view_of: ViewOf, over: str, said: str) -> None:
    """By hand: 42, 41 and 40 increases at either end fill 84, 82 and 80 rows, or 164, at every 2nd or 4th of them."""
    sleeve = f"```grade\nsleeve = sleeve_taper(72 st, 156 (154, 152) st, {over} row)\n```\n"
    _, line = told(view_of(SIZES, sleeve + "```work\nCast on 72 sts.\n{sleeve}\n```\n"))
    assert line == f"Inc 1 st at each end of {said}\N{NO-BREAK SPACE}times."
