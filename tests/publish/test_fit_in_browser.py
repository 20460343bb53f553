"""In: the sample hat in Chromium. Out: a size is found by measuring, with the keyboard alone, and chosen."""

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect
from tests.shared.axe import hindrances

Open = Callable[..., Page]


def test_a_size_is_found_by_measuring_and_chosen(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", width=320, height=640)
    page.get_by_role("link", name="Find it by measuring").focus()
    page.keyboard.press("Enter")
    field, found = page.get_by_label("Head"), page.locator(".found")
    field.focus()
    page.keyboard.press("Enter")
    expect(found).to_have_text("Type a measure first.")
    page.keyboard.type("tall")
    page.keyboard.press("Enter")
    expect(found).to_contain_text("“tall” is no measure.")
    expect(field).to_be_focused()
    expect(field).to_have_attribute("aria-invalid", "true")
    field.fill("22 in")
    expect(field).not_to_have_attribute("aria-invalid", "true")
    page.keyboard.press("Enter")
    # The table says so: heads of 19 in and 22¼ in, hats of 18 in and 21¼ in.
    expect(found.locator("p").first).to_have_text(
        "Your head 22 in lies between Small (made for 19 in) and Adult M (made for 22¼ in)."
    )
    expect(found.locator("li").last).to_have_text(
        "Adult M comes out at 21¼ in: ¾ in of negative ease, ¼ in more room than the pattern means."
    )
    expect(found.locator(".verdict")).to_have_text("Adult M is nearer to the ease that the pattern means.")
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    assert hindrances(page) == []
    page.get_by_role("button", name="Show size Adult M").focus()
    page.keyboard.press("Enter")
    expect(page.locator(".choose").get_by_label("Adult M")).to_be_checked()
    expect(found).to_have_text("Size Adult M is chosen: only its numbers are shown.")
    expect(found).to_be_focused()
    assert "?size=adult-m" in page.url
    field.fill("<b>9</b>")
    page.keyboard.press("Enter")
    expect(found).to_contain_text("“<b>9</b>” is no measure.")
    page.locator(".choose").get_by_label("Adult L").check()
    expect(found).to_be_empty()
    page.emulate_media(media="print")
    expect(page.locator(".fit")).to_be_hidden()


def test_what_needs_a_script_is_not_offered_without_one(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", javascript=False)
    expect(page.locator(".fit")).to_be_hidden()
    expect(page.get_by_role("link", name="Find it by measuring")).to_be_hidden()
