"""In: the project and the tools generator/setup.sh installs. Out: what tests share: a browser, page checkers, the demo.

Nothing here skips: where a tool is missing the test fails and says how to get it. What a test did not ask for fails it
too: an error in the browser's console, a request that leaves the machine, a warning in the log.
"""

import json
import logging
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from fcntl import LOCK_EX, flock
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, sync_playwright

# A busy machine is slow, not wrong.
settings.register_profile("suite", deadline=None)
settings.load_profile("suite")

ROOT = Path(__file__).resolve().parent.parent
CHECKERS = ROOT / "tests" / "node_modules"
SET_UP = "run `sh generator/setup.sh test`, which installs it"

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


def tool(*names: str) -> str:
    """The first of these commands that is installed; fails the test where none is."""
    found = next(filter(None, map(shutil.which, names)), None)
    if found is None:
        pytest.fail(f"{' or '.join(names)} is not installed: {SET_UP}", pytrace=False)
    return found


@pytest.fixture(scope="session")
def repository() -> Path:
    """The project's own folder; tests read it and never write in it."""
    return ROOT


@pytest.fixture(scope="session")
def demo_patterns() -> tuple[Path, ...]:
    """The files of the demo's patterns, without the translations that stand beside them."""
    return tuple(path for path in sorted((ROOT / "content" / "patterns").glob("*.md")) if "." not in path.stem)


# ------------------------------------------------------------------------------------------------------------- the log


class Kept(logging.Handler):
    """A handler that keeps what it is given."""

    def __init__(self, records: list[logging.LogRecord]) -> None:
        super().__init__(logging.WARNING)
        self.records = records

    def emit(self, record: logging.LogRecord) -> None:
        self.records.append(record)


@pytest.fixture(autouse=True)
def log_records() -> Iterator[list[logging.LogRecord]]:
    """What weasyprint and sizewright log at WARNING or above; a test that expects any reads and clears the list."""
    records: list[logging.LogRecord] = []
    loggers = [logging.getLogger(name) for name in ("weasyprint", "sizewright")]
    handler = Kept(records)
    for logger in loggers:
        logger.addHandler(handler)
    yield records
    for logger in loggers:
        logger.removeHandler(handler)
    if records:
        lines = [f"{record.name} {record.levelname}: {record.getMessage()}" for record in records]
        pytest.fail("unexpected in the log:\n" + "\n".join(lines), pytrace=False)


# --------------------------------------------------------------------------------------------------------- the browser


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
    axe needs JavaScript (in a context without it, it never comes back) and, on a page from disk, `preload: False`.
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


# ------------------------------------------------------------------------------------------------------- page checkers


def checked(command: list[str]) -> Any:  # noqa: ANN401 - the checkers' own JSON
    """What a checker prints as JSON; exit code 0 or 1 is its verdict, all else, or no JSON, is a checker that broke."""
    done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=300)
    said = (
        done.stdout + done.stderr
    )  # csstree-validator prints what it found on the latter, and nothing where all is well
    try:
        return json.loads(said if said.strip() or done.returncode else "[]")
    except ValueError:
        pytest.fail(f"the checker broke ({done.returncode}): {' '.join(command)}\n{said}", pytrace=False)


def must_hold(folder: Path, pattern: str) -> None:
    """A checker that is shown nothing finds nothing."""
    if next(folder.rglob(pattern), None) is None:
        pytest.fail(f"no {pattern} under {folder}: nothing would be checked", pytrace=False)


def installed(path: Path) -> str:
    """The path of an installed checker; fails the test where it is missing."""
    if not path.is_file():
        pytest.fail(f"{path.relative_to(ROOT)} is not installed: {SET_UP}", pytrace=False)
    return str(path)


@pytest.fixture(scope="session")
def nu_check() -> Callable[[Path], list[str]]:
    """`nu_check(folder)`: errors and warnings of the Nu HTML checker on all pages below, as "file:line: kind: text"."""

    def check(folder: Path) -> list[str]:
        must_hold(folder, "*.html")
        jar = installed(CHECKERS / "vnu-jar" / "build" / "dist" / "vnu.jar")
        said = checked([tool("java"), "-jar", jar, "--skip-non-html", "--stdout", "--format", "json", str(folder)])
        places = [f"{m.get('url', '').removeprefix('file:')}:{m.get('lastLine', '?')}" for m in said["messages"]]
        texts = [f"{m.get('subType', m['type'])}: {m['message']}" for m in said["messages"]]
        return [f"{place}: {text}" for place, text in zip(places, texts, strict=True)]

    return check


@pytest.fixture(scope="session")
def css_check() -> Callable[[Path], list[str]]:
    """`css_check(folder)`: what csstree-validator finds in all style sheets below it, "file:line: message"."""

    def check(folder: Path) -> list[str]:
        must_hold(folder, "*.css")
        script = installed(CHECKERS / "csstree-validator" / "bin" / "validate.js")
        said = checked([tool("node"), script, "--reporter", "json", str(folder)])
        return [f"{m['name']}:{m['line']}: {m['message']} {m['details'] or ''}".rstrip() for m in said]

    return check


# ------------------------------------------------------------------------------------------------------------ the demo


@contextmanager
def alone(lock: Path) -> Iterator[None]:
    """Between processes: only one at a time gets in; the lock ends with its process, however that ends."""
    with lock.open("w") as held:
        flock(held, LOCK_EX)
        yield


@pytest.fixture(scope="session")
def sizewright() -> Callable[..., subprocess.CompletedProcess[str]]:
    """Runs the installed command: `sizewright("proof", folder, cwd=..., env={...})`; never raises for its exit code."""
    command = Path(sys.executable).with_name("sizewright")

    def run(
        *words: str | Path, cwd: Path | None = None, env: dict[str, str] | None = None
    ) -> subprocess.CompletedProcess[str]:
        line = [str(command), *map(str, words)]
        surroundings = {**os.environ, "NO_COLOR": "1", **(env or {})}
        return subprocess.run(line, cwd=cwd, env=surroundings, capture_output=True, text=True, check=False, timeout=300)

    return run


@pytest.fixture(scope="session")
def demo_site(
    tmp_path_factory: pytest.TempPathFactory, sizewright: Callable[..., subprocess.CompletedProcess[str]]
) -> Path:
    """The published demo: the `site/` of a copy of the project, published once for all workers. To be read only.

    Of its PDFs the usual ones alone: all of them take a minute of two processors.
    """
    shared = tmp_path_factory.getbasetemp()
    if "PYTEST_XDIST_WORKER" in os.environ:
        shared = shared.parent  # every worker has a folder of its own below one that belongs to this run
    project = shared / "demo"
    said = shared / "demo.said"
    with alone(shared / "demo.lock"):
        if not said.exists():
            for part in ("content", "themes"):
                shutil.copytree(ROOT / part, project / part)
            with (project / "content" / "site.yaml").open("a", encoding="utf-8") as studio:
                studio.write("papers: {sheets: [a4], each_size: no, large_print: no}\n")
            done = sizewright("publish", project)
            said.write_text(f"{done.returncode}\n{done.stdout}{done.stderr}", encoding="utf-8")
    code, _, text = said.read_text(encoding="utf-8").partition("\n")
    if code != "0" or not (project / "site" / "index.html").is_file():
        pytest.fail(f"the demo was not published (exit code {code}):\n{text}", pytrace=False)
    return project / "site"
