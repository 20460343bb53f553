"""In: instructions with abbreviations and techniques. Out: each is marked once in a section, and says what it means."""

from collections.abc import Callable
from pathlib import Path

from bs4 import BeautifulSoup
from markupsafe import escape
from playwright.sync_api import Page, expect

from sizewright.base.language import language, speaking
from sizewright.proof.proofed import Proofed
from sizewright.publish.links import Links
from sizewright.publish.output import Output
from sizewright.publish.pages import site_pages
from sizewright.publish.theme import Theme
from sizewright.publish.view_explained import WHOLE, Explained
from sizewright.publish.view_pattern import pattern_view
from sizewright.publish.view_terms import Terms
from sizewright.read.project import Project

Read = Callable[[str], tuple[Proofed, Project]]
Open = Callable[..., Page]
TECHNIQUE = """---
title: Short rows
summary: Rows that turn.
terms: [short row, turn, gap, w&t]
---
Turn.
"""
BODY = """---
title: Trial
sizes: {S: {head: 50 cm}, M: {head: 55 cm}}
gauge: {stitches: 20 st / 10 cm}
techniques: [short-rows]
---
## K2tog in a heading

A short row and k2tog, and [k2tog](https://a.example/) in a link; k2tog again, and `ssk` in code.

```work
Cast on 20 sts.
Row 1: *K2tog, k2; rep from * to end. (15 sts)
Row 2: K2tog, ssk, k to end. (13 sts)
```
## Again

::: sizes S
```work
Row 3: Ssk, k to end.
```
:::
```work
Row 4: Ssk, k to end.
```
"""


def read(read_pattern: Read, folder: Path) -> tuple[Proofed, Project]:
    place = folder / "content" / "techniques" / "short-rows.md"
    place.parent.mkdir(parents=True, exist_ok=True)
    place.write_text(TECHNIQUE, encoding="utf-8")
    return read_pattern(BODY)


def parts(read_pattern: Read, folder: Path, *, paper: bool = False) -> BeautifulSoup:
    proofed, project = read(read_pattern, folder)
    links = Links("../", paper=paper)
    view = pattern_view(proofed.worked, project, links, Terms.of(project, links))
    html = "".join(
        str(part.html or "") + "".join(f"<p>{line.text}</p>" for line in part.lines) for part in view.body.parts
    )
    return BeautifulSoup(html, "html.parser")


def test_each_is_marked_once_in_a_section(read_pattern: Read, tmp_path: Path) -> None:
    soup = parts(read_pattern, tmp_path)
    marked = [one.get_text() for one in soup.select("button.told")]
    assert marked.count("k2tog") == 1
    assert marked.count("ssk") == 1
    assert marked.count("Ssk") == 2  # what only some sizes read is marked for the others again
    assert [one.get_text() for one in soup.select("a.taught")] == ["short row"]
    assert not soup.select("h2 .told, a .told, code .told, button .told")


def test_words_are_the_same_with_marks_and_without(read_pattern: Read, tmp_path: Path) -> None:
    paper = parts(read_pattern, tmp_path, paper=True)
    assert not paper.select(".told, .taught")
    assert paper.get_text() == parts(read_pattern, tmp_path).get_text()


def test_a_mark_opens_its_meaning_and_can_be_taken_away(read_pattern: Read, page_at: Open, tmp_path: Path) -> None:
    proofed, project = read(read_pattern, tmp_path)
    theme = Theme.find("studio", tmp_path)
    outputs: list[Output] = [*site_pages(project, [proofed], [], theme), *theme.assets()]
    for output in outputs:
        (tmp_path / "out" / output.path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "out" / output.path).write_bytes(output.content)
    page = page_at(tmp_path / "out/patterns/trial.html", width=380)
    mark = page.locator(".instructions button.told", has_text="k2tog").first
    meaning = page.locator("[popover]", has_text="knit 2 stitches together").first
    expect(meaning).not_to_be_visible()
    mark.focus()
    page.keyboard.press("Enter")
    expect(meaning).to_be_visible()
    page.keyboard.press("Escape")
    expect(meaning).not_to_be_visible()
    expect(mark).to_be_focused()
    mark.click()
    expect(meaning).to_be_visible()
    meaning.get_by_role("button", name="Close").click()
    expect(meaning).not_to_be_visible()
    page.get_by_label("Mark abbreviations and techniques").uncheck()
    page.reload()
    expect(page.get_by_label("Mark abbreviations and techniques")).not_to_be_checked()
    assert mark.evaluate("button => { button.focus(); return document.activeElement === button; }") is False
    page.emulate_media(media="print")
    expect(page.get_by_label("Mark abbreviations and techniques")).not_to_be_visible()


def test_no_line_ends_within_an_abbreviation_of_another_language() -> None:
    """ "zus-str" is kept whole on the page, and is as it was where text stands alone; English pages have none of it."""
    words = "2 M re zus-str & 6-mal, Rundstrick-Nadel, auf-und-ab"
    short = {one: f'<span class="whole">{one}</span>' for one in ("zus-str", "6-mal")}
    told = f"2 M re {short['zus-str']} &amp; {short['6-mal']}, Rundstrick-Nadel, auf-und-ab"
    with speaking(language("de")):
        assert Explained().line(words) == Explained().plain(words) == told
        assert Explained().markup(f'<a href="x-y">{escape(words)}</a>') == f'<a href="x-y">{told}</a>'
        assert WHOLE.sub(r"\1", told) == escape(words)
    assert Explained().line(words) == escape(words)
