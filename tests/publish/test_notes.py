"""In: notes for learners. Out: they stand folded beside the instructions, on no paper, and change no number."""

from collections.abc import Callable
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from playwright.sync_api import Page, expect

from sizewright.proof.proofed import Proofed
from sizewright.proof.run import proof
from sizewright.publish.links import Links
from sizewright.publish.output import Output
from sizewright.publish.pages import site_pages
from sizewright.publish.theme import Theme
from sizewright.publish.view import PatternView
from sizewright.publish.view_pattern import pattern_view
from sizewright.publish.view_terms import Terms
from sizewright.read.folder import read_text
from sizewright.read.project import Project

Read = Callable[[str], tuple[Proofed, Project]]
Open = Callable[..., Page]
BODY = """---
title: Trial
sizes: {S: {head: 50 cm}, M: {head: 55 cm}}
gauge: {stitches: 20 st / 10 cm}
cautions: [hot-water]
---
```work
Cast on 20 (24) sts.
```
::: learners Why & how
**Why.** {head} around.
:::
```work
Row 1: Knit.
```
::: learners
Look at it.
:::
"""


def view(read: Read, *, paper: bool) -> PatternView:
    proofed, project = read(BODY)
    links = Links("../", paper=paper)
    return pattern_view(proofed.worked, project, links, Terms.of(project, links))


def text_of(shown: PatternView) -> str:
    return "".join(part.html or "" for part in shown.body.parts)


def test_a_note_is_folded_and_keeps_its_numbers_by_size(read_pattern: Read) -> None:
    shown = view(read_pattern, paper=False)
    assert shown.body.notes == 2
    soup = BeautifulSoup(text_of(shown), "html.parser")
    first, second = soup.select("details.learners:not([open])")
    assert first.summary is not None
    assert first.summary.get_text() == "For learners Why & how"
    assert [cell.get_text() for cell in first.select(".z")[:2]] == ["50", "55"]
    assert second.summary is not None
    assert second.summary.get_text() == "For learners"


def test_paper_leaves_them_out(read_pattern: Read) -> None:
    shown = view(read_pattern, paper=True)
    assert shown.body.notes == 0
    assert not [part.kind for part in shown.body.parts if part.kind == "text" and (part.html or "").strip()]
    assert [part.kind for part in shown.body.parts if part.kind == "work"] == ["work", "work"]


@pytest.mark.parametrize("name", ["undercombe-hat", "greenhow-socks"])
def test_a_note_is_never_part_of_what_is_carried_out(repository: Path, name: str) -> None:
    """A note behind every block of a pattern: every quantity and row stays what it was."""
    path = repository / "content/patterns" / f"{name}.md"
    text = path.read_text(encoding="utf-8")
    noted = text.replace("\n```\n", "\n```\n::: learners\nRow 1: K2tog. (3 sts)\n:::\n")
    assert noted.count(":::") > text.count(":::") + 4
    before, after = (read_text(each, path.name) for each in (text, noted))
    old, new = (proof(one.patterns[0], one).worked for one in (before, after))
    assert [(one.label, one.before, one.after) for one in new.entries] == [
        (one.label, one.before, one.after) for one in old.entries
    ]
    assert {name: each.result for name, each in new.graded.quantities.items()} == {
        name: each.result for name, each in old.graded.quantities.items()
    }


def test_all_notes_are_unfolded_at_once_and_stay_so(read_pattern: Read, page_at: Open, tmp_path: Path) -> None:
    proofed, project = read_pattern(BODY)
    theme = Theme.find("studio", tmp_path)
    outputs: list[Output] = [*site_pages(project, [proofed], [], theme), *theme.assets()]
    for output in outputs:
        (tmp_path / "out" / output.path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "out" / output.path).write_bytes(output.content)
    page = page_at(tmp_path / "out/patterns/trial.html")
    note, switch = page.get_by_text("Look at it."), page.get_by_role("button", name="Unfold the notes for learners")
    expect(note).not_to_be_visible()
    switch.press("Enter")
    expect(note).to_be_visible()
    expect(switch).to_have_attribute("aria-pressed", "true")
    expect(page.locator(".learners", has_text="Before you begin")).to_contain_text("Hot water scalds.")
    page.reload()
    expect(note).to_be_visible()
    page.emulate_media(media="print")
    expect(note).to_be_visible()
    page.emulate_media(media="screen")
    switch.click()
    expect(note).not_to_be_visible()
    page.emulate_media(media="print")
    expect(page.get_by_text("For learners").first).not_to_be_visible()
