"""In: the sample in the theme `plain`. Out: it is another look of the same pages, and everybody can use it."""

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect
from tests.shared.axe import hindrances

# Least size of what is tapped, in CSS pixels: WCAG 2.2, 2.5.5 Target Size (Enhanced); links in sentences are exempt.
TAPPED = 44
SMALL = """(all, least) => all.filter(one => one.checkVisibility() && one.getBoundingClientRect().height < least)
  .map(one => one.outerHTML)"""


def test_its_styles_are_valid(repository: Path, css_check: Callable[[Path], list[str]]) -> None:
    assert css_check(repository / "themes/plain") == []


def test_it_is_another_look_that_everybody_can_use(plain_site: Path, page_at: Callable[..., Page]) -> None:
    page = page_at(plain_site / "patterns/hat.html")
    assert page.evaluate("getComputedStyle(document.body).fontFamily").startswith("Charter")
    assert page.evaluate("document.fonts.size") == 0, "no typeface is loaded"
    assert hindrances(page) == []
    for name in ("index", "patterns/hat"):
        page.set_viewport_size({"width": 320, "height": 800})
        page.emulate_media(color_scheme="dark")
        page.goto((plain_site / f"{name}.html").as_uri())
        assert hindrances(page) == []
        assert page.evaluate("document.documentElement.scrollWidth") <= 320
        assert (
            page.locator("button:not(.told), .button, select, summary, .pills label, nav a").evaluate_all(SMALL, TAPPED)
            == []
        )


def test_its_pages_work_like_those_of_the_studio_theme(plain_site: Path, page_at: Callable[..., Page]) -> None:
    page = page_at(plain_site / "patterns/hat.html", width=380)
    page.get_by_label("Adult M", exact=True).check()
    expect(page.locator(".work .line").first).to_have_text(
        "Cast on 120 sts, 30 on each of 4 needles.", use_inner_text=True
    )
    page.get_by_role("button", name="Next row").click()
    expect(page.locator(".row-mark:visible")).to_have_count(1)
    page.emulate_media(media="print")
    expect(page.locator(".chart-tools")).to_be_hidden()
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
