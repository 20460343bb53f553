"""A chart in mirror image: the same rows and words, worked from the other end, with signs that show what comes of it.

That a left-handed knitter who mirrors every movement makes the mirror image of the fabric, so that k2tog leans to the
left and a cable held in front crosses to the right, is common practice, no source. The reflection of signs is held
against the signs of the table for the other way, which were drawn by hand.
"""

import re
from xml.etree.ElementTree import fromstring

import pytest
from tests.draw.test_chart import ALL, CABLES, CHANGING, COLOURS, OLD_SHALE, charted, grid

from sizewright.draw.cable_symbols import cable_symbol
from sizewright.draw.chart import Frame, worked_in
from sizewright.draw.chart_mirror import mirrored, mirrored_symbol
from sizewright.draw.chart_svg import chart_svg
from sizewright.draw.chart_words import chart_notes, row_words
from sizewright.draw.symbols import SYMBOLS, Symbol, symbol_of
from sizewright.read.notation.cables import crossing_of


def strokes(path: str) -> set[frozenset[tuple[float, float]]]:
    """The straight lines of a path, as pairs of rounded points."""
    found, x, y = set(), 0.0, 0.0
    for command, written in re.findall(r"([Mlhv])([-\d. ]+)", path):
        numbers = [float(number) for number in re.findall(r"-?[\d.]+", written)]
        if command == "M":
            x, y = numbers
            continue
        steps = {"h": [*numbers, 0.0], "v": [0.0, *numbers]}.get(command, numbers)
        for across, down in zip(steps[::2], steps[1::2], strict=True):
            found.add(frozenset({(round(x, 1), round(y, 1)), (round(x + across, 1), round(y + down, 1))}))
            x, y = x + across, y + down
    return found


@pytest.mark.parametrize("name", ALL)
def test_the_same_stitches_are_worked_in_the_same_order(name: str) -> None:
    drawn = charted(ALL[name])
    for row, other in zip(drawn.rows, mirrored(drawn).rows, strict=True):
        assert [one.cell for one in worked_in(other)] == [one.cell for one in worked_in(row)]
        assert row_words(other) == row_words(row)
        assert other.from_left != row.from_left


def test_a_grid_is_reflected_with_its_frame() -> None:
    drawn = mirrored(charted(CHANGING, 3, 2))
    assert grid(drawn) == ["..#.#..", "./#.#\\.", ".......", "..O.O.."]  # k2tog, which comes last, stands on the right
    assert [one.cell.term for one in drawn.rows[2].cells] == ["k", "ssk", "k", "k2tog", "k"]
    assert drawn.frame == Frame(1, 5)
    edge = mirrored(charted("Row 1 (RS): *K2tog, yo; rep from * to last 3 sts, k3.\nRow 2: Purl.", 2, 3))
    assert grid(edge)[1] == "\\O..."
    assert edge.frame == Frame(0, 2)


@pytest.mark.parametrize(
    ("term", "other"),
    [("k2tog", "ssk"), ("k3tog", "sssk"), ("p2tog", "ssp"), ("p3tog", "sssp"), ("m1l", "m1r"), ("s2kp", "s2kp")],
)
def test_a_sign_becomes_that_of_the_other_way(term: str, other: str) -> None:
    symbol, wanted = symbol_of(term, wrong_side=False), symbol_of(other, wrong_side=False)
    assert symbol is not None
    assert wanted is not None
    turned = mirrored_symbol(symbol)
    assert (strokes(turned.lines), turned.name) == (strokes(wanted.lines), wanted.name)


@pytest.mark.parametrize(("term", "other"), [("C4F", "C4B"), ("C6B", "C6F"), ("2/1 LPC", "2/1 RPC"), ("LT", "RT")])
def test_a_crossing_becomes_the_other_one(term: str, other: str) -> None:
    turned, wanted = (cable_symbol(found, term, wrong_side=False) for found in map(crossing_of, (term, other)) if found)
    assert strokes(mirrored_symbol(turned).lines) == strokes(wanted.lines)
    assert mirrored_symbol(turned).name == wanted.name


def test_reflected_twice_a_sign_is_what_it_was() -> None:
    def numbers(symbol: Symbol) -> list[float]:
        return [float(number) for number in re.findall(r"-?[\d.]+", symbol.lines + " " + symbol.filled)]

    for symbol in SYMBOLS:
        again = mirrored_symbol(mirrored_symbol(symbol))
        assert numbers(again) == pytest.approx(numbers(symbol))
        assert again.name == symbol.name


def test_a_round_stays_round() -> None:
    """An arc of SVG keeps its bow when its direction and its sweep both change (SVG 2, 9.5.1)."""
    ring = mirrored_symbol(next(symbol for symbol in SYMBOLS if symbol.name == "yarn over"))
    assert ring.lines == "M15.5 10a5.5 5.5 0 1 1 -11 0a5.5 5.5 0 1 1 11 0z"


def test_the_key_and_the_notes_say_what_is_other() -> None:
    words = [entry.words for entry in mirrored(charted(OLD_SHALE, 18, 6)).key]
    assert words == ["knit on RS, purl on WS", "knit on WS", "k2tog (leans to the left)", "yarn over"]
    cable = [entry.words for entry in mirrored(charted(CABLES, 6, 2)).key if "C4F" in entry.words]
    assert cable == ["C4F: slip 2 to a cable needle, hold in front, k2, then k2 from it (crosses to the right)"]
    notes = list(chart_notes(mirrored(charted(OLD_SHALE, 18, 6))))
    assert "in mirror image" in notes[0]
    assert notes[1] == "Read RS rows from left to right and WS rows from right to left."


def test_numbers_and_letters_stand_the_right_way_round() -> None:
    svg = chart_svg(mirrored(charted(COLOURS, 4)), {}, 1)
    assert "scale(" not in svg
    drawn = fromstring(svg)  # noqa: S314 -- our own output
    texts = [
        (str(one.get("x")).split()[0], one.get("text-anchor"), str(one.text))
        for one in drawn.iter("{http://www.w3.org/2000/svg}text")
    ]
    stitches = [(float(x), text) for x, anchor, text in texts if anchor == "middle"]
    assert [text for _, text in sorted(stitches)] == ["1", "2", "3", "4"]
    rounds = {text: float(x) for x, anchor, text in texts if anchor == "end"}
    assert list(rounds) == ["1", "2", "3"]
    assert max(rounds.values()) < 30, "rounds now begin at the left"
    # The stitch in the main colour was the last of its round, at the left; now it is the last at the right.
    assert max(float(x) for x, _, text in texts if text == "M") > max(float(x) for x, _, text in texts if text == "CCC")


def test_a_row_is_told_under_its_own_number_and_side() -> None:
    lace = "Rows 1 and 3 (RS): *Yo, k2tog; rep from * to end.\nAll WS rows: Purl."
    drawn = charted(f"{lace}\nRow 5: As Row 1.".replace("All WS", "Row 2 and all WS"), 2)
    assert ["".join(map(str, row_words(row).whole)) for row in drawn.rows] == [
        "Row 1 (RS): *Yo, k2tog; rep from * to end.",
        "Row 2 (WS): Purl.",
        "Row 3 (RS): *Yo, k2tog; rep from * to end.",
        "Row 4 (WS): Purl.",
        "Row 5 (RS): *Yo, k2tog; rep from * to end.",
        "Row 6 (WS): Purl.",
    ]
