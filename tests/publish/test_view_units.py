"""In: small patterns. Out: each unit system in an element of its own, so that leaving one out loses nothing."""

from collections.abc import Callable

import pytest
from bs4 import BeautifulSoup

from sizewright.publish.view import PatternView

ViewOf = Callable[[str, str], PatternView]
OTHER = {"metric": ".imperial, .between", "imperial": ".metric, .between"}


def left(html: str, system: str) -> str:
    """What is left for a reader of one system."""
    soup = BeautifulSoup(html, "html.parser")
    for element in soup.select(OTHER[system]):
        element.extract()
    return " ".join(soup.get_text().split())


def left_of_needle(html: str, system: str) -> str:
    """As the style sheet leaves a needle: its label in one system, its millimetres where it has none there."""
    soup = BeautifulSoup(html, "html.parser")
    for size in soup.select(".needle-size"):
        shown = system if size.select(f".{system}") else "mm"
        for element in size.find_all("span", recursive=False):
            if shown not in element["class"]:
                element.extract()
    return soup.get_text()


@pytest.mark.parametrize(
    ("gauge", "metric", "imperial"),
    [
        # 4 in are 10.16 cm (16 CFR 500.19(a)): 22 sts over 10 cm are 22.352 over 4 in, 18 over 4 in 17.717 over 10 cm.
        ("{stitches: 22 st / 10 cm, rows: 30 rnd / 10 cm}", "", "; that is about 22¼ sts and 30½ rnds over 4 in"),
        ("{stitches: 18 st / 4 in}", "; that is about 17¾ sts over 10 cm", ""),
        ("{rows: 30 row / 10 cm}", "", "; that is about 30½ rows over 4 in"),
        ("{stitches: 12.5 st / 10 cm}", "", "; that is about 12¾ sts over 4 in"),
        # 20 in are 50.8 cm: 127 sts over it are exactly 25 over 10 cm
        ("{stitches: 127 st / 20 in}", "; that is 25 sts over 10 cm", ""),
        ("{stitches: 18 st / 4 in, rows: 24 row / 10 cm}", "", ""),
    ],
)
def test_a_gauge_stays_what_was_stated(view_of: ViewOf, gauge: str, metric: str, imperial: str) -> None:
    (seen,) = view_of(f"gauge: {gauge}\n", "").gauges
    assert "<" not in seen.counts
    assert (left(seen.again, "metric"), left(seen.again, "imperial")) == (metric, imperial)


def test_yarn_is_told_in_either_system(view_of: ViewOf) -> None:
    header = "yarn: {weight: light, length: 105 m, mass: 50 g, swatch: {stitches: 100 st, length: 21 m}}\n"
    view = view_of(header, "```work\nCast on 100 sts.\nRow 1: Knit.\n```")
    (fact,) = view.yarns[0].facts
    assert (left(fact, "metric"), left(fact, "imperial")) == ("105 m per 50 g", "115 yd per 1.76 oz")
    assert left(view.amount_notes[0], "imperial").endswith("a swatch of 100 sts that took 23 yd.")
    assert view.amounts is not None
    assert [left(cell, "metric") for cell in view.amounts.rows[0].cells] == ["42 m", "20 g", "1"]
    assert [left(cell, "imperial") for cell in view.amounts.rows[0].cells] == ["46 yd", "0.8 oz", "1"]


def test_measurements_ease_and_numbers_of_the_text(view_of: ViewOf) -> None:
    header = "sizes: {S: {head: 50 cm}, M: {head: 55 cm}}\nfinished: [{label: Brim, value: head - 5 cm, body: head}]\n"
    view = view_of(
        header,
        "{head / 10}, {head:cm}, {2 * 3}\n\n```schematic\nstrip = rectangle(width = head, length = head)\n```\n",
    )
    assert view.table is not None
    cells = view.table.rows[1].cells
    assert [left(cell, "metric") for cell in cells] == ["55 cm", "50 cm", "−5 cm"]
    assert [left(cell, "imperial") for cell in cells] == ["21¾ in", "19¾ in", "−2 in"]
    text, schematic = view.body.parts
    assert left(str(text.html), "metric") == "5 (5.5) cm, 50 (55) cm, 6"
    # A length asked for in one unit has no other beside it, and stays.
    assert left(str(text.html), "imperial") == "2 (2¼) in, 50 (55) cm, 6"
    assert schematic.schematic is not None
    drawing = schematic.schematic.pieces[0].drawing
    assert left(drawing, "metric").endswith("A 50 (55) cmB 50 (55) cmA 50 cmB 50 cmA 55 cmB 55 cm")
    assert left(drawing, "imperial").endswith("A 21¾ inB 21¾ in")


@pytest.mark.parametrize(
    ("typed", "mm", "us", "uk"),
    [
        # The published table: 4 mm is US 6 and UK 8; 3.5 mm is US 4 and has no UK label (base/needle_sizes.py).
        ("4 mm circular needle", "4 mm circular needle", "US 6 circular needle", "UK 8 circular needle"),
        ("3.5 mm needles", "3.5 mm needles", "US 4 needles", "3.5 mm needles"),
        ("Circular (4 mm), 40 cm long", *(f"Circular ({one}), 40 cm long" for one in ("4 mm", "US 6", "UK 8"))),
        ("3.5 to 4 mm <b>", *["3.5 to 4 mm <b>"] * 3),
    ],
)
def test_a_needle_is_told_by_one_label_or_by_its_millimetres(
    view_of: ViewOf, typed: str, mm: str, us: str, uk: str
) -> None:
    (needle,) = view_of(f"needles: ['{typed}']\n", "").needles
    assert [left_of_needle(needle, system) for system in ("mm", "us-size", "uk-size")] == [mm, us, uk]
