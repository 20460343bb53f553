"""In: a page with a chart in Chromium. Out: its rows can be found, followed, heard and mirrored, by hand and by key."""

from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import Locator, Page, expect
from tests.shared.axe import hindrances

Open = Callable[..., Page]
Look = dict[str, bool | str]
FIRST = "Row 1 (RS): *Yo, k2tog; rep from * to end."
THIRD = "Row 3 (RS): *K2tog, yo; rep from * to end."
LEAST = 44  # CSS pixels: WCAG 2.2, 2.5.5 Target Size (Enhanced)


def marked(chart: Locator, words: str) -> None:
    """The row is framed in the chart that is seen, told in words, and the current one of the list."""
    expect(chart.get_by_role("status")).to_have_text(words)
    expect(chart.locator(".row-mark:visible")).to_have_count(1 if words else 0)
    expect(chart.locator("li[aria-current]")).to_have_text([words] if words else [])


def tapped(view: Locator, row: int, rows: int) -> None:
    """A tap in the middle of a row, counted from 1 at the lowest of the grid, which is 4 units below the top, 22 above
    the foot and 20 a row.
    """
    box = view.locator(".chart").bounding_box()
    assert box is not None
    share = (4 + (rows - row + 0.5) * 20) / (rows * 20 + 26)
    view.page.touchscreen.tap(box["x"] + 30, box["y"] + share * box["height"])


def test_rows_are_followed_remembered_and_told(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", width=320, height=740, has_touch=True, reduced_motion="reduce")
    chart = page.locator(".charted")
    by_button_key_and_tap(page, chart)
    chart.get_by_label("Left-handed").check()
    expect(chart.locator(".for-right")).to_be_hidden()
    marked(chart, THIRD)
    page.reload()
    expect(chart.get_by_label("Left-handed")).to_be_checked()
    marked(chart, THIRD)
    by_event_and_list(page, chart)
    assert hindrances(page) == []
    heights = chart.locator("button, summary, .mirror, .chart-words li").evaluate_all(
        "all => all.map(one => one.getBoundingClientRect().height)"
    )
    assert min(heights) >= LEAST
    page.evaluate("for (const key of Object.keys(localStorage)) localStorage.setItem(key, '{\"Small waves\": 7}')")
    page.reload()
    marked(chart, "")
    page.emulate_media(media="print")
    for hidden in (".chart-tools", ".mirror", ".chart-row", ".chart-words"):
        expect(chart.locator(hidden)).to_be_hidden()


def by_button_key_and_tap(page: Page, chart: Locator) -> None:
    view = chart.locator(".chart-view:visible")
    marked(chart, "")
    chart.get_by_role("button", name="Next row").click()
    marked(chart, FIRST)
    chart.get_by_role("button", name="Row before").click()
    marked(chart, "Row 4 (WS): Purl.")  # behind the last row comes the first, and before the first the last
    view.focus()
    page.keyboard.press("ArrowUp")
    marked(chart, FIRST)
    page.keyboard.press("ArrowUp")
    marked(chart, "Row 2 (WS): Purl.")
    page.keyboard.press("ArrowDown")
    marked(chart, FIRST)
    view.scroll_into_view_if_needed()
    tapped(view, 3, 4)
    marked(chart, THIRD)


def by_event_and_list(page: Page, chart: Locator) -> None:
    page.evaluate("document.dispatchEvent(new CustomEvent('reader:row', {detail: {name: 'small waves', row: 2}}))")
    marked(chart, "Row 2 (WS): Purl.")
    page.evaluate("document.dispatchEvent(new CustomEvent('reader:row', {detail: {name: 'other', row: 3}}))")
    marked(chart, "Row 2 (WS): Purl.")
    chart.locator("summary").click()
    chart.get_by_role("listitem").filter(has_text="Row 3").click()
    marked(chart, THIRD)


def test_a_chart_is_made_larger_and_stays_whole(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", width=320, height=740)
    chart = page.locator(".charted")
    view = chart.locator(".chart-view:visible")
    larger = chart.get_by_role("button", name="Chart larger")
    natural = view.evaluate("view => Number(view.querySelector('.chart').getAttribute('width'))")
    while larger.is_enabled():
        larger.click()
    drawn = "view => view.querySelector('.chart').getBoundingClientRect().width"
    assert abs(view.evaluate(drawn) - 4 * natural) < 2
    assert view.evaluate("view => view.scrollWidth >= view.querySelector('.chart').getBoundingClientRect().width - 1")
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    seen = """view => [0, view.scrollWidth].flatMap(left => {
      view.scrollLeft = left;
      const box = view.getBoundingClientRect();
      return [...view.querySelectorAll('.gutter')].map(one => one.getBoundingClientRect())
        .map(one => one.left >= box.left - 1 && one.right <= box.right + 1);
    })"""
    assert view.evaluate(seen) == [True] * 4, "the row numbers stay in view at both ends"
    shades = """async view => {
      const found = [];
      for (const left of [0, (view.scrollWidth - view.clientWidth) / 2, view.scrollWidth]) {
        view.scrollLeft = left;
        await new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)));
        const shade = (side) => Number(getComputedStyle(view.querySelector('.sheet'), side).opacity);
        found.push(['::before', '::after'].map(side => shade(side) > 0.2));
      }
      return found;
    }"""
    assert view.evaluate(shades) == [[False, True], [True, True], [True, False]], "an edge with more behind it"
    view.focus()
    page.keyboard.press("0")
    expect(larger).to_be_enabled()
    page.keyboard.press("-")
    page.reload()
    assert 0.7 * natural < view.evaluate(drawn) < 0.8 * natural
    assert view.evaluate("view => view.scrollWidth <= view.clientWidth")
    assert view.evaluate(shades) == [[False, False]] * 3, "all of it is seen"


@pytest.mark.parametrize("look", [{}, {"dark": True}, {"forced_colors": "active"}])
def test_a_table_shades_the_edge_behind_which_there_is_more(sample_site: Path, page_at: Open, look: Look) -> None:
    page = page_at(sample_site / "patterns/hat.html", width=320, javascript=False, **look)
    table = page.get_by_role("region", name="Table of sizes")
    assert table.evaluate("one => one.scrollWidth > one.clientWidth")
    assert shaded(table) == (False, True)
    table.evaluate("one => { one.scrollLeft = (one.scrollWidth - one.clientWidth) / 2 }")
    assert shaded(table) == (True, True)
    table.evaluate("one => { one.scrollLeft = one.scrollWidth }")
    assert shaded(table) == (True, False)
    page.set_viewport_size({"width": 1200, "height": 900})
    assert shaded(table) == (False, False)
    page.set_viewport_size({"width": 1440, "height": 900})
    table.locator("table").evaluate("one => { one.style.width = '47rem' }")
    assert table.evaluate("one => one.scrollWidth <= one.clientWidth"), "wider than text where there is room"


def shaded(region: Locator) -> tuple[bool, bool]:
    """Whether the left and the right edge of a region are of another colour than a place between them."""
    shown = Image.open(BytesIO(region.screenshot())).convert("L")
    row = shown.crop((0, 4, shown.width, 5)).tobytes()
    left, middle, right = row[3], row[shown.width // 2], row[-4]
    return abs(left - middle) > 20, abs(right - middle) > 20


def test_without_a_script_the_rows_are_in_words_and_the_mirror_works(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", javascript=False)
    chart = page.locator(".charted")
    expect(chart.locator(".chart-tools")).to_be_hidden()
    chart.locator("summary").click()
    expect(chart.locator(".chart-words li")).to_have_text([FIRST, "Row 2 (WS): Purl.", THIRD, "Row 4 (WS): Purl."])
    expect(chart.locator(".chart-keys")).to_be_hidden()
    chart.get_by_label("Left-handed").check()
    expect(chart.locator(".for-left")).to_be_visible()
    expect(chart.locator(".for-left")).to_contain_text("RS rows from left to right")
    expect(chart.locator(".for-right")).to_be_hidden()


def test_the_white_of_drawings_is_dimmed_in_the_dark_alone(sample_site: Path, page_at: Open) -> None:
    """Not where readers have colours of their own, and not on paper."""
    page = page_at(sample_site / "patterns/hat.html")
    looks = "() => ['.chart-view', '.key svg'].map(one => getComputedStyle(document.querySelector(one)).filter)"
    for dark, forced, paper in ((0, 0, 0), (1, 0, 0), (1, 1, 0), (1, 0, 1)):
        page.emulate_media(
            color_scheme="dark" if dark else "light",
            forced_colors="active" if forced else "none",
            media="print" if paper else "screen",
        )
        dimmed = dark and not forced and not paper
        assert page.evaluate(looks) == ["brightness(0.82)" if dimmed else "none"] * 2
