"""The preview as a designer has it: a real process, a real browser, files saved while it runs."""

import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.shared.axe import hindrances

from sizewright.command.beginning import begin

Open = Callable[..., Page]
COMMAND = Path(sys.executable).with_name("sizewright")
PATIENCE = 60  # seconds until a state that should come is given up

expect.set_options(timeout=PATIENCE * 1000)


@dataclass
class Preview:
    """A preview that runs, and the pattern it shows."""

    process: subprocess.Popen[str]
    said: Path
    project: Path
    address: str = ""

    @property
    def source(self) -> Path:
        return self.project / "content" / "patterns" / "ear-band.md"

    @property
    def page(self) -> str:
        return f"{self.address}patterns/ear-band.html"

    def change(self, old: str, new: str) -> None:
        """Saves the pattern as an editor does: a new file takes the place of the old one."""
        text = self.source.read_text(encoding="utf-8")
        assert old in text
        fresh = self.source.with_name(".ear-band.md.new")
        fresh.write_text(text.replace(old, new), encoding="utf-8")
        fresh.replace(self.source)

    def wait_until(self, said: str) -> None:
        """Waits until these words are among what the preview has printed."""
        deadline = time.monotonic() + PATIENCE
        while said not in self.said.read_text(encoding="utf-8"):
            assert time.monotonic() < deadline, f"“{said}” was never said:\n{self.said.read_text(encoding='utf-8')}"
            assert self.process.poll() is None, self.said.read_text(encoding="utf-8")
            time.sleep(0.02)


def new_project(place: Path) -> Path:
    folder = place / "studio"
    folder.mkdir()
    begin("ear-band", folder, new_project=True)
    return folder


@contextmanager
def previewed(project: Path, place: Path) -> Iterator[Preview]:
    """The preview of a project, on a port of the system's choice and with a temporary folder of its own."""
    temporary, said = place / "temporary", place / "said.txt"
    temporary.mkdir()
    with said.open("w") as output:
        process = subprocess.Popen(
            [COMMAND, "preview", "--port", "0", project],
            stdout=output,
            stderr=subprocess.STDOUT,
            env={**os.environ, "TMPDIR": str(temporary), "PYTHONUNBUFFERED": "1"},
            text=True,
        )
    preview = Preview(process, said, project)
    try:
        preview.wait_until("until Ctrl-C")
        found = re.search(r"http://127\.0\.0\.1:\d+/", said.read_text(encoding="utf-8"))
        assert found
        preview.address = found[0]
        yield preview
    finally:
        process.send_signal(signal.SIGINT)
        ended = process.wait(timeout=PATIENCE)
    assert ended == 0
    assert "Traceback" not in said.read_text(encoding="utf-8")
    assert list(temporary.iterdir()) == []


@pytest.fixture(scope="module")
def running(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Preview]:
    place = tmp_path_factory.mktemp("preview")
    with previewed(new_project(place), place) as preview:
        yield preview


@pytest.fixture
def preview(running: Preview) -> Iterator[Preview]:
    """One that runs for all tests: each leaves its project as it was, and sees that shown; where it fails, it is."""
    sound = running.source.read_bytes()
    yield running
    if running.source.read_bytes() != sound:
        running.source.write_bytes(sound)


def test_a_saved_number_is_on_the_page_by_itself(preview: Preview, page_at: Open) -> None:
    # (52 - 6) x 1.9 = 87.4, whose nearest multiple of 4 is 88; at 21 sts it is 96.6 and 96: arithmetic, no source
    page = page_at(preview.page)
    expect(page.locator("main")).to_contain_text("Cast on 88 (96, 104) sts")
    preview.change("19 st / 10 cm", "21 st / 10 cm")
    expect(page.locator("main")).to_contain_text("Cast on 96 (104, 112) sts")
    expect(page.locator("#sizewright-panel")).to_have_count(0)
    assert not (preview.project / "site").exists()
    preview.change("21 st / 10 cm", "19 st / 10 cm")
    expect(page.locator("main")).to_contain_text("Cast on 88 (96, 104) sts")


def test_a_broken_pattern_keeps_its_page_under_the_findings_until_it_is_mended(preview: Preview, page_at: Open) -> None:
    page = page_at(preview.page)
    preview.change("require cast_on fits multiple of 4", "require cast_on fits multiple of 7")
    section = page.locator("#sizewright-panel section")
    expect(section).to_be_visible()
    expect(section).to_contain_text("“cast_on” does not fit a multiple of 7")
    expect(section).to_contain_text("Sizes: Small, Medium, Large")
    expect(section.locator("mark")).to_have_text("require cast_on fits multiple of 7")
    expect(page.locator("main")).to_contain_text("Cast on 88 (96, 104) sts")
    preview.wait_until("1 error in 1 pattern")
    preview.change("fits multiple of 7", "fits multiple of 4")
    expect(page.locator("#sizewright-panel")).to_have_count(0)


def test_before_there_is_a_good_page_the_findings_have_one(
    tmp_path: Path, page_at: Open, browser_problems: list[str]
) -> None:
    source = new_project(tmp_path) / "content" / "patterns" / "ear-band.md"
    sound = source.read_text(encoding="utf-8")
    source.write_text(sound.replace("{cast_on} sts. Place", "{cast_onn} sts. Place"), encoding="utf-8")
    with previewed(tmp_path / "studio", tmp_path) as preview:
        page = page_at(preview.page)
        expect(page.locator("#sizewright-panel section")).to_contain_text("cast_onn")
        preview.change("{cast_onn}", "{cast_on}")
        expect(page.locator("main")).to_contain_text("Cast on 88 (96, 104) sts")
        assert all("404" in problem for problem in browser_problems)
        browser_problems.clear()


def test_what_keeps_the_project_from_being_read_is_shown_too(preview: Preview, page_at: Open) -> None:
    page = page_at(preview.page)
    sound = preview.source.read_bytes()
    preview.source.write_bytes(b"\xff\xfe")
    section = page.locator("#sizewright-panel section")
    expect(section).to_contain_text("is not UTF-8")
    preview.source.write_bytes(sound)
    expect(page.locator("#sizewright-panel")).to_have_count(0)


def test_the_panel_can_be_folded_and_read_by_everybody(preview: Preview, page_at: Open) -> None:
    preview.change("licence:", "# licence:")
    page = page_at(preview.page, dark=True)
    section = page.get_by_role("region", name="Findings")
    expect(section).to_contain_text("1 warning in 1 pattern")
    message = section.locator("li.warning p").first
    expect(message).to_be_hidden()  # a mere warning stays folded
    section.locator("summary").focus()
    page.keyboard.press("Enter")
    expect(message).to_be_visible()
    page.wait_for_function("Boolean(sessionStorage.getItem('sizewright-panel'))")  # told a moment after it is open
    page.reload()
    expect(message).to_be_visible()  # and one that was opened stays open
    assert hindrances(page, "#sizewright-panel") == []
    preview.change("# licence:", "licence:")
    expect(page.locator("#sizewright-panel")).to_have_count(0)


def test_a_pdf_is_laid_out_when_its_link_is_followed(preview: Preview, page_at: Open) -> None:
    page = page_at(preview.page)
    answer = page.request.get(f"{preview.address}patterns/ear-band.pdf")
    assert (answer.status, answer.headers["content-type"]) == (200, "application/pdf")
    assert answer.body().startswith(b"%PDF-")
    assert page.request.get(f"{preview.address}patterns/other.pdf").status == 404


def test_a_new_pattern_and_a_removed_one(preview: Preview, page_at: Open) -> None:
    page = page_at(preview.address)
    second = preview.source.with_name("second.md")
    second.write_text(preview.source.read_text(encoding="utf-8").replace("Ear band", "Second band"), encoding="utf-8")
    expect(page.locator("main")).to_contain_text("Second band")
    second.unlink()
    expect(page.locator("main")).not_to_contain_text("Second band")
