"""In: the sample hat in a language that only brackets. Out: scripts show messages and words of sources.

Also the hat in a language and its translation: a project begun in one goes on in the other.
"""

import json
import re
import shutil
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.publish.conftest import SAMPLE
from tests.publish.test_every_word_is_a_message import PSEUDO, SIGNS, WORD, words_of_sources

from sizewright.base.language import speaking
from sizewright.proof.proofed import Proofed
from sizewright.publish.pages import site_pages
from sizewright.publish.theme import Theme
from sizewright.read.project import Project

Open = Callable[..., Page]
ISLAND = re.compile(r'(<script[^>]* class="knit-data">)(.*?)(?=</script>)')

# What the scripts of the pages make or fill.
MADE = (
    ".difference, .compared caption, .found, .verdict, .comes-out, .wrong, .in-unit, #reader-says, .share p, "
    ".knit-says, .knit-size, .knit-place, .knit-counts, .knit-turn, .knit-far, .knit-projects, .knit-ask, "
    "[data-count], [data-near], [data-finds]"
)
HEARD = ".comes-out [role=region]"


@pytest.fixture(scope="module")
def bracketed(
    sample_project: Project,
    sample_proofed: Sequence[Proofed],
    sample_theme: Theme,
    tmp_path_factory: pytest.TempPathFactory,
) -> Path:
    """The start page and the hat, with their scripts, each message in brackets."""
    site = tmp_path_factory.mktemp("bracketed")
    there = replace(sample_project, studio=replace(sample_project.studio, languages=("de",)))
    shown = [one for one in sample_proofed if one.graded.pattern.name == "hat"]
    with speaking(PSEUDO):
        outputs = [*site_pages(there, shown, [], sample_theme), *sample_theme.assets()]
    for output in outputs:
        file = site / output.path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(output.content)
    (site / "media").mkdir()
    (site / "media/hat.svg").write_bytes((SAMPLE / "content/media/hat.svg").read_bytes())
    return site


def outside(text: str) -> str:
    """What stands in no bracket."""
    while (less := re.sub(r"⟦[^⟦⟧]*⟧", "", text)) != text:
        text = less
    return text


def untold(page: Page, known: set[str]) -> Iterator[str]:
    texts = page.eval_on_selector_all(MADE, "all => all.map((one) => one.innerText)")
    texts += page.eval_on_selector_all(HEARD, "all => all.map((one) => one.getAttribute('aria-label'))")
    for text in texts:
        yield from (f"{word}: {text}" for word in WORD.findall(outside(text)) if word.casefold() not in known | SIGNS)


def seen(page: Page, selector: str, words: str) -> None:
    expect(page.locator(selector)).to_contain_text(f"⟦{words}")


def test_scripts_show_messages_alone(bracketed: Path, page_at: Open) -> None:
    known = words_of_sources(SAMPLE)
    page = page_at((bracketed / "index.html").as_uri() + "?q=hta&measure=55&have=300")
    seen(page, "[data-near]", "Search for")
    assert list(untold(page, known)) == []
    page.locator("[data-near] button").click()
    seen(page, "[data-finds]", "enough for")
    assert list(untold(page, known)) == []

    page.goto((bracketed / "patterns/hat.html").as_uri() + "?size=adult-m&beside=gone")
    seen(page, "#reader-says", "The address asks to compare")
    page.locator("#beside--with").select_option(index=1, force=True)
    seen(page, ".compared caption", "")
    page.locator(".measures input:not([type=radio])").first.fill("58,5")
    page.locator(".measures input:not([type=radio])").first.press("Enter")
    seen(page, ".found .verdict", "")
    assert "58,5" in page.locator(".found").inner_text()
    page.locator(".my-gauge > summary").click()
    for name, value in (("sts", "21,5"), ("wide", "10"), ("rows", "30"), ("high", "10")):
        page.locator(f"#gauge--{name}-0").fill(value)
    page.locator("#gauge--sts-0").press("Enter")
    seen(page, ".my-gauge .verdict p >> nth=0", "")
    assert "21,5" in page.locator(".my-gauge .verdict").inner_text()
    page.locator(".comes-out summary").click()
    assert list(untold(page, known)) == []
    page.locator("#gauge--sts-0").fill("many")
    page.locator("#gauge--sts-0").press("Enter")
    page.locator(".knit-new button").click()
    page.locator(".knit-tick").click()
    page.locator(".knit-course > summary").click()
    page.locator(".knit-rows button").nth(4).click()
    seen(page, ".knit-says", "You are now at the line")
    page.locator('[data-do="again"]').evaluate("one => one.click()")
    seen(page, ".knit-ask p", "Start this project over")
    assert list(untold(page, known)) == []


def test_a_project_goes_on_in_another_language(sample_site: Path, tmp_path: Path, page_at: Open) -> None:
    site = Path(shutil.copytree(sample_site, tmp_path / "site"))
    english = (site / "patterns/hat.html").read_text(encoding="utf-8")
    german = ISLAND.sub(told_otherwise, english).replace('lang="en"', 'lang="de"').replace('="../', '="../../')
    german = german.replace('data-title="', 'data-title="Auf Deutsch: ')
    (site / "de/patterns").mkdir(parents=True)
    (site / "de/patterns/hat.html").write_text(german, encoding="utf-8")
    link = '<ul class="languages"><li><a href="../de/patterns/hat.html">Deutsch</a></li></ul><main'
    (site / "patterns/hat.html").write_text(english.replace("<main", link, 1), encoding="utf-8")
    page = page_at((site / "patterns/hat.html").as_uri() + "?size=adult-m")
    page.locator(".knit-new button").click()
    for _ in range(5):
        page.locator(".knit-tick").click()
    expect(page.locator(".knit-tick")).to_contain_text("3 of 64")
    page.get_by_role("link", name="Deutsch").click()
    expect(page.locator("html")).to_have_attribute("lang", "de")
    expect(page.locator(".knit-tick")).to_be_in_viewport()
    expect(page.locator(".knit-tick")).to_be_focused()
    expect(page).to_have_url(re.compile(r"size=adult-m$"))
    expect(page.locator(".own-size")).to_contain_text("Adult M")
    expect(page.locator(".knit-tick")).to_contain_text("3 of 64")
    expect(page.locator(".knit-tick .knit-words")).to_have_text("de Rnd 1 (RS): de *K2, p2; rep from * to end.")
    expect(page.locator(".knit-changed")).to_be_hidden()
    expect(page.locator(".knit-name")).to_contain_text("Auf Deutsch: ")
    page.locator(".knit-tick").click()
    page.goto((site / "patterns/hat.html").as_uri())
    expect(page.locator(".knit-tick")).to_contain_text("4 of 64")
    expect(page.locator(".knit-changed")).to_be_hidden()
    expect(page.locator(".knit-name")).not_to_contain_text("Auf Deutsch: ")


def told_otherwise(island: re.Match[str]) -> str:
    """The data as a translated pattern has it: every text another, beside that of the source."""
    data = json.loads(island[2])
    data["base"] = data["words"]
    data["words"] = [words and f"de {words}" for words in data["base"]]
    return island[1] + json.dumps(data)
