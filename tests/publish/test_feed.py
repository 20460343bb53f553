"""In: cards of patterns. Out: the feed holds against the grammar of RFC 4287 and its rules; the sitemap likewise."""

from dataclasses import replace
from pathlib import Path
from typing import Any
from urllib.parse import urljoin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from lxml import etree  # type: ignore[import-untyped]

from sizewright.publish.card import Card
from sizewright.publish.feed import Correction, Listed, feed
from sizewright.publish.sitemap import sitemap
from sizewright.read.project import Studio

ATOM = "{http://www.w3.org/2005/Atom}"
GRAMMAR = etree.RelaxNG(etree.parse(Path(__file__).with_name("atom.rng")))

STUDIO = Studio(
    name="Larkfold Yarns & Patterns",
    description="Patterns <for> hands & heads",
    address="https://larkfold.example/shop",
    author="Maren Tolley",
)
HAT = Listed(
    Card("hat", "Hat & brim", "Warm.", designer="Maren Tolley", published="2026-03-01", revised="2026-10-12"),
    (
        Correction("2026-10-12", "Round 4: k3, not k2."),
        Correction("2026-10-12", "Crown: 8 sections."),
        Correction("2026-05-02", "Needle size."),
    ),
)
MITTEN = Listed(Card("mitten-2", "Mitten", published="2026-04-01"))
UNDATED = Listed(Card("swatch", "Swatch"))


def read(content: bytes) -> Any:  # noqa: ANN401 (lxml has no types)
    """The feed as a tree, after the grammar and the rules that a grammar cannot say."""
    root = etree.fromstring(content)
    GRAMMAR.assertValid(root)
    ids = [element.text for element in root.iter(f"{ATOM}id")]
    assert len(ids) == len(set(ids))
    assert all(identity and identity.startswith("urn:uuid:") for identity in ids)
    has_author = root.find(f"{ATOM}author") is not None
    for entry in root.findall(f"{ATOM}entry"):
        # RFC 4287, 4.1.2: an author here or above; an alternate link where there is no content.
        assert has_author or entry.find(f"{ATOM}author") is not None
        assert [link.get("rel") for link in entry.findall(f"{ATOM}link")] == ["alternate"]
    return root


def texts(root: Any, path: str) -> list[str]:  # noqa: ANN401
    return [element.text for element in root.findall(path, {None: ATOM.strip("{}")})]


def test_patterns_and_corrections_newest_first() -> None:
    root = read(feed(STUDIO, [MITTEN, HAT]))
    assert texts(root, "./entry/updated") == [
        "2026-10-12T00:00:00Z",
        "2026-10-12T00:00:00Z",
        "2026-10-12T00:00:00Z",
        "2026-05-02T00:00:00Z",
        "2026-04-01T00:00:00Z",
    ]
    assert set(texts(root, "./entry/summary")) == {
        "Warm.",
        "Round 4: k3, not k2.",
        "Crown: 8 sections.",
        "Needle size.",
        "Mitten",
    }
    assert texts(root, "./updated") == ["2026-10-12T00:00:00Z"]
    assert texts(root, "./title") == ["Larkfold Yarns & Patterns"]


def test_links_are_full_where_the_address_is_known() -> None:
    root = read(feed(STUDIO, [HAT]))
    assert [(link.get("rel"), link.get("href")) for link in root.findall(f"{ATOM}link")] == [
        ("self", "https://larkfold.example/shop/feed.xml"),
        ("alternate", "https://larkfold.example/shop/"),
    ]
    assert {link.get("href") for link in root.findall(f"{ATOM}entry/{ATOM}link")} == {
        "https://larkfold.example/shop/patterns/hat.html",
        "https://larkfold.example/shop/patterns/hat.html#part--changes",
    }
    again = feed(replace(STUDIO, address="https://larkfold.example/shop/"), [HAT])
    assert again == feed(STUDIO, [HAT])


def test_links_are_relative_where_it_is_not() -> None:
    root = read(feed(replace(STUDIO, address=""), [MITTEN]))
    assert [link.get("rel") for link in root.findall(f"{ATOM}link")] == ["alternate"]
    link = root.find(f"{ATOM}entry/{ATOM}link").get("href")
    assert urljoin("https://anywhere.example/below/feed.xml", link) == (
        "https://anywhere.example/below/patterns/mitten-2.html"
    )


def test_ids_stay() -> None:
    """Over a new address, a mended text, a newer correction and a pattern more or less; never over another studio."""
    before = read(feed(STUDIO, [HAT]))
    moved = replace(STUDIO, address="https://elsewhere.example", description="other")
    mended = replace(HAT.corrections[2], text="Needle size: 4 mm.")
    newer = Correction("2026-11-01", "More.")
    later = read(feed(moved, [MITTEN, replace(HAT, corrections=(newer, *HAT.corrections[:2], mended))]))
    assert set(texts(before, ".//id")) < set(texts(later, ".//id"))
    by_summary = dict(zip(texts(later, "./entry/summary"), texts(later, "./entry/id"), strict=True))
    first = dict(zip(texts(before, "./entry/summary"), texts(before, "./entry/id"), strict=True))
    assert by_summary["Needle size: 4 mm."] == first["Needle size."]
    assert by_summary["Crown: 8 sections."] == first["Crown: 8 sections."]
    other = read(feed(replace(STUDIO, name="Another"), [HAT]))
    assert not set(texts(before, ".//id")) & set(texts(other, ".//id"))


def test_no_clock_is_read() -> None:
    assert feed(STUDIO, [HAT, MITTEN]) == feed(STUDIO, [MITTEN, HAT])
    root = read(feed(STUDIO, [UNDATED]))
    assert texts(root, "./entry/title") == []
    assert texts(root, "./updated") == ["1970-01-01T00:00:00Z"]


def test_a_studio_that_says_nothing_of_itself() -> None:
    root = read(feed(Studio(), [MITTEN]))
    assert texts(root, "./author/name") == ["A knitting studio"]


@settings(deadline=None)
@given(some.text(), some.text(min_size=1), some.text())
def test_any_text_gives_a_feed(title: str, name: str, summary: str) -> None:
    """Also the signs that XML cannot hold."""
    card = Card(name, title or "x", summary, published="2026-03-01")
    read(feed(replace(STUDIO, name=title, author=summary), [Listed(card, (Correction("2026-03-02", summary),))]))


@pytest.mark.parametrize(
    ("sound", "broken"),
    [
        (b"T00:00:00Z", b", noon"),
        (b"<id>", b"<id>urn:x</id><id>"),
        (b"<title>", b"<heading/><title>"),
        (b' href="https://larkfold.example/shop/feed.xml"', b""),
    ],
)
def test_the_grammar_finds_faults(sound: bytes, broken: bytes) -> None:
    content = feed(STUDIO, [HAT])
    assert sound in content
    assert not GRAMMAR.validate(etree.fromstring(content.replace(sound, broken, 1)))


def test_the_sitemap() -> None:
    """Source: the protocol of sitemaps.org (urlset, url, loc, lastmod; full addresses)."""
    paths = ["patterns/hat.html", "index.html", "404.html", "theme/studio.css", "patterns/hat.pdf", "über uns.html"]
    root = etree.fromstring(sitemap("https://larkfold.example/shop", paths, {"patterns/hat.html": "2026-10-12"}))
    space = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
    assert root.tag == f"{space}urlset"
    assert [[(child.tag.removeprefix(space), child.text) for child in url] for url in root] == [
        [("loc", "https://larkfold.example/shop/")],
        [("loc", "https://larkfold.example/shop/patterns/hat.html"), ("lastmod", "2026-10-12")],
        [("loc", "https://larkfold.example/shop/%C3%BCber%20uns.html")],
    ]
