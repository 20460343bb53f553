"""What stands behind the repeats of a row, with and without a place: "end k3", "to last 3 sts, end k3".

Common practice, no source: an ending behind a place is worked over the stitches from there on.
"""

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.run import work


def faults(lines: str) -> list[str]:
    """The kinds of faults of some instructions."""
    project = read_text(f"---\ntitle: A\n---\n```work\n{lines}\n```\n", "a.md")
    assert project.findings == ()
    return [type(fault).__name__ for fault in work(grade(project.patterns[0])).faults]


@pytest.mark.parametrize(
    "row",
    [
        "*K2, p2; rep from * to last 3 sts, k3.",
        "*K2, p2; rep from * to last 3 sts, end k3.",
        "*K2, p2; rep from * to last 3 sts, ending with k3.",
        "*K2, p2; rep from *, end k3.",
        "*K2, p2; rep from * to end, ending with k3.",
        "*K2, p2; rep from * to end, ending last rep p1.",
        "*With A, k2, with B, p2; rep from *, end with A, k3.",
        "*K1, with A, k1, p2; rep from *, end k3.",
    ],
)
def test_endings_that_come_out(row: str) -> None:
    """15 stitches are three repeats of four and three more."""
    assert faults(f"Cast on 15 sts.\nRow 1: {row}") == []


@pytest.mark.parametrize(
    ("row", "kind"),
    [
        ("*K2, p2; rep from * to last 3 sts, end k2.", "LeftOver"),
        ("*K2, p2; rep from * to last 3 sts, end k4.", "TooFew"),
        ("*K2, p2; rep from * to last 2 sts, end k2.", "BrokenRepeat"),
        ("*K2, p2; rep from *, end k2.", "BrokenRepeat"),
        ("*With A, k2, with B, p2; rep from *, end with A, k2.", "BrokenRepeat"),
    ],
)
def test_endings_that_do_not(row: str, kind: str) -> None:
    assert faults(f"Cast on 15 sts.\nRow 1: {row}") == [kind]
