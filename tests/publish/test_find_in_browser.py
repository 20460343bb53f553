"""The collection in Chromium: searched by words, yarn and body, in the address, by keyboard, and without a script."""

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect
from tests.shared.axe import hindrances

Open = Callable[..., Page]
HAT, CLOTH, SHAWL = 'Hat <one> & "two"', "A plain cloth", "Old shawl"


def shown(page: Page) -> list[str]:
    return page.locator(".card:visible h2").all_inner_texts()


def test_a_search_from_the_first_letter_to_the_last(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "index.html")
    status, words = page.get_by_role("status"), page.get_by_role("searchbox", name="Search")
    assert shown(page) == [CLOTH, HAT, SHAWL]
    words.fill("BOBB old")
    expect(status).to_have_text("1 of 3 patterns fit")
    assert shown(page) == [SHAWL]
    assert page.url.endswith("?q=BOBB+old")
    words.fill("shwal")
    expect(status).to_have_text("0 of 3 patterns fit. Nothing is called “shwal”; did you mean “shawl”?")
    expect(page.locator(".end")).to_be_visible()
    page.get_by_role("button", name="Search for “shawl”").click()
    expect(status).to_have_text("1 of 3 patterns fit")
    assert page.evaluate("document.activeElement.id") == "find--q"
    page.get_by_role("button", name="Show all", exact=True).click()
    expect(status).to_have_text("All 3 patterns")
    yarn_at_hand(page)


def yarn_at_hand(page: Page) -> None:
    """On the same page: what cannot be meant, and what is enough."""
    status = page.get_by_role("status")
    page.get_by_text("What is your yarn enough for?").click()
    have = page.get_by_role("textbox", name="Amount")
    for typed, said in (
        ("abc", "“abc” is no amount"),
        ("0", "above 0"),
        ("1000000000", "more than any"),
        ("-5", "above 0"),
    ):
        have.fill(typed)
        expect(page.locator("#find--have-wrong")).to_contain_text(said)
        expect(have).to_have_attribute("aria-invalid", "true")
        assert shown(page) == [CLOTH, HAT, SHAWL], "what cannot be meant narrows nothing"
    have.fill("10000 yd")
    expect(page.locator("#find--have-wrong")).to_be_hidden()
    expect(status).to_have_text("1 of 3 patterns fit; 2 more do not tell how much yarn")
    expect(page.get_by_role("combobox", name="Counted in")).to_have_value("yd")
    expect(page.locator(".card", has_text="Hat").locator(".finds")).to_have_text(
        "Main: enough for every size. It also takes second yarn."
    )
    page.get_by_label("Yarn weight").select_option("light")
    expect(status).to_have_text("1 of 3 patterns fit")
    have.fill("1 m")
    expect(status).to_have_text("0 of 3 patterns fit")
    have.press("Enter")
    assert "have=1" in page.url, "the form is not sent"


def test_an_address_is_a_search(sample_site: Path, page_at: Open) -> None:
    page = page_at(
        (sample_site / "index.html").as_uri() + "?q=hat&have=10000&in=m&all=yes&body=nonsense&measure=x&unit=ells"
    )
    # Both colours together, and one of them does not tell.
    expect(page.get_by_role("status")).to_have_text("0 of 3 patterns fit; 1 more does not tell how much yarn")
    expect(page.get_by_role("textbox", name="Amount")).to_be_visible()
    page.get_by_role("checkbox", name="for all its colours together").uncheck()
    expect(page.get_by_role("status")).to_have_text("1 of 3 patterns fit")
    assert "all=yes" not in page.url


def test_a_body_finds_its_size_with_the_keyboard_alone(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "index.html")
    page.get_by_text("What fits you?").focus()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.id") == "find--body"
    page.keyboard.press("Tab")
    page.keyboard.type("56")
    expect(page.get_by_role("status")).to_have_text("1 of 3 patterns fit")
    expect(page.locator(".card:visible .finds")).to_contain_text("Your head, 56 cm: size Adult M")
    page.get_by_label("Size", exact=True).select_option("huge")
    expect(page.get_by_role("status")).to_have_text("0 of 3 patterns fit")


def test_without_a_script_there_are_the_choices_and_all_patterns(sample_site: Path, page_at: Open) -> None:
    page = page_at((sample_site / "index.html").as_uri() + "?q=shawl", javascript=False)
    assert shown(page) == [CLOTH, HAT, SHAWL]
    assert page.locator("#find--q").is_hidden()
    assert page.locator(".asked").is_hidden()
    page.get_by_label("Kind").select_option("hat")
    assert shown(page) == [HAT]


def test_everybody_can_use_it_on_a_phone(sample_site: Path, page_at: Open) -> None:
    page = page_at((sample_site / "index.html").as_uri() + "?have=abc&measure=56&body=head", width=320, height=700)
    for dark in ("light", "dark"):
        page.emulate_media(color_scheme="dark" if dark == "dark" else "light")
        assert hindrances(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") == 320
    low = page.locator(".filters :is(select, summary, button, label:has([type=checkbox]), [type=text], [type=search])")
    assert (
        low.evaluate_all("all => all.filter(one => one.getBoundingClientRect().height < 44).map(one => one.outerHTML)")
        == []
    )
