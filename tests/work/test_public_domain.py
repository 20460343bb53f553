"""Rows of two books in the public domain, letter for letter: each is read, and has the multiple the book states.

Miss Lambert, "My Knitting Book", London 1843 (Project Gutenberg 33502); the even rows are plain or pearl and left out,
and line breaks are joined. "Handbook of Wool Knitting and Crochet", Needlecraft Publishing Co., Augusta, Maine 1918
(Project Gutenberg 26113).
"""

import pytest

from sizewright.grade.run import grade
from sizewright.proof.run import proof
from sizewright.read.folder import read_text
from sizewright.work.run import work

LAMBERT = {
    "Chevron Pattern": (
        8,
        "Cast on any number of stitches that can be divided by eight.",
        "_First row_--pearl knitting.",
        "_Second row_--knit two together; knit three; bring the thread forward, knit three.--Repeat.",
    ),
    "Vandyke Pattern": (
        10,
        "Cast on any number of stitches that can be divided by ten.",
        (
            "_Fourth row_--bring the thread forward, knit two; knit two together; pearl one; knit two together; "
            "knit two; bring the thread forward, knit one.--Repeat."
        ),
    ),
    "Diamond Pattern": (
        8,
        "Cast on eight stitches for each pattern.",
        (
            "_First row_--bring the thread forward, knit one; bring the thread forward, knit two together; knit three; "
            "knit two together.--Repeat."
        ),
        (
            "_Third row_--bring the thread forward, knit three; bring the thread forward, knit two together; knit one; "
            "knit two together.--Repeat."
        ),
        (
            "_Fifth row_--bring the thread forward, knit five; bring the thread forward, slip one; knit two together, "
            "pass the slip-stitch over them.--Repeat."
        ),
        (
            "_Seventh row_--knit two together; knit three; knit two together; bring the thread forward, knit one; "
            "bring the thread forward.--Repeat."
        ),
    ),
    "Shell Pattern": (
        25,
        "Cast on twenty-five stitches for each pattern.",
        (
            "_First row_--knit two together, four times; bring the thread forward, knit one, eight times; "
            "knit two together, four times; pearl one.--Repeat."
        ),
    ),
    "Spider Pattern Bag": (
        6,
        "Cast on any number of stitches that can be divided by six.",
        (
            "_First round_--bring the silk forward, slip one; knit two together, pass the slip-stitch over them; "
            "bring the silk forward, knit three.--Repeat."
        ),
        "_Third round_--bring the silk forward, knit two together, twice; knit two.--Repeat.",
    ),
    "Diagonal Check Pattern Bag": (
        8,
        "Cast on eight stitches for each pattern.",
        (
            "_First round_--pearl one; bring the silk forward, slip one; knit one, pass the slip-stitch over it; "
            "knit four; pearl one.--Repeat."
        ),
        (
            "_Third round_--pearl one; knit one; bring the silk forward, slip one; knit one, pass the slip-stitch "
            "over it; knit three; pearl one.--Repeat."
        ),
    ),
}


@pytest.mark.parametrize("name", LAMBERT)
def test_a_pattern_of_1843(name: str) -> None:
    multiple, *lines = LAMBERT[name]
    body = "\n".join(str(line) for line in lines)
    project = read_text(f"---\ntitle: A\n---\n```stitch {name}\n{body}\n```\n", "a.md")
    assert [finding.message for finding in project.findings] == []
    (pattern,) = work(grade(project.patterns[0])).stitch_patterns
    assert (pattern.multiple, pattern.plus, pattern.stated, pattern.rows) == (
        multiple,
        0,
        (multiple, 0),
        len(lines) - 1,
    )
    assert [finding for finding in proof(project.patterns[0], project).findings if finding.level == "error"] == []


def test_basket_stitch_of_1918() -> None:
    lines = """Cast on 85 stitches; knit in basket-stitch, as follows:
1. * Knit 5, purl 5; repeat across, ending with knit 5.
2. Purl 5, knit 5; repeat across, ending with purl 5."""
    project = read_text(f"---\ntitle: A\n---\n```work\n{lines}\nBind off.\n```\n", "a.md")
    assert [finding.message for finding in project.findings] == []
    worked = work(grade(project.patterns[0]))
    assert worked.faults == ()
    assert [(entry.after, entry.rows) for entry in worked.entries] == [
        ((85,), (0,)),
        ((85,), (1,)),
        ((85,), (1,)),
        ((0,), (0,)),
    ]


def test_one_row_for_all_of_1918() -> None:
    said = (
        "Cast on any number of stitches divisible by four, with one stitch over, knit 2, purl 2, until but one stitch "
        "remains, and knit that. All rows are the same"
    )
    opening, row = said.split(", knit 2, ", 1)
    body = f"{opening}.\nRow 1: knit 2, {row}"  # one sentence in the book; here the row has a label
    project = read_text(f"---\ntitle: A\n---\n```stitch A\n{body}\n```\n", "a.md")
    assert [finding.message for finding in project.findings] == []
    (pattern,) = work(grade(project.patterns[0])).stitch_patterns
    assert (pattern.multiple, pattern.plus, pattern.stated) == (4, 1, (4, 1))
