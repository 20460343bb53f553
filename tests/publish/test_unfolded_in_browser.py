"""In: the page of the sample hat in Chromium. Out: what is far from view is laid out soon, and nothing moves."""

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page

Open = Callable[..., Page]


def test_what_is_far_down_is_laid_out_soon_and_nothing_moves(sample_site: Path, page_at: Open) -> None:
    page = page_at("about:blank", width=360, height=740)
    page.add_init_script(
        "window.moved = 0;"
        "new PerformanceObserver((list) => { for (const { value } of list.getEntries()) window.moved += value; })"
        '.observe({ type: "layout-shift" })'
    )
    page.add_init_script("requestIdleCallback = (then) => { globalThis.unfold = then; }")
    page.goto((sample_site / "patterns/hat.html").as_uri())
    page.wait_for_function("Boolean(globalThis.unfold)")
    last, line = page.locator(".content > section").last, page.locator(".instructions .line").last
    assert last.evaluate("one => getComputedStyle(one).contentVisibility") == "auto"
    assert line.inner_text() == ""
    steps = page.evaluate("""async () => {
        let steps = 0;
        for (let then; (then = globalThis.unfold); steps += 1) {
            globalThis.unfold = null;
            then();
            await new Promise((frame) => requestAnimationFrame(() => requestAnimationFrame(frame)));
        }
        return steps;
    }""")
    assert steps > 1, "all of it at once holds the reader up"
    assert line.inner_text() != ""
    assert page.locator(".content > section:not(.unfolded), .instructions > :not(.unfolded)").count() == 0
    assert page.evaluate("window.moved") < 0.001
    page.reload()
    page.emulate_media(media="print")
    assert line.inner_text() != "", "paper has it all at any moment"


def test_who_comes_for_a_place_finds_all_above_it_laid_out(sample_site: Path, page_at: Open) -> None:
    """Else the place would move away while the rest is laid out."""
    page = page_at("about:blank", width=360, height=740)
    page.add_init_script("requestIdleCallback = () => {};")
    page.goto((sample_site / "patterns/hat.html").as_uri() + "#part--rights")
    page.wait_for_load_state()
    assert page.locator(".content > section:not(.unfolded), .instructions > :not(.unfolded)").count() == 0
