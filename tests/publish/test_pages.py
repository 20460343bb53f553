"""In: the sample project. Out: every page sound: valid, linked, escaped, self-contained, the same every time."""

import json
import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from posixpath import dirname, normpath
from urllib.parse import unquote, urlsplit

import pytest
from bs4 import BeautifulSoup
from pyld import jsonld

from sizewright.proof.proofed import Proofed
from sizewright.publish.card import Card
from sizewright.publish.output import Output
from sizewright.publish.pages import site_pages
from sizewright.publish.theme import Theme
from sizewright.read.project import Project, Studio

Outputs = dict[str, Output]
PAGES = {
    "index.html",
    "404.html",
    "about.html",
    "abbreviations.html",
    "method.html",
    "rules.html",
    "knitting.html",
    "patterns/cloth.html",
    "patterns/hat.html",
    "techniques/bobbles.html",
    "techniques/index.html",
}
# Written by other parts of publishing.
ELSEWHERE = {"feed.xml", "media/hat.svg", "patterns/old-shawl.html"}


@pytest.fixture(scope="module")
def pages(sample_outputs: Outputs) -> dict[str, BeautifulSoup]:
    return {
        path: BeautifulSoup(output.content, "html.parser")
        for path, output in sample_outputs.items()
        if path.endswith(".html")
    }


def addresses(page: BeautifulSoup) -> Iterator[str]:
    """Every address in a page: followed, loaded or submitted to."""
    for name in ("href", "src", "action", "poster", "srcset", "data"):
        for element in page.select(f"[{name}]"):
            yield str(element[name])


def test_there_is_a_page_for_everything(pages: dict[str, BeautifulSoup]) -> None:
    assert set(pages) == PAGES


def test_every_link_leads_to_a_page_and_a_place_in_it(
    pages: dict[str, BeautifulSoup], sample_outputs: Outputs, sample_papers: tuple[str, ...]
) -> None:
    there = {*sample_outputs, *sample_papers, *ELSEWHERE}
    broken = []
    seen = 0
    for path, page in pages.items():
        for address in addresses(page):
            parts = urlsplit(address)
            if parts.scheme or path == "404.html":
                continue
            seen += 1
            target = normpath(f"{dirname(path)}/{unquote(parts.path)}").lstrip("/") if parts.path else path
            fragment = unquote(parts.fragment)
            lost = fragment and target in pages and not pages[target].select(f'[id="{fragment}"]')
            if target not in there or lost or parts.path.endswith("/") or parts.path.startswith("/"):
                broken.append(f"{path}: {address}")
    assert broken == []
    assert seen > 100


def test_links_name_their_file_so_that_the_site_works_from_disk(pages: dict[str, BeautifulSoup]) -> None:
    for path, page in pages.items():
        for address in addresses(page):
            parts = urlsplit(address)
            assert parts.scheme or not parts.path or "." in parts.path.rpartition("/")[2], f"{path}: {address}"


def test_nothing_is_loaded_from_elsewhere(pages: dict[str, BeautifulSoup]) -> None:
    for path, page in pages.items():
        loaded = [
            str(element.get("src") or element.get("href")) for element in page.select("[src], link[rel=stylesheet]")
        ]
        assert not [address for address in loaded if urlsplit(address).scheme or address.startswith("//")], path
        assert not page.select("iframe, object, embed, base, meta[http-equiv]"), path


def test_the_page_not_found_leads_from_the_top_of_the_site(pages: dict[str, BeautifulSoup]) -> None:
    inside = [address for address in addresses(pages["404.html"]) if not address.startswith("#")]
    assert len(inside) > 5
    assert [address for address in inside if not address.startswith("/knits/")] == []


def test_identifiers_are_unique(pages: dict[str, BeautifulSoup]) -> None:
    for path, page in pages.items():
        ids = [str(element["id"]) for element in page.select("[id]")]
        assert len(ids) == len(set(ids)), path


def test_every_page_has_its_frame(pages: dict[str, BeautifulSoup]) -> None:
    for path, page in pages.items():
        assert page.html is not None
        assert page.html["lang"] == "en", path
        assert len(page.select("h1")) == 1, path
        assert len(page.select("main#main")) == 1, path
        skip = page.select_one("body > a")
        assert skip is not None, path
        assert skip["href"] == "#main", path
        assert "Everything here is invented." in page.get_text(), path
        feed = page.select_one('link[rel="alternate"][type="application/atom+xml"]')
        assert feed is not None, path
        assert str(feed["href"]).endswith("feed.xml"), path


def test_headings_leave_no_level_out(pages: dict[str, BeautifulSoup]) -> None:
    for path, page in pages.items():
        levels = [int(heading.name[1]) for heading in page.select("main :is(h1, h2, h3, h4)")]
        assert all(after - before <= 1 for before, after in pairwise(levels)), (path, levels)


def test_the_canonical_address_is_given_where_the_studio_has_one(
    pages: dict[str, BeautifulSoup], sample_project: Project, sample_proofed: tuple[Proofed, ...], sample_theme: Theme
) -> None:
    link = pages["patterns/hat.html"].select_one("link[rel=canonical]")
    assert link is not None
    assert link["href"] == "https://rook.example/knits/patterns/hat.html"
    assert pages["index.html"].select_one('link[rel=canonical][href="https://rook.example/knits/"]')
    nowhere = replace(sample_project, studio=replace(sample_project.studio, address=""))
    for output in site_pages(nowhere, sample_proofed, [], sample_theme):
        assert b"canonical" not in output.content, output.path
        assert b"rook.example" not in output.content, output.path


def test_words_of_a_source_are_never_markup(sample_outputs: Outputs) -> None:
    text = sample_outputs["patterns/hat.html"].content.decode()
    assert "<one>" not in text
    assert "<was>" not in text
    assert "<not the tail>" not in text
    assert "Hat &lt;one&gt; &amp; &#34;two&#34;" in text


def structured(page: BeautifulSoup) -> dict[str, object]:
    script = page.select_one('script[type="application/ld+json"]')
    assert script is not None
    assert script.string is not None
    assert not re.search(r"[<>&]", script.string)
    told = json.loads(script.string)
    assert isinstance(told, dict)
    return told


def test_the_data_for_search_engines_says_what_the_page_says(pages: dict[str, BeautifulSoup]) -> None:
    told = structured(pages["patterns/hat.html"])
    assert told["name"] == 'Hat <one> & "two"'
    assert (told["datePublished"], told["dateModified"]) == ("2026-03-01", "2026-10-12")
    assert told["image"] == "https://rook.example/knits/media/hat.svg"
    assert told["author"] == {"@type": "Person", "name": "Ann Thorn"}
    assert told["license"] == {"@type": "CreativeWork", "name": "CC BY 4.0"}
    assert "summary" not in told
    assert structured(pages["patterns/cloth.html"])["image"] == "https://rook.example/knits/drawn/cloth.svg"


def test_the_data_for_search_engines_is_json_ld(pages: dict[str, BeautifulSoup]) -> None:
    # The vocabulary is not fetched: every word is taken for one of schema.org, as its own context does.
    def words(address: str, _: object) -> dict[str, object]:
        context = {"@context": {"@vocab": "https://schema.org/"}}
        return {"contextUrl": None, "documentUrl": address, "document": context}

    for path in ("patterns/hat.html", "index.html"):
        (node,) = jsonld.expand(structured(pages[path]), {"documentLoader": words})
        assert node["@type"][0].startswith("https://schema.org/")
        assert node["https://schema.org/name"]


def test_a_pattern_shows_what_it_must(pages: dict[str, BeautifulSoup]) -> None:
    page = pages["patterns/hat.html"]
    in_us_terms = (text for text in page.find_all(string=True) if not text.find_parent(class_="uk"))
    text = " ".join("".join(in_us_terms).replace("\u00a0", " ").split())
    for words in (
        'Hat <one> & "two"',
        "by Ann Thorn",
        "skill: easy",
        "22 sts over 10 cm, 7½ rnds over 1 in (2.54 cm) in stockinette stitch in the round",
        "Needle: 4 mm",
        "105 m / 115 yd per 50 g / 1.76 oz",
        "4 mm (US 6, UK 8) circular needle",
        "1 marker",
        "Wash by hand, at most 40 °C (on a label: a tub with a hand in it).",
        "US 16 CFR 1120 and EU EN 14682, which do not reach hats and gloves",
        "Bobbles come off when a cat chews them.",
        "Adult M and Adult L only",
        "Corrected on 12 October 2026",
        "Rnd 2: k2tog <was> ssk.",
        "CC BY 4.0",
        "Ada for the brim",
        "1 March 2026",
        "Small 2 to 5 years",
    ):
        assert words in text, words
    assert page.select_one('a[href="hat.pdf"]')
    assert page.select_one('a[href="hat.json"]')
    picture = page.select_one("img.picture")
    assert picture is not None
    assert (picture["src"], picture["alt"]) == ("../media/hat.svg", 'A hat with a "bobble"')


def test_abbreviations_lead_to_their_meaning(pages: dict[str, BeautifulSoup]) -> None:
    links = {link.get_text(): str(link["href"]) for link in pages["patterns/hat.html"].select(".terms dt a")}
    assert {"k2tog", "yo", "mb", "rep", "p"} <= set(links)
    assert "ssk" not in links, "stands in the errata only, which nobody knits from"
    _, _, anchor = links["mb"].partition("#")
    entry = pages["abbreviations.html"].select_one(f"#{anchor}")
    assert entry is not None
    assert "make a bobble" in entry.get_text()
    technique = entry.select_one("a")
    assert technique is not None
    assert technique["href"] == "techniques/bobbles.html"


def test_a_technique_says_its_abbreviations_films_and_patterns(pages: dict[str, BeautifulSoup]) -> None:
    page = pages["techniques/bobbles.html"]
    assert [link.get_text() for link in page.select(".terms dt a")] == ["mb", "yo"]
    film = page.select_one('a[href="https://films.example/bobble#t=85"]')
    assert film is not None
    assert "begin at 1:25" in page.get_text()
    used = [link.get_text() for link in page.select("#part--used + ul a")]
    assert used == ['Hat <one> & "two"', "Old shawl"]


def test_a_length_in_a_page_is_in_both_units(pages: dict[str, BeautifulSoup]) -> None:
    assert "is 25.4\u00a0cm / 10\u00a0in long." in pages["about.html"].get_text()


def test_a_pattern_of_one_size_asks_for_none(pages: dict[str, BeautifulSoup]) -> None:
    page = pages["patterns/cloth.html"]
    assert not page.select(".choose, script[src$='size.js'], style")
    assert "18 sts over 4 in (10.16 cm) in garter stitch" in page.get_text()


def test_a_kept_pattern_is_listed_beside_the_others(pages: dict[str, BeautifulSoup]) -> None:
    titles = [link.get_text() for link in pages["index.html"].select(".card h2 a")]
    assert titles == ["A plain cloth", 'Hat <one> & "two"', "Old shawl"]


def test_every_choice_of_a_filter_keeps_some_card(pages: dict[str, BeautifulSoup]) -> None:
    page = pages["index.html"]
    choices = [
        (str(select["name"]), str(option["value"]))
        for select in page.select(".filters .choice select")
        for option in select.select("option")
        if option["value"]
    ]
    assert len(choices) >= 9
    for name, key in choices:
        assert page.select(f'.card[data-{name}~="{key}"]'), (name, key)
        assert page.select(f'.card:not([data-{name}~="{key}"])'), (name, key)


def test_a_page_named_like_one_every_site_has_is_its_introduction(
    sample_project: Project, sample_proofed: tuple[Proofed, ...], sample_theme: Theme
) -> None:
    (about,) = sample_project.pages
    names = ("index", "404", "abbreviations", "knitting", "method", "rules")
    project = replace(sample_project, pages=tuple(replace(about, name=name) for name in names))
    outputs = {output.path: output for output in site_pages(project, sample_proofed, [], sample_theme)}
    assert {path for path in outputs if path.endswith(".html")} == PAGES - {"about.html"}
    for name in names:
        assert b"Our needle case is" in outputs[f"{name}.html"].content


def test_a_studio_without_techniques_has_no_page_of_them(sample_project: Project, sample_theme: Theme) -> None:
    bare = replace(sample_project, techniques=(), pages=(), patterns=(), studio=Studio())
    outputs = {output.path: output for output in site_pages(bare, [], [], sample_theme)}
    own = ("index", "abbreviations", "method", "rules", "knitting", "404")
    assert {path for path in outputs if path.endswith(".html")} == {f"{name}.html" for name in own}
    assert b"There are no patterns yet." in outputs["index.html"].content
    assert b"techniques/" not in outputs["index.html"].content
    assert b'href="/index.html"' in outputs["404.html"].content


def test_pages_are_the_same_bytes_every_time(
    sample_project: Project, sample_proofed: tuple[Proofed, ...], sample_theme: Theme, sample_outputs: Outputs
) -> None:
    again = site_pages(sample_project, sample_proofed, [Card.from_json(_kept(sample_outputs))], sample_theme)
    seen = {output.path: output.content for output in again if output.path.startswith("patterns/")}
    assert seen == {path: sample_outputs[path].content for path in seen}


def _kept(outputs: Outputs) -> object:
    told: object = json.loads(outputs["patterns/cloth.json"].content)["card"]
    return told
