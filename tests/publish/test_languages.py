"""In: the published demo, in English and in German. Out: each page leads to the other, and no number differs."""

import json
import re
from collections.abc import Callable, Iterator
from os.path import normpath
from pathlib import Path
from urllib.parse import unquote, urljoin, urlsplit

import pytest
from bs4 import BeautifulSoup, Tag
from defusedxml.ElementTree import parse
from playwright.sync_api import Page, expect

ADDRESS = "https://larkfold.example/patterns/"
# Pages made of the program's own words for designers, and that for what is not found, are there in English alone.
NUMBER = re.compile(r"[\d.,]*[\d½¼¾⅓⅔⅛⅜⅝⅞]")
ENGLISH = {"method.html", "rules.html", "404.html"}


@pytest.fixture(scope="module")
def pages(demo_site: Path) -> dict[str, BeautifulSoup]:
    """All pages by their paths."""
    return {
        file.relative_to(demo_site).as_posix(): BeautifulSoup(file.read_text(encoding="utf-8"), "lxml")
        for file in demo_site.rglob("*.html")
    }


def in_german(pages: dict[str, BeautifulSoup]) -> Iterator[tuple[str, BeautifulSoup, BeautifulSoup]]:
    """The paths of the pages that are there in both languages, with the English and the German one."""
    for path, page in pages.items():
        if path.startswith("de/"):
            yield path.removeprefix("de/"), pages[path.removeprefix("de/")], page


def test_everything_but_what_is_for_designers_is_there_in_german(pages: dict[str, BeautifulSoup]) -> None:
    english = {path for path in pages if not path.startswith("de/")}
    assert {path for path, _, _ in in_german(pages)} == english - ENGLISH


def test_a_page_tells_its_language_and_leads_to_the_other(pages: dict[str, BeautifulSoup]) -> None:
    """hreflang as the HTML standard has it: BCP 47, each page names all, itself among them."""
    for path, english, german in in_german(pages):
        here = "" if path == "index.html" else path
        addresses = {"en": ADDRESS + here, "de": f"{ADDRESS}de/{here}"}
        for code, other, page, place in (("en", "de", english, path), ("de", "en", german, f"de/{path}")):
            assert page.html is not None
            assert page.html["lang"] == code
            found = {str(link["hreflang"]): str(link["href"]) for link in page.select("link[rel=alternate][hreflang]")}
            assert found == addresses, place
            assert [str(link["href"]) for link in page.select("link[rel=canonical]")] == [addresses[code]], place
            (switch,) = page.select(".languages a")
            assert switch["hreflang"] == switch["lang"] == other
            target = {"en": path, "de": f"de/{path}"}[other]
            assert urljoin(f"/{place}", str(switch["href"])) == f"/{target}", place


def test_a_page_that_is_not_translated_leads_to_the_start_in_the_other_language(
    pages: dict[str, BeautifulSoup],
) -> None:
    for path in ENGLISH - {"404.html"}:
        assert [str(link["href"]) for link in pages[path].select(".languages a")] == ["de/index.html"]
    links = {str(link["href"]): link for link in pages["de/about.html"].select(".site-foot a")}
    assert links["../rules.html"]["hreflang"] == "en"


def test_every_link_of_a_german_page_leads_somewhere(demo_site: Path, pages: dict[str, BeautifulSoup]) -> None:
    broken, seen = [], 0
    for path, _, page in in_german(pages):
        for element in page.select("[href], [src]"):
            parts = urlsplit(str(element.get("href") or element.get("src")))
            if parts.scheme or not (parts.path or parts.fragment):
                continue
            seen += 1
            target = normpath(f"de/{path}/../{unquote(parts.path)}") if parts.path else f"de/{path}"
            there = (demo_site / target).is_file()
            named = not parts.fragment or target not in pages or pages[target].find(id=unquote(parts.fragment))
            if not there or not named:
                broken.append(f"{path}: {element}")
    assert broken == []
    assert seen > 500


def test_data_of_a_pattern_has_the_same_numbers(demo_site: Path) -> None:
    files = sorted((demo_site / "de" / "patterns").glob("*.json"))
    assert len(files) >= 8
    for file in files:
        told = json.loads(file.read_text(encoding="utf-8"))
        english = json.loads((demo_site / "patterns" / file.name).read_text(encoding="utf-8"))
        assert told["quantities"] == english["quantities"]
        assert [one["values"] for one in told["finished"]] == [one["values"] for one in english["finished"]]
        assert told["title"] != english["title"]


def test_instructions_have_the_same_numbers_in_every_size(pages: dict[str, BeautifulSoup]) -> None:
    """A sentence may have them in another order; the lines have not."""
    checked = 0
    for path, english, german in in_german(pages):
        if not path.startswith("patterns/"):
            continue
        lines = [page.select(".work .line, .stitch .line") for page in (english, german)]
        assert len(lines[0]) == len(lines[1]), path
        for one, other in zip(*lines, strict=True):
            numbers = [sorted(sizes(line)) for line in (one, other)]
            assert numbers[0] == numbers[1], f"{path}: {one.get_text()} / {other.get_text()}"
            checked += bool(numbers[0])
    assert checked > 40


def sizes(line: Tag) -> list[list[str]]:
    """The numbers of a line that differ by size, without the words that stand at them ("3 times", "3-mal")."""
    return [
        [NUMBER.findall(value.get_text())[0].replace(",", ".") for value in number.select(".z")]
        for number in line.select(".graded")
        if all(NUMBER.search(value.get_text()) for value in number.select(".z"))
    ]


def test_the_feed_is_in_its_language_and_its_entries_are_its_own(demo_site: Path) -> None:
    """RFC 4287, 4.2.6: no two entries have one id."""
    space = {"a": "http://www.w3.org/2005/Atom"}
    feeds = [parse(demo_site / below / "feed.xml").getroot() for below in ("", "de")]
    assert [feed.get("{http://www.w3.org/XML/1998/namespace}lang") for feed in feeds if feed is not None] == [
        "en",
        "de",
    ]
    ids = [{one.text for one in feed.iterfind(".//a:id", space)} for feed in feeds if feed is not None]
    assert len(ids[0]) == len(ids[1]) > 8
    assert not ids[0] & ids[1]
    links = [
        str(one.get("href"))
        for feed in feeds[1:]
        if feed is not None
        for one in feed.iterfind(".//a:entry/a:link", space)
    ]
    assert all(link.startswith(f"{ADDRESS}de/patterns/") for link in links)


def test_the_sitemap_has_the_pages_of_both(demo_site: Path, pages: dict[str, BeautifulSoup]) -> None:
    places = re.findall("<loc>(.*?)</loc>", (demo_site / "sitemap.xml").read_text(encoding="utf-8"))
    assert f"{ADDRESS}de/patterns/undercombe-hat.html" in places
    assert len(places) == len(pages) - 1


def test_the_choice_goes_along_to_the_other_language(demo_site: Path, page_at: Callable[..., Page]) -> None:
    """Chosen in English, shown in German: the size in the address, the place in the text."""
    page = page_at(demo_site / "patterns" / "undercombe-hat.html")
    page.get_by_label("Adult", exact=True).check()
    page.get_by_role("link", name="Deutsch").click()
    expect(page.locator("html")).to_have_attribute("lang", "de")
    expect(page.get_by_label("Erwachsene", exact=True)).to_be_checked()
