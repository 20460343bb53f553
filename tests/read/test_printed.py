"""Instructions printed in house style, and read again: the same tree, places apart.

That every pattern and published row keeps its tree, and that trees drawn at random do, is shown here; what the style
is, by examples.
"""

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.read.notation_again import SIZED, directions, lines_of, source, without_places
from tests.read.notation_trees import DIRECTIONS, PROMISED, PROMISES, Promising
from tests.work.test_published_stitch_patterns import PATTERNS

from sizewright.read.folder import Unreadable, read_single
from sizewright.read.notation.direction_tree import Direction, Promise

THOROUGH = settings(derandomize=True, max_examples=250, deadline=None)


def assert_same_again(block: tuple[Direction, ...], header: str = SIZED) -> None:
    """Prints and reads a block."""
    text = lines_of(block)
    (again,) = directions(source(text, header).patterns[0])
    assert without_places(again) == without_places(block), text


@given(DIRECTIONS)
@THOROUGH
def test_a_direction_printed_and_read_is_the_same(direction: Direction) -> None:
    assert_same_again((direction,))


@given(PROMISED, PROMISES)
@settings(THOROUGH, max_examples=100)
def test_so_is_one_with_a_count_behind_it(direction: Promising, promise: Promise | None) -> None:
    assert_same_again((replace(direction, promise=promise),))


@given(st.lists(DIRECTIONS, min_size=2, max_size=5))
@settings(THOROUGH, max_examples=25)
def test_so_is_a_block(block: list[Direction]) -> None:
    assert_same_again(tuple(block))


def test_so_is_every_block_of_the_demo_and_of_the_language_tests(repository: Path) -> None:
    files = sorted((*(repository / "content/patterns").glob("*.md"), *(repository / "tests/language").rglob("*.md")))
    checked = 0
    for file in files:
        try:
            pattern = read_single(file).patterns[0]
        except Unreadable:
            continue
        own = pattern.adapts.base.lines if pattern.adapts else pattern.lines  # where the sizes and the yarns are told
        for block in directions(pattern):
            assert_same_again(block, own.text.partition("\n---\n")[0].removeprefix("---\n"))
            checked += len(block)
    assert checked > 200


@pytest.mark.parametrize("name", PATTERNS)
def test_so_is_every_published_stitch_pattern(name: str) -> None:
    (block,) = directions(source("\n".join(PATTERNS[name][3])).patterns[0])
    assert_same_again(block)


@pytest.mark.parametrize(
    ("typed", "house"),
    [
        # Labels: rows and rounds, their numbers, their side, their yarn
        ("1ST ROW (Right Side): Knit across.", "Row 1 (RS): Knit."),
        ("Rows 1,4: k1, *p1, k1* to end.", "Rows 1 and 4: K1, *p1, k1; rep from * to end."),
        ("Rounds 1 - 4, 6, 7: knit", "Rnds 1 to 4, 6 and 7: Knit."),
        ("Row 2 and every WS row: P", "Row 2 and all WS rows: Purl."),
        ("even-numbered rnds: k all sts", "All even rnds: Knit."),
        ("Row 3 (RS, MC): k2", "Row 3 (RS, MC): K2."),
        ("dec rnd: k2 tog around (40 sts)", "Dec Rnd: K2tog to end. (40 sts)"),
        ("Next row (Dec row): ssk, k to end", "Next row (Dec row): Ssk, k to end."),
        ("Row 3: Rep Row 1 (88 sts)", "Row 3: As Row 1. (88 sts)"),
        # Rows
        ("Row 3: K3, *(k2 tog) 3x, (yfwd, K1) 6x; rep to last 3, k3",
         "Row 3: K3, *[k2tog] 3 times, [yo, k1] 6 times; rep from * to last 3 sts, k3."),
        ("Row 1: * K 1, yrn twice, sl1 pwise wyif; repeat from * across, ending with knit 5",
         "Row 1: *K1, yo twice, sl 1 purlwise wyif; rep from *, ending with k5."),
        ("Rnd 1: *Knit to 3 stitches before marker, skpo, slip marker*.",
         "Rnd 1: *K to 3 sts before m, skp, sm; rep from * to end."),
        ("Row 1: [K2, P2] twice more, slip 3 sts to cn and hold at back, k3, then k3 from cn, K to end",
         "Row 1: [K2, p2] twice, 3/3 RC, k to end."),
        ("Row 1: **k1, *p1; rep from * once more; rep from ** to end",
         "Row 1: *K1, [p1] once, then once more; rep from * to end."),
        ("Row 1: cast off 5 sts loosely, CO 3 sts across the gap, k to end - 42 sts",
         "Row 1: Bind off 5 sts loosely, cast on 3 sts across the gap, k to end. (42 sts)"),
        ("Row 1: K{a}, k8 (9, 10), kfb 1, M1 {n:times}, k 1",
         "Row 1: K{a}, k8 (9, 10), kfb, m1 {n:times}, k1."),
        ("Row 1: dec 1 st at both ends", "Row 1: Dec 1 st at each end."),
        # Other directions
        ("CO 40 sts and join in the round", "Cast on 40 sts.\nJoin to work in the round."),
        ("Cast on {a} stitches using the long-tail method.", "Cast on {a} stitches using the long-tail method."),
        ("repeat rows 1-4 5 more times", "Rep Rows 1 to 4 five more times."),
        ("Repeat rows 1 and 2 20 times", "Rep Rows 1 and 2, 20 more times."),
        ("Rep the last 2 rounds {n:times} more", "Rep last 2 rnds {n:times} more."),
        ("Rep Rows 1 to 4 of Old shale 3 times", "Work Rows 1 to 4 of Old shale 3 times."),
        ("Rep row 1 till the thumb measures 4 inches", "Rep Row 1 until thumb measures 4 in."),
        ("k 4 rounds", "Knit 4 rnds."),
        ("Work 4 rows even", "Work 4 rows even."),
        ("Work {n} rounds straight, ending with a RS round", "Work {n} rnds even, ending with a RS row."),
        ("work 1 row even", "Work 1 row even."),
        ("Work 6 rows even in garter stitch", "Work in garter stitch for 6 rows."),
        ("Continue even in garter stitch for another 2 cm", "Work in garter stitch for 2 cm."),
        ('Change to larger needles and work 1x1 rib (k1, p1) for 2"/5 cm', "Work in 1x1 rib for 2 in (5 cm)."),
        ('Work in rib for 2 (3, 4)"/5 (7.5, 10) cm', "Work in rib for 2 (3, 4) in (5 (7.5, 10) cm)."),
        ("Transfer the 11 held thumb sts to larger dpns", "Transfer the 11 held thumb sts to larger dpns."),
        ("pm for BOR, join", "Pm for BOR, join."),
        ("With RS facing and smaller needles, pick up 9 sts",
         "With RS facing and smaller needles, pick up and knit 9 sts."),
        ("Row 1: k1, using the backward loop method CO 4 sts",
         "Row 1: K1, cast on 4 sts using the backward loop method."),
        ("Repeat Decrease Row every 4th row 3 times, then every 2nd row twice",
         "Rep Dec Row every 4th row 3 times, then every other row twice."),
        ("Dec 1 st at each end of next row, then every RS row until 20 sts rem",
         "Dec 1 st at each end of next row, then every RS row until 20 sts remain."),
        ("Cast off all sts", "Bind off all sts."),
        ("Cast off rem 20 sts", "Cast off rem 20 sts."),
        ("Beg with a k row, work 6 rows in St st", "Work in St st, beginning with a RS row, for 6 rows."),
        ("Knit 1 WS row", "Knit, beginning with a WS row, for 1 row."),
        ("Row 1: k until there are 10 sts on RH needle, turn (-1 st, 19 sts)",
         "Row 1: K until 10 sts are on right needle, turn. (1 st decreased; 19 sts)"),
        ("Row 1: bind off 4 sts, k until there are 10 sts on RH needle, slip these 10 sts onto a holder, k to end",
         "Row 1: Bind off 4 sts, k until 10 sts are on right needle, place these 10 sts onto a holder, k to end."),
        ("Row 1: k2, rib 10, work in k2, p2 rib to end",
         "Row 1: K2, work rib over next 10 sts, work k2, p2 rib to end."),
        ("Row 1: Purl, increasing 4 sts evenly across", "Row 1: Purl, inc 4 sts evenly."),
        ("Row 1. Purl to end, removing markers", "Row 1: P to end, removing markers."),
        ("Cast on 5 sts at beg of next 2 rows", "Cast on 5 sts at beginning of next 2 rows."),
    ],
)  # fmt: skip
def test_the_house_style(typed: str, house: str) -> None:
    project = source(typed)
    (block,) = directions(project.patterns[0])
    assert project.findings == ()
    assert lines_of(block) == house
    assert_same_again(block)
