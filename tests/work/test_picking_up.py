"""In: stitches picked up beside live ones. Out: the live ones stay, halves are marked, the round begins at a corner."""

import pytest

from sizewright.proof.run import proof
from sizewright.read.folder import read_text
from sizewright.work.worked import Worked

HEAD = """---
title: Trial
gauge: {stitches: 20 st / 10 cm, rows: 40 row / 10 cm, needle: 4 mm}
needles: [4 mm]
notions: [4 stitch markers]
yarn: {main: {weight: medium}}
licence: CC BY 4.0
---
```work
"""
SQUARE = "Cast on 20 sts.\nRow 1 (RS): Knit.\nRep Row 1 38 more times.\n"
ROUND = "Cast on 12 sts. Pm and join to work in the round.\nRnd 1: Knit.\n"


def worked(lines: str) -> tuple[Worked, list[str]]:
    project = read_text(f"{HEAD}{lines}\n```\n")
    done = proof(project.patterns[0], project)
    return done.worked, [f"{one.rule}: {one.message}" for one in done.findings if one.level.value == "error"]


def counts(lines: str) -> list[int | None]:
    """The counts behind each direction of a pattern without errors."""
    found, wrong = worked(lines)
    assert wrong == []
    return [entry.after[0] for entry in found.entries]


@pytest.mark.parametrize("stitches", [8, 20, 36])
def test_a_square_picked_up_on_three_sides_is_four_times_its_live_stitches(stitches: int) -> None:
    """Common practice, no source: N live, N along both sides and N along the cast-on are 4N in the round."""
    side = f"{stitches} sts along"
    lines = (
        f"Cast on {stitches} sts.\nRow 1 (RS): Knit.\nRep Row 1 {2 * stitches - 2} more times.\n"
        f"Do not turn. With right side facing, pick up and knit {side} the side, marking halves.\n"
        f"Pick up and knit {side} the cast-on edge, marking the halves.\n"
        f"Pick up {side} the other side, placing a marker at the halfway point. ({4 * stitches} sts)\n"
        "Place marker and join to work in the round.\nRnd 1: Purl.\nBind off all sts."
    )
    assert counts(lines)[-2] == 4 * stitches


def test_live_stitches_stay_where_they_are() -> None:
    """Behind a row on the right side the round goes on with what was picked up last; the live ones come first."""
    lines = (
        f"{SQUARE}Pick up and knit 10 sts along the side, marking halves. (30 sts)\n"
        "Pm and join to work in the round.\n"
        "Rnd 1: K20, p to m, sm, k5. (30 sts)"
    )
    assert counts(lines)[-1] == 30


def test_without_joining_the_next_row_begins_with_what_was_picked_up() -> None:
    lines = f"{SQUARE}Pick up and knit 10 sts along the side, marking halves.\nNext Row (WS): P5, sm, p5, k20."
    assert counts(lines)[-1] == 30


def test_in_the_round_they_lie_at_its_end() -> None:
    lines = f"{ROUND}Pick up and knit 4 sts across the gap, marking halves.\nRnd 2: K12, p2, sm, p2. (16 sts)"
    assert counts(lines)[-1] == 16


def test_a_row_with_a_label_still_works_all_its_stitches() -> None:
    _, wrong = worked(f"{SQUARE}Next Row: Pick up and knit 10 sts along the side.")
    assert [one.split(":")[0] for one in wrong] == ["stitches-left-over"]


def test_yarn_is_counted_for_what_is_picked_up() -> None:
    plain, _ = worked(SQUARE)
    more, _ = worked(f"{SQUARE}Pick up and knit 10 sts along the side.")
    assert _stitches(more) - _stitches(plain) == 10


def _stitches(done: Worked) -> int:
    return sum(counted[0] for counted in done.stitches.values())


def test_halves_that_are_none_are_told() -> None:
    _, wrong = worked(f"{SQUARE}Pick up and knit 21 sts along the side, marking halves.")
    assert wrong == ["uneven-parts: These stitches have no equal halves: 21 sts."]


@pytest.mark.parametrize(
    "words",
    [
        "the round now begins here",
        "the beginning of the rnd is now at this corner",
        "pm for new beginning of rnd",
        "place marker for the new beginning of round",
    ],
)
def test_the_round_begins_somewhere_else(words: str) -> None:
    lines = f"{ROUND}Rnd 2: Remove marker, k4, {words}.\nRnd 3: K8, p4."
    assert counts(lines)[-1] == 12
    again, _ = worked(lines)
    assert [entry.label for entry in again.entries if entry.label.startswith("Rnd")] == ["Rnd 1", "Rnd 2", "Rnd 3"]


BAND = "Pick up and knit 10 sts across the back neck, 7 sts along the left neck edge, 6 sts across the centre front"


@pytest.mark.parametrize("label", ["Pick-up Row (RS): ", "", "With RS facing, "])
@pytest.mark.parametrize("before", ["Row 1 (RS): Knit.\n", "Row 1 (RS): Knit.\nRow 2 (WS): Purl.\n"])
def test_a_band_is_picked_up_edge_by_edge_whatever_side_was_bound_off(label: str, before: str) -> None:
    """As the trade writes it, the verb once. A piece bound off lies as one likes: its last row binds no side."""
    first = f"{BAND[:1].lower()}{BAND[1:]}" if label else BAND
    lines = f"Cast on 20 sts.\n{before}Bind off all sts.\n{label}{first} and 7 sts up the right neck edge. (30 sts)\n"
    found, wrong = worked(f"{lines}Pm and join to work in the round.\nRnd 1: *K1, p1; rep from * to end.\nBind off.")
    assert (wrong, found.faults) == ([], ())
    assert [entry.after[0] for entry in found.entries][-3:] == [30, 30, 0]


@pytest.mark.parametrize("rest", ["7 sts", "k4, 7 sts along the edge", "and 7 along the edge"])
def test_a_number_alone_picks_nothing_up(rest: str) -> None:
    found, wrong = worked(f"{SQUARE}Pick up and knit 10 sts along the side, {rest}.")
    assert wrong or found.faults


EDGE = "With {side} facing, pick up and knit 12 sts along edge. (12 sts)\n{rows}\nBind off all sts."


@pytest.mark.parametrize("rows", [8, 9])
@pytest.mark.parametrize(
    ("side", "after"),
    [
        ("RS", "Row 1 (WS): Purl.\nRow 2 (RS): Knit."),
        ("WS", "Row 1 (RS): Knit.\nRow 2 (WS): Purl."),
        ("RS", "Row 1: Knit.\nRow 2 (RS): Knit."),
    ],
)
def test_behind_a_bind_off_the_side_is_that_of_picking_up(rows: int, side: str, after: str) -> None:
    """Common practice, no source: picked up with RS facing, the next row is on the WS, whatever was before."""
    begun = f"Cast on 20 sts. Knit {rows} rows.\nBind off all sts.\n"
    assert told(begun + EDGE.format(side=side, rows=after)) == []
    swapped = after.replace("(RS)", "(?)").replace("(WS)", "(RS)").replace("(?)", "(WS)")
    assert "swapped-side" in told(begun + EDGE.format(side=side, rows=swapped))


def test_behind_a_round_rows_may_be_picked_up() -> None:
    assert (
        told(f"{ROUND}Bind off all sts.\n" + EDGE.format(side="RS", rows="Row 1 (WS): Knit.\nRow 2 (RS): Knit.")) == []
    )
    assert told(f"{ROUND}Bind off all sts.\n" + EDGE.format(side="RS", rows="Rnd 1: Knit.\nRnd 2: Knit.")) == []


@pytest.mark.parametrize(
    ("until", "rows"),
    [
        # 40 rows are 10 cm: 3 cm are 12 rows, the picked up one and two others among them
        ("band measures 3 cm", 9),
        ("piece measures 3 cm from pick-up edge", 9),
        ("piece measures 3 cm", 9),
        ("collar measures 3 cm", 9),
        ("band measures 3 cm from beginning", 9),
        ("piece measures 4 cm from cast-on edge", 4),  # 16 rows, 12 of them before
    ],
)
def test_a_length_begins_where_stitches_are_picked_up(until: str, rows: int) -> None:
    lines = EDGE.format(side="RS", rows=f"Row 1 (WS): Purl.\nRow 2 (RS): Knit.\nRep Rows 1 and 2 until {until}.")
    done, wrong = worked(f"Cast on 20 sts. Knit 9 rows.\nBind off all sts.\n{lines}")
    assert wrong == []
    assert done.entries[-2].rows == (rows,)


@pytest.mark.parametrize("taken", ["Place 14 held thumb sts on needles.", "Thumb: Place 14 thumb sts on needles."])
def test_a_thumb_is_measured_from_where_it_begins_though_its_beginning_is_not_worked(taken: str) -> None:
    lines = (
        f"{ROUND}Rep Rnd 1 until piece measures 30 cm.\nBind off all sts.\n{taken} (14 sts)\n"
        'Rnd 1: Knit. (14 sts)\nRep Rnd 1 until thumb measures 1¼".'
    )
    assert told(lines) == []
    assert worked(lines)[0].entries[-1].rows[0] > 0


def told(lines: str) -> list[str]:
    """The rules of the findings about sides, rounds and lengths."""
    project = read_text(f"{HEAD}{lines}\n```\n")
    rules = ("swapped-side", "flat-and-round", "length-passed")
    return [one.rule for one in proof(project.patterns[0], project).findings if one.rule in rules]
