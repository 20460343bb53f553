"""In: stitch patterns that are written in rows and drawn as a chart too. Out: where the two disagree, as faults."""

from collections.abc import Iterator, Sequence

from sizewright.base.place import Span
from sizewright.grade.graded import Graded
from sizewright.read.pattern import StitchBlock
from sizewright.work.blocks import block_rows
from sizewright.work.counts import Counts
from sizewright.work.faults import ChartDiffers, Stopped
from sizewright.work.recording import Cell, RecordedRow, recorded
from sizewright.work.worked import StitchPattern


def disagreements(graded: Graded, patterns: Sequence[StitchPattern]) -> Iterator[ChartDiffers]:
    """The first disagreement of each row of a chart with the written rows of the same name."""
    blocks = [block for block in graded.pattern.body if isinstance(block, StitchBlock)]
    measured = dict(zip((block.span for block in blocks), patterns, strict=True))
    written = {block.name.text.casefold(): block for block in blocks if not block.drawn}
    for block in blocks:
        other = written.get(block.name.text.casefold()) if block.drawn else None
        if other is not None and block_rows(block.directions) and block_rows(other.directions):
            yield from _compared(graded, block, measured[block.span], other, measured[other.span])


def _compared(
    graded: Graded, chart: StitchBlock, drawn: StitchPattern, words: StitchBlock, written: StitchPattern
) -> Iterator[ChartDiffers]:
    if drawn.multiple is None or written.multiple is None:
        return  # that one of them cannot be worked is told already
    if (drawn.multiple, drawn.plus) != (written.multiple, written.plus):
        yield ChartDiffers(chart.span, words.span, "", 0, _multiple(drawn), _multiple(written))
        return
    width = drawn.plus + 2 * drawn.multiple
    try:
        by_chart, by_words = (_worked(graded, block, width) for block in (chart, words))
    except Stopped:
        return
    for drawn_row, written_row in zip(by_chart, by_words, strict=False):
        yield from _row(drawn_row, written_row)
    shared = min(len(by_chart), len(by_words))
    for row, _ in by_chart[shared:]:
        yield ChartDiffers(chart.span, words.span, row.label, 0, "a row", "none")
    for number in range(shared + 1, len(by_words) + 1):  # a repeated row of the words has no number of its own
        yield ChartDiffers(chart.span, words.span, f"Row {number}", 0, "none", "a row")


_Worked = tuple[RecordedRow, Span]


def _worked(graded: Graded, block: StitchBlock, width: int) -> tuple[_Worked, ...]:
    """The rows in working order, each with the place it is told at. Raises `Stopped`."""
    rows = block_rows(block.directions)
    done = recorded(rows, width, Counts(graded, 0))
    return tuple(zip(done, (row.span for row in rows), strict=True))


def _row(chart: _Worked, words: _Worked) -> Iterator[ChartDiffers]:
    """Where one row differs first."""
    (drawn, at), (written, beside) = chart, words
    if drawn.wrong_side != written.wrong_side or drawn.in_the_round != written.in_the_round:
        yield ChartDiffers(at, beside, drawn.label, 0, _side(drawn), _side(written))
        return
    yarns = any(cell.colour for row in (drawn, written) for cell in row.cells)
    pairs = zip(drawn.cells, written.cells, strict=False)
    for number, (one, other) in enumerate(pairs, start=1):
        if _said(one, yarns=yarns) != _said(other, yarns=yarns):
            yield ChartDiffers(at, beside, drawn.label, number, _said(one, yarns=yarns), _said(other, yarns=yarns))
            return


def _said(cell: Cell, *, yarns: bool) -> str:
    return f"{cell.term} in {cell.colour}" if yarns and cell.colour else cell.term


def _side(row: RecordedRow) -> str:
    if row.in_the_round:
        return "a round"
    return "a wrong-side row" if row.wrong_side else "a right-side row"


def _multiple(pattern: StitchPattern) -> str:
    plus = f" plus {pattern.plus}" if pattern.plus else ""
    return f"a multiple of {pattern.multiple} sts{plus}"
