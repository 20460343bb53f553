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
