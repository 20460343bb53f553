"""In: the templates, and the sample published in a language of brackets. Out: every word is a message or data.

In that language each message stands in ⟦brackets⟧. What stands outside of them on a page has to be from the
sources, or one of the signs in `SIGNS`. Whoever makes more words messages takes their place out of `NOT_YET`.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path

import pytest
from babel.support import Translations
from jinja2 import nodes
from tests.publish.conftest import SAMPLE

from sizewright.base.language import Language, speaking
from sizewright.proof.proofed import Proofed
from sizewright.publish.editions import ALL_SIZES
from sizewright.publish.output import Output
from sizewright.publish.pages import site_pages
from sizewright.publish.paper_page import PaperPages
from sizewright.publish.theme import Theme
from sizewright.read.project import Project

# Attributes that people read or hear.
READ = ("alt", "aria-label", "aria-valuetext", "label", "placeholder", "title")
WORD = re.compile(r"[^\W\d_]{2,}")
SIGNS = {"cm", "mm", "in", "yd", "oz", "us", "uk", "letter"}
NAMES = {"second"}  # of a yarn, which is a key of the sample

# Pages that are there in English alone.
IN_ENGLISH = ("method.html", "rules.html")

# Where words of the program stand that are no messages: abbreviations and their meanings. A pattern for the elements
# around them, and their classes.
NOT_YET = (r"dl\.terms\b|\.meaning\b|p\.fact\b",)


class Brackets(Translations):
    """Every message in brackets; nothing is looked up."""

    def ugettext(self, message: str) -> str:
        """The message, marked as one."""
        return f"⟦{message}⟧"

    def ungettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """The form of English for the number, marked."""
        return f"⟦{msgid1 if n == 1 else msgid2}⟧"

    def upgettext(self, context: str, message: str) -> str:
        """The message, marked as one; its context is not for people."""
        assert context
        return f"⟦{message}⟧"


PSEUDO = Language("de", Brackets())


def outside(text: str, depth: int = 0) -> tuple[str, int]:
    """What of a text stands outside of brackets, so many of which are open before it, and how many are behind it."""
    found = ""
    for sign in text:
        depth += (sign == "⟦") - (sign == "⟧")
        found += "" if depth or sign == "⟧" else sign
    return found, depth


class Reader(HTMLParser):
    """What a person reads of a page: texts and attributes outside of brackets, each with the elements around it."""

    EMPTY = frozenset({"meta", "link", "img", "input", "br", "hr", "wbr"})

    def __init__(self) -> None:
        super().__init__()
        self.around: list[str] = []
        self.read: list[tuple[str, str]] = []
        self.depth = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keeps the attributes for people."""
        told = {name: value or "" for name, value in attrs}
        self.around.append(".".join((tag, *told.get("class", "").split())))
        for name in (*READ, *(["content"] if told.get("name") == "description" else [])):
            if name in told:
                self.read.append((f"{' '.join(self.around)}[{name}]", outside(told[name])[0]))
        if tag in self.EMPTY:
            self.around.pop()

    def handle_endtag(self, tag: str) -> None:
        """Closes elements up to the one of that name."""
        while self.around and self.around.pop().split(".")[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        """Keeps what of a text stands outside of brackets; they may open in one element and close in another."""
        if self.around and re.match(r"(script|style)\b", self.around[-1]):
            return
        told, self.depth = outside(data, self.depth)
        self.read.append((" ".join(self.around), told))


def words_of_sources(folder: Path) -> set[str]:
    """All words that a studio has written, folded, without the keys of headers and settings."""
    found: set[str] = set()
    for path in (*folder.rglob("*.md"), *folder.rglob("*.yaml")):
        text = re.sub(r"^\s*(?:- )?[\w ]+:(?=\s)", "", path.read_text(encoding="utf-8"), flags=re.MULTILINE)
        found |= set(WORD.findall(text.casefold()))
    return found


def untold(html: str, known: set[str]) -> Iterator[str]:
    """Words of a page that are neither in brackets nor known, with the place they stand in."""
    reader = Reader()
    reader.feed(html)
    assert reader.depth == 0, "a bracket is not closed"
    for place, text in reader.read:
        if not any(re.search(pattern, place) for pattern in NOT_YET):
            yield from (f"{place}: {word}" for word in WORD.findall(text) if word.casefold() not in known | SIGNS)


@pytest.fixture(scope="module")
def bracketed(sample_project: Project, sample_proofed: Sequence[Proofed], sample_theme: Theme) -> Mapping[str, str]:
    """Every page and the papers of the hat, by path, with each message in brackets."""
    there = replace(sample_project, studio=replace(sample_project.studio, languages=("de",)))
    hat = next(one for one in sample_proofed if one.graded.pattern.name == "hat")
    with speaking(PSEUDO):
        pages = {page.path: page.content.decode() for page in site_pages(there, sample_proofed, [], sample_theme)}
        papers = PaperPages(hat, there, sample_theme)
        made = (ALL_SIZES, replace(ALL_SIZES, large=True), replace(ALL_SIZES, place=1))
        printed = {f"paper {edition.place} {edition.large}.html": papers.page(edition) for edition in made}
    return {path: html for path, html in {**pages, **printed}.items() if path.endswith(".html")}


def test_every_word_of_a_page_is_a_message_or_from_the_sources(bracketed: Mapping[str, str]) -> None:
    known = words_of_sources(SAMPLE) | NAMES
    assert len(bracketed) > 12
    found = {path: sorted(set(untold(html, known))) for path, html in bracketed.items() if path not in IN_ENGLISH}
    assert {path: words for path, words in found.items() if words} == {}


def test_only_english_pages_offer_the_terms_of_two_countries(
    bracketed: Mapping[str, str], sample_outputs: Mapping[str, Output]
) -> None:
    offering = [path for path, page in sample_outputs.items() if b'id="terms--us"' in page.content]
    assert "patterns/hat.html" in offering
    for path in offering:
        assert 'id="terms--us"' not in bracketed[path]
        assert '<html lang="de">' in bracketed[path]
    assert 'id="units--metric"' in bracketed["patterns/hat.html"]


def test_a_word_that_is_no_message_is_found() -> None:
    html = '<p title="⟦Two⟧ three">⟦One <b>two</b> ⟧four <em>⟦Five⟧</em> cm</p>'
    assert list(untold(html, {"four"})) == ["p[title]: three"]
    assert list(untold(html, {"three"})) == ["p: four"]


# --------------------------------------------------------------------------------------------------------- templates

CALLS = {"_", "gettext", "ngettext", "pgettext"}
UNSEEN = re.compile(r"<(script|style)\b.*?</\1>|<!doctype[^>]*>", re.DOTALL)


def words_in(template: nodes.Template) -> Iterator[str]:
    """What a template writes in words of its own: in its markup, in whichever branch, and in its expressions."""
    classes = [id(data) for block in template.find_all(nodes.Block) if block.name == "kind" for data in written(block)]
    markup = UNSEEN.sub("", "".join(data.data for data in written(template) if id(data) not in classes))
    read = "|".join(READ)
    texts = [*re.split(r"<[^>]*>", markup), *(found[1] for found in re.finditer(rf'\b(?:{read})="([^"]*)"', markup))]
    texts += [text for text in constants(template) if re.search(r"[a-z] [a-z]|^[A-Z][a-z]", text)]
    yield from (text.strip() for text in texts if set(map(str.casefold, WORD.findall(text))) - SIGNS)


def written(node: nodes.Node) -> Iterator[nodes.TemplateData]:
    """What stands in a template as it is, in its order."""
    return node.find_all(nodes.TemplateData)


def constants(node: nodes.Node) -> Iterator[str]:
    """Constant texts in expressions, save for messages and for markup (marked `safe`)."""
    if isinstance(node, nodes.Filter) and node.name == "safe":
        return
    if isinstance(node, nodes.Call) and isinstance(node.node, nodes.Name) and node.node.name in CALLS:
        for keyword in node.kwargs:
            yield from constants(keyword)
        return
    if isinstance(node, nodes.Const) and isinstance(node.value, str):
        yield node.value
    for child in node.iter_child_nodes():
        yield from constants(child)


def test_no_template_has_words_that_are_no_messages(repository: Path, sample_theme: Theme) -> None:
    """Also in branches that no page of a test goes through."""
    paths = sorted((repository / "themes").rglob("*.html"))
    assert len(paths) > 25
    parsed = {path: sample_theme.environment.parse(path.read_text(encoding="utf-8")) for path in paths}
    found = {path.name: list(words_in(template)) for path, template in parsed.items()}
    assert {name: texts for name, texts in found.items() if texts} == {}


def test_words_in_a_template_are_found(sample_theme: Theme) -> None:
    text = """<p class="one"{% if a %} title="Two"{% endif %}>{% trans b=c or "Ten things" %}Three {{ b }}{% endtrans %}
    {{ _("Four") | terms }} {% if b == "five" %}six{% else %}<b>seven</b>{% endif %} {{ told("Eight") }}</p>"""
    assert sorted(words_in(sample_theme.environment.parse(text))) == ["Eight", "Ten things", "Two", "seven", "six"]
