"""Published counts, knitted: the rows are carried out and must give the numbers that were printed."""

from pathlib import Path

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_single
from sizewright.work.run import work
from sizewright.work.worked import Worked


def knitted(tmp_path: Path, lines: str, sizes: str = "") -> Worked:
    file = tmp_path / "published.md"
    file.write_text(f"---\ntitle: Published\n{sizes}---\n```work\n{lines}\n```\n", "utf-8")
    project = read_single(file)
    assert [finding.message for finding in project.findings] == []
    return work(grade(project.patterns[0]))


@pytest.mark.parametrize(("repeat", "share"), [("*k2, k2tog", 75), ("*k1, k2tog", 50), ("*k2tog", 25)])
def test_crown_in_three_rounds(repeat: str, share: int, tmp_path: Path) -> None:
    """Interweave.com, "Hat-Crown Decreases Explained": three rounds leave 75, 50 and 25 % of the first count."""
    rounds = ("*k2, k2tog", "*k1, k2tog", "*k2tog")
    upto = rounds[: rounds.index(repeat) + 1]
    rows = (f"Rnd {number}: {row}; rep from * to end." for number, row in enumerate(upto, 1))
    lines = ["Cast on 96 sts. Join to work in the round.", *rows]
    worked = knitted(tmp_path, "\n".join(lines))
    assert worked.faults == ()
    assert worked.entries[-1].after == (96 * share // 100,)


def test_body_shaped_out_and_in(tmp_path: Path) -> None:
    """Craftstarstudios.com, "On stitch counts": a round losing 4 sts once and 3 more times, then gaining as many."""
    sizes = "sizes: [A, B, C, D, E, F, G]\n"
    counts, waist = "176 (192, 208, 224, 240, 256, 272)", "160 (176, 192, 208, 224, 240, 256)"
    lines = f"""Cast on {counts} sts. Join to work in the round.
Dec Rnd: *K1, k2tog; rep from * 3 more times, k to end. (4 sts decreased)
Rep last rnd 3 more times. ({waist} sts)
Inc Rnd: *K1, m1; rep from * 3 more times, k to end. (4 sts increased)
Rep last rnd 3 more times. ({counts} sts)"""
    worked = knitted(tmp_path, lines, sizes)
    assert worked.faults == ()
    assert worked.entries[2].after == (160, 176, 192, 208, 224, 240, 256)
    assert worked.entries[-1].after == (176, 192, 208, 224, 240, 256, 272)


def test_a_wrong_count_is_found_in_its_size_alone(tmp_path: Path) -> None:
    worked = knitted(tmp_path, "Cast on 8 (10) sts.\nRow 1: K2tog, k to end. (7 (8) sts)", "sizes: [A, B]\n")
    assert [(type(fault).__name__, fault.size) for fault in worked.faults] == [("WrongCount", 1)]


def test_double_moss_needs_four_in_the_round(tmp_path: Path) -> None:
    """Common practice, no source: double moss is a repeat of four whose knits and purls shift every second round."""
    rows = ("Rnds 1, 2: *K2, p2; rep from * to end.", "Rnds 3, 4: *P2, k2; rep from * to end.")
    file = tmp_path / "moss.md"
    file.write_text("\n".join(("---", "title: Moss", "---", "```stitch Double moss", *rows, "```", "")), "utf-8")
    (pattern,) = work(grade(read_single(file).patterns[0])).stitch_patterns
    assert (pattern.multiple, pattern.plus, pattern.rows) == (4, 0, 4)


def test_a_square_picked_up_around_is_four_times_its_side(tmp_path: Path) -> None:
    """Common practice, no source: a square of N stitches with N picked up on each other side gives 4N in the round."""
    lines = """Cast on 12 sts.
Rows 1 to 24: Knit.
Next Rnd: K12, pick up and knit 12 sts along the side, pick up and knit 12 sts along the cast-on edge, """
    worked = knitted(tmp_path, lines + "pick up and knit 12 sts along the other side. (48 sts)")
    assert worked.entries[-1].after == (48,)


def test_a_row_that_a_stitch_pattern_does_not_have(tmp_path: Path) -> None:
    block = "Cast on 8 sts.\nWork Rows 1 to 3 of Moss 2 times.\n```\n```stitch Moss\nRow 1: *K1, p1*.\nRow 2: *P1, k1*."
    assert [type(fault).__name__ for fault in knitted(tmp_path, block).faults] == ["NoRow"]


def test_missing_markers_behind_a_faulty_row_are_not_told_again(tmp_path: Path) -> None:
    lines = """Cast on 8 sts. Place marker and join to work in the round.
Rnd 1: *K3; rep from * to end. (8 sts)
Rnd 2: K to m, sm."""
    assert [type(fault).__name__ for fault in knitted(tmp_path, lines).faults] == ["BrokenRepeat"]


@pytest.mark.parametrize(
    "words",
    [
        "Work 4 more rows in k1, p1 rib.",
        "Work in St st for 2 in.",
        "Work 3 rows of garter stitch.",
        "Work 4 rows in 1x1 rib.",
    ],
)
def test_fabrics_as_people_name_them(words: str, tmp_path: Path) -> None:
    worked = knitted(tmp_path, f"Cast on 8 sts.\n{words}")
    assert worked.faults == ()
    assert worked.entries[-1].after == (8,)


@pytest.mark.parametrize(
    "count", ["5.5", "10/2", "1/0", "1 (2, 3)/4", "72 [80 88]", "4 (6, 8) (10, 12)", "8 + 2", "80 sts / 2"]
)
def test_a_count_that_is_half_understood_is_refused(count: str, tmp_path: Path) -> None:
    file = tmp_path / "slip.md"
    file.write_text(
        f"---\ntitle: A\nsizes: [A, B, C]\n---\n```work\nCast on {count} sts.\nRow 1: Knit.\n```\n", "utf-8"
    )
    assert "not-understood" in [finding.rule for finding in read_single(file).findings]


@pytest.mark.parametrize(
    "words", ["loosely", "using the long-tail method", ", placing a marker after 4 sts", ", 2 on each of 4 needles"]
)
def test_what_may_stand_behind_a_cast_on(words: str, tmp_path: Path) -> None:
    worked = knitted(tmp_path, f"Cast on 8 sts{words if words[0] == ',' else f' {words}'}.")
    assert worked.entries[0].after == (8,)
