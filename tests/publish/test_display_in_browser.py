"""In: the sample site in Chromium. Out: units, needle sizes and terms are chosen with and without scripts, and kept."""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.shared.axe import hindrances

Open = Callable[..., Page]


def seen(page: Page, selector: str) -> str:
    expect(page.locator(selector).first).not_to_have_text("", use_inner_text=True)
    return " ".join(page.locator(selector).first.inner_text().split())


@pytest.mark.parametrize("javascript", [True, False])
def test_units_and_needles_are_chosen_at_once(sample_site: Path, page_at: Open, javascript: bool) -> None:  # noqa: FBT001
    page = page_at(sample_site / "patterns/hat.html", javascript=javascript)
    page.locator(".display summary").click()
    page.get_by_label("Adult M").check()
    page.get_by_label("in, yd, oz").check()
    assert seen(page, ".sizes tbody") == "Adult M 22¼ in 21¼ in −1 in 8¾ in"
    assert "For adults Add 4¼ in more." in seen(page, ".only")
    assert page.locator(".piece:visible").first.locator(".zo.z1 .imperial").first.is_visible()
    assert not page.locator(".piece :is(.metric, .between):visible").count()
    page.get_by_label("cm, m, g").check()
    assert seen(page, ".sizes tbody") == "Adult M 56.5 cm 54 cm −2.5 cm 22 cm"
    page.get_by_role("group", name="Needle sizes").get_by_label("UK").check()
    assert "mm" not in seen(page, ".needle-size")
    assert seen(page, "#part--gauge") == "Gauge"
    page.get_by_role("group", name="Terms").get_by_label("UK").check()
    assert seen(page, "#part--gauge") == "Tension"
    assert "stocking stitch" in seen(page, ".gauge")
    assert not page.locator(".us:visible").count()
    if javascript:
        expect(page.locator("[data-kept]")).to_be_visible()
        page.goto((sample_site / "patterns/cloth.html").as_uri())
        expect(page.locator("#units--metric")).to_be_checked()
        expect(page.locator("#needles--uk")).to_be_checked()
        assert seen(page, "#part--gauge") == "Tension"
        assert seen(page, ".gauge") == (
            "18 sts over 4 in (10.16 cm) in garter stitch; that is about 17¾ sts over 10 cm."
            " Needle: UK 6, or the size that gives you this tension."
        )
        page.goto((sample_site / "abbreviations.html").as_uri())  # a page of many texts follows the same choice
        expect(page.locator("#terms--uk")).to_be_checked()
        assert "cast off" in seen(page, ".terms.all").lower()
        assert not page.locator(".us:visible").count()
        assert page.locator(".uk:visible").count()
        page.goto((sample_site / "patterns/cloth.html").as_uri())
        page.evaluate("localStorage.setItem('sizewright display', '[\"metric\", {}]')")
        page.reload()
        expect(page.locator("#units--both")).to_be_checked()
    else:
        assert page.locator("[data-kept]").is_hidden()


def test_the_choice_can_be_read_and_tapped_by_everybody(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", width=320)
    page.locator(".display summary").focus()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    page.keyboard.press("ArrowRight")
    expect(page.locator("#units--metric")).to_be_checked()
    boxes = [pill.bounding_box() for pill in page.locator(".display .pills label").all()]
    # Least size of what is tapped, in CSS pixels: WCAG 2.2, 2.5.5 Target Size (Enhanced).
    assert all(box and box["height"] >= 44 and box["width"] >= 44 for box in boxes)
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    assert hindrances(page) == []
    page.emulate_media(media="print")
    assert page.locator(".display").is_hidden()
    assert "in" not in seen(page, ".sizes tbody").split()
