"""In: schematics of made-up measurements. Out: read back from the SVG they are to scale, legible and in the picture.

Scale is held by ratio: every line of a measurement to the exact value it stands for, in every size and piece of one
schematic. The measurements are no product of the program; the values in print are those of `base/printing.py`.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from tests.draw.drawn_back import Shown, outlines, root_of, shown
from tests.draw.written import graded, graded_schematic

from sizewright.base.printing import Series, as_text, printed
from sizewright.base.units import LENGTH
from sizewright.draw.dimension_lines import Box, Label, Placed
from sizewright.draw.schematic import WIDE, Drawing, drawing_of
from sizewright.draw.schematic_svg import figure_svg
from sizewright.grade.graded import Schematic
from sizewright.grade.schematic.shape import Side
from sizewright.grade.schematic.table import SHAPES

THOROUGH = settings(derandomize=True, max_examples=25, deadline=None)
NEAR = 0.004  # px: two ends, each written to a thousandth

PANEL = {
    "width": 52,
    "length": 60,
    "neck": 17,
    "neck_depth": 8,
    "armhole": 20,
    "shoulders": 38,
    "slope": 3,
    "hem": 50,
    "ribbing": 5,
}
HALF_PANEL = {**PANEL, "width": 25, "neck": 8, "shoulders": 18, "hem": 24}

# Usual measurements of every shape in cm, all its edges given; of no one in particular.
USUAL = {
    "rectangle": {"width": 20, "length": 150},
    "triangle": {"width": 150, "depth": 70},
    "circle": {"across": 100},
    "tube": {"around": 60, "length": 25, "hem": 66, "ribbing": 3},
    "hat": {"around": 50, "height": 22, "crown": 8, "brim": 5},
    "mitten": {
        "hand": 20,
        "length": 19,
        "cuff": 7,
        "cuff_around": 18,
        "top": 5,
        "thumb": 7,
        "thumb_height": 6,
        "thumb_length": 6,
    },
    "sock": {"leg": 15, "leg_around": 21, "foot": 25, "foot_around": 22, "heel": 6, "toe": 5, "ribbing": 4},
    "body": {"chest": 100, "length": 38, "hem": 96, "waist": 88, "waist_height": 18, "ribbing": 6},
    "front": PANEL,
    "v_front": {**PANEL, "neck_depth": 22},
    "back": {**PANEL, "neck_depth": 2},
    **{f"{side}_front": HALF_PANEL for side in ("left", "right")},
    **{f"v_{side}_front": {**HALF_PANEL, "neck_depth": 22} for side in ("left", "right")},
    "sleeve": {"cuff": 20, "upper_arm": 34, "length": 45, "cap": 13, "cap_top": 7, "ribbing": 5},
    "yoke": {"neck": 50, "depth": 22, "bottom": 140},
    "raglan": {"neck": 48, "depth": 23, "chest": 100, "upper_arm": 34},
}

# What lies folded, so that a line is half of what goes around. A sleeve with a cap lies open.
AROUND = {
    "tube": {"around", "hem"},
    "hat": {"around"},
    "mitten": {"hand", "cuff_around", "thumb"},
    "sock": {"leg_around", "foot_around"},
    "body": {"chest", "hem", "waist"},
    "yoke": {"neck", "bottom"},
    "raglan": {"neck", "chest", "upper_arm"},
}


def written(name: str, shape: str, edges: Mapping[str, Sequence[Fraction]]) -> str:
    """A piece as its source has it; as many values as sizes, smallest first."""
    given_edges = (
        f"{edge} = {values[0]}{' (' + ', '.join(map(str, values[1:])) + ')' if values[1:] else ''} cm"
        for edge, values in edges.items()
    )
    return f"{name} = {shape}({', '.join(given_edges)})"


def grown(edges: dict[str, int], parts: Sequence[Fraction]) -> dict[str, list[Fraction]]:
    """Edges in several sizes, each a part of the usual ones, so that no shape becomes impossible."""
    return {edge: [value * part for part in parts] for edge, value in edges.items()}


def drawn(schematic: Schematic) -> Drawing:
    drawing = drawing_of(schematic, metric_first=True)
    assert drawing is not None
    return drawing


def held_to_scale(drawing: Drawing, schematic: Schematic) -> list[tuple[str, float, float]]:
    """Every line that is not as long as its measurement at the drawing's scale: the edge, what it is and should be."""
    by_letter = {one.letter: one for one in drawing.legend}
    wrong = []
    for piece, figure in zip(schematic.pieces, drawing.figures, strict=True):
        for group in shown(root_of(figure_svg(figure, "t"))):
            place = place_of(group, drawing, piece.name)
            for measure in group.measures:
                edge = by_letter[measure.letter].edge
                share = 0.5 if edge.edge.name in AROUND.get(piece.shape.name, ()) else 1.0
                meant = float(edge.values.values[place]) * drawing.scale * share
                if abs(measure.length - meant) > NEAR:
                    wrong.append((f"{piece.name}.{edge.edge.name}", measure.length, meant))
    return wrong


def place_of(group: Shown, drawing: Drawing, piece: str) -> int:
    """The size a group measures: its own, or the one with the largest outline where it stands for all."""
    if "zo" in group.classes:
        return int(group.classes[1][1:])
    return next(figure for figure in drawing.figures if figure.name == piece).traces[0].place


@pytest.mark.parametrize("shape", SHAPES)
def test_every_shape_is_to_scale_in_every_size_with_all_its_edges(shape: str) -> None:
    sizes = grown(USUAL[shape], [Fraction(4, 5), Fraction(1), Fraction(23, 20)])
    schematic = graded_schematic([written("piece", shape, sizes)], 3)
    drawing = drawn(schematic)
    assert {one.edge.edge.name for one in drawing.legend} == {edge.name for edge in SHAPES[shape].edges}
    groups = shown(root_of(figure_svg(drawing.figures[0], "t")))
    assert [group.classes for group in groups] == [("zp",), ("zo", "z0"), ("zo", "z1"), ("zo", "z2")]
    assert all(len(group.measures) == len(drawing.legend) for group in groups)
    assert held_to_scale(drawing, schematic) == []


@pytest.mark.parametrize("shape", SHAPES)
def test_every_measurement_is_taken_between_points_of_the_drawing(shape: str) -> None:
    schematic = graded_schematic([written("piece", shape, grown(USUAL[shape], [Fraction(1)]))], 1)
    (outline,) = schematic.pieces[0].outlines.values()
    corners = [step[-1] for path in (outline.closed, *outline.lines) for step in ((path.start,), *path.steps)]
    for one in outline.dimensions:
        axis = 0 if one.side in (Side.ABOVE, Side.BELOW) else 1
        ends = {one.start[axis], one.end[axis]}
        assert ends <= {corner[axis] for corner in corners}, one.edge
        assert one.length == USUAL[shape][one.edge] * one.share


def test_a_wrong_line_is_seen() -> None:
    schematic = graded_schematic(["hat = hat(around = 50 cm, height = 22 cm)"], 1)
    drawing = drawn(schematic)
    other = graded_schematic(["hat = hat(around = 50 cm, height = 22.1 cm)"], 1)
    assert [name for name, _, _ in held_to_scale(drawing, other)] == []
    moved = Drawing(drawing.figures, drawing.scale * 1.001, drawing.legend, drawing.folded)
    assert [name for name, _, _ in held_to_scale(moved, schematic)] == ["hat.around", "hat.height"]


def test_outlines_stand_to_one_another_as_their_measurements() -> None:
    pieces = [
        written(
            "scarf", "rectangle", {"width": [Fraction(20), Fraction(31)], "length": [Fraction(150), Fraction(173)]}
        ),
        written("cowl", "tube", {"around": [Fraction(60), Fraction(64)], "length": [Fraction(25), Fraction(26)]}),
    ]
    scarf, cowl = (outlines(root_of(figure_svg(one, "t"))) for one in drawn(graded_schematic(pieces, 2)).figures)
    widths = [box[2] - box[0] for box in (scarf["z0"], scarf["z1"], cowl["z0"], cowl["z1"])]
    heights = [box[3] - box[1] for box in (scarf["z0"], scarf["z1"], cowl["z0"], cowl["z1"])]
    unit = heights[0] / 150
    assert widths == pytest.approx([20 * unit, 31 * unit, 30 * unit, 32 * unit], abs=NEAR)  # a tube lies folded
    assert heights == pytest.approx([150 * unit, 173 * unit, 25 * unit, 26 * unit], abs=NEAR)


# ---------------------------------------------------------------------------------------------------------- labels

parts = st.lists(st.fractions(Fraction(1, 2), Fraction(2), max_denominator=8), min_size=1, max_size=10)
several = st.lists(st.sampled_from(sorted(SHAPES)), min_size=1, max_size=4)


def boxes_of(placed: Sequence[Placed]) -> list[tuple[str, Box]]:
    """What must not overlap: labels, and each line with its ticks."""
    labels = [(one.label.letter, one.label.box) for one in placed]
    return labels + [(f"line {one.label.letter}", one.boxes[0]) for one in placed]


def overlap(one: Box, other: Box) -> bool:
    apart = one.right <= other.left or other.right <= one.left or one.lower <= other.upper or other.lower <= one.upper
    return not apart


def within(box: Box, whole: Box) -> bool:
    return box.with_(whole) == whole


@THOROUGH
@example(["back", "back", "back"], [Fraction(1, 2), Fraction(3, 2)])  # so many edges that a letter is not enough
@given(several, parts)
def test_no_label_runs_into_another_or_out_of_the_picture(shapes: list[str], sizes: list[Fraction]) -> None:
    pieces = [written(f"p{at}", shape, grown(USUAL[shape], sizes)) for at, shape in enumerate(shapes)]
    schematic = graded_schematic(pieces, len(sizes))
    drawing = drawn(schematic)
    assert held_to_scale(drawing, schematic) == []
    for figure in drawing.figures:
        assert figure.box.right - figure.box.left <= WIDE + 0.5
        fabric = [Box(*box) for box in outlines(root_of(figure_svg(figure, "t"))).values()]
        assert all(within(box, figure.box) for box in fabric)
        for placed in (figure.together, *figure.alone.values()):
            parts_ = boxes_of(placed)
            assert all(within(box, figure.box) for _, box in parts_)
            assert [(a, b) for (a, one), (b, other) in combinations(parts_, 2) if overlap(one, other)] == []
            leaders = [leader for one in placed for leader in one.leaders]
            labels = [one.label.box for one in placed]
            crossed = [
                leader
                for leader in leaders
                for label in labels
                if overlap(Box(leader.x1, leader.y1, leader.x2 + 1e-6, leader.y2 + 1e-6), label)
            ]
            assert crossed == []


lengths = st.one_of(st.integers(-2, 120), st.sampled_from(["0", "1/100", "1000", "1001", "22/7"]))


@settings(THOROUGH, max_examples=200)
@given(st.sampled_from(sorted(SHAPES)), st.data())
def test_any_measurements_are_drawn_to_scale_or_refused_with_the_sizes(shape: str, data: st.DataObject) -> None:
    edges = {edge.name: data.draw(st.lists(lengths, min_size=2, max_size=2), edge.name) for edge in SHAPES[shape].edges}
    typed = (f"{edge} = {values[0]} ({values[1]}) cm" for edge, values in edges.items())
    found = graded([f"piece = {shape}({', '.join(typed)})"], 2)
    assert {finding.rule for finding in found.findings} <= {"impossible-outline"}
    if found.findings:
        assert set(found.findings[0].sizes) <= {"S0", "S1"} != set()
        assert found.schematics[0].pieces == ()
    else:
        assert held_to_scale(drawn(found.schematics[0]), found.schematics[0]) == []


def test_an_overlap_is_seen() -> None:
    label = Label("A", (Series(("20",), "cm"),), 0, 0)
    assert overlap(label.box, Label("B", (), label.width / 2, 0).box)
    assert not overlap(label.box, Label("B", (), 0, 40).box)


def test_labels_say_what_is_printed_for_every_size_where_there_is_room() -> None:
    wide = [Fraction(150), Fraction(160)]
    drawing = drawn(graded_schematic([written("shawl", "triangle", {"width": wide, "depth": [Fraction(70)] * 2})], 2))
    together, *alone = shown(root_of(figure_svg(drawing.figures[0], "t")))
    assert together.measures[0].words == as_text(printed(wide, LENGTH)) == "150 (160) cm / 59 (63) in"
    assert [one.measures[0].words for one in alone] == ["150 cm / 59 in", "160 cm / 63 in"]
    assert all(one.measures[1].words == "70 cm / 27½ in" for one in (together, *alone))


def test_ten_sizes_are_lettered_and_one_alone_has_its_values() -> None:
    sizes = [Fraction(20 + number, 20) for number in range(10)]
    drawing = drawn(graded_schematic([written("body", "body", grown(USUAL["body"], sizes))], 10))
    together, *alone = shown(root_of(figure_svg(drawing.figures[0], "t")))
    assert sorted((one.letter, one.words) for one in together.measures) == [(letter, "") for letter in "ABCDEF"]
    assert len(alone) == 10
    smallest, largest = ({one.letter: one.words for one in group.measures} for group in (alone[0], alone[9]))
    assert (smallest["A"], smallest["B"]) == ("100 cm / 39¼ in", "38 cm / 15 in")  # 39.37 in and 14.96 in
    assert (largest["A"], largest["B"]) == ("145 cm / 57 in", "55.1 cm / 21¾ in")  # 57.09 in and 21.69 in


def test_one_size_has_one_drawing_with_its_values() -> None:
    drawing = drawn(graded_schematic(["hat = hat(around = 50 cm, height = 22 cm)"], 1))
    (group,) = shown(root_of(figure_svg(drawing.figures[0], "t")))
    assert [one.words for one in group.measures] == ["50 cm / 19¾ in", "22 cm / 8¾ in"]


def test_an_edge_left_out_is_drawn_and_not_labelled() -> None:
    plain, told = (
        drawn(graded_schematic([f"hat = hat(around = 48 cm, height = 24 cm{crown})"], 1))
        for crown in ("", ", crown = 8 cm")
    )
    assert [one.letter for one in plain.legend] == ["A", "B"]
    paths = [figure.traces[0].closed for drawing in (plain, told) for figure in drawing.figures]
    ratio = told.scale / plain.scale
    for one, other in zip(*paths, strict=True):
        for point, same in zip(one, other, strict=True):
            assert [number * ratio for number in point] == pytest.approx(same)


def test_no_letter_is_the_name_of_a_size() -> None:
    made = graded_schematic(["hat = hat(around = 48 cm, height = 24 cm)"], 1)
    drawing = drawing_of(made, metric_first=True, sizes=("XS", "A", "B2"))
    assert drawing is not None
    assert [one.letter for one in drawing.legend] == ["B", "C"]


def test_a_detail_that_is_nothing_in_one_size_is_measured_in_the_others_only() -> None:
    drawing = drawn(graded_schematic(["hat = hat(around = 48 cm, height = 22 cm, brim = 0 (4) cm)"], 2))
    _, without, with_brim = shown(root_of(figure_svg(drawing.figures[0], "t")))
    assert [one.letter for one in without.measures] == ["A", "B"]
    assert [one.letter for one in with_brim.measures] == ["A", "B", "C"]
