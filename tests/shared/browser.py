"""In: pages. Out: Chromium that opens them; what goes wrong in one fails its test.

That is an error in the browser's console, an uncaught one, or a request that leaves the machine.
"""

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, sync_playwright
from tests.shared.tools import tool

# Those the driver leaves out by itself, as one such switch takes the place of another; and the popups of an address
# bar, which every new window loads though nobody sees them: a third of the time that it takes to open a page.
LEFT_OUT = (
    "AvoidUnnecessaryBeforeUnloadCheckSync",
    "DestroyProfileOnBrowserClose",
    "HttpsUpgrades",
    "HttpsFirstBalancedModeAutoEnable",
    "LensOverlay",
    "MediaRouter",
    "PaintHolding",
    "ThirdPartyStoragePartitioning",
    "OptimizationHints",
    "NetworkTimeServiceQuerying",
    "AimEnabled",
    "PreconnectToSearch",
    "WebUIOmniboxPopup",
    "WebUIOmniboxAimPopup",
)
LAUNCH = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    f"--disable-features={','.join(LEFT_OUT)}",
)
AT_HOME = re.compile(r"^(file|data|blob|about):|^(https?|wss?)://(127\.0\.0\.1|localhost|\[::1\])([:/]|$)")
PATIENCE = 15_000  # milliseconds a page may take before its test fails


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Headless Chromium, started once per worker.

    While it runs, asyncio.run() cannot be called in the same thread: test code with a loop of its own as a process.
    """
    path = tool("chromium", "chromium-browser", "google-chrome")
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=path, args=list(LAUNCH))
        yield chromium
        chromium.close()


@pytest.fixture
def browser_problems() -> Iterator[list[str]]:
    """What went wrong in the pages of this test; one that expects some looks at them and clears the list."""
    problems: list[str] = []
    yield problems
    if problems:
        pytest.fail("unexpected in the browser:\n" + "\n".join(problems), pytrace=False)


def watch(context: BrowserContext, problems: list[str]) -> None:
    """Write down console errors, uncaught errors and requests that leave the machine, and stop the latter."""

    def heard(message: ConsoleMessage) -> None:
        if message.type in {"error", "assert"}:
            problems.append(f"console: {message.text} ({message.location.get('url', '')})")

    def asked(url: str) -> None:
        if not AT_HOME.match(url):
            problems.append(f"request outside: {url}")

    context.on("console", heard)
    context.on("weberror", lambda error: problems.append(f"uncaught: {error.error}"))
    context.on("request", lambda request: asked(request.url))
    context.on("page", lambda page: page.on("websocket", lambda socket: asked(socket.url)))
    context.route(lambda url: not AT_HOME.match(url), lambda route: route.abort())


@pytest.fixture
def page_at(browser: Browser, browser_problems: list[str]) -> Iterator[Callable[..., Page]]:
    """Opens a page: `page_at(path_or_url, javascript=True, width=1280, height=900, dark=False, **options)`.

    Each call is a context of its own (no shared storage); `options` are those of Playwright's `Browser.new_context`,
    such as `reduced_motion="reduce"`, `forced_colors="active"`, `has_touch=True`; `page.emulate_media(media="print")`.
    A context costs ten times a page: to see many pages, open one and let `page.goto` take it to the others.
    axe (tests/shared/axe.py) needs JavaScript: in a context without it, it never comes back.
    """
    contexts: list[BrowserContext] = []

    def opened(
        address: Path | str,
        *,
        javascript: bool = True,
        width: int = 1280,
        height: int = 900,
        dark: bool = False,
        **options: Any,  # noqa: ANN401 - handed on to Playwright, which checks them
    ) -> Page:
        context = browser.new_context(
            java_script_enabled=javascript,
            viewport={"width": width, "height": height},
            color_scheme="dark" if dark else "light",
            **options,
        )
        contexts.append(context)
        context.set_default_timeout(PATIENCE)
        watch(context, browser_problems)
        page = context.new_page()
        page.goto(address.resolve().as_uri() if isinstance(address, Path) else address)
        return page

    yield opened
    for context in contexts:
        context.close()
