"""The proof sheet: every number of a pattern with its formula, inputs, rounding, users and gauge."""

import csv
import io
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag

from sizewright.base.finding import Finding, Level
from sizewright.proof.run import proof
from sizewright.publish.faults import CannotWrite, NotOurs
from sizewright.publish.sheet.sheets import SCRIPT, Subject, sheet_view, sheets
from sizewright.publish.sheet.view import GroupView, QuantityView, RowView, SheetView
from sizewright.publish.sheet.write import write_sheets
from sizewright.read.folder import read_text

SOURCE = (Path(__file__).parent / "sheet_source.md").read_text(encoding="utf-8")
APART = Finding("missing-alt", Level.WARNING, "No words for <hat.svg>.", "Add them.", None)


def subject(text: str = SOURCE, source: str = "drafts/trial.md") -> Subject:
    project = read_text(text, "trial.md")
    return Subject(source, proof(project.patterns[0], project))


@pytest.fixture(scope="module")
def view() -> SheetView:
    return sheet_view("trial", subject())


@pytest.fixture(scope="module")
def page() -> BeautifulSoup:
    files = {file.path: file.content for file in sheets([subject()], [])}
    return BeautifulSoup(files["trial.html"].decode(), "html.parser")


def quantity(view: SheetView, name: str) -> QuantityView:
    return next(one for one in view.quantities if one.name == name)


def texts(rows: tuple[RowView, ...]) -> dict[str, list[str]]:
    return {row.label: [cell.text for cell in row.cells] for row in rows}


def group(groups: tuple[GroupView, ...], label: str) -> GroupView:
    return next(one for one in groups if one.label == label)


def test_a_quantity_with_all_that_is_asked_of_it(view: SheetView) -> None:
    # 52, 56, 60, 64 cm at 2 sts to the cm are 104, 112, 120, 128; the multiples of 18 next to them 108, 108, 126, 126
    sts = quantity(view, "sts")
    assert (sts.formula, sts.unit, sts.place) == ("head * stitch_gauge, nearest multiple of 18", "st", "line 20")
    assert texts(sts.rows) == {
        "value, st": ["108", "108", "126", "126"],
        "before rounding, st": ["104", "112", "120", "128"],
        "moved, st": ["+4", "−4", "+6", "−2"],
        "moved, cm": ["+2", "−2", "+3", "−1"],
        "step, st": ["–", "0", "+18", "0"],
        "step, %": ["–", "0 %", "+16.7 %", "0 %"],
    }
    assert [ref.text for ref in sts.relies_on] == ["head", "stitch_gauge"]
    assert [ref.text for ref in sts.used_by] == ["around", "the text (lines 26, 29)", "a promise (line 23)"]
    assert sts.rounding == "Rounded “nearest multiple of 18”; in cm through stitch_gauge"
    assert sts.gauge == "Changes with stitch_gauge"
    assert sts.looks == ("rounding moved it by more than half of the step to the next size in L",)


TIES = """---
title: Ties
sizes: [S, M, L]
finished:
  - {label: Deep, value: "depth + 0.25 cm, nearest 0.5 cm"}
---

```grade
gap = 4 st
sts = 10 (12, 14) st, nearest multiple of gap
other = 10 (12, 14) st, up to multiple of 4
more = 9 (10, 12) st, nearest multiple of 6 plus 1
depth = 3 (3.1, 4) cm
fine = 3.1 (3.2, 3.3) cm, nearest 0.5 cm
```

Knit {sts / 4, nearest whole} and {other} and {more} and {fine}.
"""


def test_a_value_exactly_between_two_is_told_with_the_way_it_went() -> None:
    """By hand: 10 lies between 8 and 12, 14 between 12 and 16; 10 between 7 and 13; 3.25 and 4.25 between halves."""
    view = sheet_view("trial", subject(TIES))
    assert quantity(view, "sts").rounding.endswith("; exactly between two in S and L: up")
    assert [cell.text for cell in quantity(view, "sts").rows[0].cells] == ["12", "12", "16"]
    assert quantity(view, "more").rounding.endswith("; exactly between two in M: up")
    for name in ("other", "fine", "depth"):
        assert "between" not in quantity(view, name).rounding
    assert "exactly between two in S and L: up" in group(view.finished, "Deep").facts
    # 12, 12 and 16 sts in fours are whole; a half would be told
    assert not [fact for fact in group(view.printed, "{sts / 4, nearest whole}").facts if "between" in fact]
    halves = sheet_view("trial", subject(TIES.replace("{sts / 4,", "{sts / 8,")))
    assert "exactly between two in S and M: up" in group(halves.printed, "{sts / 8, nearest whole}").facts


def test_what_is_out_of_line_and_what_was_found_stand_beside_it(view: SheetView) -> None:
    brim = quantity(view, "brim")
    assert brim.looks == ("warning: size-out-of-line", "out of line in L")
    assert [one.rule for one in brim.found] == ["size-out-of-line"]
    assert [cell.mark for cell in brim.rows[0].cells] == ["", "", "astray", ""]
    assert (quantity(view, "head").looks, quantity(view, "head").formula) == ((), "")
    assert quantity(view, "head").place == "given in the header, line 5"


def test_the_ledger_has_every_direction(view: SheetView) -> None:
    (part,) = view.ledger
    rows = {row.label: row for row in part.rows}
    assert [cell.text for cell in rows["Cast on"].cells] == ["– → 108", "– → 108", "– → 126", "– → 126"]
    assert [cell.text for cell in rows["Rnd 1"].cells] == ["108", "108", "126 → –", "126 → –"]
    assert rows["Rnd 1"].typed == "Rnd 1: *K2, p2; rep from * to end."
    assert [one.rule for one in rows["Rnd 1"].found] == ["broken-repeat"]
    declared = next(row for row in part.rows if row.declared)
    assert declared.looks == ("declared, not proved",)
    assert [cell.mark for cell in rows["Rnd 3"].cells] == ["changed"] * 4


def test_stitch_patterns_stated_and_found(view: SheetView) -> None:
    (waves,) = view.multiples
    assert (waves.stated, waves.has, waves.agree) == ("multiple of 4 sts", "multiple of 3 sts", "no")
    assert [one.rule for one in waves.found] == ["wrong-multiple"]


def test_finished_measurements_beside_the_body(view: SheetView) -> None:
    around = group(view.finished, "Around")
    told = texts(around.rows)
    assert told["exact, cm"] == ["54", "54", "63", "63"]
    assert told["without any rounding, cm"] == ["52", "56", "60", "64"]
    assert told["moved by all rounding, cm"] == ["+2", "−2", "+3", "−1"]
    assert told["ease, cm"] == ["+2", "−2", "+3", "−1"]
    assert told["ease, % of the body"] == ["+3.8 %", "−3.6 %", "+5 %", "−1.6 %"]
    assert "meant ease: 0 cm to 4 cm" in around.facts
    assert [one.rule for one in around.found] == ["ease-out-of-range"]


def test_what_another_gauge_would_make_of_them(view: SheetView) -> None:
    # 108 and 126 sts at 21 to 10 cm: 51.43 and 60 cm; at 19: 56.84 and 66.32 cm
    told = texts(group(view.shifted, "Around").rows)
    assert told["one stitch more in 10 cm, cm"] == ["≈ 51.43", "≈ 51.43", "60", "60"]
    assert told["one stitch fewer in 10 cm, cm"] == ["≈ 56.84", "≈ 56.84", "≈ 66.32", "≈ 66.32"]
    assert view.gauges[0].startswith("stitch_gauge: 20 sts in 10 cm")


def test_every_number_of_the_text_with_its_formula(view: SheetView) -> None:
    half = group(view.printed, "{sts / 2}")
    assert texts(half.rows) == {"printed": ["54", "54", "63", "63"]}
    assert (half.facts, [ref.text for ref in half.relies_on]) == (("line 26",), ["sts"])
    around = group(view.printed, "{around}")
    # 54 and 63 cm are 21.26 and 24.80 in, to the nearest quarter 21¼ and 24¾
    assert texts(around.rows) == {
        "printed": ["21¼ in", "21¼ in", "24¾ in", "24¾ in"],
        "exact, cm": ["54", "54", "63", "63"],
    }
    assert "printed as in" in around.facts
    typed = group(view.printed, "8 (9, 10, 11)")
    assert texts(typed.rows) == {"typed": ["8", "9", "10", "11"]}
    assert typed.facts == ("line 32", "typed by hand: no formula is behind it")


def test_yarn_and_needles(view: SheetView) -> None:
    main = group(view.yarns, "main")
    rows = texts(main.rows)
    # 1000 stitches weigh 10 g, and 100 g are 200 m: so many stitches take a hundredth in grams, a fiftieth in metres
    stitches = int(rows["stitches worked"][0])
    assert float(rows["mass, g"][0]) == round(stitches / 100, 1)
    assert "reserve: 10 %" in main.facts
    assert view.needles == ("5 mm (US 8, UK 6) circular needle",)


def test_accepted_findings_have_their_reasons(view: SheetView) -> None:
    assert [(one.rule, one.reason) for one in view.accepted] == [("missing-licence", "a draft, not for print yet")]
    assert view.summary.endswith("1 accepted")


def test_links_of_the_page_lead_somewhere(page: BeautifulSoup) -> None:
    anchors = {str(tag["id"]) for tag in page.find_all(id=True)}
    assert len(anchors) == len(page.find_all(id=True))
    inside = {str(link["href"])[1:] for link in page.find_all("a", href=True) if str(link["href"]).startswith("#")}
    assert inside <= anchors
    assert {"rule--broken-repeat", "rule--missing-licence", "q--sts"} <= inside


def test_words_of_a_pattern_are_no_markup(page: BeautifulSoup) -> None:
    heading = page.find("h1")
    assert isinstance(heading, Tag)
    assert (heading.get_text(), heading.find("b")) == ("Trial <b>Cowl</b> & more", None)


def test_each_row_of_a_table_has_a_cell_for_each_size(page: BeautifulSoup) -> None:
    rows = [row for row in page.select("table:not(.plain) tr:not(.about)") if row.find("td")]
    assert len(rows) > 20
    assert {tuple(str(cell["class"][1]) for cell in row.find_all("td")) for row in rows} == {("s0", "s1", "s2", "s3")}


def read(content: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(content.decode("utf-8-sig"), newline="")))


def test_quantities_for_a_spreadsheet() -> None:
    files = {file.path: file.content for file in sheets([subject()], [])}
    rows = read(files["trial-quantities.csv"])
    assert len(rows) == 4 * 6  # head, two gauges, sts, brim, around
    large = next(row for row in rows if (row["name"], row["size"]) == ("sts", "L"))
    assert {key: large[key] for key in ("value", "before_rounding", "moved", "moved_cm", "step", "step_percent")} == {
        "value": "126",
        "before_rounding": "120",
        "moved": "6",
        "moved_cm": "3",
        "step": "18",
        "step_percent": "16.666667",
    }
    assert (large["formula"], large["relies_on"]) == (
        "sts = head * stitch_gauge, nearest multiple of 18",
        "head stitch_gauge",
    )
    assert (large["used_by"], large["text_lines"], large["gauges"]) == ("around", "26 29", "stitch_gauge")
    gauge = next(row for row in rows if row["name"] == "row_gauge")
    assert (gauge["value"], gauge["value_numerator"], gauge["value_denominator"]) == ("2.8", "14", "5")
    assert b"\r\n" in files["trial-quantities.csv"]


def test_the_ledger_for_a_spreadsheet() -> None:
    files = {file.path: file.content for file in sheets([subject()], [])}
    rows = read(files["trial-ledger.csv"])
    third = [row for row in rows if row["row"] == "Rnd 3"]
    assert [(row["size"], row["before"], row["after"], row["change"]) for row in third] == [
        (size, "100", "99", "-1") for size in ("S", "M", "L", "XL")
    ]
    assert {row["declared"] for row in rows if row["line"] == "31"} == {"declared"}


def test_no_text_is_taken_for_a_formula_by_a_spreadsheet() -> None:
    text = '---\ntitle: Trap\nsizes: ["=1+1", "@x"]\n---\n```grade\nease = 1 (2) cm\n```\n'
    files = {file.path: file.content for file in sheets([subject(text)], [])}
    assert [row["size"] for row in read(files["trial-quantities.csv"])] == ["'=1+1", "'@x"]


def test_a_pattern_without_anything() -> None:
    view = sheet_view("bare", subject("---\ntitle: Bare\n---\n\nWords.\n"))
    assert (view.sizes, view.quantities, view.ledger, view.finished) == (("",), (), (), ())
    assert b"Nothing was found" not in b"".join(file.content for file in sheets([subject("Words.")], []))


def test_two_patterns_of_one_name_have_a_sheet_each() -> None:
    paths = [file.path for file in sheets([subject(), subject(source="other/trial.md")], [APART])]
    assert len(paths) == len(set(paths))
    assert {"trial.html", "trial-2.html", "index.html"} <= set(paths)


# ----------------------------------------------------------------------------------------------------------- the folder


def held(folder: Path) -> set[str]:
    return {path.name for path in folder.rglob("*") if not path.name.startswith(".")}


def test_a_folder_is_made_and_made_anew(tmp_path: Path) -> None:
    folder = tmp_path / "proof"
    write_sheets(folder, sheets([subject(), subject(source="b.md")], []), SCRIPT)
    assert "trial-2.html" in held(folder)
    (folder / ".keep").write_text("mine", encoding="utf-8")
    write_sheets(folder, sheets([subject()], [APART]), SCRIPT)
    names = {"trial.html", "trial-quantities.csv", "trial-ledger.csv", "index.html", "proof.js"}
    assert held(folder) == names
    assert (folder / ".keep").read_text(encoding="utf-8") == "mine"
    assert "No words for &lt;hat.svg&gt;." in (folder / "index.html").read_text(encoding="utf-8")
    assert [path.name for path in tmp_path.iterdir()] == ["proof"]


def test_a_folder_of_other_things_is_left_as_it_is(tmp_path: Path) -> None:
    (tmp_path / "proof").mkdir()
    (tmp_path / "proof" / "letter.txt").write_text("dear reader", encoding="utf-8")
    with pytest.raises(NotOurs, match=r"letter\.txt"):
        write_sheets(tmp_path / "proof", sheets([subject()], []), SCRIPT)
    assert held(tmp_path / "proof") == {"letter.txt"}


def test_a_published_site_is_no_place_for_sheets(finished: Path) -> None:
    site = finished / "site"
    before = held(site)
    with pytest.raises(NotOurs, match="published site"):
        write_sheets(site, sheets([subject()], []), SCRIPT)
    assert held(site) == before


def test_a_file_in_the_way_is_left_as_it_is(tmp_path: Path) -> None:
    (tmp_path / "proof").write_text("a file", encoding="utf-8")
    with pytest.raises(CannotWrite, match="is a file"):
        write_sheets(tmp_path / "proof", sheets([subject()], []), SCRIPT)
    assert (tmp_path / "proof").read_text(encoding="utf-8") == "a file"
