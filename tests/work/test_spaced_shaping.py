"""Rows worked every so often: the shaping of published pieces comes out with its rows and counts."""

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.run import work
from sizewright.work.worked import Worked


def knitted(lines: str, sizes: str = "") -> Worked:
    project = read_text(f"---\ntitle: A\n{sizes}---\n```work\n{lines}\n```\n", "a.md")
    assert [finding.message for finding in project.findings] == []
    return work(grade(project.patterns[0]))


def last(worked: Worked) -> tuple[int | None, int]:
    """The count behind the last direction, and the rows it was worked."""
    assert worked.faults == ()
    return worked.entries[-1].after[0], worked.entries[-1].rows[0]


def test_a_published_sleeve() -> None:
    """tessknits.com: 34 sts cast on, 8 rows of seed, the first increase on row 9, then every 4th row 10 times.

    The increases fall on rows 13, 17, ... 49 and leave 56 sts; with 13 rows even there are 62 rows in all.
    """
    lines = """Cast on 34 sts.
Row 1: *K1, p1; rep from * to end.
Row 2: *P1, k1; rep from * to end.
Rep Rows 1 and 2 3 more times.
Inc Row (RS): K1, m1, k to last st, m1, k1. (36 sts)
Rep Inc Row every 4th row 10 times. (56 sts)
Work 13 rows even."""
    worked = knitted(lines)
    assert worked.faults == ()
    assert [entry.rows[0] for entry in worked.entries] == [0, 1, 1, 6, 1, 40, 13]
    assert worked.entries[-1].after == (56,)


@pytest.mark.parametrize(
    "lines",
    [
        "Inc Row: K1, m1, k to last st, m1, k1.\nRep Inc Row every 4th row 33 times, then every 5th row 8 times.",
        "Inc 1 st at each end of every 4th row 34 times, then of every 5th row 8 times.",
    ],
)
def test_a_sleeve_with_two_rhythms(lines: str) -> None:
    """designyourownsweater.blogspot.com 2007: 72 to 156 sts in 176 rows, every 4th row 34 times, every 5th 8 times."""
    worked = knitted(f"Cast on 72 sts.\n{lines}")
    assert worked.faults == ()
    assert worked.entries[-1].after == (156,)
    assert sum(entry.rows[0] for entry in worked.entries) == 176 - (3 if "Row:" in lines else 0)


@pytest.mark.parametrize(
    ("words", "after", "rows"),
    [
        ("Rep Dec Rnd every 5 rnds 8 times.", 22, 40),
        ("Work Dec Rnd every 4th rnd 3 more times.", 32, 12),
        ("Rep Dec Rnd every other rnd twice, then every rnd twice more.", 30, 6),
        ("Rep Dec Rnd on every alternate rnd 3 times", 32, 6),
        ("Work Dec Rnd once more.", 36, 1),
        ("Work Dec Rnd.", 36, 1),
        ("Rep Dec Rnd 5 more times.", 28, 5),
        ("Work the decrease round every 3rd rnd until 30 sts remain.", 30, 12),
        ("Work 1 rnd even, then rep Dec Rnd every 4th rnd 2 times", 34, 7),
    ],
)
def test_named_rounds_are_called(words: str, after: int | None, rows: int | None) -> None:
    lines = f"Cast on 40 sts. Join in the round.\nDec Rnd: K1, k2tog, k to last 3 sts, ssk, k1. (38 sts)\n{words}"
    assert last(knitted(lines)) == (after, rows)


def test_rows_already_worked_count_toward_the_next() -> None:
    lines = """Cast on 40 sts.
Inc Row (RS): K1, m1, k to end.
Work 3 rows even.
Rep Inc Row every 4th row 2 times."""
    assert last(knitted(lines)) == (43, 5)


def test_every_right_side_row() -> None:
    lines = "Cast on 40 sts.\nDec Row (RS): K1, ssk, k to last 3 sts, k2tog, k1.\nRep Dec Row on every RS row 6 times."
    assert last(knitted(lines)) == (26, 12)


def test_a_right_side_row_that_falls_on_the_wrong_side() -> None:
    lines = """Cast on 40 sts.
Dec Row (RS): K1, ssk, k to last 3 sts, k2tog, k1.
Rep Dec Row every {} row 6 times."""
    faults = knitted(lines.format("3 (4, 6)th"), "sizes: [A, B, C]\n").faults
    assert {(type(fault).__name__, fault.size) for fault in faults} == {("WrongSide", 0)}
    assert knitted(lines.format("other")).faults == ()


@pytest.mark.parametrize(
    ("words", "after", "rows"),
    [
        ("Dec 1 st at each end of next row.", 38, 1),
        ("Dec 1 st each end of next row and every foll 4th row 5 times", 28, 21),
        ("Inc 1 st at each end of 9th and every foll 4th row until there are 56 sts.", 56, 37),
        ("Dec 2 sts at beginning of every row 4 times.", 32, 4),
        ("Dec 1 st at neck edge every row 3 times, then every other row 2 times. (35 sts)", 35, 7),
        ("Working in stockinette, inc 1 st at each end of every 3rd row 2 times.", 44, 6),
        ("Inc 1 st at each end of every 3rd row 2 times, working new sts into pattern.", 44, 6),
        ("Dec 8 sts evenly across next row. (32 sts)", 32, 1),
        ("Next Row: Inc 5 sts evenly across. (45 sts)", 45, 1),
        ("Next Row: Dec 1 st at each end. (38 sts)", 38, 1),
    ],
)
def test_shaping_told_without_a_row(words: str, after: int, rows: int) -> None:
    assert last(knitted(f"Cast on 40 sts.\n{words}")) == (after, rows)


def test_increases_spread_over_a_row() -> None:
    """wolfandturtle.net 2005 and moderndailyknitting.com: 60 sts and 5 more are 65; 48 sts and 6 more are 54."""
    assert last(knitted("Cast on 60 sts.\nNext Row: Inc 5 sts evenly across row. (65 sts)")) == (65, 1)
    assert last(knitted("Cast on 48 sts.\nNext Row: Increase 6 sts evenly. (54 sts)")) == (54, 1)
    (fault,) = knitted("Cast on 6 sts.\nNext Row: Dec 4 sts evenly across.").faults
    assert type(fault).__name__ == "TooFew"


def test_a_row_that_was_never_named() -> None:
    (fault,) = knitted("Cast on 8 sts.\nRow 1: Knit.\nRep Dec Row every 4th row 3 times.").faults
    assert (type(fault).__name__, getattr(fault, "words", "")) == ("NoRow", "dec row")


def test_what_a_repeat_of_rows_is_called_in_the_ledger() -> None:
    lines = """Cast on 8 sts.
Row 1 (RS): Knit.
Row 2: Purl.
Inc Row (RS): K1, m1, k to end.
Rep Rows 1-2 twice.
Rep last 2 rows once.
Rep Inc Row every 2nd row 2 times."""
    labels = [entry.label for entry in knitted(lines).entries]
    assert labels == [
        "Cast on", "Row 1 (RS)", "Row 2", "Inc Row (RS)", "Rep Rows 1-2", "Rep last 2 rows",
        "Rep Inc Row every 2nd row 2 times",
    ]  # fmt: skip
