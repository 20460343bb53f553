"""In: the sample site in Chromium. Out: a size can be chosen, the collection narrowed, and everybody can read it."""

import functools
import re
import shutil
from collections.abc import Callable, Iterator
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

import pytest
from playwright.sync_api import Page, expect
from tests.shared.axe import hindrances

Open = Callable[..., Page]
PAGES = (
    "index",
    "knitting",
    "404",
    "about",
    "abbreviations",
    "method",
    "rules",
    "patterns/cloth",
    "patterns/hat",
    "techniques/bobbles",
    "techniques/index",
)

# Least size of what is tapped, in CSS pixels: WCAG 2.2, 2.5.5 Target Size (Enhanced); links in sentences are exempt.
TAPPED = 44
TARGETS = (
    ".pills label, .button, button:not(.told), select, summary, nav a, .studio a, .card, .links a, .terms dt a, "
    ".papers a"
)


@pytest.fixture(scope="module")
def served(sample_site: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The address of the sample site served below the path its studio publishes at."""
    folder = tmp_path_factory.mktemp("served")
    shutil.copytree(sample_site, folder / "knits")

    class Quiet(SimpleHTTPRequestHandler):
        def log_message(self, format: str, *args: object) -> None:  # noqa: A002 (the name of the standard library)
            pass

    with ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=str(folder))) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}/knits"
        server.shutdown()


def text(page: Page, selector: str) -> str:
    """What is to be seen of the first such element, which is laid out soon if it is far down."""
    expect(page.locator(selector).first).not_to_have_text("", use_inner_text=True)
    return " ".join(page.locator(selector).first.inner_text().replace("\u00a0", " ").split())


def papers(page: Page) -> list[str | None]:
    """The PDFs that are offered in the list of them."""
    return [link.get_attribute("href") for link in page.locator(".papers a:visible, .actions a[type]:visible").all()]


def cast_on(page: Page) -> str:
    return text(page, ".work .line")


# ----------------------------------------------------------------------------------------------------- choosing a size


@pytest.mark.parametrize("javascript", [True, False])
def test_choosing_a_size_leaves_its_numbers_alone(sample_site: Path, page_at: Open, javascript: bool) -> None:  # noqa: FBT001
    page = page_at(sample_site / "patterns/hat.html", javascript=javascript)
    assert cast_on(page) == "Cast on 100 (120, 128) sts, 25 (30, 32) on each of 4 needles."
    assert [one for one in papers(page) if one and "all" not in one] == ["hat.pdf", "hat.pdf"]
    page.get_by_label("Adult M").check()
    assert len(papers(page)) == 5
    assert {str(one).partition("-large-print")[0].rpartition("/")[2][:11] for one in papers(page)} == {"hat-adult-m"}
    assert cast_on(page) == "Cast on 120 sts, 30 on each of 4 needles."
    assert text(page, ".sizes tbody") == "Adult M 56.5 cm 22¼ in 54 cm 21¼ in −2.5 cm −1 in 22 cm 8¾ in"
    assert text(page, ".only") == "For adults Add 11 cm / 4¼ in more. Rnd 3: Knit."
    page.get_by_label("Small", exact=True).check()
    assert cast_on(page) == "Cast on 100 sts, 25 on each of 4 needles."
    assert page.locator(".only").is_hidden()
    page.get_by_label("All sizes").check()
    assert cast_on(page) == "Cast on 100 (120, 128) sts, 25 (30, 32) on each of 4 needles."
    assert text(page, ".only").startswith("Adult M and Adult L only")


def test_no_number_is_lost_and_none_is_doubled_by_choosing(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html")
    for place, name in enumerate(("Small", "Adult M", "Adult L")):
        page.get_by_label(name, exact=True).check()
        for number in page.locator(".graded:visible").all():
            shown = [one for one in number.locator(".z").all() if one.is_visible()]
            assert [str(one.get_attribute("class")) for one in shown] == [f"z z{place}"]
            assert "(" not in number.inner_text()


def test_a_chosen_size_is_in_the_address_and_remembered(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html")
    page.get_by_label("Adult L").check()
    assert page.url.endswith("hat.html?size=adult-l")
    page.goto((sample_site / "patterns/hat.html").as_uri())
    assert page.get_by_label("Adult L").is_checked()
    page.get_by_label("All sizes").check()
    assert page.url.endswith("hat.html")
    page.reload()
    assert page.get_by_label("All sizes").is_checked()


@pytest.mark.parametrize("ending", ["?size=adult-m", "#size=adult-m"])
def test_an_address_chooses_a_size(sample_site: Path, page_at: Open, ending: str) -> None:
    page = page_at((sample_site / "patterns/hat.html").as_uri() + ending)
    assert cast_on(page) == "Cast on 120 sts, 30 on each of 4 needles."
    page.evaluate("location.hash = 'size=small'")
    page.wait_for_function("document.getElementById('size--z0').checked")


@pytest.mark.parametrize("ending", ["?size=giant", "?size=", "#brim", "?size=all"])
def test_an_address_of_no_size_shows_all(sample_site: Path, page_at: Open, ending: str) -> None:
    page = page_at((sample_site / "patterns/hat.html").as_uri() + ending)
    assert page.get_by_label("All sizes").is_checked()


def test_a_size_is_chosen_where_storage_is_refused(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html")
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no', 'SecurityError'); }})"
    )
    page.reload()
    page.get_by_label("Adult M").check()
    assert page.url.endswith("?size=adult-m")
    page.reload()
    assert cast_on(page) == "Cast on 120 sts, 30 on each of 4 needles."


def test_a_size_is_chosen_with_the_keyboard_alone(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", javascript=False)
    page.get_by_label("All sizes").focus()
    page.keyboard.press("ArrowRight")
    assert page.get_by_label("Small", exact=True).is_checked()
    outline = page.locator("label:has(:focus-visible)").evaluate("label => getComputedStyle(label).outlineStyle")
    assert outline == "solid"


def test_paper_shows_the_choice_and_nothing_to_press(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html")
    page.get_by_label("Adult M").check()
    page.emulate_media(media="print")
    assert cast_on(page) == "Cast on 120 sts, 30 on each of 4 needles."
    assert text(page, ".pills") == "Adult M"
    for hidden in (".site-head nav", ".site-foot nav", ".actions", ".skip", ".contents"):
        assert page.locator(hidden).is_hidden(), hidden


def test_the_skip_link_is_first_and_leads_to_the_content(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html")
    page.keyboard.press("Tab")
    skip = page.locator(".skip")
    assert skip.evaluate("link => link === document.activeElement")
    box = skip.bounding_box()
    assert box is not None
    assert box["y"] >= 0
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "main"


# ------------------------------------------------------------------------------------------------------ the collection


def titles(page: Page) -> list[str]:
    return [link.inner_text() for link in page.locator(".card h2 a").all() if link.is_visible()]


@pytest.mark.parametrize("javascript", [True, False])
def test_the_collection_is_narrowed_by_kind_size_and_yarn(sample_site: Path, page_at: Open, javascript: bool) -> None:  # noqa: FBT001
    page = page_at(sample_site / "index.html", javascript=javascript)
    hat = 'Hat <one> & "two"'
    assert titles(page) == ["A plain cloth", hat, "Old shawl"]
    page.get_by_label("Size").select_option("Small")
    assert titles(page) == [hat, "Old shawl"]
    page.get_by_label("Yarn weight").select_option("lace")
    assert titles(page) == ["Old shawl"]
    page.get_by_label("Kind").select_option("hat")
    assert titles(page) == []
    page.get_by_role("button", name="Show all patterns").click()
    assert titles(page) == ["A plain cloth", hat, "Old shawl"]
    assert page.get_by_role("button", name="Show all patterns").is_hidden()


def test_the_collection_says_how_many_fit_and_keeps_the_choice_in_the_address(sample_site: Path, page_at: Open) -> None:
    page = page_at((sample_site / "index.html").as_uri() + "?kind=hat&size=nonsense")
    assert titles(page) == ['Hat <one> & "two"']
    assert page.get_by_role("status").inner_text() == "1 of 3 patterns fit"
    page.get_by_label("Kind").select_option("")
    assert page.get_by_role("status").inner_text() == "All 3 patterns"
    page.get_by_label("Size").select_option("Huge")
    assert page.url.endswith("index.html?size=huge")
    page.get_by_role("button", name="Show all", exact=True).click()
    page.wait_for_url("**/index.html")


def test_on_a_phone_the_row_of_the_chosen_size_is_seen_whole(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html", width=360, height=740)
    assert page.locator(".sizes thead").first.is_visible()
    page.get_by_label("Adult M").check()
    assert page.locator(".sizes thead").first.is_hidden()
    assert {row.get_attribute("class") for row in page.locator(".sizes tbody tr:visible").all()} == {"z z1"}
    cells = page.locator(".sizes td:visible")
    labels = cells.evaluate_all("cells => cells.map(cell => getComputedStyle(cell, '::before').content)")
    assert labels
    assert all(re.search(r"\w", label) for label in labels)
    beyond = "regions => regions.filter(one => one.scrollWidth > one.clientWidth).length"
    assert page.locator(".wide:has(.sizes)").evaluate_all(beyond) == 0


# ----------------------------------------------------------------------------------------------------------- every page


def test_a_page_is_no_wider_than_the_smallest_phone(served: str, page_at: Open) -> None:
    # 320 CSS pixels without scrolling in two directions: WCAG 2.1, 1.4.10 Reflow.
    page = page_at(f"{served}/index.html", width=320, height=640)
    widths = {name: seen(page, served, name).evaluate("document.documentElement.scrollWidth") for name in PAGES}
    assert {name: width for name, width in widths.items() if width > 320} == {}


def test_what_is_tapped_is_large_enough(served: str, page_at: Open) -> None:
    page = page_at(f"{served}/index.html", width=360, height=740)
    for name in PAGES:
        small = (
            seen(page, served, name)
            .locator(TARGETS)
            .evaluate_all(
                "(all, least) => all.filter(one => one.checkVisibility() && one.getBoundingClientRect().height < least)"
                ".map(one => one.outerHTML)",
                TAPPED,
            )
        )
        assert small == [], name


@pytest.mark.parametrize(("width", "dark"), [(1280, False), (360, True)])
def test_axe_finds_nothing(served: str, page_at: Open, width: int, dark: bool) -> None:  # noqa: FBT001
    """Each width and each set of colours: colours and places do not depend on each other."""
    page = page_at(f"{served}/index.html", width=width, dark=dark)
    for name in PAGES:
        assert hindrances(seen(page, served, name)) == [], name
        if name == "patterns/hat":
            page.get_by_label("Adult L").check()
            page.locator("details").evaluate_all("all => all.forEach(details => { details.open = true })")
            assert hindrances(page) == []


def seen(page: Page, served: str, name: str) -> Page:
    page.goto(f"{served}/{name}.html")
    return page


def test_the_site_works_below_a_path(served: str, page_at: Open) -> None:
    page = page_at(f"{served}/404.html")
    assert page.evaluate("getComputedStyle(document.body).fontFamily").startswith('"Atkinson Hyperlegible"')
    page.get_by_role("link", name="To all patterns").click()
    page.get_by_role("link", name="A plain cloth").click()
    assert page.url == f"{served}/patterns/cloth.html"
    page.get_by_role("link", name="CO", exact=True).click()
    assert page.url == f"{served}/abbreviations.html#term-co"


def test_the_typeface_is_the_sites_own(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html")
    loaded = page.evaluate(
        "document.fonts.ready.then(fonts => [...fonts].filter(one => one.status === 'loaded').length)"
    )
    assert loaded >= 2
