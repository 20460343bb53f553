"""In: proof sheets of a trial and of the demo's pullover, in Chromium. Out: read, sorted, narrowed and printed."""

import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.shared.axe import hindrances

from sizewright.base.finding import Finding, Level
from sizewright.proof.run import proof
from sizewright.publish.sheet.sheets import SCRIPT, Subject, sheets
from sizewright.publish.sheet.write import write_sheets
from sizewright.read.folder import read_text

Open = Callable[..., Page]
TRIAL = Path(__file__).parent / "sheet_source.md"
APART = Finding("missing-alt", Level.WARNING, "No words.", "Add them.", None)
# What a phone scrolls sideways as a whole is lost to its reader; wide tables have a region of their own.
COUNTS = ["40", "40", "44", "44", "48", "52", "60", "64", "68", "72"]  # of the sleeve, as the demo grades it
PHONE = {"width": 360, "height": 740}


@pytest.fixture(scope="module")
def folder(repository: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sheets of the trial, and of a pattern in ten sizes."""
    made = tmp_path_factory.mktemp("proof") / "sheets"
    subjects = []
    for path in (TRIAL, repository / "content/patterns/tarnside-pullover.md"):
        project = read_text(path.read_text(encoding="utf-8"), path.name)
        subjects.append(Subject(path.name, proof(project.patterns[0], project)))
    write_sheets(made, sheets(subjects, [APART]), SCRIPT)
    return made


def names(page: Page) -> list[str]:
    """The quantities that are to be seen, in their order."""
    return [str(one.get_attribute("data-name")) for one in page.locator(".quantities tbody").all() if one.is_visible()]


def test_the_html_is_valid(folder: Path, nu_check: Callable[[Path], list[str]]) -> None:
    assert nu_check(folder) == []


def test_without_javascript_it_is_plain_tables(page_at: Open, folder: Path) -> None:
    page = page_at(folder / "sheet_source.html", javascript=False)
    assert not page.locator(".tools").is_visible()
    assert names(page) == ["head", "stitch_gauge", "row_gauge", "sts", "brim", "around"]


def test_quantities_are_sorted(page_at: Open, folder: Path) -> None:
    page = page_at(folder / "sheet_source.html")
    page.get_by_role("combobox", name="Quantities").select_option("name")
    assert names(page) == ["around", "brim", "head", "row_gauge", "stitch_gauge", "sts"]
    page.get_by_role("combobox", name="Quantities").select_option("moved")
    assert names(page)[0] == "sts"
    page.get_by_role("combobox", name="Quantities").select_option("growing")
    assert names(page)[:2] == ["brim", "sts"]
    page.get_by_role("combobox", name="Quantities").select_option("place")
    assert names(page)[:2] == ["head", "stitch_gauge"]


def test_one_size_alone(page_at: Open, folder: Path) -> None:
    page = page_at(folder / "sheet_source.html")
    page.get_by_role("combobox", name="Size").select_option("L")
    shown = [cell.inner_text() for cell in page.locator("#q--sts tr.main td").all() if cell.is_visible()]
    assert shown == ["126"]
    page.get_by_role("combobox", name="Size").select_option("")
    assert page.locator("#q--sts tr.main td").count() == 4
    assert all(cell.is_visible() for cell in page.locator("#q--sts tr.main td").all())


def test_only_what_needs_a_look(page_at: Open, folder: Path) -> None:
    page = page_at(folder / "sheet_source.html")
    page.get_by_label("only what needs a look").check()
    assert names(page) == ["sts", "brim"]
    assert page.locator(".tools output").inner_text() == "2 of 6 quantities"
    rows = [row.inner_text() for row in page.locator(".ledger tbody tr").all() if row.is_visible()]
    assert any("declared, not proved" in row for row in rows)
    assert not any(row.startswith("Cast on") for row in rows)
    page.get_by_label("only what needs a look").uncheck()
    assert len(names(page)) == 6


def test_a_link_to_what_is_hidden_shows_it(page_at: Open, folder: Path) -> None:
    page = page_at(folder / "sheet_source.html")
    page.get_by_label("only what needs a look").check()
    page.locator("#q--sts a", has_text="head").click()
    expect(page.locator("#q--head")).to_be_visible()  # the page is told of the new address a moment later


@pytest.mark.parametrize(("width", "dark"), [(1280, False), (360, True)])
def test_everybody_can_read_it(page_at: Open, folder: Path, *, dark: bool, width: int) -> None:
    """Each width and each set of colours: colours and places do not depend on each other."""
    page = page_at(folder / "index.html", dark=dark, width=width)
    for name in ("index", "sheet_source"):
        page.goto((folder / f"{name}.html").as_uri())
        assert hindrances(page) == []


def test_a_phone_scrolls_tables_and_never_the_page(page_at: Open, folder: Path) -> None:
    page = page_at(folder / "index.html", **PHONE)
    for name in ("index", "sheet_source", "tarnside-pullover"):
        page.goto((folder / f"{name}.html").as_uri())
        assert page.evaluate("document.documentElement.scrollWidth") == PHONE["width"], name


def test_the_names_of_the_sizes_stay_in_view(page_at: Open, folder: Path) -> None:
    page = page_at(folder / "tarnside-pullover.html")
    page.goto(f"{page.url}#q--collar_sts")
    head = page.locator(".quantities thead th").nth(1).bounding_box()
    body = page.locator("#q--collar_sts").bounding_box()
    assert head is not None
    assert body is not None
    assert 0 <= head["y"] < head["y"] + head["height"] <= body["y"] + 1 < 900


def test_it_prints_whole(page_at: Open, folder: Path, tmp_path: Path) -> None:
    """Ten sizes on a landscape page: no number of the ledger is cut off, and each page of a table names the sizes."""
    page = page_at(folder / "tarnside-pullover.html", dark=True)
    page.emulate_media(media="print")
    paper = tmp_path / "sheet.pdf"
    page.pdf(path=paper, prefer_css_page_size=True, print_background=True)
    reader = shutil.which("pdftotext")
    assert reader is not None, "pdftotext is not installed"
    said = subprocess.run([reader, "-layout", paper, "-"], capture_output=True, text=True, check=True)
    pages = said.stdout.split("\f")
    assert len(pages) < 40
    ledger = next(text for text in pages if "Sleeves, from line" in text and "Cast on" in text)
    assert "Bust 28" in ledger
    cast_on = next(line for line in ledger.splitlines() if line.strip().startswith("Cast on"))
    assert [word for word in cast_on.split() if word.isdigit()][-10:] == [
        "40",
        "40",
        "44",
        "44",
        "48",
        "52",
        "60",
        "64",
        "68",
        "72",
    ]
    assert "Needs a look" in said.stdout
    assert "only what needs a look" not in said.stdout
