"""In: a published site. Out: ratios, printed: what the main thread of a phone's browser has to do for a pattern's page.

Run as `python tests/bench/bench_phone.py site [PATTERN ...]`. Each page is opened in turn as it is published, with all
of it laid out at once (no unfold.js), and with style sheets that ask the fields what is chosen (no classes).
Milliseconds are those of the processor by the browser's own trace, medians of five, so that others on the machine count
for less. "Blocking" is what goes beyond 50 ms in a task behind the first paint, at a quarter of this machine's speed.
"""

import json
import sys
from collections.abc import Iterator
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from typing import Any

from playwright.sync_api import Browser, Page, Route, sync_playwright
from tests.shared.browser import LAUNCH
from tests.shared.tools import tool

TIMES = 5
SLOWER = 4  # the factor by which audits of pages for phones commonly slow a desk's processor down
Event = dict[str, Any]  # as the browser traces it


def at_once(page: Page) -> None:
    """Nothing waits for its turn to be laid out."""
    page.add_init_script(
        "document.addEventListener('readystatechange', () => document.querySelectorAll("
        "'.content > section, .instructions > *').forEach((one) => one.classList.add('unfolded')), { once: true })"
    )


def as_it_is(_page: Page) -> None:
    """As it is published."""


def asking(page: Page) -> None:
    """No classes say what is chosen."""

    def without(route: Route) -> None:
        route.fulfill(body=Path(route.request.url.removeprefix("file://")).read_text().replace('"on-off", ', ""))

    page.route("**/theme/*.js", without)


WAYS = {"as published": as_it_is, "laid out at once": at_once, "asking the fields": asking}


def events(browser: Browser, address: str, way: str) -> list[Event]:
    """The trace of one visit."""
    context = browser.new_context(viewport={"width": 412, "height": 823}, device_scale_factor=1.75, is_mobile=True)
    page = context.new_page()
    WAYS[way](page)
    with TemporaryDirectory() as folder:
        trace = Path(folder) / "trace.json"
        kinds = ["devtools.timeline", "toplevel", "loading", "blink.user_timing"]
        browser.start_tracing(page=page, path=trace, categories=kinds)
        page.goto(address, wait_until="load")
        page.wait_for_timeout(2500)
        browser.stop_tracing()
        context.close()
        found: list[Event] = json.loads(trace.read_text())["traceEvents"]
    return found


def tasks(found: list[Event], address: str) -> Iterator[Event]:
    """The outermost tasks of the main thread from the visit's beginning on."""
    begun = next(one for one in found if one["name"] == "navigationStart" and address in str(one["args"]))
    mine = [one for one in found if one["pid"] == begun["pid"]]
    main = next(one["tid"] for one in mine if one["name"] == "thread_name" and one["args"]["name"] == "CrRendererMain")
    run = [one for one in mine if one.get("ph") == "X" and one["tid"] == main and "RunTask" in one["name"]]
    end = begun["ts"]
    for one in sorted(run, key=lambda task: (task["ts"], -task["dur"])):
        if one["ts"] >= end:
            end = one["ts"] + one["dur"]
            yield one


def visit(browser: Browser, address: str, way: str) -> tuple[float, float]:
    """Milliseconds of the main thread: all, and what blocks."""
    found = events(browser, address, way)
    painted = min(one["ts"] for one in found if one["name"] == "firstContentfulPaint")
    ran = [(one["ts"] + one["dur"] > painted, one.get("tdur", 0) / 1000) for one in tasks(found, address)]
    return sum(long for _, long in ran), sum(max(0, SLOWER * long - 50) for behind, long in ran if behind)


def main() -> None:
    """Prints a line a page and way, the ratios to the page as published."""
    site = Path(sys.argv[1]).resolve()
    names = sys.argv[2:] or ["saltmere-scarf", "undercombe-hat", "tarnside-pullover"]
    with sync_playwright() as playwright:
        path = tool("chromium", "chromium-browser", "google-chrome")
        browser = playwright.chromium.launch(executable_path=path, args=list(LAUNCH))
        for name in names:
            address = (site / "patterns" / f"{name}.html").as_uri()
            taken = [{way: visit(browser, address, way) for way in WAYS} for _ in range(TIMES)]
            usual = median(one["as published"][0] for one in taken)
            for way in WAYS:
                whole, blocking = (median(one[way][part] for one in taken) for part in (0, 1))
                print(f"{name}, {way}: {whole:.0f} ms, {whole / usual:.2f}; blocking {blocking:.0f} ms")  # noqa: T201 (what it is for)
        browser.close()


if __name__ == "__main__":
    main()
