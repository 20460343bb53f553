"""In: the sample hat in Chromium. Out: two sizes side by side, an address to share, the chosen size kept in view."""

import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect
from tests.shared.axe import hindrances

Open = Callable[..., Page]


def rows(page: Page) -> list[list[str]]:
    """What is to be seen of the comparison, a list a line."""
    shown = "rows => rows.map(row => [...row.cells].filter(one => one.checkVisibility()).map(one => one.innerText))"
    told: list[list[str]] = page.locator(".compared tr").evaluate_all(shown)
    return [[" ".join(cell.split()) for cell in row] for row in told]


def rows_without_script(page: Page) -> list[str]:
    """The same where nothing can be evaluated but through the page's own text."""
    return [" ".join(row.inner_text().split()) for row in page.locator(".compared tr:has(td)").all()[1:]]


def test_two_sizes_stand_side_by_side_with_their_difference(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", width=320, height=900)
    table, others = page.locator(".compared"), page.locator(".two-sizes")
    page.get_by_text("Compare your size with another").focus()
    page.keyboard.press("Enter")
    others.get_by_label("With which?").select_option("Adult L")
    expect(table).to_be_hidden()
    expect(page.get_by_text("Choose your own size first")).to_be_visible()
    page.locator(".choose").get_by_label("Adult M").check()
    expect(table).to_be_visible()
    told = rows(page)
    assert told[0] == ["Adult M", "Adult L", "Difference"]
    # The numbers of the table of sizes, and the counts of the rows.
    assert ["Brim: to fit head", "56.5 cm 22¼ in", "60 cm 23½ in", "+3.5 cm +1¼ in"] in told
    assert ["Brim: ease", "−2.5 cm −1 in", "−2.5 cm −¾ in", "the same +¼ in"] in told
    assert ["Brim: stitches cast on", "120", "128", "+8"] in told
    assert ["Depth: finished", "22 cm 8¾ in", "23 cm 9 in", "+1 cm +¼ in"] in told
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    expect(page.locator("#reader-says")).to_contain_text("Adult M and Adult L stand side by side")
    assert hindrances(page) == []
    assert page.url.endswith("?size=adult-m&beside=adult-l")
    page.reload()
    expect(table).to_be_visible()
    page.locator(".choose").get_by_label("Adult L").check()
    expect(others.get_by_label("With which?")).to_have_value("")
    expect(table).to_be_hidden()
    assert page.url.endswith("?size=adult-l")


def test_without_a_script_two_sizes_stand_side_by_side(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", javascript=False)
    page.locator(".choose").get_by_label("Small", exact=True).check()
    page.get_by_text("Compare your size with another").click()
    page.get_by_label("With which?").select_option("Adult M")
    expect(page.locator(".compared")).to_be_visible()
    assert rows_without_script(page)[0] == "Brim: to fit head 48 cm 19 in 56.5 cm 22¼ in"
    expect(page.get_by_text("Copy a link")).to_be_hidden()


def test_the_address_is_shared_and_one_that_is_wrong_is_told(sample_site: Path, page_at: Open) -> None:
    hat = (sample_site / "patterns/hat.html").as_uri()
    page = page_at(f"{hat}?size=adult-m")
    page.evaluate(
        "() => Object.defineProperty(navigator, 'clipboard', {value: {writeText: async words => { copied = words }}})"
    )
    button, share = page.get_by_role("button", name="Copy a link to this choice"), page.locator(".share")
    button.click()
    expect(share).to_contain_text("The link is copied. It opens this page at: Adult M.")
    assert page.evaluate("copied") == f"{hat}?size=adult-m"
    page.evaluate("() => { navigator.clipboard.writeText = async () => { throw new Error('refused') } }")
    button.click()
    expect(share).to_contain_text("did not let the link be copied")
    expect(page.get_by_label("The link", exact=True)).to_have_value(f"{hat}?size=adult-m")
    expect(page.get_by_label("The link", exact=True)).to_be_focused()
    page.get_by_label("All sizes").check()
    expect(page.get_by_label("The link", exact=True)).to_be_hidden()
    said = page.locator("#reader-says")
    page.goto(f"{hat}?size=%3Cb%3Egiant&beside=tiny")
    expect(page.get_by_label("All sizes")).to_be_checked()
    expect(said).to_have_text(re.compile("compare with the size “tiny”, which this pattern does not have"))
    page.goto(f"{hat}?size=%3Cb%3Egiant")
    expect(said).to_have_text(
        "The address asks for the size “<b>giant”, which this pattern does not have. All sizes are shown."
    )
    kept = {'"old-size"': "“old-size”, is no longer in it. All sizes are shown.", "{oh": "could not be read"}
    for broken, words in kept.items():
        page.evaluate("broken => localStorage.setItem(`sizewright size ${location.pathname}`, broken)", broken)
        page.goto(hat)
        expect(said).to_contain_text(words)
        expect(page.get_by_label("All sizes")).to_be_checked()


def test_on_a_phone_the_chosen_size_stays_in_view_and_covers_nothing(sample_site: Path, page_at: Open) -> None:
    page = page_at((sample_site / "patterns/hat.html").as_uri() + "?size=adult-m", width=320, height=640)
    line = page.locator(".own-size")
    page.locator(".work .line").last.scroll_into_view_if_needed()
    expect(line).to_have_text(re.compile("Adult M"))
    expect(line).to_be_in_viewport()
    # Backwards with the keyboard, where what has the focus would be covered: WCAG 2.2, 2.4.11 Focus Not Obscured.
    page.locator(".site-foot a").first.focus()
    covered = """() => {
        const [focus, line] = [document.activeElement, document.querySelector(".own-size")];
        return !line.contains(focus) && focus.getBoundingClientRect().top < line.getBoundingClientRect().bottom - 1;
    }"""
    for _ in range(12):
        page.keyboard.press("Shift+Tab")
        assert not page.evaluate(covered), page.evaluate("document.activeElement.outerHTML")
    line.get_by_role("link", name="change").click()
    expect(page.locator(".choose")).to_be_in_viewport()
    page.get_by_label("All sizes").check()
    expect(line).to_be_hidden()
    page.get_by_label("Adult M").check()
    page.set_viewport_size({"width": 1280, "height": 640})
    expect(line).to_be_hidden()
