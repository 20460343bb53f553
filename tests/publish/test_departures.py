"""In: an adaptation of a few lines. Out: page, paper and data tell each departure where it is met, and in a list."""

import json
import shutil
import subprocess
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from playwright.sync_api import Page, expect
from tests.read.test_adapting import BASE, DEPARTURES, EMPTY
from tests.shared.axe import hindrances

from sizewright.base.language import language, speaking
from sizewright.proof.proofed import Proofed
from sizewright.proof.run import proof
from sizewright.publish.departed_names import spoken_label
from sizewright.publish.links import Links
from sizewright.publish.output import Output
from sizewright.publish.pages import data_page, site_pages
from sizewright.publish.paper_page import paper_page
from sizewright.publish.run import paper_of
from sizewright.publish.site_in import sites
from sizewright.publish.theme import Theme
from sizewright.publish.view_departed import DeparturesView
from sizewright.publish.view_pattern import pattern_view
from sizewright.publish.view_terms import Terms
from sizewright.read.folder import read_project
from sizewright.read.inserts import Words
from sizewright.read.project import Project

KEY = "departures: [{instead of: needles, because: a loose hand}]\nneedles: [3.5 mm]"
HEAD = EMPTY.replace("\n---\n", f"\n{KEY}\n---\n")
PAGE = "patterns/other.html"
Made = tuple[Project, Proofed]


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Made:
    """A project of a base and its adaptation, with six departures, one of them in a key of the header."""
    patterns = tmp_path_factory.mktemp("adapted") / "content/patterns"
    patterns.mkdir(parents=True)
    (patterns / "cap.md").write_text(BASE, encoding="utf-8")
    (patterns / "other.md").write_text(HEAD + "\n".join(DEPARTURES), encoding="utf-8")
    project = read_project(patterns.parent.parent)
    proofed = proof(project.patterns[1], project)
    assert not proofed.refused, proofed.findings
    return project, proofed


@pytest.fixture(scope="module")
def site(made: Made, tmp_path_factory: pytest.TempPathFactory) -> Path:
    project, proofed = made
    folder, theme = tmp_path_factory.mktemp("site"), Theme.find("studio", project.folder)
    base = proof(project.patterns[0], project)
    outputs = (*site_pages(project, (base, proofed), (), theme), *theme.assets(), Output("feed.xml", b""))
    for output in outputs:
        (folder / output.path).parent.mkdir(parents=True, exist_ok=True)
        (folder / output.path).write_bytes(output.content)
    return folder


def view(made: Made) -> DeparturesView:
    project, proofed = made
    links = Links("../")
    shown = pattern_view(proofed.worked, project, links, Terms.of(project, links)).departures
    assert shown is not None
    return shown


def test_the_list_says_what_why_and_what_changes(made: Made) -> None:
    shown = view(made)
    assert [one.title for one in shown.items] == [
        "Needles: replaced",
        "Paragraph “Words before…”: replaced",
        "Number “rounds”: replaced",
        "Row “Rnd 1” under Brim: something behind it",
        "Section Body: turned inside out, knit and purl exchanged",
        "Section Body: something behind it",
    ]
    assert [one.because for one in shown.items][:3] == ["A loose hand.", "Others.", "Deeper."]
    told = [" ".join(BeautifulSoup("; ".join(one.changes), "html.parser").get_text().split()) for one in shown.items]
    assert told[1] == told[4] == "Changes no count, no row and no yarn."
    assert "+3 (+1) rows or rounds; +300 (+120) stitches worked; +3 (+1.2) g of main yarn" in told[2]
    assert "1 rows or rounds are worked here, in the base 0." in told[3]
    assert shown.totals is not None
    assert [str(cell) for cell in shown.totals.rows[0].cells[:2]] == ["9", "13"]  # 1 + 6 + 2; 1 + 1 + 9 + 2


def test_every_departure_is_marked_and_every_mark_leads_back(site: Path) -> None:
    soup = BeautifulSoup((site / PAGE).read_text(encoding="utf-8"), "html.parser")
    ids = [str(one["id"]) for one in soup.select("[id]")]
    assert len(ids) == len(set(ids))
    for number in range(1, 7):
        (entry,) = soup.select(f"#departure--{number}--told")
        assert entry.select(f'a[href="#departure--{number}"]'), number
        (mark,) = soup.select(f"#departure--{number}")
        back = f'a[href="#departure--{number}--told"]'
        assert mark.get("href") == f"#departure--{number}--told" or mark.select(back)
        assert f"Departure {number}" in mark.get_text()
    turned = soup.select_one("#departure--5")
    assert turned is not None
    assert [" ".join(line.get_text().split()) for line in turned.select(".line")][:2] == [
        "Rnd 1: Purl.",
        "Rnd 2: *P2tog, ssp; rep from * to end.",
    ]
    assert "by letter" in soup.select(".rights")[0].get_text()


def test_a_number_that_is_met_in_the_text_first_is_marked_there(tmp_path: Path) -> None:
    """On the page and on paper: a link without its mark refuses the PDF."""
    patterns = tmp_path / "content/patterns"
    patterns.mkdir(parents=True)
    (patterns / "cap.md").write_text(BASE.replace("Words before.", "A brim of {rounds} rounds."), encoding="utf-8")
    (patterns / "other.md").write_text(EMPTY + DEPARTURES[1], encoding="utf-8")
    project = read_project(tmp_path)
    proofed = proof(project.patterns[1], project)
    for links in (Links("../"), Links("../", paper=True)):
        body = pattern_view(proofed.worked, project, links, Terms.of(project, links)).body
        soup = BeautifulSoup("".join(part.html or "" for part in body.parts), "html.parser")
        assert [mark.get_text() for mark in soup.select("a#departure--1")] == ["Departure 1"]


def test_a_row_is_told_by_the_section_it_stands_in(tmp_path: Path) -> None:
    """Not by the heading above the cast-on; rows that the rest of the pattern saves are no change of the whole."""
    patterns = tmp_path / "content/patterns"
    patterns.mkdir(parents=True)
    base = BASE.replace("Rep Rnd 1 {rounds} times.", "Rep Rnd 1 until piece measures 5 cm.")
    base = base.replace("Rnd 1: Knit.\n", "Rnd 1: Knit.\nRep Rnd 1 until piece measures 20 cm from cast-on edge.\n")
    deeper = "::: instead of row Rep Rnd 1 under Brim\nbecause: deep\nRep Rnd 1 until piece measures 10 cm.\n:::\n"
    (patterns / "cap.md").write_text(base.replace("## Brim", "## Laid flat\n\nFlat.\n\n## Brim"), encoding="utf-8")
    (patterns / "other.md").write_text(EMPTY + deeper + DEPARTURES[3], encoding="utf-8")
    project = read_project(tmp_path)
    proofed = proof(project.patterns[1], project)
    items = view((project, proofed)).items
    told = [
        [" ".join(BeautifulSoup(one, "html.parser").get_text().split()) for one in (it.where, *it.changes)]
        for it in items
    ]
    assert told == [
        [
            "From round 2 of Brim on: Rep Rnd 1.",
            "27 rows or rounds are worked here, in the base 13.",
            "Over the whole pattern, counts, rows and yarn are as in the base.",
        ],
        ["From round 1 of Body on: Rnd 1.", "Changes no count, no row and no yarn."],
    ]


def test_the_html_is_valid(site: Path, nu_check: Callable[[Path], list[str]], tmp_path: Path) -> None:
    (tmp_path / "other.html").write_bytes((site / PAGE).read_bytes())
    assert nu_check(tmp_path) == []


def test_departures_are_reached_by_keyboard(site: Path, page_at: Callable[..., Page]) -> None:
    """From the list to the place and back with nothing but the keyboard; told in words at 320 px and in the dark."""
    page = page_at(site / PAGE, width=320, dark=True)
    there = page.locator('a[href="#departure--5"]')
    there.focus()
    page.keyboard.press("Enter")
    expect(page.locator("#departure--5")).to_be_in_viewport()
    page.keyboard.press("Tab")
    back = page.locator('a[href="#departure--5--told"]')
    expect(back).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("#departure--5--told")).to_be_in_viewport()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    box = back.bounding_box()
    assert box is not None
    assert box["height"] >= 44  # WCAG 2.2, 2.5.5
    assert hindrances(page) == []


def test_the_paper_tells_them(made: Made, tmp_path: Path) -> None:
    project, proofed = made
    paper = paper_of(project, proofed, f"patterns/{proofed.graded.pattern.name}.pdf")
    assert paper.faults == ()
    (tmp_path / "other.pdf").write_bytes(paper.content)
    reader = shutil.which("pdftotext")
    assert reader is not None, "pdftotext is not installed"
    text = subprocess.run([reader, tmp_path / "other.pdf", "-"], capture_output=True, text=True, check=True).stdout
    words = " ".join(text.split())
    assert "Departures from Cap" in words
    assert "by letter" in words
    assert all(words.count(f"Departure {number}") >= 2 for number in range(1, 7))  # in the list, and where it is met


def test_the_data_have_them(made: Made) -> None:
    project, proofed = made
    told = json.loads(data_page(proofed, project))
    assert told["based_on"] == {"pattern": "cap", "permission": "by letter", "credit": "me"}
    deeper = told["departures"][2]
    assert (deeper["what"], deeper["because"]) == ("instead of quantity rounds", "deeper")
    assert deeper["from"] == {"section": "Brim", "label": "Rep Rnd 1", "rows": [3, 3]}  # behind rounds 1 and 2
    assert deeper["alone"]["rows"] == {"before": ["9", "11"], "after": ["12", "12"]}
    assert told["changes"]["rows"] == {"before": ["9", "11"], "after": ["13", "13"]}
    assert "departures" not in json.loads(data_page(proof(project.patterns[0], project), project))


def test_the_base_lists_its_adaptations(made: Made, site: Path, sample_theme: Theme) -> None:
    """By title, designer and summary; on paper by their address, where the studio has told one."""
    project, _ = made
    base, other = project.patterns
    assert other.header.based_on is not None
    designer = Words(other.header.based_on.span, "A. Other")
    header = replace(other.header, title="Cap, other", designer=designer, summary=None)
    named = replace(project, patterns=(base, replace(other, header=header)))
    page = BeautifulSoup((site / "patterns/cap.html").read_text(encoding="utf-8"), "html.parser")
    assert [(link["href"], link.get_text()) for link in page.select("[aria-labelledby=part--adaptations] a")] == [
        ("../patterns/other.html", "Cap")
    ]
    assert not BeautifulSoup((site / PAGE).read_text(encoding="utf-8"), "html.parser").select("#part--adaptations")
    for address, tag in (("", "b"), ("https://example.org/", 'a[href="https://example.org/patterns/other.html"]')):
        there = replace(named, studio=replace(named.studio, address=address))
        paper = BeautifulSoup(paper_page(proof(base, there), there, sample_theme), "html.parser")
        (entry,) = paper.select("[aria-labelledby=part--adaptations] li")
        assert entry.get_text().strip() == "Cap, other by A. Other"
        assert entry.select(tag)


def test_a_base_lists_what_the_site_has_alone(made: Made, sample_theme: Theme) -> None:
    """A refused adaptation without pages is no entry, in any language; nor is a refused base linked to."""
    project, proofed = made
    assert project.with_bases(["other"]) == {"cap", "other"}  # what a preview makes anew
    base = proof(project.patterns[0], project)
    (alone,) = sites(project, (base,), sample_theme, refused=("other",))
    assert [pattern.name for pattern in alone.project.patterns] == ["cap"]
    (adapted,) = sites(project, (proofed,), sample_theme, refused=("cap",))
    links = Links("../")
    shown = pattern_view(proofed.worked, adapted.project, links, Terms.of(project, links)).departures
    assert shown is not None
    assert (shown.base, shown.href) == ("Cap", "")


def test_departures_follow_the_terms(made: Made, sample_theme: Theme) -> None:
    """In the list, in the notes and at the marks: what a designer says of them is of the text too."""
    project, proofed = made
    departures = proofed.worked.graded.pattern.adapts.departures  # type: ignore[union-attr]
    why = departures[0].called.because
    told = [replace(one, called=replace(one.called, because=replace(why, text="a firm gauge"))) for one in departures]
    adapts = replace(proofed.worked.graded.pattern.adapts, departures=tuple(told))  # type: ignore[type-var]
    graded = replace(proofed.worked.graded, pattern=replace(proofed.worked.graded.pattern, adapts=adapts))
    again = replace(proofed, worked=replace(proofed.worked, graded=graded))
    (page,) = (one for one in site_pages(project, (again,), (), sample_theme) if one.path == PAGE)
    soup = BeautifulSoup(page.content, "html.parser")
    said = [one for one in soup.select(".because, .departs-note") if "firm" in one.get_text()]
    assert len(said) > len(departures)
    for one in said:
        (british,) = one.select(".uk")
        assert british.get_text() == "tension"


def test_a_row_is_told_in_german_by_its_number() -> None:
    """With the full stop of a German ordinal, as in the instructions; a label of other words needs a translation."""
    with speaking(language("de", ())):
        assert [spoken_label(one) for one in ("Rnd 1", "Row 12", "Set-up Rnd")] == ["1. Rd", "12. R", ""]
    assert spoken_label("Rnd 1") == "Rnd 1"
