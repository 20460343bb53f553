"""In: a stitch block. Out: the multiple its rows really have, found by working them over every count of stitches.

The rows themselves are the judge: whatever count they can be worked over from the first row to the last, ending with a
count they can be worked over again, fits the pattern. No second account of the notation is needed.
"""

import re
from collections.abc import Sequence
from itertools import pairwise

from sizewright.grade.graded import Graded
from sizewright.read.notation.direction_tree import Row
from sizewright.read.pattern import StitchBlock
from sizewright.work.arrange import arranged
from sizewright.work.counts import Counts
from sizewright.work.faults import Stopped
from sizewright.work.needle import Needle
from sizewright.work.row_parts import row_parts
from sizewright.work.row_work import RowWork
from sizewright.work.worked import StitchPattern

_WIDEST = 480  # stitches tried; a repeat wider than a third of it is no stitch pattern anybody printed
_STATED = re.compile(r"multiple of (\d+)(?: sts?| stitches)?(?:,? (?:plus|and|\+) (\d+))?", re.IGNORECASE)


def measured(block: StitchBlock, graded: Graded) -> StitchPattern:
    """The stitch pattern of a block, with the multiple it states."""
    rows = tuple(row for row in arranged(block.directions) if isinstance(row, Row))
    fits = fitting(rows, graded) if rows else ()
    multiple, plus = _multiple(fits)
    return StitchPattern(block.name.text, block.span, multiple, plus, len(rows), _stated(block))


def fitting(rows: Sequence[Row], graded: Graded) -> tuple[int, ...]:
    """The counts, up to a wide piece, over which the rows can be worked and worked again."""
    counts = Counts(graded, 0)
    return tuple(width for width in range(1, _WIDEST) if _works(rows, width, counts))


def _works(rows: Sequence[Row], width: int, counts: Counts) -> bool:
    needle = Needle(b"k" * width, in_the_round=any(row.in_the_round for row in rows))
    try:
        for row in rows:
            for part in row_parts(row.actions, counts):
                RowWork(needle, counts, row.label, row.span).work(part)
    except Stopped:
        return False
    return needle.total == width


def _multiple(fits: Sequence[int]) -> tuple[int | None, int]:
    """The multiple and the stitches beside it, where the counts that fit are evenly spaced."""
    if len(fits) < 3:
        return None, 0
    step = fits[1] - fits[0]
    if any(after - before != step for before, after in pairwise(fits)):
        return None, 0
    return step, fits[0] % step


def _stated(block: StitchBlock) -> tuple[int, int] | None:
    for line in block.lines:
        found = _STATED.search("".join(piece for piece in line.pieces if isinstance(piece, str)))
        if found is not None:
            return int(found[1]), int(found[2] or 0)
    return None
