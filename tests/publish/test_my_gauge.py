"""In: the sample hat, and a swatch. Out: a reader learns what the gauge makes of it; nothing absurd is reckoned with.

The sums: Adult M is 120 sts, at 20 sts in 10 cm 60 cm around; Small is 100 sts, 50 cm; Adult L is 128 sts, 64 cm.
"""

from collections.abc import Callable
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from playwright.sync_api import Page, expect
from tests.shared.axe import hindrances

from sizewright.publish.output import Output
from sizewright.publish.view import PatternView

Open = Callable[..., Page]
FABRICS = """gauge:
  body: {stitches: 20 st / 10 cm, rows: 28 rnd / 10 cm, over: moss <stitch>}
  cuff: {stitches: 25 st / 10 cm}
"""


def test_each_fabric_is_asked_for_what_the_pattern_gives(view_of: Callable[[str, str], PatternView]) -> None:
    mine = view_of(FABRICS, "").my_gauge
    assert mine is not None
    assert [(one.name, one.over, one.rows) for one in mine.fabrics] == [
        ("Body", "moss <stitch>", "rounds"),
        ("Cuff", "", ""),
    ]
    assert mine.measures == ()
    assert "<" not in mine.data


def test_without_a_stitch_gauge_there_is_nothing_to_compare(view_of: Callable[[str, str], PatternView]) -> None:
    assert view_of("", "").my_gauge is None
    assert view_of("gauge: {rows: 30 row / 10 cm}\n", "").my_gauge is None


def test_the_rule_of_thumb_stands_without_a_script(sample_outputs: dict[str, Output]) -> None:
    """Source: Lion Brand 70533: fewer stitches than asked for, smaller needles; more, larger ones."""
    page = BeautifulSoup(sample_outputs["patterns/hat.html"].content, "html.parser")
    section = page.select_one("section:has(> .my-gauge)")
    details = page.select_one(".my-gauge")
    assert section is not None
    assert details is not None
    assert details.has_attr("hidden")
    assert (
        "more stitches to the measure than this, take a larger needle; if it has fewer, a smaller one" in section.text
    )


def test_a_gauge_of_nothing_is_not_compared_with(view_of: Callable[[str, str], PatternView]) -> None:
    rows = view_of("gauge: {stitches: 20 st / 10 cm, rows: 0 row / 10 cm}\n", "").my_gauge
    assert rows is not None
    assert [one.rows for one in rows.fabrics] == [""]
    assert view_of("gauge: {stitches: 0 st / 10 cm}\n", "").my_gauge is None
    shadowed = "sizes:\n  S: {stitch_gauge: 5 cm}\ngauge: {stitches: 20 st / 10 cm}\n"
    assert view_of(shadowed, "").my_gauge is None


@pytest.fixture
def hat(sample_site: Path, page_at: Open) -> Page:
    """The hat in Adult M on a phone, with the form open."""
    page = page_at((sample_site / "patterns/hat.html").as_uri() + "?size=adult-m", width=320, height=740)
    page.locator(".my-gauge > summary").click()
    return page


def fill(page: Page, *typed: str) -> None:
    """Stitches, width, rounds and height, as far as they are given."""
    for name, value in zip(("sts", "wide", "rows", "high"), typed, strict=False):
        page.locator(f"#gauge--{name}-0").fill(value)
    page.locator("#gauge--sts-0").press("Enter")


def words(page: Page, selector: str) -> str:
    expect(page.locator(selector)).not_to_have_text("", use_inner_text=True)
    return " ".join(page.locator(selector).inner_text().replace("\u00a0", " ").split())


def test_a_swatch_is_compared_and_kept(hat: Page) -> None:
    fill(hat, "20", "10")
    verdict = hat.locator(".verdict")
    expect(verdict).to_contain_text("2 sts too few in 10 cm")
    assert words(hat, ".verdict").endswith("too few in 4 in (9.1 %). Take a smaller needle and knit another swatch.")
    assert "Brim 54 cm / 21¼ in 60 cm / 23½ in" in words(hat, ".comes-out > table")
    assert "For the brim to be 54 cm / 21¼ in, knit Small: 50 cm / 19¾ in at my gauge." in words(hat, ".comes-out")
    assert "Yarn: about" not in words(hat, ".comes-out")  # the pattern has two yarns, which are named
    assert "Main: about 10 % more" in words(hat, ".comes-out")
    assert "64 cm" not in words(hat, ".comes-out"), "another size's number"
    assert hat.evaluate("document.documentElement.scrollWidth") <= 320

    hat.get_by_text("All sizes at my gauge").click()
    expect(hat.locator(".comes-out .wide")).to_contain_text("Adult L")
    assert "64 cm / 25¼ in" in words(hat, ".comes-out .wide")

    hat.reload()
    expect(verdict).to_contain_text("2 sts too few in 10 cm")
    expect(hat.locator("#gauge--sts-0")).to_have_value("20")
    hat.get_by_label("All sizes", exact=True).check()
    expect(hat.locator(".comes-out h3").first).to_have_text("What it comes out at")
    assert "Adult L 64 cm / 25¼ in" in words(hat, ".comes-out .wide")

    hat.locator(".display summary").click()
    hat.get_by_label("in, yd, oz").check()
    expect(hat.locator(".comes-out .wide .metric").first).to_be_hidden()
    hat.get_by_role("group", name="Terms").get_by_label("UK").check()
    assert "at my tension" in words(hat, ".comes-out")

    # What is typed is the same length in the other unit, and reckoned with as it was typed: so are the results.
    expect(hat.locator('.my-gauge [value="in"]')).to_be_checked()
    expect(hat.locator("#gauge--wide-0")).to_have_value("3.94")
    expect(hat.locator('.measures [value="in"]')).to_be_checked()
    hat.reload()
    expect(hat.locator("#gauge--wide-0")).to_have_value("3.94")
    assert "2 sts too few" in words(hat, ".verdict")
    an_emptied_form_follows_the_page(hat)


def an_emptied_form_follows_the_page(hat: Page) -> None:
    """What was typed in cm is back as it was; emptied, the form measures as the page does."""
    hat.get_by_role("group", name="I measure in").get_by_label("cm").check()
    expect(hat.locator("#gauge--wide-0")).to_have_value("10")
    verdict = hat.locator(".verdict")
    hat.get_by_role("button", name="Clear").click()
    expect(verdict).to_be_empty()
    expect(hat.locator('.my-gauge [value="in"]')).to_be_checked()
    expect(hat.get_by_label("Width (in)")).to_be_visible()
    hat.reload()
    expect(verdict).to_be_empty()
    expect(hat.locator("#gauge--sts-0")).to_have_value("")
    a_chosen_unit_stays(hat)


def a_chosen_unit_stays(hat: Page) -> None:
    """Whatever the page shows; the other form follows it."""
    expect(hat.locator('.my-gauge [value="in"]')).to_be_checked()
    expect(hat.locator('.measures [value="in"]')).to_be_checked()
    hat.locator(".my-gauge > summary").click()
    hat.locator(".display summary").click()
    hat.get_by_role("group", name="I measure in").get_by_label("cm").check()
    for shown, measured in (("cm, m, g", "cm"), ("in, yd, oz", "in"), ("both", "cm")):
        hat.locator(".display").get_by_label(shown).check()
        expect(hat.locator('.my-gauge [value="cm"]')).to_be_checked()  # as it was chosen
        expect(hat.locator(f'.measures [value="{measured}"]')).to_be_checked()


def test_rows_and_inches_and_a_wanted_length(hat: Page) -> None:
    hat.get_by_role("group", name="I measure in").get_by_label("in").check()
    expect(hat.get_by_label("Width (in)")).to_be_visible()
    hat.get_by_label("is to be").fill("25")  # 63.5 cm
    fill(hat, "20", "3 15/16", "60", "20")  # 20 sts over 10.00125 cm, 3 rounds to the inch
    expect(hat.locator(".verdict")).to_contain_text("too few")
    expect(hat.locator("#gauge--rows-0-wrong")).to_be_empty()
    assert "knit Adult L: 64 cm / 25¼ in" in words(hat, ".comes-out")
    # 22 cm of 2.95 rounds to the cm are 65 rounds, at 3 to the inch 26; one round is counted
    assert "Brim: worked to 22 cm / 8¾ in, 65 rnds, at my gauge about 26. 1 rnd by count" in words(hat, ".comes-out")


def test_what_is_told_of_needles(hat: Page) -> None:
    """Source: Lion Brand 70533, as above."""
    for stitches, verdict in (("22", "They are the same."), ("23", "Take a larger"), ("21.5", "Take a smaller")):
        fill(hat, stitches, "10")
        expect(hat.locator(".verdict")).to_contain_text(verdict)


def test_absurd_input_is_told_at_its_field_and_nothing_is_reckoned(hat: Page) -> None:
    fill(hat, "22", "10")
    expect(hat.locator(".verdict")).not_to_be_empty()
    cases = {
        ("", ""): "sts",
        ("0", "10"): "sts",
        ("-3", "10"): "sts",
        ("<b>x</b>", "10"): "sts",
        ("1000000000000", "0.1"): "sts",
        ("22", "0"): "wide",
        ("22", ""): "wide",
        ("22", "10", "30", ""): "high",
    }
    for typed, field in cases.items():
        fill(hat, *typed)
        wrong = hat.locator(f"#gauge--{field}-0")
        expect(wrong).to_have_attribute("aria-invalid", "true")
        expect(wrong).to_be_focused()
        expect(hat.locator(f"#gauge--{field}-0-wrong")).to_contain_text(".")
        expect(hat.locator(".verdict")).to_be_empty()
        expect(hat.locator(".comes-out")).to_be_empty()
    fill(hat, "22", "10", "", "")
    expect(hat.locator("[aria-invalid]")).to_have_count(0)


def test_a_broken_store_leaves_the_form_empty_and_useful(hat: Page) -> None:
    key = "`sizewright gauge ${location.pathname}`"
    for broken in ('"[1]"', '\'{"typed": {"gauge--sts-0": 7, "gauge--measure": "99"}}\'', "'{\"typed\": null}'"):
        hat.evaluate(f"localStorage.setItem({key}, {broken})")
        hat.reload()
        expect(hat.locator(".my-gauge")).to_be_visible()
        expect(hat.locator("#gauge--sts-0")).to_have_value("")


def test_axe_finds_nothing_in_what_is_told(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", width=360, dark=True)
    page.locator(".my-gauge > summary").click()
    fill(page, "20", "10", "28", "10")
    expect(page.locator(".comes-out .wide")).to_be_visible()
    assert hindrances(page, ".my-gauge") == []
    fill(page, "20", "10", "x", "10")
    expect(page.locator("[aria-invalid]")).to_be_visible()
    assert hindrances(page, ".my-gauge") == []
