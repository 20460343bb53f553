"""Markers keep their place between the same stitches, and stitches are counted by the yarn they take.

Common practice, no source: a marker that is not spoken of is slipped; a slipped stitch takes no yarn and keeps its
face.
What stands here was found by the naive knitter of `test_against_naive.py`.
"""

from collections import Counter

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.blocks import stitch_blocks
from sizewright.work.maker import Maker


def made(lines: str, sizes: str = "") -> Maker:
    """A pattern worked in its first size, without a fault."""
    project = read_text(f"---\ntitle: A\n{sizes}---\n```work\n{lines}\n```\n", "a.md")
    assert project.findings == ()
    graded = grade(project.patterns[0])
    maker = Maker(graded, 0, stitch_blocks(graded))
    assert maker.make().faults == []
    return maker


ROUND = "Cast on 24 sts. Place marker and join to work in the round.\nRnd 1: K12, pm, k to end.\n"


@pytest.mark.parametrize(
    ("row", "places"),
    [
        ("Rnd 2: *K2, k2tog; rep from * to end.", [9, 18]),
        ("Rnd 2: K1, *k2tog, yo, k1; rep from * to last 2 sts, k2.", [12, 24]),
        ("Rnd 2: *Kfb; rep from * to end.", [24, 48]),
        ("Rnd 2: K2tog to end.", [6, 12]),
        ("Rnd 2: [K1, k2tog] 8 times.", [8, 16]),
        ("Rnd 2: Kfb 24.", [24, 48]),
        ("Rnd 2: Bind off 14 sts, k to end.", [0, 10]),
        ("Rnd 2: *K1, yo; rep from * to end.", [24, 48]),
    ],
)
def test_a_marker_stays_between_its_stitches(row: str, places: list[int]) -> None:
    needle = made(f"{ROUND}{row}").needle
    assert needle is not None
    assert needle.markers == places


def test_a_round_from_marker_to_marker_behind_decreases() -> None:
    """16 of 24 are left, 8 to each marker; two decreases before each leave 12."""
    decreases = "Rnd 2: *K1, k2tog; rep from * to end. (16 sts)\n"
    needle = made(f"{ROUND}{decreases}Rnd 3: *Ssk, k to 2 sts before m, k2tog, sm; rep from * to end. (12 sts)").needle
    assert needle is not None
    assert needle.markers == [6, 12]


@pytest.mark.parametrize(
    ("lines", "worked"),
    [
        ("Row 1: Sl 1, k7.", {"": 7}),
        ("Row 1: *Sl 1, k1; rep from * to end.", {"": 4}),
        ("Row 1: *Sl 1, k1, psso; rep from * to end.", {"": 4}),
        ("Row 1: *Skp; rep from * to end.", {"": 4}),
        ("Row 1: Bind off 3 sts, k to end.", {"": 8}),
        ("Row 1: *With A, k2, with B, k2; rep from * to end.", {"A": 4, "B": 4}),
        ("Row 1: *K2, with A, k2; rep from * to end.", {"": 2, "A": 6}),
        ("Row 1: K2, with A, k6.\nRep last row 2 more times.", {"": 2, "A": 22}),
    ],
)
def test_stitches_count_by_the_yarn_they_take(lines: str, worked: dict[str, int]) -> None:
    """Beside the 8 that are cast on."""
    assert made(f"Cast on 8 sts.\n{lines}").made.worked - Counter({"": 8}) == worked


@pytest.mark.parametrize(
    ("lines", "looks"),
    [
        ("Row 1: *P1, k1; rep from * to end.\nRow 2: Sl 4.\nRow 3: Knit the knits and purl the purls.", b"kpkp"),
        ("Row 1: *P1, k1; rep from * to end.\nRow 2: *K1, sl 1; rep from * to end.", b"SpSp"),
        ("Row 1: K1, sl 1, p1, psso, k1.", b"kDk"),
        ("Row 1: Knit.\nRow 2: P1, s2kp.", b"vk"),
    ],
)
def test_slipped_stitches_and_those_they_are_passed_over(lines: str, looks: bytes) -> None:
    needle = made(f"Cast on 4 sts.\n{lines}").needle
    assert needle is not None
    assert needle.left == looks


def test_the_last_rows_may_be_some_of_those_told_together() -> None:
    """Rows 1 to 4 are alike, so the last two of them are too."""
    sizes = "sizes: {A: {}, B: {}}\n"
    maker = made("Cast on 8 sts.\nRows 1 to 4 (6): Sl 1, k2tog, yo, k to end.\nRep last 2 rows 3 times.", sizes)
    assert maker.needle is not None
    assert maker.needle.rows == 10
    again = made("Cast on 8 sts.\nRows 1 to 4 (6): Knit.\nRep Rows 1 and 2 3 times.", sizes)
    assert again.needle is not None
    assert again.needle.rows == 10


def test_a_list_of_rows_by_size_names_no_yarn() -> None:
    assert set(made("Cast on 8 sts.\nRows 1 to 4 (6): Knit.", "sizes: {A: {}, B: {}}\n").made.worked) == {""}
