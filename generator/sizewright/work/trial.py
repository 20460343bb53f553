"""In: the rows of a stitch pattern and a width. Out: the counts they leave over it."""

from collections.abc import Sequence

from sizewright.read.notation.direction_tree import Row
from sizewright.work.counts import Counts
from sizewright.work.faults import Stopped
from sizewright.work.needle import Needle
from sizewright.work.row_parts import row_parts
from sizewright.work.row_work import RowWork


def fresh_needle(rows: Sequence[Row], width: int) -> Needle:
    """So many stitches, before the first row."""
    return Needle(b"k" * width, in_the_round=any(row.in_the_round for row in rows))


def totals(rows: Sequence[Row], width: int, counts: Counts) -> tuple[int, ...]:
    """The stitches behind each row, begun over a width; fewer than there are rows where one cannot be worked."""
    needle = fresh_needle(rows, width)
    found: list[int] = []
    try:
        for row in rows:
            for part in row_parts(row.actions, counts):
                RowWork(needle, counts, row.label, row.span).work(part)
            found.append(needle.total)
    except Stopped:
        pass
    return tuple(found)
