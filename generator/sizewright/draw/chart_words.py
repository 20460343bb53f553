"""In: a chart as data. Out: how it is read, what is repeated, and each of its rows as a line in house style."""

from collections.abc import Iterator
from dataclasses import replace

from sizewright.base.language import later, tr
from sizewright.draw.chart import Chart, ChartRow
from sizewright.read.notation.direction_tree import Numbers
from sizewright.read.notation.kinds import Side
from sizewright.read.notation.phrasing import told_or_english
from sizewright.read.notation.printed_rows import Line, row_line

_WAYS = {False: later("right to left"), True: later("left to right")}
_EVERY = {True: later("Read every round from {way}."), False: later("Read every row from {way}.")}  # in the round?
_LEFT_HANDED = later(
    "The chart is in mirror image, for working from left to right. The words of the rows stay as they are: worked like "
    "this, what leans or crosses goes the other way, as the signs here show, and the piece comes out in mirror image."
)


def reading(chart: Chart) -> str:
    """From which side the rows are read."""
    rows = chart.rows
    ways = {row.wrong_side: tr(_WAYS[row.from_left]) for row in rows}
    if rows[0].in_the_round or len(ways) == 1:
        return tr(_EVERY[rows[0].in_the_round], way=tr(_WAYS[rows[0].from_left]))
    return tr("Read RS rows from {right} and WS rows from {wrong}.", right=ways[False], wrong=ways[True])


def chart_notes(chart: Chart) -> Iterator[str]:
    """How the chart is read, and what is repeated."""
    if chart.mirrored:
        yield tr(_LEFT_HANDED)
    yield reading(chart)
    if chart.multiple:
        multiple = tr("Multiple of {multiple} sts plus {plus}") if chart.plus else tr("Multiple of {multiple} sts")
        framed = tr("the repeat is framed.") if chart.frame else tr("no columns are repeated alike in all rows.")
        yield f"{multiple.format(multiple=chart.multiple, plus=chart.plus)}; {framed}"


def row_words(row: ChartRow) -> Line:
    """The row as it is written, under its own number and with its side: "Row 4 (WS): K3, purl to last 3 sts, k3."."""
    side = None if row.in_the_round else Side.WRONG if row.wrong_side else Side.RIGHT
    own = replace(
        row.written, numbers=Numbers((row.number,)), side=side, in_the_round=row.in_the_round, like=None, heading=""
    )
    return told_or_english(lambda: row_line(own))
