"""The yarn of every size in print: rounded up, in both unit systems, with what has to be said of it.

The conversions are those of 16 CFR 500.19(a): a yard is 0.9144 m, an ounce 28.3495 g. All else is arithmetic, by hand
beside each check.
"""

import re
from collections.abc import Callable, Mapping
from fractions import Fraction

import pytest
from markupsafe import escape

from sizewright.base.printing import as_text, bought
from sizewright.base.units import LENGTH, MASS
from sizewright.proof.proofed import Proofed
from sizewright.publish.card import Card
from sizewright.publish.output import Output
from sizewright.publish.view import PatternView
from sizewright.read.project import Project

ViewOf = Callable[[str, str], PatternView]
ReadPattern = Callable[[str], tuple[Proofed, Project]]

SWATCH = "swatch: {stitches: 100 st, length: 1 m}, reserve: 10 %"
BODY = "```work\nCast on 100 sts.\nRows 1 to 48 (78, 98): Knit.\nBind off all sts.\n```"  # 50, 80 and 100 rows
SIZES = "sizes: {S: {}, M: {}, L: {}}\n"


def cells(view: PatternView) -> list[list[str]]:
    assert view.amounts is not None
    return [[cell.striptags() for cell in row.cells] for row in view.amounts.rows]


@pytest.mark.parametrize(
    ("value", "dimension", "text"),
    [
        (Fraction(10_000), LENGTH, "100 m / 110 yd"),  # 100 m are 109.36 yd
        (Fraction(10_001), LENGTH, "101 m / 110 yd"),
        (Fraction(91_440), LENGTH, "915 m / 1000 yd"),
        (Fraction(50), MASS, "50 g / 1.8 oz"),  # 50 g are 1.764 oz
        (Fraction("50.01"), MASS, "51 g / 1.8 oz"),
        (Fraction("28.349523125"), MASS, "29 g / 1 oz"),
    ],
)
def test_what_is_bought_is_rounded_up(value: Fraction, dimension: object, text: str) -> None:
    assert dimension in (LENGTH, MASS)
    assert as_text(bought((value,), LENGTH if dimension == LENGTH else MASS)) == text


def test_a_table_by_size(view_of: ViewOf) -> None:
    """With 10 % more 50, 80 and 100 m are 55, 88 and 110 m; at 50 g to 100 m 27.5, 44 and 55 g, so 1, 1 and 2 balls."""
    view = view_of(f"{SIZES}yarn: {{length: 100 m, mass: 50 g, {SWATCH}}}\n", BODY)
    assert view.amounts is not None
    assert [(group.label, [column.label for column in group.columns]) for group in view.amounts.groups] == [
        ("Yarn", ["Length", "Mass", "Balls of 50 g"])
    ]
    assert [row.size.name for row in view.amounts.rows] == ["S", "M", "L"]
    assert cells(view) == [
        ["55 m 61 yd", "28 g 1 oz", "1"],
        ["88 m 97 yd", "44 g 1.6 oz", "1"],
        ["110 m 121 yd", "55 g 2 oz", "2 1 without the reserve"],
    ]
    assert tuple(escape(note).striptags() for note in view.amount_notes) == (
        "Counted from every stitch of the instructions, edges included, by a swatch of 100 sts that took 1 m / 1.1 yd.",
        "10 % is added in reserve, for the swatch, tails and joins.",
        "Where fewer balls would do without the reserve, their number stands beside.",
    )


def test_every_yarn_has_its_columns(view_of: ViewOf) -> None:
    contrast = "{swatch: {stitches: 10 st, mass: 1 g}}"
    yarns = f"{{main: {{colour: Peat, length: 100 m, {SWATCH}}}, contrast: {contrast}}}"
    view = view_of(f"yarn: {yarns}\n", "```work\nCast on 100 sts.\nRow 1 (CC): Knit.\n```")
    assert view.amounts is not None
    assert [(group.label, [column.label for column in group.columns]) for group in view.amounts.groups] == [
        ("Main: Peat", ["Length", "Balls of 100 m"]),
        ("Contrast", ["Mass"]),
    ]
    assert cells(view) == [["2 m 2 yd", "1", "10 g 0.4 oz"]]  # 1.1 m are 1.2 yd
    assert "10 % of main, 0 % of contrast is added in reserve, for the swatch, tails and joins." in view.amount_notes


def test_a_size_that_is_not_counted_whole_says_so(view_of: ViewOf) -> None:
    body = "```work\nCast on 100 sts.\n```\n\n::: sizes L\n```work\nWork a flower.   # declared: 9 sts\n```\n:::"
    view = view_of(f"{SIZES}yarn: {{{SWATCH}}}\n", body)
    assert [row[0] for row in cells(view)] == ["2 m 2 yd", "2 m 2 yd", "at least 2 m 2 yd"]
    assert any(note.startswith("“At least”") for note in view.amount_notes)


def test_without_a_swatch_there_is_no_table(view_of: ViewOf) -> None:
    view = view_of("yarn: {length: 100 m, mass: 50 g}\n", BODY.replace("48 (78, 98)", "48"))
    assert (view.amounts, view.amount_notes) == (None, ())


@pytest.mark.parametrize(
    ("yarn", "text"),
    [
        (f"{{length: 100 m, mass: 50 g, {SWATCH}}}", "55 to 110 m / 61 to 121 yd"),
        ("{swatch: {stitches: 100 st, mass: 1 g}}", "50 to 100 g / 1.8 to 3.6 oz"),
        (f"{{main: {{{SWATCH}}}, other: {{}}}}", "main 55 to 110 m / 61 to 121 yd"),
        ("{weight: light}", ""),
    ],
)
def test_the_card_tells_the_range(read_pattern: ReadPattern, yarn: str, text: str) -> None:
    proofed, _ = read_pattern(f"---\ntitle: Trial\n{SIZES}yarn: {yarn}\n---\n{BODY}\n")
    assert Card.of(proofed).yarn == text
    assert Card.from_json(Card.of(proofed).as_json()).yarn == text


def test_a_card_written_before_yarn_was_told_is_still_read(read_pattern: ReadPattern) -> None:
    proofed, _ = read_pattern(f"---\ntitle: Trial\n{SIZES}---\n{BODY}\n")
    written = {key: value for key, value in Card.of(proofed).as_json().items() if key != "yarn"}
    assert Card.from_json(written).yarn == ""


def test_the_page_and_the_card_show_it(sample_outputs: Mapping[str, Output]) -> None:
    page = sample_outputs["patterns/hat.html"].content.decode()
    assert '<h2 id="part--yarn">Yarn for each size</h2>' in page
    assert '<a href="#part--yarn">' in page
    assert "Yarn for each size" not in sample_outputs["patterns/cloth.html"].content.decode()
    index = sample_outputs["index.html"].content.decode()
    assert re.search(r"<dt>Yarn</dt><dd>light, fine, main \d+ to \d+ m / \d+ to \d+ yd</dd>", index)
