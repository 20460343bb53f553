"""In: the pages of the demo in Chromium. Out: with one size chosen nothing seen or read aloud is of another size."""

import re
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

from playwright.sync_api import Page

from sizewright.base.printing import printed
from sizewright.base.units import LENGTH, STITCHES
from sizewright.grade.graded import Graded, Values
from sizewright.proof.proofed import Proofed

Open = Callable[..., Page]

# All that is seen, and all that is only read out; what is drawn by itself, as innerText tells it when hidden too.
# The choice and the tool that compares sizes name others on purpose; a departure tells what it alone makes of a size.
READ = """() => {
  const spoken = '[alt], [aria-label], [title], [data-label], svg title, svg desc, svg text';
  const box = (one) => one.matches('title, desc') ? one.parentElement : one;
  const shown = (one) => box(one).getClientRects().length > 0;
  const words = (one) => one.matches('svg *') ? one.textContent
    : ['alt', 'aria-label', 'title', 'data-label'].map((name) => one.getAttribute(name) ?? '').join(' ');
  const told = [...document.querySelectorAll(spoken)].filter(shown).map(words);
  document.documentElement.classList.add('undrawn');
  told.push(document.body.innerText);
  document.documentElement.classList.remove('undrawn');
  return told.join('\\n');
}"""
# What lies far down is laid out at once: what still waits for its turn has no innerText.
LAID_OUT = ".content > section, .instructions > * { content-visibility: visible !important; }"
ASIDE = ".choose, .two-sizes, section:has(> #part--departures), .undrawn svg { display: none !important; }"
OPEN = "document.querySelectorAll('details').forEach((one) => { one.open = true; })"
CHOOSE = "(place) => document.getElementById(`size--z${place}`).click()"
AMOUNT = re.compile(r"(?<![\w.,/])\d+(?:\.\d+)?[¼½¾⅛]? (?:cm|in|sts)\b")


def printed_for(results: Iterable[Values], place: int) -> Iterator[str]:
    """The lengths and stitch counts of one size, as they are printed."""
    for result in results:
        value = result.values[place if len(result.values) > 1 else 0]
        if result.dimension == STITCHES:
            yield f"{value} sts"
        elif result.dimension == LENGTH and all(0 < abs(one) < 300 for one in result.values):
            for series in printed(tuple(map(abs, result.values)), LENGTH):
                yield f"{series.values[place if len(series.values) > 1 else 0]} {series.unit}"


def all_of(graded: Graded) -> list[Values]:
    """Every quantity and every number of the text."""
    return [*graded.inserts.values(), *(named.result for named in graded.quantities.values())]


def strange(one: Proofed, base: Graded, place: int, text: str, typed: set[str]) -> list[str]:
    """What is in a text that only other sizes have: names, measurements, numbers of several sizes.

    `base` is the pattern it is based on, else itself; `typed` are the amounts that stand in their sources.
    """
    graded, sizes = one.graded, one.graded.sizes
    others = [size for size in sizes if size != sizes[place]]
    rest = text.replace("Large print", "").replace(sizes[place], "")  # a PDF in large letters is of no size "Large"
    names = [size for size in others if re.search(rf"(?<!\w){re.escape(size)}(?!\w)", rest)]
    measured = [one.finished for one in graded.finished] + [one.body.result for one in graded.finished if one.body]
    own = {*printed_for([*measured, *all_of(graded), *all_of(base)], place), *typed}
    foreign = {amount for at in range(len(sizes)) if at != place for amount in printed_for(measured, at)} - own
    assert own & set(AMOUNT.findall(text)), "nothing of the size was read"
    brackets = re.findall(r"\d[¼½¾⅛]? \([\d.¼½¾⅛]+(?:, [\d.¼½¾⅛]+)*\)", text)
    found = (*names, *sorted(foreign & set(AMOUNT.findall(text))), *brackets)
    return [f"{graded.pattern.name}, {sizes[place]}: {words}" for words in found]


def test_with_one_size_chosen_nothing_is_of_another(
    repository: Path, demo_proofed: tuple[Proofed, ...], demo_site: Path, page_at: Open
) -> None:
    page, found, read = page_at(demo_site / "permissions.html", width=400), list[str](), 0
    page.route("**/media/*", lambda route: route.fulfill(body=""))
    by_name = {one.graded.pattern.name: one.graded for one in demo_proofed}
    for one in demo_proofed:
        pattern = one.graded.pattern
        told = pattern.header.based_on
        base = by_name[told.pattern.text] if told else one.graded
        sources = {(repository / graded.pattern.source).read_text(encoding="utf-8") for graded in (one.graded, base)}
        page.goto((demo_site / f"patterns/{pattern.name}.html").as_uri())
        page.add_style_tag(content=ASIDE + LAID_OUT)
        page.evaluate(OPEN)
        for place in range(len(one.graded.sizes)):
            page.evaluate(CHOOSE, place)
            text = re.sub(r"[\s\u00a0]+", " ", page.evaluate(READ))
            found += strange(one, base, place, text, set(AMOUNT.findall(" ".join(sources))))
            read += 1
    assert not found, "\n".join(found)
    assert read >= 30
