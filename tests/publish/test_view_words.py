"""In: small patterns. Out: what differs between US and UK terms is told twice, on the page and on paper.

No source but those beside the pairs in read/trade_words.py is needed: what is looked at is where the words go.
"""

from collections.abc import Callable
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from markupsafe import Markup

from sizewright.proof.proofed import Proofed
from sizewright.publish.links import Links
from sizewright.publish.pages import site_pages
from sizewright.publish.paper_page import paper_page
from sizewright.publish.theme import Theme
from sizewright.publish.view import PatternView
from sizewright.publish.view_pattern import pattern_view
from sizewright.publish.view_terms import Terms
from sizewright.publish.view_words import WordsView, in_both_terms
from sizewright.read.folder import read_project
from sizewright.read.project import Project
from sizewright.read.trade_words import Country

ViewOf = Callable[[str, str], PatternView]
ReadPattern = Callable[[str], tuple[Proofed, Project]]
US, UK = WordsView(Country.US, Country.US), WordsView(Country.UK, Country.UK)


def left(html: str, country: str) -> str:
    """What is left for a reader of US or of UK terms."""
    soup = BeautifulSoup(html, "html.parser")
    for element in soup.select(".uk" if country == "us" else ".us"):
        element.extract()
    return " ".join(soup.get_text().split())


def body(view: PatternView, country: str) -> str:
    parts = [
        str(part.html or "") + " ".join(f"{line.label} {line.text}" for line in part.lines) for part in view.body.parts
    ]
    return left(" ".join(parts), country)


def test_words_are_told_twice_and_tags_are_left_alone() -> None:
    html = Markup(
        '<a title="bind off" href="#gauge">Bind off</a> &amp; <code>bind off</code> <svg><text>gauge</text></svg>'
    )
    told = in_both_terms(html, US)
    assert left(told, "us") == "Bind off & bind off gauge"
    assert left(told, "uk") == "Cast off & bind off gauge"
    assert 'title="bind off" href="#gauge"' in told


@pytest.mark.parametrize("words", [US, UK])
def test_what_was_no_markup_is_none_afterwards(words: WordsView) -> None:
    told = in_both_terms("<b>gauge & tension</b>", words)
    assert told.startswith("&lt;b&gt;")
    assert " &amp; " in told


def test_a_pattern_is_told_in_either_terms(view_of: ViewOf) -> None:
    view = view_of(
        "sizes: {S: {head: 50 cm}, M: {head: 55 cm}}\n",
        "## Binding off\n\nCheck your gauge: {head / 5}.\n\n"
        "```work\nCast on 20 (22) sts.\nRow 1: BO {4 st} sts, k to end.\n```\n",
    )
    assert body(view, "us").startswith("Binding off Check your gauge: 10 (11) cm")
    assert body(view, "uk").startswith("Casting off Check your tension: 10 (11) cm")
    assert body(view, "uk").endswith("Cast on 20 (22) sts. Row 1: Cast off 4 sts, k to end.")
    assert view.words.first is Country.US
    (term,) = (term for term in view.terms if term.term == "BO")
    assert left(in_both_terms(term.term, term.words), "uk") == "cast off"
    assert left(in_both_terms(term.meaning, term.words), "uk").startswith("cast off: pass each stitch over")


def test_a_pattern_in_uk_terms_shows_them_first(view_of: ViewOf) -> None:
    view = view_of(
        "",
        "Check your tension square.\n\n```work\nCast on 20 sts.\nRow 1: K1, yfwd, k2tog, k to end.\nCast off.\n```\n",
    )
    assert (view.words.country, view.words.first) == (Country.UK, Country.UK)
    assert body(view, "uk").endswith("Row 1: K1, yfwd, k2tog, k to end. Cast off.")
    assert body(view, "us").endswith("Row 1: K1, yo, k2tog, k to end. Bind off.")


def test_names_of_stitch_patterns_stay(view_of: ViewOf) -> None:
    rows = "Multiple of 2 sts.\nRow 1: *K1, p1; rep from * to end.\nRow 2: *P1, k1; rep from * to end.\n"
    work = "Cast on 20 sts.\nWork in Moss stitch for 4 rows.\nBind off.\n"
    view = view_of("", f"```stitch Moss stitch\n{rows}```\n\nMoss stitch is easy.\n\n```work\n{work}```\n")
    assert "Moss stitch is easy." in body(view, "uk")
    assert "Work in Moss stitch for 4 rows. Cast off." in body(view, "uk")
    assert "moss stitch" not in [term.term for term in view.terms]  # its rows stand in the pattern


@pytest.mark.parametrize(
    ("text", "us", "uk", "row_3"),
    [
        ("Bind off in seed stitch.", "seed stitch", "moss stitch", False),
        ("Bind off in moss stitch.", "moss stitch", "double moss stitch", True),
        ("Cast off in moss stitch.", "seed stitch", "moss stitch", False),
        ("Cast off in double moss stitch.", "moss stitch", "double moss stitch", True),
    ],
)
def test_an_ambiguous_name_is_told_once_by_its_rows(view_of: ViewOf, text: str, us: str, uk: str, row_3: bool) -> None:  # noqa: FBT001
    (term,) = (term for term in view_of("", text).terms if "stitch" in term.term)
    assert [left(in_both_terms(term.term, term.words), country) for country in ("us", "uk")] == [us, uk]
    assert term.meaning.startswith("Row 1: *k1, p1; rep from *")
    assert ("Row 3:" in term.meaning) is row_3


def test_a_studio_says_whose_terms_come_first(read_pattern: ReadPattern, sample_theme: Theme) -> None:
    proofed, project = read_pattern("---\ntitle: Trial\ngauge: {stitches: 22 st / 10 cm}\n---\nBind off in rib.\n")
    site = project.folder / "content" / "site.yaml"
    site.write_text("terms: uk\n", encoding="utf-8")
    proofed, project = read_pattern("---\ntitle: Trial\ngauge: {stitches: 22 st / 10 cm}\n---\nBind off in rib.\n")
    assert not [finding for finding in project.findings if "site.yaml" in str(finding.span)]
    links = Links("../")
    view = pattern_view(proofed.worked, project, links, Terms.of(project, links))
    assert (view.words.country, view.words.first) == (Country.US, Country.UK)
    paper = BeautifulSoup(paper_page(proofed, project, sample_theme), "html.parser")
    assert paper.body is not None
    assert paper.body["class"] == ["terms-uk"]
    assert left(str(paper.select_one("#part--gauge")), "uk") == "Tension"
    site.write_text("terms: uk-ish\n", encoding="utf-8")
    assert any("terms" in finding.message for finding in read_pattern("---\ntitle: Trial\n---\n")[1].findings)


def test_a_page_of_the_studio_is_told_in_either_terms_where_they_differ(tmp_path: Path) -> None:
    pages = tmp_path / "content/pages"
    pages.mkdir(parents=True)
    (pages / "about.md").write_text("---\ntitle: About\nsummary: Our gauge.\n---\nKnit a swatch for gauge.\n")
    (pages / "house.md").write_text("---\ntitle: House\n---\nCome in.\n")
    (pages / "knitting.md").write_text("---\ntitle: Yours\n---\nYour gauge is yours.\n")
    project = read_project(tmp_path)
    outputs = {one.path: one.content.decode() for one in site_pages(project, [], [], Theme.find("studio", tmp_path))}
    about = BeautifulSoup(outputs["about.html"], "html.parser")
    assert about.select_one("#terms--uk") is not None
    assert about.select_one("body.terms-us") is not None
    assert left(str(about.select_one(".summary")), "uk") == "Our tension."
    assert left(outputs["about.html"], "uk").count("Knit a swatch for tension.") == 1
    for name in ("house", "knitting"):
        assert "terms--uk" not in outputs[f"{name}.html"]
        assert 'class="uk"' not in outputs[f"{name}.html"]
