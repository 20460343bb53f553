"""Charts and cloth as SVG: well formed, named, small, legible on any ground; colours and words for what is seen.

What a drawing must carry to be read aloud (role, title) is WCAG 2.2, 1.1.1; contrast of signs is 1.4.11 (3 to 1).
"""

import re
from xml.etree.ElementTree import Element, fromstring

import pytest
from tests.draw.test_chart import ALL, CABLES, COLOURS, OLD_SHALE

from sizewright.draw.cloth_layout import laid_out
from sizewright.draw.cloth_svg import LARGEST, Extent, cloth_svg
from sizewright.draw.cloth_words import textures
from sizewright.draw.drawings import DrawnChart, StitchDrawings, piece_drawing, stitch_drawings
from sizewright.draw.svg_parts import is_dark
from sizewright.draw.yarn_colours import lit, shaded, yarn_colours
from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.cloth import Cloth, piece_cloth
from sizewright.work.run import work
from sizewright.work.worked import Worked

NAMESPACE = "{http://www.w3.org/2000/svg}"
HEADER = """title: A <b> & "c"
gauge: {stitches: 20 st / 10 cm, rows: 28 row / 10 cm}
sizes: {S: {}, M: {}, L: {}}
"""


def worked(body: str, header: str = HEADER) -> Worked:
    project = read_text(f"---\n{header}---\n{body}", "a.md")
    assert project.findings == ()
    return work(grade(project.patterns[0]))


def stitch(lines: str, header: str = HEADER) -> StitchDrawings:
    (drawings,) = stitch_drawings(worked(f"```stitch A <b> & c\n{lines}\n```\n", header)).values()
    return drawings


def cloth(lines: str) -> Cloth:
    found = piece_cloth(worked(f"```work\n{lines}\n```\n").graded, 0)
    assert found is not None
    return found


def element(text: str) -> Element:
    return fromstring(text)  # noqa: S314 -- our own output


def parsed(text: str) -> Element:
    """The drawing, which has a role and a title and shows its own colours only."""
    drawing = element(text)
    assert drawing.tag == f"{NAMESPACE}svg"
    title = drawing.find(f"{NAMESPACE}title")
    assert title is not None
    assert title.text
    assert not re.search(r"currentColor|var\(|filter|foreignObject|url\(", text)
    return drawing


@pytest.mark.parametrize("name", ALL)
def test_charts_are_well_formed_and_named(name: str) -> None:
    drawn = stitch(ALL[name]).chart
    assert drawn is not None
    drawing = parsed(drawn.svg)
    assert drawing.get("role") == "img"
    assert "A <b> & c" in str(drawing.findtext(f"{NAMESPACE}title"))
    assert "written rows" in str(drawing.findtext(f"{NAMESPACE}desc"))
    for sign, words in drawn.key:
        assert parsed(sign).findtext(f"{NAMESPACE}title") == f"Sign: {words}"
    assert len(drawn.svg) < LARGEST


def test_row_numbers_stand_where_a_row_begins() -> None:
    drawn = stitch(OLD_SHALE).chart
    assert drawn is not None
    texts = parsed(drawn.svg).iter(f"{NAMESPACE}text")
    places = {text.text: (text.get("text-anchor"), float(str(text.get("x")))) for text in texts}
    assert [places[number][0] for number in "1234"] == ["middle", "end", "start", "end"]  # 1 is a stitch number too
    assert places["3"][1] > places["20"][1] > places["2"][1]


def test_colours_are_never_alone() -> None:
    drawn = stitch(COLOURS).chart
    assert drawn is not None
    letters = "".join(text.text or "" for text in parsed(drawn.svg).iter(f"{NAMESPACE}text"))
    assert (letters.count("M"), letters.count("C")) == (6, 6)
    assert [words for _, words in drawn.key][-2:] == ["main", "contrast"]


def test_a_block_that_cannot_be_drawn_is_only_words() -> None:
    project = read_text("---\ntitle: A\n---\n```stitch X\nRow 1: Frobble.\n```\n", "a.md")
    (drawings,) = stitch_drawings(work(grade(project.patterns[0]))).values()
    assert drawings == StitchDrawings(None, None, None)
    uneven = stitch("Row 1 (RS): *K1, p1; rep from * to end.\nRow 2: *K1, p1; rep from * to last st, k1.")
    assert uneven == StitchDrawings(None, None, None)


@pytest.mark.parametrize("name", ALL)
def test_pictures_of_stitch_patterns_are_well_formed_and_small(name: str) -> None:
    drawn = stitch(ALL[name]).cloth
    assert drawn is not None
    for text in (drawn.svg, drawn.paper):
        drawing = parsed(text)
        assert drawing.findtext(f"{NAMESPACE}title") == drawn.words
        assert len(text) <= LARGEST
        there = {str(element.get("id")) for element in drawing.iter() if element.get("id")}
        used = {str(use.get("href")).removeprefix("#") for use in drawing.iter(f"{NAMESPACE}use")}
        assert used == there  # nothing is drawn in vain, nothing is missing


def test_a_picture_shows_every_stitch_of_every_row() -> None:
    """However rows and stretches are shared, each knit stitch is drawn once, at its place."""
    shown = cloth("Cast on 31 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nRow 3: K25, cast on 2 sts, k6.\nRow 4: Purl.")
    text = cloth_svg(shown, {"": "#997755"}, ratio=0.7, name="A", swatch=True, extent=Extent(48, 60))
    drawing = parsed(text)
    groups = {str(group.get("id")): group for group in drawing.iter(f"{NAMESPACE}g")}

    def feet(element: Element) -> list[float]:
        """Where the feet of the stitches below an element stand, from its left end."""
        bodies = [path for path in element.findall(f"{NAMESPACE}path") if path.get("stroke-width") == "2.2"]
        found = [float(x) for path in bodies for x in re.findall(r"M(-?[0-9]+) ", str(path.get("d")))][::2]
        for use in element.findall(f"{NAMESPACE}use"):
            inside = groups[str(use.get("href")).removeprefix("#")]
            found += [float(use.get("x", "0")) + place for place in feet(inside)]
        return found

    rows = drawing.findall(f"{NAMESPACE}use")
    for use, count in zip(rows, (31, 31, 33, 33), strict=True):
        places = sorted(feet(groups[str(use.get("href")).removeprefix("#")]))
        assert places == [20 + 40 * place for place in range(count)]


def test_an_edge_has_paper_beyond_it_and_a_part_has_none() -> None:
    flat = cloth("Cast on 20 sts.\nRows 1 to 10: Knit.\nBind off all sts.")
    tube = cloth("Cast on 20 sts. Join in the round.\nRnds 1 to 10: Knit.")
    tall = cloth("Cast on 90 sts.\nRows 1 to 99: Knit.")
    assert laid_out(flat, 48, swatch=False).goes_on == (False, False, False, False)
    assert laid_out(tube, 48, swatch=False).goes_on == (True, True, False, False)
    assert laid_out(tall, 48, swatch=False).goes_on == (True, False, False, True)
    assert laid_out(flat, 48, swatch=True).goes_on == (True, True, True, True)
    assert (laid_out(tall, 48, swatch=False).left, laid_out(tall, 48, swatch=False).right) == (42, 90)


def test_shaping_moves_rows_and_lace_makes_waves() -> None:
    left = cloth("Cast on 8 sts.\nRow 1 (RS): K6, k2tog.\nRow 2: Purl.\nRow 3: K5, k2tog.")
    assert laid_out(left, 48, swatch=False).starts == (1, 1, 2)  # what is lost at the left end narrows it there
    waves = laid_out(cloth(f"Cast on 24 sts.\n{OLD_SHALE}"), 48, swatch=False).lifts
    assert waves.index(min(waves)) in range(10, 14)  # highest where it is widened, in the middle of the yarn overs
    assert laid_out(cloth("Cast on 9 sts.\nRow 1: Knit."), 48, swatch=False).lifts == ()


SEEN = {
    "Row 1 (RS): Knit.\nRow 2: Knit.\nRow 3: Knit.": ("garter stitch",),
    "Row 1 (RS): Knit.\nRow 2: Purl.\nRow 3: Knit.": ("stockinette stitch",),
    "Row 1 (RS): Purl.\nRow 2: Knit.\nRow 3: Purl.": ("reverse stockinette stitch",),
    "Row 1 (RS): *K1, p1; rep from *.\nRow 2: *K1, p1; rep from *.": ("ribbing",),
    "Row 1 (RS): *K1, p1; rep from *.\nRow 2: *P1, k1; rep from *.": ("knit and purl stitches in turn",),
    "Row 1 (RS): K2, C4F, k2.\nRow 2: Purl.": ("cables",),
    "Row 1 (RS): K2, yo, k2tog, k4.\nRow 2: Purl.": ("eyelets",),
}


@pytest.mark.parametrize("lines", SEEN)
def test_the_words_for_a_cloth(lines: str) -> None:
    assert set(SEEN[lines]) <= set(textures(cloth(f"Cast on 8 sts.\n{lines}")))


def test_the_picture_of_a_piece_is_of_the_middle_size() -> None:
    drawn = piece_drawing(worked("```work\nCast on 8 (10, 12) sts.\nRow 1: Knit.\nRow 2: Knit.\n```\n"))
    assert drawn is not None
    assert drawn == piece_drawing(worked("```work\nCast on 10 sts.\nRow 1: Knit.\nRow 2: Knit.\n```\n"))
    assert drawn != piece_drawing(worked("```work\nCast on 8 sts.\nRow 1: Knit.\nRow 2: Knit.\n```\n"))
    assert drawn.words == 'The cloth of A <b> & "c", drawn from its rows: garter stitch'
    assert parsed(drawn.svg).findtext(f"{NAMESPACE}title") == drawn.words


def test_a_piece_that_cannot_be_worked_is_not_drawn() -> None:
    assert piece_drawing(worked("Words.\n")) is None
    assert piece_drawing(worked("```work\nCast on 8 sts.\nRow 1: K9.\n```\n")) is None


def test_a_picture_that_would_be_too_long_shows_less() -> None:
    lines = [
        f"Row {number}: {', '.join(f'k{1 + (number * place) % 3}, p1' for place in range(9))}, k to end."
        for number in range(1, 60)
    ]
    shown = cloth("Cast on 48 sts.\n" + "\n".join(lines))
    text = cloth_svg(shown, {"": "#997755"}, ratio=0.7, name="A", swatch=False, extent=Extent(48, 60))
    assert len(text) <= LARGEST
    assert parsed(text).findall(f"{NAMESPACE}use")


YARNS = """title: A
yarn:
  main: {colour: "Deepwater, dark", shade: "#1F3A5F"}
  second: {colour: Pale grey, called: [CC, B]}
  third: {colour: Frobnitz}
  fourth: {colour: Nothing known}
"""


def test_the_colours_of_yarns() -> None:
    yarns = worked("Words.\n", YARNS).graded.pattern.header.yarns
    found = yarn_colours(yarns, ("", "main", "MC", "CC", "second", "B", "third", "fourth", "other", "dark teal"))
    assert {found[name] for name in ("", "main", "MC")} == {"#1f3a5f"}
    assert found["CC"] == found["second"] == found["B"] == lit("#9a9a98", 0.4)
    assert found["dark teal"] == shaded("#2b7377", 0.55)
    assert len({found[name] for name in ("main", "second", "third", "fourth", "other")}) == 5


def test_a_shade_is_a_colour_or_it_is_told() -> None:
    header = YARNS.replace('"#1F3A5F"', "blue")
    (finding,) = read_text(f"---\n{header}---\n", "a.md").findings
    assert finding.rule == "wrong-value"
    assert '"#2b7377"' in finding.mend


@pytest.mark.parametrize("colour", ["#ffffff", "#1f3a5f", "#777777", "#b0562f", "#2d2c2e", "#e6c34c"])
def test_signs_can_be_seen_on_any_colour(colour: str) -> None:
    ink = "#ffffff" if is_dark(colour) else "#1b1b1b"
    light, dark = sorted((luminance(colour), luminance(ink)), reverse=True)
    assert (light + 0.05) / (dark + 0.05) >= 3


def luminance(colour: str) -> float:
    """Relative luminance, WCAG 2.2."""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize("colour", ["#ffffff", "#000000", "#1f3a5f"])
def test_lights_and_shadows_are_colours(colour: str) -> None:
    assert luminance(shaded(colour, 0.7)) <= luminance(colour) <= luminance(lit(colour, 0.3))


def test_a_cable_crosses_on_the_cloth() -> None:
    """The stitches that cross in front are drawn later than those behind, and both lean."""
    drawn = stitch(CABLES).cloth
    plain = stitch(CABLES.replace("C4F", "k4")).cloth
    assert drawn is not None
    assert plain is not None
    assert drawn.words.endswith("cables")
    assert drawn.svg != plain.svg


def test_a_yarn_has_one_shade_in_every_drawing_of_its_pattern() -> None:
    header = "title: A\nyarn: {main: {colour: Peat}, contrast: {colour: Bogcotton}}\n"
    yarns = worked("Words.\n", header).graded.pattern.header.yarns
    first, second = (yarn_colours(yarns, names) for names in (("MC", "CC"), ("CC", "MC")))
    assert first == second
    assert first["MC"] != first["CC"]


def drawn_chart(lines: str, header: str = HEADER) -> DrawnChart:
    drawn = stitch(lines, header).chart
    assert drawn is not None
    return drawn


def test_row_numbers_that_stay_in_view_leave_the_frame_whole() -> None:
    """Half of its line lies beside the grid at the edge of the chart: no ground of numbers covers it."""
    drawn = drawn_chart("Rnd 1 (MC): *K2; rep from * to end.\nRnd 2 (CC): *K1, p1; rep from * to end.")
    chart, (gutter,) = element(drawn.svg), map(element, drawn.gutters)
    (frame,) = (one for one in chart.iter(f"{NAMESPACE}path") if one.get("stroke-width") == "3.2")
    ground = gutter.find(f"{NAMESPACE}path")
    assert ground is not None
    numbers = [[float(part) for part in re.split(r"[Mhv ]", one.get("d", ""))[1:4]] for one in (frame, ground)]
    (x, _, width), (begins, _, _) = numbers
    sides = [float(one.get("viewBox", "").split()[2]) for one in (chart, gutter)]
    assert x + width + 1.6 <= sides[0] - sides[1] + begins


def test_a_yarn_of_a_key_says_more_than_its_letters() -> None:
    lines = "Rnd 1 (MC): *K2; rep from * to end.\nRnd 2 (CC): *K2; rep from * to end."
    header = f"{HEADER}yarn: {{main: {{fibre: wool}}, contrast: {{fibre: wool, colour: Moss green}}}}\n"
    for told, words in ((HEADER, ["main colour", "contrast colour"]), (header, ["main colour", "Moss green"])):
        assert [entry[1] for entry in drawn_chart(lines, told).key][-2:] == words
