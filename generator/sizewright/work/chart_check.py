"""In: stitch patterns that are written in rows and drawn as a chart too. Out: where the two disagree, as faults."""

from collections.abc import Iterator, Mapping, Sequence

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
        by_chart, by_words = (_by_number(graded, block, width) for block in (chart, words))
    except Stopped:
        return
    for number, row in by_chart.items():
        if number in by_words:
            yield from _row(chart, row, words, by_words[number])
    for number in by_chart.keys() ^ by_words.keys():
        there, lacking = ("a row", "none") if number in by_chart else ("none", "a row")
        yield ChartDiffers(chart.span, words.span, f"Row {number}", 0, there, lacking)


def _by_number(graded: Graded, block: StitchBlock, width: int) -> Mapping[int, RecordedRow]:
    """The rows worked, by their numbers. Raises `Stopped`."""
    return {row.number: row for row in recorded(block_rows(block.directions), width, Counts(graded, 0))}


def _row(chart: StitchBlock, drawn: RecordedRow, words: StitchBlock, written: RecordedRow) -> Iterator[ChartDiffers]:
    place = _place(chart, drawn.number), _place(words, written.number)
    if drawn.wrong_side != written.wrong_side or drawn.in_the_round != written.in_the_round:
        yield ChartDiffers(*place, drawn.label, 0, _side(drawn), _side(written))
        return
    yarns = any(cell.colour for row in (drawn, written) for cell in row.cells)
    pairs = zip(drawn.cells, written.cells, strict=False)
    for number, (one, other) in enumerate(pairs, start=1):
        if _said(one, yarns=yarns) != _said(other, yarns=yarns):
            yield ChartDiffers(*place, drawn.label, number, _said(one, yarns=yarns), _said(other, yarns=yarns))
            return


def _place(block: StitchBlock, number: int) -> Span:
    return next((row.span for row in block_rows(block.directions) if number in row.numbers.listed), block.span)


def _said(cell: Cell, *, yarns: bool) -> str:
    return f"{cell.term} in {cell.colour}" if yarns and cell.colour else cell.term


def _side(row: RecordedRow) -> str:
    if row.in_the_round:
        return "a round"
    return "a wrong-side row" if row.wrong_side else "a right-side row"


def _multiple(pattern: StitchPattern) -> str:
    plus = f" plus {pattern.plus}" if pattern.plus else ""
    return f"a multiple of {pattern.multiple} sts{plus}"
