"""The tester's sheet of a small cowl: the page, the form read back from its PDF, and the files of the folder."""

import json
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pdfua
import pytest
from bs4 import BeautifulSoup
from playwright.sync_api import Page
from tests.shared.axe import hindrances

from sizewright.grade.run import grade
from sizewright.proof.expected import Expected, Kind, expectations
from sizewright.publish.faults import NotOurs
from sizewright.publish.sheet.sheets import SCRIPT
from sizewright.publish.sheet.write import write_sheets
from sizewright.publish.tester.sheets import INDEX, Subject, sheets
from sizewright.publish.tester.view import expected_text, form_view
from sizewright.read.folder import read_text
from sizewright.work.run import work

COWL = Path(__file__).with_name("tester_cowl.md").read_text(encoding="utf-8")
WORKED = work(grade(read_text(COWL.replace("title: Trial Cowl", "title: Trial <b>Cowl</b>"), "cowl.md").patterns[0]))
SMALL, LARGE = expectations(WORKED)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sheets of both sizes."""
    made = tmp_path_factory.mktemp("testers") / "sheets"
    write_sheets(made, sheets([Subject(WORKED, "Rook & Thorn")], lambda _: True), INDEX)
    return made


def said(*line: str | Path) -> str:
    return subprocess.run([*map(str, line)], capture_output=True, text=True, check=True, timeout=120).stdout


def test_the_folder_holds_a_page_a_form_and_a_table_of_each_size(folder: Path) -> None:
    names = {f"cowl-{size}.{ending}" for size in ("s", "10-12") for ending in ("html", "pdf", "csv")}
    assert {file.name for file in folder.iterdir() if not file.name.startswith(".")} == {*names, INDEX}
    links = [link["href"] for link in BeautifulSoup((folder / INDEX).read_bytes(), "html.parser").find_all("a")]
    assert {*links} == names


def test_only_the_sizes_that_are_wanted_and_no_two_files_of_one_name() -> None:
    subjects = [Subject(WORKED), Subject(WORKED)]
    made = [file.path for file in sheets(subjects, lambda size: size == "S")]
    assert [name for name in made if name.endswith(".csv")] == ["cowl-s.csv", "cowl-s-2.csv"]


def test_a_folder_of_other_sheets_is_left_alone(folder: Path) -> None:
    with pytest.raises(NotOurs, match="other sheets"):
        write_sheets(folder, [], SCRIPT)
    assert (folder / INDEX).exists()


@pytest.mark.parametrize(
    ("line", "text"),
    [
        (SMALL.lines[0], "20 sts in 10 cm / ≈ 20¼ sts in 4 in"),
        (SMALL.lines[2], "88 sts"),
        (SMALL.lines[1], "30 rnds in 10 cm / ≈ 30½ rnds in 4 in"),
        (SMALL.lines[3], "about 12 rnds"),
        (SMALL.lines[4], "4 cm / 1½ in"),
        (SMALL.lines[5], "11 g / 0.4 oz, 23 m / 25 yd"),
        (Expected(Kind.COUNT, "", "", "sts", SMALL.lines[7].value / 4), "1 st"),
        (Expected(Kind.YARN, "", "", "m", SMALL.lines[2].value, least=True), "at least 88 m / 96 yd"),
    ],
)
def test_what_is_expected_in_words(line: Expected, text: str) -> None:
    assert expected_text(line) == text


def test_the_page_tells_the_size_the_version_and_every_line(folder: Path) -> None:
    page = BeautifulSoup((folder / "cowl-s.html").read_bytes(), "html.parser")
    text = page.get_text(" ", strip=True)
    assert "Trial <b>Cowl</b>" in text
    assert "Size S" in text
    assert "Rook & Thorn" in text
    assert SMALL.version in text
    assert [one.get_text() for one in page.find_all("h2")] == [
        "The knitter", "Gauge", "Rib", "Top", "Finished measurements", "Yarn in all",
    ]  # fmt: skip
    rows = [[cell.get_text(strip=True) for cell in row.find_all(["th", "td"])] for row in page.find_all("tr")]
    assert ["after “Cast on”", "88 sts", "", "sts"] in rows
    assert ["Around", "44 cm / 17¼ in", "", "cm"] in rows
    boxes = page.find_all("input")
    assert all(box["aria-label"] == box["title"] for box in boxes)
    assert len({box["name"] for box in boxes}) == len({box["title"] for box in boxes}) == len(boxes) == 5 + 11 + 5


def test_imperial_may_come_first() -> None:
    (rib,) = (stage for stage in form_view(SMALL, "", metric_first=False).stages if stage.name == "Rib")
    assert "1½ in / 4 cm" in [line.expected for line in rib.lines]


def fields(pdf: Path) -> list[dict[str, Any]]:
    told = json.loads(said("qpdf", "--json", "--json-key=acroform", pdf))
    found: list[dict[str, Any]] = told["acroform"]["fields"]
    return found


def test_the_form_is_read_back(folder: Path) -> None:
    """Every box of the page is a field that can be typed in, with a name of its own and words that are read aloud."""
    page = BeautifulSoup((folder / "cowl-s.html").read_bytes(), "html.parser")
    found = fields(folder / "cowl-s.pdf")
    assert {one["fullname"]: one["alternativename"] for one in found} == {
        box["name"]: box["title"] for box in page.find_all("input")
    }
    assert len({one["fullname"] for one in found}) == len(found)
    assert all(one["istext"] and one["value"] == "u:" and not one["fieldflags"] for one in found)
    assert all(one["annotation"]["annotationflags"] == 4 for one in found)  # ISO 32000-1, table 165: bit 3, Print


def test_the_pdf_is_sound_and_accessible(folder: Path) -> None:
    """ISO 14289-1: each field is a Form in the tags (7.18.4), pages are tabbed in their order (7.18.3)."""
    pdf = folder / "cowl-s.pdf"
    said("qpdf", "--check", pdf)
    assert pdfua.validate(str(pdf)).findings == ()
    tags = [line.strip() for line in said("pdfinfo", "-struct", pdf).splitlines()]
    assert tags.count("Form") + tags.count("Form (block)") + tags.count("Form (inline)") == len(fields(pdf))
    objects = json.loads(said("qpdf", "--json", "--json-key=qpdf", pdf))["qpdf"][1].values()
    values = [one["value"] for one in objects if isinstance(one.get("value"), dict)]
    pages = [value for value in values if value.get("/Type") == "/Page"]
    assert {one["/Tabs"] for one in pages} == {"/S"}
    page = BeautifulSoup((folder / "cowl-s.html").read_bytes(), "html.parser")
    text = said("pdftotext", "-layout", pdf, "-")
    seen = {word for cell in page.find_all(["th", "td", "h1", "h2", "p"]) for word in cell.get_text().split()}
    assert seen - {*text.split()} == set(), "what is seen and not heard"
    assert f"Page 1 of {len(pages)}" in text
    assert "Trial <b>Cowl</b>, Size S: tester’s sheet" in text
    assert "88 sts" in text
    assert "100 sts" not in text, "no number of another size"


def test_the_same_bytes_each_time(folder: Path) -> None:
    again = {file.path: file.content for file in sheets([Subject(WORKED, "Rook & Thorn")], lambda size: size == "S")}
    for name in ("cowl-s.pdf", "cowl-s.csv", "cowl-s.html"):
        assert (folder / name).read_bytes() == again[name]


def test_the_html_is_valid(folder: Path, nu_check: Callable[[Path], list[str]]) -> None:
    assert nu_check(folder) == []


def test_everybody_can_read_it(page_at: Callable[..., Page], folder: Path) -> None:
    page = page_at(folder / INDEX, width=320)
    for name in (INDEX, "cowl-s.html"):
        page.goto((folder / name).as_uri())
        assert hindrances(page) == []
        assert page.evaluate("document.documentElement.scrollWidth") == 320
