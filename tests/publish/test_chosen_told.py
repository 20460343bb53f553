"""In: the sample's pattern in Chromium. Out: the classes that style sheets follow say what is chosen."""

import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page

Open = Callable[..., Page]

STRAY = """() => {
  const root = document.documentElement.classList;
  const is = (one) => one.selected ?? one.checked;
  const all = [...document.querySelectorAll('input:is([type="radio"], [type="checkbox"])[id], option[id]')];
  const told = (one) => [root.contains(`on--${one.id}`), root.contains(`off--${one.id}`)].join();
  const wrong = all.filter((one) => told(one) !== [is(one), !is(one)].join());
  return [all.length, root.contains("on-off"), wrong.map(({ id }) => id)];
}"""


def test_no_style_asks_the_fields_where_a_script_has_told(repository: Path) -> None:
    """A question to the fields is asked anew for each part of a page that is laid out (see reader.js)."""
    asked = [
        f"{file.name}: {selector.strip()}"
        for file in sorted((repository / "themes" / "studio").rglob("*"))
        if file.suffix in {".css", ".html"} and file.name not in {"index.html", "collection.css"}
        for selector in re.findall(r"^.*:root\b.*?:has\(.*$", file.read_text(encoding="utf-8"), re.MULTILINE)
        if ":not(.on-off)" not in selector
    ]
    assert asked == []


def test_what_is_chosen_is_told_however_it_came_to_be_chosen(sample_site: Path, page_at: Open) -> None:
    page = page_at(f"{(sample_site / 'patterns' / 'hat.html').as_uri()}?size=adult-m", width=1280)
    assert "on--size--z1" in page.evaluate("[...document.documentElement.classList]")
    page.evaluate("document.getElementById('size--z0').click()")
    page.evaluate("document.getElementById('units--metric').click()")
    assert "on--size--z0" in page.evaluate("[...document.documentElement.classList]")
    assert page.evaluate(STRAY)[1:] == [True, []]
    page.evaluate("location.hash = 'size=adult-m'")
    page.wait_for_function("document.documentElement.matches('.on--size--z1.off--size--z0.on--units--metric')")
    page.reload()
    many, told, wrong = page.evaluate(STRAY)
    assert (told, wrong) == (True, [])
    assert many > 10
