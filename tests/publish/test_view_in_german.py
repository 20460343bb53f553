"""In: views of small patterns, made in German and in a made-up language. Out: they say the same, in other words.

The German of the trade is common practice, no source; the decimal comma and "12. Oktober 2026" are those of the CLDR.
"""

import json
import re
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass
from datetime import date
from fractions import Fraction
from html import unescape

import pytest
from markupsafe import Markup
from tests.publish.test_every_word_is_a_message import PSEUDO

from sizewright.base.language import Language, language, speaking
from sizewright.base.printing import amount, as_text, bracketed, printed
from sizewright.base.telling import day_text, listed
from sizewright.base.units import LENGTH, PLAIN, ROW_GAUGE, STITCH_GAUGE, STITCHES, Dimension
from sizewright.draw.symbols import spoken
from sizewright.proof.proofed import Proofed
from sizewright.publish.card import Card
from sizewright.publish.drawn import drawn
from sizewright.publish.links import Links
from sizewright.publish.view import PatternView
from sizewright.publish.view_collection import card_views, filters
from sizewright.publish.view_one_size import one_size_view
from sizewright.publish.view_pattern import pattern_view
from sizewright.publish.view_terms import Terms
from sizewright.publish.view_words import in_both_terms
from sizewright.read.project import Project

GERMAN = language("de")
HEADER = """\
kind: hat
skill: easy
sizes: {Child: {head: 49.5 cm, age: 2 to 5 years}, Adult: {head: 57 cm}}
gauge: {stitches: 23 st / 10 cm, rows: 32 rnd / 10 cm, needle: 3.75 mm}
yarn:
  main:
    {weight: light, length: 112.5 m, mass: 50 g, fibre: wool, swatch: {width: 7.5 cm, height: 15 cm, mass: 10.5 g}}
care: [wash 30 mild, do not iron]
finished: [{label: Circumference, value: head - 4.5 cm, body: head}]
changes: [{date: 2026-10-12, text: Mended.}]
"""
WORK = "```work\nCast on 96 sts.\nJoin to work in the round.\nRnds 1 to 50: Knit.\nBind off all sts.\n```"


def plain(text: str | Markup) -> str:
    words = re.sub(r"<[^>]*>", "", text) if isinstance(text, Markup) else text
    return unescape(words).replace("\u00a0", " ")


@pytest.fixture
def german(read_pattern: Callable[[str], tuple[Proofed, Project]]) -> PatternView:
    proofed, project = read_pattern(f"---\ntitle: Trial\n{HEADER}---\n{WORK}\n")
    with speaking(GERMAN.naming({"Child": "Kind", "Circumference": "Umfang", "2 to 5 years": "2 bis 5 Jahre"})):
        return next(views(project, (proofed,), None))


def test_a_table_of_sizes_in_german(german: PatternView) -> None:
    assert german.table is not None
    with speaking(GERMAN):
        assert german.table.labels == ("Umfang: Körpermaß Kopfumfang", "Umfang: Fertigmaß", "Umfang: Zugabe")
    (body, finished, ease) = map(plain, german.table.rows[0].cells)
    assert body == "49,5 cm 19½ Zoll"
    assert finished == "45 cm 17¾ Zoll"
    assert ease == "−4,5 cm −1¾ Zoll"
    child = german.sizes[0]
    assert (child.key, child.name, child.remark) == ("child", "Kind", "2 bis 5 Jahre")
    assert german.order == "Kind (Adult)"


def test_a_header_in_german(german: PatternView) -> None:
    (gauge,) = german.gauges
    assert gauge.counts == "23 M und 32 Rd auf 10 cm"
    assert plain(gauge.again) == "; das sind etwa 23¼ M und 32½ Rd auf 4 Zoll"
    assert plain(gauge.needle) == "3,75 mm (US 5, UK 9)"
    assert (german.kind, german.skill, german.yarns[0].weight) == ("Mütze", "leicht", "leicht")
    assert [plain(fact) for fact in german.yarns[0].facts] == ["wool", "113 m / 123 yd je 50 g / 1,76 oz"]
    assert german.changes[0].date.text == "12. Oktober 2026"
    assert german.changes[0].date.iso == "2026-10-12"
    wash, iron = german.care
    assert wash == (
        "Schonend waschen, im Feinwaschgang, höchstens 30 °C "
        "(auf dem Etikett: ein Waschbottich mit 30 darin, ein Balken darunter)."
    )
    assert iron == "Nicht bügeln (auf dem Etikett: ein Bügeleisen, durchgestrichen)."
    assert any("7,5 cm × 15 cm, die 10,5 g" in plain(note) for note in german.amount_notes)


def test_a_child_is_cautioned_in_german_too(german: PatternView) -> None:
    """It is known to be a child's size by the words of the source, whatever the translation makes of them."""
    children, wool = german.cautions
    assert (children.title, wool.title) == ("Für Babys und kleine Kinder", "Wolle und Haut")
    assert "verschluckt" in children.text
    assert children.text.endswith("Halte dich an die deines Landes.")
    assert "16 CFR 1120" in children.source


@pytest.mark.parametrize(
    ("value", "dimension", "style", "text"),
    [
        ("32.5", LENGTH, "cm", "32,5 cm"),
        ("400", LENGTH, None, "4 m / 4,4 yd"),
        ("11/5", STITCH_GAUGE, None, "22 M auf 10 cm / ≈ 22¼ M auf 4 Zoll"),
        ("3", ROW_GAUGE, None, "30 R auf 10 cm / ≈ 30½ R auf 4 Zoll"),
        ("-0.125", PLAIN, None, "−0,13"),
        ("0.125", PLAIN, "percent", "12,5 %"),
        ("2", PLAIN, "times", "zweimal"),
        ("12", PLAIN, "times", "12-mal"),
        ("3", PLAIN, "ordinal", "3."),
        ("7", PLAIN, "words", "sieben"),
    ],
)
def test_numbers_in_german(value: str, dimension: Dimension, style: str | None, text: str) -> None:
    with speaking(GERMAN):
        assert as_text(printed((Fraction(value),), dimension, style)) == text


def test_words_around_numbers_in_german() -> None:
    with speaking(GERMAN):
        assert amount(Fraction(1), STITCHES) == "1 M"
        assert bracketed(("13,5", "14", "15,5")) == "13,5 (14; 15,5)"
        assert listed(("A", "B", "C")) == "A, B und C"
        assert day_text(date(2026, 3, 1)) == "1. März 2026"
        assert in_both_terms("gauge <one> & bind off") == "gauge &lt;one&gt; &amp; bind off"


# What of a view is no text for a reader.
HIDDEN = {
    "z",
    "key",
    "href",
    "anchor",
    "start",
    "src",
    "address",
    "pdf",
    "data",
    "iso",
    "words",
    "told",
    "section",
    "kind",
}
LINES = {"lines", "rows", "text", "label", "terms"}


def texts(value: object, without: frozenset[str] = frozenset(HIDDEN)) -> Iterator[str]:
    """Every text of a view, in its order."""
    if isinstance(value, str):
        yield from () if value.startswith("{") else (plain(value),)  # data
    elif isinstance(value, tuple):
        for one in value:
            yield from texts(one, without)
    elif is_dataclass(value):
        for one in fields(value):
            if one.name not in without:
                yield from texts(getattr(value, one.name), without)


@pytest.fixture(params=[None, 0], ids=["every size", "one size"])
def views_in(
    request: pytest.FixtureRequest, sample_project: Project, sample_proofed: tuple[Proofed, ...]
) -> Callable[[Language], list[PatternView]]:
    """The views of the sample in a language."""

    def made(spoken: Language) -> list[PatternView]:
        with speaking(spoken):
            return list(views(sample_project, sample_proofed, request.param))

    return made


def views(project: Project, proofed: tuple[Proofed, ...], place: int | None) -> Iterator[PatternView]:
    links = Links("../")
    terms = Terms.of(project, links)
    for one in proofed:
        every = pattern_view(one.worked, project, links, terms)
        if place is None or every.sizes:
            yield every if place is None else one_size_view(every, one.worked, project, links, terms, place)


def numbers(text: str) -> Counter[str]:
    return Counter(found.replace(",", ".") for found in re.findall(r"\d+(?:[.,]\d+)?|[¼½¾⅛−]", text))


def test_numbers_are_the_same_in_every_language(views_in: Callable[[Language], list[PatternView]]) -> None:
    """As data: every text of the page in German has the numbers it has in English, the decimal sign aside."""
    without = frozenset({*HIDDEN, "lines", "text", "terms", "drawing", "chart"})  # a drawing has less room for "Zoll"
    english, german = ([*texts(tuple(views_in(language(code))), without)] for code in ("en", "de"))
    assert len(english) > 100
    assert [numbers(text) for text in german] == [numbers(text) for text in english]
    assert any(re.search(r"\d,\d", text) for text in german)


def data_of(view: PatternView) -> list[object]:
    return [json.loads(one.data) for one in (view.fit, view.my_gauge) if one is not None]


def without_words(value: object) -> object:
    """Data without what is shown of it."""
    if isinstance(value, list):
        return [without_words(one) for one in value]
    if isinstance(value, dict):
        return {key: without_words(one) for key, one in value.items() if key not in ("name", "label", "heads")}
    return value


def test_keys_and_data_are_those_of_the_source(sample_project: Project, sample_proofed: tuple[Proofed, ...]) -> None:
    with speaking(GERMAN.naming({"Small": "Klein"})):
        german = list(views(sample_project, sample_proofed, None))
        cards = card_views(map(Card.of, sample_proofed), Links(""))
        asked = filters(cards)
    english = list(views(sample_project, sample_proofed, None))
    assert [[size.key for size in view.sizes] for view in german] == [[one.key for one in v.sizes] for v in english]
    assert [without_words(data_of(view)) for view in german] == [without_words(data_of(view)) for view in english]
    cards_in_english = card_views(map(Card.of, sample_proofed), Links(""))
    assert [card.keys for card in cards] == [card.keys for card in cards_in_english]
    assert "Mütze" in [card.kind for card in cards]
    keys = [[choice.key for choice in one.choices] for one in asked]
    assert keys == [[choice.key for choice in one.choices] for one in filters(cards_in_english)]
    assert "Klein" in [choice.text for one in asked for choice in one.choices]


def shown_in(value: object) -> Iterator[str]:
    """The words of data that a script shows."""
    if isinstance(value, list):
        for one in value:
            yield from shown_in(one)
    elif isinstance(value, dict):
        yield from (one for key, one in value.items() if key in ("name", "label") and one)
        yield from shown_in(list(value.values()))


def test_words_in_data_are_messages_or_from_the_source(
    sample_project: Project, sample_proofed: tuple[Proofed, ...]
) -> None:
    """The pages themselves are looked at in `test_every_word_is_a_message`; what scripts are given, here."""
    with speaking(PSEUDO):
        shown = [words for view in views(sample_project, sample_proofed, None) for words in shown_in(data_of(view))]
    header = " ".join(one.graded.pattern.lines.text for one in sample_proofed)
    assert {"⟦head⟧", "Brim"} <= set(shown)
    assert [words for words in shown if not words.startswith(("⟦", "one")) and words not in header] == []


def test_the_key_of_a_chart_is_in_the_language_that_is_spoken() -> None:
    """Signs by the terms they stand for; a manner that nobody has translated stands as it is."""
    with speaking(GERMAN):
        told = [spoken(term) for term in ("k", "k2tog", "p tbl", "sl wyib", "sl sideways")]
        assert told == [
            "rechte Masche",
            "2 M re zus-str",
            "li verschr",
            "abheben, Faden hinter der Arbeit",
            "abheben, sideways",
        ]
    assert [spoken(term) for term in ("k", "k2tog", "p tbl", "sl wyib")] == ["knit", "k2tog", "purl tbl", "slip wyib"]


def test_a_drawing_in_one_language_is_not_that_of_another(sample_proofed: tuple[Proofed, ...]) -> None:
    """Drawings are made once for page, paper and card, but once for each language and each set of names."""
    worked = next(one.worked for one in sample_proofed if drawn(one.worked).stitches)
    with speaking(GERMAN):
        german = drawn(worked)
        again = drawn(worked)
    assert german is again
    assert german != drawn(worked)
