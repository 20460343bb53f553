"""The counts a stitch pattern fits, stepped from the first of them, are those found by trying every count."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.read.notation.direction_tree import Row
from sizewright.read.pattern import StitchBlock
from sizewright.work.arrange import arranged
from sizewright.work.counts import Counts
from sizewright.work.widths import WIDEST, Tried, fitting

STITCHES = ("k1", "p2", "k3", "yo", "k2tog", "ssk", "sk2p", "kfb", "m1", "sl 1", "C4F", "[k1, p1] twice", "k2tog, yo")
ROWS = (
    *("{0}, *{1}, {2}; rep from * to end", "*{1}, {2}, {0}; rep from * to last 2 sts, {1}, k1", "K to end", "Purl"),
    *(
        "[{1}, {2}] to last st, {0}",
        "*{0}, {1}*",
        "*{1}; rep from *, end {0}",
        "*k3, {1}; rep from * to end, ending last rep k1",
    ),
    *(
        "{0}, k to last 3 sts, {1}, k1",
        "Knit the knits and purl the purls",
        "{0}, {1}, k5",
        "K2tog to end",
        "*kfb; rep from * to end",
    ),
    *(
        "K2, work in pattern to last 2 sts, k2",
        "*K to last 2 sts, k2; rep from * to end",
        "[*{0}; rep from * to last 4 sts] once, k4",
    ),
    *(
        "With A, *{0}, with B, {1}, with A; rep from * to end",
        "K2, pm, k to end",
        "K4, turn",
        "Bind off 2 sts, k to end, cast on 2 sts",
    ),
)


def block_of(lines: str) -> Tried:
    """The rows of a stitch block, in working order, none tried yet."""
    project = read_text(f"---\ntitle: A\n---\n```stitch Trial\n{lines}\n```\n", "a.md")
    block = next(piece for piece in project.patterns[0].body if isinstance(piece, StitchBlock))
    rows = tuple(row for row in arranged(block.directions) if isinstance(row, Row))
    return Tried(rows, Counts(grade(project.patterns[0]), 0))


def each(tried: Tried, most: int) -> tuple[int, ...]:
    """The counts below `most` that fit, each of them tried."""
    return tuple(width for width in range(1, most) if tried.fits(width))


written = st.tuples(st.sampled_from(ROWS), *[st.sampled_from(STITCHES)] * 3).map(lambda one: one[0].format(*one[1:]))


@settings(derandomize=True, max_examples=50, deadline=None)
@given(texts=st.lists(written, min_size=1, max_size=4))
def test_the_counts_are_those_found_by_trying_each(texts: list[str]) -> None:
    tried = block_of("\n".join(f"Row {number}: {text}." for number, text in enumerate(texts, start=1)))
    assert tuple(width for width in fitting(tried) if width < 64) == each(tried, 64)


@pytest.mark.parametrize(
    ("lines", "first", "step"),
    [
        # A row of 3 becomes 5 and 5 become 3: whole repeats of both rows.
        ("Row 1: *K1, yo, k1, yo, k1; rep from * to end.\nRow 2: *K2tog, k1, k2tog; rep from * to end.", 3, 3),
        # Three of each four are left, and a row of five of those needs 20 at first.
        (
            "Row 1: *K2tog, k2; rep from * to end.\nRow 2: *K5; rep from * to end.\nRow 3: *K3, m1; rep from * to end.",
            20,
            20,
        ),
        ("Row 1: K3, *[k2tog] 3 times, [yo, k1] 6 times, [k2tog] 3 times; rep from * to last 3 sts, k3.", 24, 18),
        ("Row 1: *K2, p2; rep from * to end.\nRow 2: *K6; rep from * to end.", 12, 12),
    ],
)
def test_the_steps_of_rows_with_different_repeats(lines: str, first: int, step: int) -> None:
    tried = block_of(lines)
    assert fitting(tried) == tuple(range(first, WIDEST, step)) == each(tried, WIDEST)


@pytest.mark.parametrize(
    "lines", ["Row 1: K8.", "Row 1: *K1, yo; rep from * to end.", "Row 1: *K2tog; rep from * to end."]
)
def test_rows_that_fit_one_count_or_none(lines: str) -> None:
    tried = block_of(lines)
    assert fitting(tried) == each(tried, WIDEST)
