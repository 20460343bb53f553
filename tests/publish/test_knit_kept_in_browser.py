"""In: the sample hat in Chromium, published anew or with broken storage. Out: no place is lost, and all is told."""

import json
import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.publish.knitting import begin, do, now

Open = Callable[..., Page]
ISLAND = re.compile(r'(<script[^>]* class="knit-data">)(.*?)</script>')
SHELF = "sizewright knitting /knits/ "


@pytest.fixture
def hat_file(knits_folder: Path) -> Iterator[Path]:
    """The page of the hat, which is as it was when the test is done."""
    file = knits_folder / "patterns/hat.html"
    old = file.read_text()
    yield file
    file.write_text(old)


def test_a_republished_pattern_keeps_the_place_and_says_what_changed(knits: str, hat_file: Path, page_at: Open) -> None:
    page = page_at(f"{knits}/patterns/hat.html?size=adult-m")
    begin(page)
    for _ in range(5):
        page.locator(".knit-tick").click()
    now(page, "3 of 64")
    old = hat_file.read_text()
    new = old.replace("K 8, k2tog, mb, k to end.", "K 8, ssk, mb, k to end.").replace(
        "Join to work in the round.", "Join."
    )
    hat_file.write_text(new)
    page.reload()
    now(page, "3 of 64")
    changed = page.locator(".knit-changed")
    expect(changed).to_contain_text(
        "Dec Rnd (Brim) now reads: “K 8, ssk, mb, k to end. 119 sts” Before: “K 8, k2tog, mb,"
    )
    expect(changed).to_contain_text("New: A line (Brim): “Join.” You have passed it.")
    expect(changed).to_contain_text("Gone: A line (Brim): “Join to work in the round.”")
    page.reload()
    expect(changed).to_be_visible()
    do(page, "I have read it")
    expect(changed).to_be_hidden()
    do(page, "Undo")
    now(page, "2 of 64")
    # The row in hand itself goes: the next one that is left comes. It comes back, and nothing is lost.
    hat_file.write_text(ISLAND.sub(without_the_repeat, new))
    page.reload()
    now(page, "Dec Rnd: K 8, ssk")
    expect(changed).to_contain_text("Gone: A line (Brim): “Rep Rnd 1 until piece measures 22 cm / 8¾ in.”")
    hat_file.write_text(old)
    page.reload()
    now(page, "Dec Rnd: K 8, k2tog")


def without_the_repeat(island: re.Match[str]) -> str:
    """The data without the line in which rows are repeated."""
    data = json.loads(island[2])
    data["sizes"]["adult-m"] = [leg for leg in data["sizes"]["adult-m"] if not leg[7] or leg[7][0][1][0][2] != 64]
    return f"{island[1]}{json.dumps(data)}</script>"


def test_what_cannot_be_kept_or_read_is_told_and_the_page_stays_usable(knits: str, page_at: Open) -> None:
    page = page_at(f"{knits}/patterns/hat.html?size=adult-m")
    begin(page)
    page.locator(".knit-tick").click()
    # Full: what is ticked off lasts as long as the page, and the last that was kept stays.
    page.evaluate("void (Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); })")
    page.locator(".knit-tick").click()
    page.locator(".knit-tick").click()
    now(page, "1 of 64")
    expect(page.locator(".knit-says")).to_contain_text("does not keep your place")
    page.reload()
    now(page, "Join to work")
    # Broken: put aside and told.
    name = page.evaluate("Object.keys(localStorage).find((name) => name.startsWith('sizewright knitting'))")
    assert name.startswith(SHELF)
    for broken in ("{", '{"form": 1, "id": 3}'):
        page.evaluate("([name, text]) => localStorage.setItem(name, text)", [name, broken])
        page.reload()
        expect(page.locator("#reader-says")).to_contain_text("could not be read")
        expect(page.locator(".knit-projects li")).to_have_count(0)
        assert json.loads(page.evaluate("(name) => localStorage[name]", f"{name}, not readable")) == broken
    # Refused altogether.
    page.add_init_script(
        "for (const name of ['localStorage', 'sessionStorage']) Object.defineProperty(window, name,"
        " {get() { throw new DOMException('no', 'SecurityError'); }})"
    )
    page.reload()
    begin(page)
    page.locator(".knit-tick").click()
    now(page, "Join to work")
    # A hand-edited address.
    page.goto(f"{knits}/patterns/hat.html?size=adult-m#knit=nothing")
    expect(page.locator(".knit-says")).to_contain_text("not on this device")
