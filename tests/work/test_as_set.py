"""In: a stitch pattern begun, and "in pattern as set". Out: its next rows are worked, or it is told that none is."""

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.as_set import UnclearPattern
from sizewright.work.run import work
from sizewright.work.worked import Worked

LACE = """---
title: Trial
gauge: {stitches: 20 st / 10 cm, rows: 20 row / 10 cm}
---
```stitch lace
Multiple of 6 sts plus 1.
Row 1 (RS): K1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end.
Row 2: Purl.
Row 3: K2, *yo, s2kp, yo, k3; rep from * to last 5 sts, yo, s2kp, yo, k2.
Row 4: Purl.
```
```work
Cast on 13 sts.
"""


def worked(lines: str) -> Worked:
    project = read_text(f"{LACE}{lines}\n```\n")
    assert [finding.message for finding in project.findings] == []
    return work(grade(project.patterns[0]))


def labels(lines: str) -> str:
    """The numbers of the rows in working order."""
    (course,) = worked(lines).courses
    spells = [spell for leg in course for spell in leg.spells]
    return "".join(one.row.label[4:5] for spell in spells for _ in range(spell.times) for one in spell.passes)


@pytest.mark.parametrize(
    ("lines", "rows"),
    [
        ("Work Rows 1 and 2 of lace.\nContinue in pattern as set for 5 rows.\nWork even for 2 rows.", "123412341"),
        ("Work Row 1 of lace.\nContinue in pattern as set until piece measures 3 cm.", "123412"),
        ("Work lace for 3 rows.\nWork in pattern for 2 rows.\nWork as established for 2 rows.", "1234123"),
        ("Work in lace.\nContinue in pattern as set for 3 rows.", "123"),
        ("Rep Rows 1-4 of lace twice.\nContinue in pattern as set for 2 rows.", "1234123412"),
    ],
)
def test_in_pattern_as_set_goes_on_with_the_next_row(lines: str, rows: str) -> None:
    """Common practice, no source: behind Row 2 of four comes Row 3."""
    assert worked(lines).faults == ()
    assert labels(lines) == rows


@pytest.mark.parametrize(
    ("lines", "unclear"),
    [
        ("Work Rows 1 and 2 of lace.\nNext Row: K2tog, k to end.\nContinue in pattern as set for 2 rows.", 1),
        ("Work Rows 1 and 2 of lace.\nBind off 3 sts at beginning of next 2 rows.\nWork in pattern for 2 rows.", 1),
        ("Work Row 1 of lace.\nNext Row: Work in pattern to end.\nWork in pattern as set for 2 rows.", 1),
        ("Row 1: K3, work Row 1 of lace over next 7 sts, k3.\nRow 2: Purl.\nWork in pattern as set for 2 rows.", 1),
        ("Work Rows 1 and 2 of lace.\nRow 1: Knit.\nWork in pattern as set for 2 rows.", 0),
        ("Work Rows 1 and 2 of lace.\nWork in garter for 2 rows.\nWork in pattern as set for 2 rows.", 0),
    ],
)
def test_what_is_not_known_is_told(lines: str, unclear: int) -> None:
    assert [type(fault) for fault in worked(lines).faults] == [UnclearPattern] * unclear
