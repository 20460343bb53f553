"""A sentence that holds a second instruction is refused or carried out whole: no row is lost in a set phrase."""

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.read.project import Project
from sizewright.work.run import work


def source(lines: str) -> Project:
    return read_text(f"---\ntitle: A\n---\n```work\n{lines}\n```\n", "a.md")


@pytest.mark.parametrize(
    "lines",
    [
        "Cast on 8 sts and knit 4 rows.",
        "Cast on 8 sts.\nChange to larger needles, knit 4 rows.",
        "Cast on 8 sts.\nCut yarn, k2tog 4 times.",
        "Cast on 8 sts.\nJoin yarn and bind off 3 sts.",
        "Cast on 8 sts.\nJoin in the round, k2tog, k to end.",
        "Cast on 8 sts.\nBind off all sts, then pick up and knit 8 sts along the edge.",
        "Cast on 8 sts.\nRemember to mark the round; dec 1 st at each end.",
    ],
)
def test_a_second_instruction_is_told(lines: str) -> None:
    (finding,) = source(lines).findings
    assert finding.rule == "not-understood"
    assert "sentence of its own" in finding.mend


@pytest.mark.parametrize(
    "words",
    [
        "Cut yarn and thread tail through remaining 8 sts.",
        "Break yarn, leaving a 20 cm tail, and draw it through the remaining 8 sts and pull tight.",
        "Cut yarn, leaving a tail. Thread tail through the 8 sts and fasten off.",
        "Bind off all sts loosely, leaving a long tail.",
    ],
)
def test_ends_that_need_two_clauses(words: str) -> None:
    project = source(f"Cast on 8 sts.\n{words}")
    assert project.findings == ()
    worked = work(grade(project.patterns[0]))
    assert worked.faults == ()
    assert worked.entries[-1].after == (0,)


def test_the_count_drawn_together_is_checked_behind_cutting_the_yarn() -> None:
    project = source("Cast on 8 sts.\nCut yarn and thread tail through remaining 9 sts.")
    (fault,) = work(grade(project.patterns[0])).faults
    assert type(fault).__name__ == "WrongCount"


EVERY_ROW_ONE_LESS = "Cast on 20 sts.\nRow 1: K2tog, k to end.\nRow 2: Purl.\nRep Rows 1 and 2 until 10 sts remain"


@pytest.mark.parametrize(
    ("lines", "quoted"),
    [
        (f"{EVERY_ROW_ONE_LESS}, ending with Row 1.", "“ending with Row 1”"),
        ("Cast on 20 sts.\nDec 1 st at each end of next and every foll 4th row 3 times in all.", "3 times in all”"),
    ],
)
def test_what_would_be_worked_otherwise_than_said_is_not_understood(lines: str, quoted: str) -> None:
    (finding,) = source(lines).findings
    assert finding.rule == "not-understood"
    assert quoted in finding.message


def test_the_side_of_the_row_that_reaches_a_count_is_judged() -> None:
    for side, kinds in (("WS", []), ("RS", ["WrongSide"])):
        project = source(f"{EVERY_ROW_ONE_LESS}, ending with a {side} row.")
        assert project.findings == ()
        worked = work(grade(project.patterns[0]))
        assert worked.entries[-1].after == (10,)
        assert [type(fault).__name__ for fault in worked.faults] == kinds
