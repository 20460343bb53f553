"""Two things told together are carried out together, row by row, or a finding says what cannot be."""

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.run import work
from sizewright.work.worked import Worked

HEADER = "---\ntitle: A\ngauge: {stitches: 20 st / 10 cm, rows: 30 row / 10 cm}\n---\n"
MOSS = "```stitch Moss\nRow 1: *K1, p1; rep from * to end.\nRow 2: *P1, k1; rep from * to end.\n```\n"
LACE = "```stitch Lace\nRow 1: *K2tog, yo; rep from * to end.\nRow 2: Purl.\n```\n"


def knitted(lines: str) -> Worked:
    project = read_text(f"{HEADER}```work\n{lines}\n```\n{MOSS}{LACE}", "a.md")
    assert [finding.message for finding in project.findings] == []
    return work(grade(project.patterns[0]))


@pytest.mark.parametrize(
    ("words", "after", "rows"),
    [
        (
            "Work in St st for 24 rows, and at the same time, dec 1 st at each end of every 4th row 5 times.",
            30,
            24,
        ),
        (
            "Work in St st until piece measures 10 cm, AT THE SAME TIME dec 1 st each end of every RS row 5 times.",
            30,
            30,
        ),
        ("Work in stockinette and at the same time dec 1 st at each end of every 4th row 5 times.", 30, 20),
        ("Work Rows 1-2 of Moss 6 times and at the same time dec 1 st at each end of every RS row 6 times.", 28, 12),
        ("Work in Moss for 12 rows. At the same time, inc 1 st at each end of every other row 6 times.", 52, 12),
        (
            "Work in k1, p1 rib for 8 rows; at the same time, dec 2 sts at end of every 4th row twice.",
            36,
            8,
        ),
        ("Work 12 rows in garter stitch, at the same time dec 1 st at end of every 3rd row 4 times. (36 sts)", 36, 12),
    ],
)
def test_rows_with_shaping(words: str, after: int, rows: int) -> None:
    worked = knitted(f"Cast on 40 sts.\n{words}")
    assert worked.faults == ()
    assert (worked.entries[-1].after, worked.entries[-1].rows) == ((after,), (rows,))


def test_a_named_row_among_rows_even() -> None:
    lines = """Cast on 40 sts.
Dec Row (RS): K1, ssk, k to last 3 sts, k2tog, k1. (38 sts)
Work in stockinette for 19 rows and at the same time rep Dec Row every 4th row 4 times. (30 sts)"""
    assert knitted(lines).faults == ()


def test_shaping_that_takes_more_rows_than_there_are() -> None:
    lines = (
        "Cast on 40 sts.\nWork in St st for 12 rows and at the same time dec 1 st each end of every 4th row 5 times."
    )
    (fault,) = knitted(lines).faults
    assert (type(fault).__name__, getattr(fault, "rows", 0), getattr(fault, "done", 0)) == ("Unfinished", 12, 3)


def test_shaping_in_lace_cannot_be_carried_out() -> None:
    lines = "Cast on 40 sts.\nWork in Lace for 12 rows and at the same time dec 1 st each end of every 4th row twice."
    (fault,) = knitted(lines).faults
    assert (type(fault).__name__, getattr(fault, "words", "")) == ("NotTogether", "Lace")


@pytest.mark.parametrize(
    "words",
    [
        "Work in St st for 12 rows, at the same time change colours as you like.",
        "Row 1: Knit, at the same time dec 1 st.",
        "Row 1: Knit.\nAt the same time, dec 1 st at each end of every 4th row 5 times.",
        "At the same time, shape the neck.",
    ],
)
def test_what_cannot_be_carried_out_together_is_told(words: str) -> None:
    (finding,) = read_text(f"{HEADER}```work\nCast on 40 sts.\n{words}\n```\n", "a.md").findings
    assert finding.rule == "not-understood"
    assert "declared" in finding.mend
