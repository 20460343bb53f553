"""In: addresses and cards. Out: where links lead, and what the collection shows and can be narrowed by."""

import json
from dataclasses import replace

import pytest

from sizewright.proof.proofed import Proofed
from sizewright.publish.card import Card
from sizewright.publish.links import Links, film_address
from sizewright.publish.pages import site_pages
from sizewright.publish.theme import Theme
from sizewright.publish.view_collection import card_views, filters, find_view
from sizewright.read.project import Project

# --------------------------------------------------------------------------------------------------------------- links


@pytest.mark.parametrize(
    ("source", "href"),
    [
        ("https://elsewhere.example/a?b=1", "https://elsewhere.example/a?b=1"),
        ("mailto:a@b.example", "mailto:a@b.example"),
        ("#brim", "#brim"),
        ("pages/about.md", "../about.html"),
        ("patterns/a hat.md#brim", "../patterns/a%20hat.html#brim"),
        ("techniques/a#b.md", "../techniques/a.html#b.md"),
        ("javascript:alert(1)", ""),
        ("JAVASCRIPT:alert(1)", ""),
        ("data:text/html,x", ""),
        ("file:///etc/passwd", ""),
        ("//elsewhere.example/", ""),
    ],
)
def test_a_link_leads_where_it_may(source: str, href: str) -> None:
    assert Links("../").followed(source) == href


def test_on_paper_a_link_is_a_full_address_or_only_words() -> None:
    at = Links("../", "https://rook.example/knits/", paper=True)
    assert at.followed("pages/about.md#us") == "https://rook.example/knits/about.html#us"
    assert Links("../", paper=True).followed("pages/about.md#us") == ""
    assert at.media("a b.svg") == "../media/a%20b.svg"


def test_a_film_begins_at_its_second() -> None:
    # W3C Media Fragments URI 1.0, section 4.2.1: "#t=10" begins at the tenth second.
    assert film_address("https://films.example/a", 85) == "https://films.example/a#t=85"
    assert film_address("https://films.example/a", 0) == "https://films.example/a"
    assert film_address("https://films.example/a#x", 85) == "https://films.example/a#x"


# ---------------------------------------------------------------------------------------- cards and the collection

HAT = Card("hat", "Hat", kind="Hat", published="2026-01-02", sizes=("S", "M", "L"), weights=("light", "fine"))
SOCK = Card("sock", "Sock", kind="sock", published="2026-01-03", sizes=("Baby", "M", "XL"), weights=("super fine",))
RUG = Card("rug", "A rug", published="2026-01-02")


def test_a_card_comes_back_from_json() -> None:
    for card in (HAT, replace(SOCK, alt="a “b” <c>", techniques=("x",)), RUG):
        assert Card.from_json(json.loads(json.dumps(card.as_json()))) == card


@pytest.mark.parametrize(
    "wrong",
    [
        None,
        [],
        {},
        {**HAT.as_json(), "title": 3},
        {**HAT.as_json(), "sizes": "S"},
        {**HAT.as_json(), "sizes": [1]},
        {**HAT.as_json(), "published": "yesterday"},
        {**HAT.as_json(), "name": ""},
    ],
)
def test_what_is_no_card_is_refused(wrong: object) -> None:
    with pytest.raises(ValueError, match=r"."):
        Card.from_json(wrong)


def test_the_collection_is_newest_first_then_by_title() -> None:
    assert [view.card.name for view in card_views([HAT, RUG, SOCK], Links(""))] == ["sock", "rug", "hat"]


def test_filters_ask_by_kind_size_and_yarn_weight() -> None:
    asked = filters(card_views([HAT, SOCK, RUG], Links("")))
    found = {one.name: [choice.text for choice in one.choices] for one in asked}
    assert found["kind"] == ["Hat", "sock"]
    assert found["weight"] == ["super fine", "fine", "light"]  # from thin to thick: Craft Yarn Council 1, 2, 3
    order = found["size"]
    assert set(order) == {"S", "M", "L", "Baby", "XL", "One size"}
    for sizes in (HAT.sizes, SOCK.sizes):
        assert sorted(sizes, key=order.index) == list(sizes)


def test_a_question_with_one_answer_is_not_asked() -> None:
    assert filters(card_views([HAT], Links("")))[0].name == "size"
    assert filters(card_views([RUG], Links(""))) == ()


def test_summaries_are_told_in_both_terms_where_they_differ(
    sample_project: Project, sample_proofed: tuple[Proofed, ...], sample_theme: Theme
) -> None:
    """The names of stitch patterns stay; where nothing differs, the start page asks nothing."""
    card = replace(HAT, summary="Bound off in Stockinette stitch tops.", terms="us", names=("Stockinette stitch tops",))
    (shown,) = card_views([card], Links(""))
    assert list(shown.words.told(card.summary)) == [("Bound off", "Cast off"), (" in Stockinette stitch tops.",) * 2]
    (british,) = card_views([replace(card, summary="Cast off.", terms="uk")], Links(""))
    assert british.words.differs("Cast off.")
    assert not british.words.differs(HAT.summary)
    assert {Card.of(one).terms for one in sample_proofed} <= {"", "us", "uk"}
    with pytest.raises(ValueError, match="fr"):
        Card.from_json({**HAT.as_json(), "terms": "fr"})
    for some, asked in (([card], True), ([HAT], False)):
        start = next(iter(site_pages(sample_project, (), some, sample_theme))).content.decode()
        assert ('<span class="uk">Cast off</span>' in start, 'name="terms"' in start) == (asked, asked)


def test_a_pattern_is_found_by_the_titles_of_its_techniques(sample_project: Project) -> None:
    """In the language of the page, which is that of the project's techniques as it tells them."""
    (first, *_) = sample_project.techniques
    told = replace(first, header=replace(first.header, title="Verkürzte Reihen"))
    views = card_views([replace(SOCK, techniques=(first.name, "gone"))], Links(""))
    for technique in (first, told):
        (data,) = json.loads(find_view(views, (technique,), metric_first=True).data)
        assert technique.header.title in data["words"]
