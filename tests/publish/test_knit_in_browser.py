"""In: the sample hat in Chromium, served. Out: its rows are ticked off, kept, taken along and found again.

Few pages and long stories: a context costs more than the steps in it.
"""

import json
import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect
from tests.publish.knitting import begin, do, now
from tests.shared.axe import hindrances

Open = Callable[..., Page]
CAST_ON = "Cast on 120 sts, 30 on each of 4 needles."


def far(page: Page, words: str) -> None:
    expect(page.locator(".knit-far")).to_have_text(words)


# In every size each tick has a row not before the last one, each row its tick, and what is unchanged matches itself.
CONSISTENT = """() => {
  const data = JSON.parse(document.querySelector(".knit-data").textContent);
  const { cut, open, find, tickOfRow, match } = reader.course;
  // 3 times 3 rows even and an increase of 2; 4 times a row that is turned, so counts for 2; then no row.
  const even = [0, 0, 3, 0, 1, 0], more = [0, 0, 1, 2, 1, 0], turned = [0, 0, 2, 0, 2, 0];
  data.sizes.made = [[0, 0, 0, 0, 0, 20, 0, [[3, [even, more]], [2, [turned]]]], [0, 0, 0, 0, 0, 26, 0, []]];
  const made = open(cut(data, "made"));
  const counts = [0, 3, 7, 11, 15].map((at) => find(made, at).after);
  if (`${made.ticks} ${made.rows} ${counts} ${find(made, 13).rows}` !== "17 20 20,22,24,26,26 14") return [];
  return Object.keys(data.sizes).flatMap((key) => {
    const course = open(cut(data, key));
    const rows = Array.from({ length: course.ticks + 1 }, (_, at) => find(course, at).rows);
    const found = match(course, course);
    return [
      rows.every((row, at) => at === 0 || row >= rows[at - 1]) && rows.at(-1) === course.rows,
      rows.slice(0, -1).every((row) => rows[tickOfRow(course, row)] === row),
      [...found.moved, ...found.changed, ...found.gone, ...found.added].length === 0,
      rows.every((_, at) => found.placed(at) === at),
    ];
  });
}"""


# Whether the words of a line tell already how many rows there are.
COUNTED = """() => ["Work 25 rows even.", "Work 125 rows even.", "Rib for 25 rounds.", "Rep Row 1 25 times."].map(
  (words, at) => reader.knitView.counted({ words, ticks: 25, rounds: at === 2 }))"""


def test_rows_are_ticked_off_and_found_again(knits: str, page_at: Open) -> None:
    page = page_at(f"{knits}/patterns/hat.html", width=380, height=780, has_touch=True)
    assert page.evaluate(CONSISTENT) == [True] * 16
    assert page.evaluate(COUNTED) == [True, False, True, False]
    start = page.get_by_role("button", name="Begin", exact=True)
    expect(start).to_be_disabled()
    expect(page.locator(".knit-size")).to_contain_text("Choose your size first")
    page.get_by_label("Adult M").check()
    expect(start).to_be_enabled()
    begin(page)
    now(page, CAST_ON)
    far(page, "Round 1 of 67, 0 %")
    # By touch, and by every key.
    page.locator(".knit-tick").tap()
    now(page, "Join to work in the round.")
    page.keyboard.press("Enter")
    now(page, "Rnd 1 (RS): *K2, p2; rep from * to end.")
    page.keyboard.press("Space")
    now(page, "1 of 64")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowRight")
    now(page, "3 of 64")
    expect(page.locator(".knit-within")).to_have_text("Rep Rnd 1 until piece measures 22 cm / 8¾ in.")
    page.keyboard.press("ArrowUp")
    far(page, "Round 3 of 67, 2 %")
    bar = page.get_by_role("progressbar", name="Rounds worked")
    assert [bar.get_attribute(f"aria-value{end}") for end in ("min", "now", "max")] == ["0", "2", "67"]
    page.reload()
    now(page, "2 of 64")
    do(page, "Undo")
    do(page, "Undo")
    now(page, "Rnd 1 (RS):")
    anywhere_else_and_back(page)


def anywhere_else_and_back(page: Page) -> None:
    page.locator(".knit-course summary").click()
    page.get_by_label("I am at round").fill("66")
    do(page, "Go there")
    now(page, "Dec Rnd: K 8, k2tog, mb, k to end.")
    now(page, "then 119 sts")
    page.locator(".knit-rows").get_by_role("button", name="Rep Rnd 1").click()
    now(page, "1 of 64")
    current = page.locator(".knit-rows [aria-current=step]")
    expect(current).to_contain_text("Rep Rnd 1")
    current.focus()
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    now(page, "Dec Rnd")
    for words in ("Cut yarn <not the tail> & hide it.", "Rnd 3: Knit.", "Every round is worked."):
        page.locator(".knit-tick").click()
        now(page, words)
    far(page, "All 67 rounds, 100 %")
    expect(page.locator(".knit-tick")).to_be_disabled()
    page.get_by_text("About this project").click()
    do(page, "Start over")
    do(page, "Stay here")
    far(page, "All 67 rounds, 100 %")
    do(page, "Start over")
    page.get_by_role("dialog").get_by_role("button", name="Start over").click()
    now(page, CAST_ON)


def test_two_tabs_and_two_sizes_leave_each_other_in_peace(knits: str, page_at: Open) -> None:
    page = page_at(f"{knits}/patterns/hat.html?size=adult-m")
    begin(page)
    page.locator(".knit-tick").click()
    other = page.context.new_page()
    other.goto(f"{knits}/patterns/hat.html")
    other.locator(".knit-projects").get_by_role("button", name="Gift").click()
    expect(other.get_by_role("radio", name="Adult M")).to_be_checked()
    now(other, "Join to work")
    other.locator(".knit-tick").click()
    now(page, "Rnd 1 (RS):")
    page.locator(".knit-tick").click()
    now(other, "1 of 64")
    do(other, "Undo")
    now(page, "Rnd 1 (RS):")
    # Another size is asked about, and is another project.
    other.get_by_label("Small", exact=True).click()
    other.get_by_role("dialog").get_by_role("button", name="Stay with Adult M").click()
    expect(other.get_by_role("radio", name="Adult M")).to_be_checked()
    now(other, "Rnd 1 (RS):")
    other.get_by_label("Small", exact=True).click()
    other.get_by_role("dialog").get_by_role("button", name="Show Small").click()
    expect(other.get_by_label("Small", exact=True)).to_be_checked()
    other.get_by_text("Begin a project").click()
    begin(other, "The small one")
    now(other, "Cast on 100 sts")
    assert not re.search(r"\b1(?:20|28)\b", other.locator(".knit").inner_text())
    now(page, "Rnd 1 (RS):")
    # Removed here, it is gone there, and that is said.
    other.get_by_text("About this project").click()
    do(other, "Remove project")
    other.get_by_role("dialog").get_by_role("button", name="Remove").click()
    expect(other.locator(".knit-projects li")).to_have_count(1)
    expect(other.locator(".knit-says")).to_have_text("“The small one” was removed.")


def test_projects_are_taken_along_as_a_file_and_back(knits: str, page_at: Open, tmp_path: Path) -> None:
    page = page_at(f"{knits}/patterns/hat.html?size=adult-m", accept_downloads=True)
    begin(page, "For Ada")
    page.locator(".knit-tick").click()
    page.goto(f"{knits}/knitting.html")
    entry = page.locator(".knitting-list li")
    expect(entry).to_contain_text('Hat <one> & "two", Adult M')
    expect(entry).to_contain_text("round 1 of 67, 0 %. Next: Brim, Join to work in the round.")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save all as a file").click()
    file = tmp_path / "all.json"
    download.value.save_as(file)
    page.evaluate("localStorage.clear()")
    page.reload()
    expect(page.locator(".knitting-none")).to_be_visible()
    says, picker = page.locator("#reader-says"), page.locator(".knitting-load input")
    told = json.loads(file.read_text())
    damaged = {**told, "projects": [{**told["projects"][0], "at": -1}]}
    for text, words in (
        ("{", "is not whole, or is no file of projects. Nothing has been changed."),
        ('{"format": "something else"}', "is no file of projects. Nothing has been changed."),
        (json.dumps({**told, "form": 99}), "was made by a later version of this site"),
        (json.dumps(damaged), "is damaged. Nothing has been changed."),
    ):
        picker.set_input_files({"name": "x.json", "mimeType": "application/json", "buffer": text.encode()})
        expect(says).to_contain_text(words)
        expect(entry).to_have_count(0)
    picker.set_input_files(file)
    expect(says).to_have_text("1 project was taken in.")
    picker.set_input_files(file)
    expect(says).to_have_text("0 projects were taken in; already here and just the same: 1.")
    expect(entry).to_have_count(1)
    entry.get_by_role("link", name="For Ada").click()
    now(page, "Join to work")
    expect(page.get_by_label("Adult M")).to_be_checked()


def test_the_screen_is_kept_on_where_that_can_be_done(knits: str, page_at: Open) -> None:
    page = page_at(f"{knits}/patterns/hat.html?size=small")
    page.add_init_script(
        "globalThis.locks = 0; Object.defineProperty(navigator, 'wakeLock', { value: { request: async () => {"
        " locks += 1; return { release: async () => { locks -= 1; } }; } } })"
    )
    page.reload()
    begin(page)
    button = page.get_by_role("button", name="Screen on")
    button.click()
    expect(button).to_have_attribute("aria-pressed", "true")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    page.wait_for_function("locks === 2")
    button.click()
    page.wait_for_function("locks === 1")
    page.evaluate("void (navigator.wakeLock.request = async () => { throw new Error('no'); })")
    button.click()
    expect(page.locator(".knit-says")).to_contain_text("cannot keep the screen on")
    expect(button).to_have_attribute("aria-pressed", "false")


def test_it_is_for_everybody(knits: str, page_at: Open) -> None:
    page = page_at(f"{knits}/patterns/hat.html?size=adult-m", width=320, height=640, reduced_motion="reduce")
    begin(page)
    page.locator(".knit details").evaluate_all("all => all.forEach((one) => { one.open = true; })")
    for _ in range(4):
        page.locator(".knit-tick").click()
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)
        assert hindrances(page) == []
    # WCAG 2.2: 2.5.5 (44 px), 1.4.10 (320 px), 1.4.4 (200 % text).
    small = (
        "all => all.filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 44)"
        ".map((one) => one.outerHTML)"
    )
    assert page.locator(".knit").locator("button, summary, input, textarea, .knit-all").evaluate_all(small) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    page.evaluate("document.documentElement.style.fontSize = '225%'")
    beyond = "all => all.filter((one) => one.getBoundingClientRect().right > innerWidth).map((one) => one.outerHTML)"
    assert page.locator(".knit *").evaluate_all(beyond) == []
    page.emulate_media(forced_colors="active")
    expect(page.locator(".knit-bar span")).to_be_visible()
    page.emulate_media(media="print", forced_colors="none")
    expect(page.locator(".knit")).to_be_hidden()


def test_without_javascript_nothing_is_offered(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", javascript=False)
    assert page.locator(".knit").is_hidden()
    page.goto((sample_site / "knitting.html").as_uri())
    expect(page.locator(".knitting-scriptless")).to_be_visible()
