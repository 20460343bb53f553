"""In: the sample, published. Out: it has a worker and a manifest, and Chromium reads it without a network."""

import json
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.shared.browser import PATIENCE

from sizewright.publish.offline import APP, WORKER, NoNetwork, offline_files
from sizewright.read.project import Project

Open = Callable[..., Page]
READY = "navigator.serviceWorker.ready.then(() => true)"


def worker(project: Project, digests: dict[str, str]) -> str:
    files = offline_files(project.studio, digests, {"": NoNetwork.told()})
    return {output.path: output.content.decode() for output in files}[WORKER]


def test_the_worker_knows_what_is_read_and_is_another_one_when_that_changes(sample_project: Project) -> None:
    digests = {
        "index.html": "a" * 64,
        "patterns/hat.pdf": "b" * 64,
        "patterns/hat.json": "c" * 64,
        "feed.xml": "d" * 64,
    }
    script = worker(sample_project, digests)
    table = re.match(r"const FILES = (\{.*?\});\nconst VERSION = \"(\w+)\";", script, re.DOTALL)
    assert table is not None
    assert json.loads(table[1]) == {"index.html": "a" * 12, "patterns/hat.pdf": "b" * 12}
    assert worker(sample_project, {**digests, "feed.xml": "e" * 64}) == script
    assert worker(sample_project, {**digests, "index.html": "e" * 64}) != script


def test_the_manifest_names_the_studio_and_works_below_a_path(finished: Path) -> None:
    """Source: W3C Web Application Manifest (members resolve against the manifest's own address)."""
    told = json.loads((finished / "site" / APP).read_text())
    assert told["name"] == "Rook & Thistle"
    assert (told["start_url"], told["scope"]) == ("./index.html", "./")
    icons = {icon["sizes"]: (finished / "site" / icon["src"]).read_bytes() for icon in told["icons"]}
    assert icons.pop("any").startswith(b"<svg")
    for sizes, content in icons.items():  # Source: W3C PNG, 11.2.2 IHDR: width and height behind the first 16 bytes
        assert content.startswith(b"\x89PNG\r\n\x1a\n")
        assert sizes == "x".join(str(int.from_bytes(content[at : at + 4])) for at in (16, 20))
    assert [*icons] == ["192x192", "512x512"]


@pytest.fixture(scope="module")
def folder(finished: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    return Path(shutil.copytree(finished / "site", tmp_path_factory.mktemp("served") / "knits"))


@pytest.fixture(scope="module")
def served(folder: Path, serve: Callable[[Path], str]) -> str:
    return f"{serve(folder.parent)}/knits"


# What is not kept of these paths when all are, or when time is over. Asked here again and again, as wait_for_function
# takes a promise for its answer, whatever that promises.
MISSING = """async ([paths, patience]) => {
  const kept = (path) => caches.match(new URL(path, `${location.origin}/knits/`));
  for (const end = Date.now() + patience; ;) {
    const found = await Promise.all(paths.map(kept));
    if (found.every(Boolean) || Date.now() >= end) return paths.filter((_, at) => !found[at]);
    await new Promise((wake) => setTimeout(wake, 50));
  }
}"""
READ = ("patterns/hat.html", "media/hat.svg", "theme/fonts/AtkinsonHyperlegible-Regular-Latin.woff2")


def test_what_was_read_once_is_read_again_without_a_network_and_a_new_version_is_told(
    served: str, folder: Path, page_at: Open, browser_problems: list[str]
) -> None:
    page = page_at(f"{served}/patterns/hat.html?size=adult-m")
    page.get_by_role("button", name="Begin", exact=True).click()
    page.evaluate(READY)
    assert page.evaluate(MISSING, [READ, PATIENCE]) == []
    expect(page.locator(".knit-says")).to_have_text(
        "Kept on this device, to be read without a network: this page and “PDF to print”."
    )
    assert page.evaluate(MISSING, [["patterns/hat.pdf", "patterns/cloth.pdf"], 0]) == ["patterns/cloth.pdf"]
    page.context.set_offline(True)
    page.reload()
    expect(page.locator(".knit-tick")).to_contain_text("Cast on 120 sts")
    page.locator(".knit-tick").click()
    expect(page.locator(".knit-tick")).to_contain_text("Join")
    assert page.evaluate("[...document.images].filter((one) => one.complete && !one.naturalWidth).length") == 0
    page.get_by_role("link", name="Your knitting").click()
    page.get_by_role("link", name=re.compile("^Hat")).click()
    expect(page.locator(".knit-tick")).to_contain_text("Join")
    page.goto(f"{served}/patterns/cloth.html")
    expect(page.get_by_role("heading", name="There is no network")).to_be_visible()
    assert all("ERR_INTERNET_DISCONNECTED" in problem or "503" in problem for problem in browser_problems)
    browser_problems.clear()
    page.context.set_offline(False)
    a_new_version_is_told(page, served, folder)


def a_new_version_is_told(page: Page, served: str, folder: Path) -> None:
    """Published anew while a page is open: it is told, and stays as it is until the reader asks."""
    page.goto(f"{served}/patterns/hat.html")
    expect(page.get_by_text("There is a new version")).to_be_hidden()
    for name, old, new in (
        ("patterns/hat.html", "A hat with a bobble", "A corrected hat with a bobble"),
        (WORKER, re.compile(r'("patterns/hat.html": ")\w+'), r"\g<1>123456789abc"),
        (WORKER, re.compile(r'(VERSION = ")\w+'), r"\g<1>cba987654321"),
    ):
        text = (folder / name).read_text()
        changed = text.replace(old, new) if isinstance(old, str) else old.sub(new, text)
        assert changed != text
        (folder / name).write_text(changed)
    page.evaluate("navigator.serviceWorker.getRegistration().then((one) => one.update()).then(() => true)")
    # The new worker reads every file that is kept before it tells: on a busy machine that takes its time.
    expect(page.get_by_text("There is a new version of this page.")).to_be_visible(timeout=20_000)
    expect(page.locator(".summary").first).to_contain_text("A hat with a bobble")
    page.get_by_role("button", name="Show it").click()
    expect(page.locator(".summary").first).to_contain_text("A corrected hat with a bobble")
    names = page.evaluate("caches.keys()")
    assert names == ["sizewright /knits/ cba987654321"]
