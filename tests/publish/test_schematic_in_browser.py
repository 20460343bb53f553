"""In: the schematic of the sample hat in Chromium. Out: a chosen size alone, nothing shrunk, no label in another."""

from collections.abc import Callable
from itertools import combinations
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

Open = Callable[..., Page]
# What is far down is laid out little by little, and until then everything below it moves.
LAID_OUT = "!document.querySelector('.content > section:not(.unfolded), .instructions > :not(.unfolded)')"


def visible(page: Page, selector: str) -> list[Locator]:
    return [one for one in page.locator(selector).all() if one.is_visible()]


def labels(page: Page) -> list[str]:
    return [" ".join((one.text_content() or "").split()) for one in visible(page, ".schematic text")]


@pytest.mark.parametrize("javascript", [True, False])
def test_one_size_alone_is_drawn_with_its_values(sample_site: Path, page_at: Open, javascript: bool) -> None:  # noqa: FBT001
    page = page_at(sample_site / "patterns/hat.html", javascript=javascript)
    assert len(visible(page, ".schematic .outline")) == 6
    assert labels(page) == [
        "A 45.5 (54, 57.5) cm / 18 (21¼, 22¾) in",
        "B 20 (22, 23) cm / 7¾ (8¾, 9) in",
        "C 7 cm / 2¾ in",
        "D 4 cm / 1½ in",
        "E 8 (9, 9) cm / 3¼ (3½, 3½) in",
        "F 6 (6, 7) cm / 2¼ (2¼, 2¾) in",
    ]
    page.get_by_label("Adult L", exact=True).check()
    assert len(visible(page, ".schematic .outline")) == 2
    assert labels(page) == [
        "A 57.5 cm / 22¾ in",
        "B 23 cm / 9 in",
        "C 7 cm / 2¾ in",
        "D 4 cm / 1½ in",
        "E 9 cm / 3½ in",
        "F 7 cm / 2¾ in",
    ]
    page.get_by_label("All sizes", exact=True).check()
    assert labels(page)[0] == "A 45.5 (54, 57.5) cm / 18 (21¼, 22¾) in"


def test_the_table_has_what_the_drawing_shows(sample_site: Path, page_at: Open) -> None:
    page = page_at(sample_site / "patterns/hat.html")
    page.get_by_label("Small", exact=True).check()
    expect(page.locator(".edges")).to_contain_text("Around", use_inner_text=True)
    rows = [" ".join(row.inner_text().split()) for row in visible(page, ".edges tbody tr:has(td)")]
    assert rows[0] == "A Around 45.5 cm / 18 in"
    assert rows[-1] == "F Length 6 cm / 2¼ in"
    named = [" ".join(row.inner_text().split()) for row in visible(page, ".edges tbody tr:not(:has(td))")]
    assert named == ["Hat", "Ear flap"]


@pytest.mark.parametrize("width", [320, 1280])
@pytest.mark.parametrize("size", ["All sizes", "Small", "Adult M"])
def test_drawings_keep_their_scale_and_their_labels_apart(
    sample_site: Path, page_at: Open, width: int, size: str
) -> None:
    page = page_at(sample_site / "patterns/hat.html")
    page.set_viewport_size({"width": width, "height": 900})
    page.get_by_label(size, exact=True).check()
    page.wait_for_function(LAID_OUT)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    for drawing in page.locator("svg.piece").all():
        box = drawing.bounding_box()
        assert box is not None
        assert box["width"] == pytest.approx(float(drawing.get_attribute("width") or 0), abs=0.1)
        boxes = [one.bounding_box() for one in drawing.locator("text").all() if one.is_visible()]
        found = [one for one in boxes if one is not None]
        assert len(found) == len(boxes) >= 2
        for one in found:
            assert one["x"] >= box["x"] - 0.1
            assert one["y"] >= box["y"] - 0.1
            assert one["x"] + one["width"] <= box["x"] + box["width"] + 0.1
            assert one["y"] + one["height"] <= box["y"] + box["height"] + 0.1
        for one, other in combinations(found, 2):
            beside = one["x"] + one["width"] <= other["x"] or other["x"] + other["width"] <= one["x"]
            above = one["y"] + one["height"] <= other["y"] or other["y"] + other["height"] <= one["y"]
            assert beside or above


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_lines_and_words_of_a_drawing_have_the_colours_of_the_page(
    sample_site: Path, page_at: Open, scheme: str
) -> None:
    page = page_at(sample_site / "patterns/hat.html")
    page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
    ink = page.evaluate("getComputedStyle(document.body).color")
    for selector, of in ((".piece text", "fill"), (".piece .outline", "stroke"), (".piece .dimension", "stroke")):
        drawn = page.locator(selector).first.evaluate(f"one => getComputedStyle(one).{of}")
        assert drawn == ink
