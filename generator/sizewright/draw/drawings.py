"""In: a pattern carried out. Out: its drawings: chart and cloth of its stitch patterns, and the cloth of its piece."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sizewright.base.language import named, tr
from sizewright.base.place import Span
from sizewright.base.telling import listed
from sizewright.draw.chart import Chart, chart
from sizewright.draw.chart_mirror import mirrored
from sizewright.draw.chart_svg import NO_STITCH, chart_svg, gutter_svg, key_svg, no_stitch_svg, row_place, yarn_svg
from sizewright.draw.chart_words import chart_notes, row_words
from sizewright.draw.cloth_svg import Extent, cloth_svg
from sizewright.draw.cloth_words import textures
from sizewright.draw.yarn_colours import yarn_colours
from sizewright.grade.graded import Graded
from sizewright.read.notation.direction_tree import Row
from sizewright.read.notation.printed_rows import Line
from sizewright.read.notation.usual_names import yarn_in_full, yarn_name
from sizewright.read.pattern import Gauge, StitchBlock
from sizewright.read.yarn_names import YarnNames
from sizewright.work.blocks import block_rows
from sizewright.work.cloth import TALLEST, WIDEST, Cloth, pattern_cloth, piece_cloth
from sizewright.work.counts import Counts
from sizewright.work.faults import Stopped
from sizewright.work.recording import RecordedRow, recorded
from sizewright.work.widths import Tried, fitting
from sizewright.work.worked import StitchPattern, Worked

_SCALE, _COLOUR_SCALE = 1.15, 1.5  # pixels a unit: cells with a letter in them are larger
_USUAL_RATIO = 0.75  # the height of a row to the width of a stitch where no gauge says it: stockinette, about
_SWATCH = 28  # stitches a swatch has at least
# The renderer of PDFs takes some milliseconds a stitch, so that paper shows fewer of them.
_SCREEN, _PAPER = Extent(WIDEST, TALLEST), Extent(30, 26)
_SHAPE = 1.6  # the width of a swatch to its height
_COUNTS_DRAWN = 3  # counts a chart is drawn over, to find what is repeated


@dataclass(frozen=True, slots=True)
class Drawing:
    """A picture as SVG, a smaller one for paper, and the words that stand for both."""

    svg: str
    paper: str
    words: str


@dataclass(frozen=True, slots=True)
class DrawnRow:
    """A row of a chart: its number, its line in its parts, and where it lies: shares of the height of the drawing."""

    number: int
    from_left: bool
    top: float
    height: float
    words: Line


@dataclass(frozen=True, slots=True)
class DrawnChart:
    """A chart as SVG, its key as signs with their meanings, and what a reader has to know of it.

    `gutters` are the row numbers of its sides by themselves, and `rows` its rows from the lowest up.
    """

    svg: str
    key: tuple[tuple[str, str], ...]
    notes: tuple[str, ...]
    gutters: tuple[str, ...]
    rows: tuple[DrawnRow, ...]


@dataclass(frozen=True, slots=True)
class StitchDrawings:
    """What is drawn of a stitch block; None where its rows cannot be drawn. `mirrored` is left-handed."""

    chart: DrawnChart | None
    mirrored: DrawnChart | None
    cloth: Drawing | None


def stitch_drawings(worked: Worked) -> Mapping[Span, StitchDrawings]:
    """The drawings of every stitch block, by its place."""
    blocks = {block.span: block for block in worked.graded.pattern.body if isinstance(block, StitchBlock)}
    return {
        pattern.span: _stitch_drawings(blocks[pattern.span], pattern, worked.graded)
        for pattern in worked.stitch_patterns
        if pattern.span in blocks
    }


def piece_drawing(worked: Worked) -> Drawing | None:
    """The cloth of the first piece in the middle size; None where nothing is worked or something cannot be."""
    graded = worked.graded
    size = max(0, len(graded.sizes) - 1) // 2
    cloth = piece_cloth(graded, size)
    if cloth is None or any(fault.size == size for fault in worked.faults):
        return None
    # Whose size it is goes unsaid: the words are read out to everybody, whichever size they knit.
    words = tr("The cloth of {title}, drawn from its rows", title=named(graded.pattern.header.title))
    return _drawing(cloth, graded, _ratio(graded.pattern.header.gauges, ""), words, swatch=False)


def _stitch_drawings(block: StitchBlock, pattern: StitchPattern, graded: Graded) -> StitchDrawings:
    rows = block_rows(block.directions)
    if not rows or not pattern.understood:
        return StitchDrawings(None, None, None)
    widths = _widths(rows, pattern, graded)
    drawn = chart(pattern.name, pattern.multiple or 0, pattern.plus, widths)
    right, left = (drawn, mirrored(drawn)) if drawn is not None else (None, None)
    return StitchDrawings(
        _drawn_chart(right, graded) if right else None,
        _drawn_chart(left, graded) if left else None,
        _swatch(rows, pattern, widths, graded),
    )


def _widths(rows: Sequence[Row], pattern: StitchPattern, graded: Graded) -> list[tuple[RecordedRow, ...]]:
    """The rows over the narrowest counts that fit, one repeat apart; a pattern of one count alone is a panel."""
    counts = Counts(graded, 0)
    fits = fitting(Tried(rows, counts)) if pattern.cast_on is None else (pattern.cast_on,)
    if pattern.multiple is None and len(fits) != 1:
        return []
    try:
        return [recorded(rows, count, counts) for count in fits[:_COUNTS_DRAWN]]
    except Stopped:
        return []


def _drawn_chart(drawn: Chart, graded: Graded) -> DrawnChart:
    colours = yarn_colours(graded.pattern.header.yarns, [name for name, _ in drawn.yarns])
    scale = _COLOUR_SCALE if drawn.yarns else _SCALE
    key = [(key_svg(entry.symbol, entry.words, _SCALE), entry.words) for entry in drawn.key]
    if drawn.has_gaps:
        key.append((no_stitch_svg(_SCALE), tr(NO_STITCH)))
    own = YarnNames(graded.pattern.header.yarns)
    yarns = ((_yarn_words(name, letter, own), colours[name], letter) for name, letter in drawn.yarns)
    key.extend((yarn_svg(colour, letter, name, _SCALE), name) for name, colour, letter in yarns)
    gutters = (gutter_svg(drawn, scale, left=left) for left in (True, False))
    rows = tuple(
        DrawnRow(row.number, row.from_left, *row_place(drawn, place), row_words(row))
        for place, row in enumerate(drawn.rows)
    )
    return DrawnChart(
        chart_svg(drawn, colours, scale), tuple(key), tuple(chart_notes(drawn)), tuple(filter(None, gutters)), rows
    )


def _yarn_words(name: str, letter: str, yarns: YarnNames) -> str:
    """A yarn of a key by its name; where that is no more than its letters, by its colour or by its name in full."""
    told = yarn_name(name)
    if told != letter:
        return told
    colour = next((yarn.colour for yarn in yarns.answering(name)), None)
    return named(colour.text) if colour is not None else yarn_in_full(name)


def _swatch(
    rows: Sequence[Row], pattern: StitchPattern, widths: Sequence[Sequence[RecordedRow]], graded: Graded
) -> Drawing | None:
    """A few repeats of a stitch pattern as cloth."""
    if not widths:
        return None
    width, multiple = widths[0][0].before, pattern.multiple or 0
    while multiple and width < _SWATCH and width + multiple <= WIDEST:
        width += multiple
    ratio = _ratio(graded.pattern.header.gauges, pattern.name)
    height = min(TALLEST, max(len(rows), round(width / ratio / _SHAPE)))
    try:
        cloth = pattern_cloth(rows, width, height, graded)
    except Stopped:
        return None
    words = tr("{name} as it is knitted, drawn from its rows", name=named(pattern.name))
    return _drawing(cloth, graded, ratio, words, swatch=True)


def _drawing(cloth: Cloth, graded: Graded, ratio: float, words: str, *, swatch: bool) -> Drawing:
    names = tuple(dict.fromkeys(name for row in cloth.rows for name in row.colours)) or ("",)
    colours = yarn_colours(graded.pattern.header.yarns, names)
    several = len(set(colours.values()))
    seen = listed(tuple(map(tr, textures(cloth)))) or tr("knitted rows")
    if several > 1:
        seen = tr("{textures} in {n} colours", textures=seen, n=several)
    said = f"{words}: {seen}"
    screen, paper = (
        cloth_svg(cloth, colours, ratio=ratio, name=said, swatch=swatch, extent=extent) for extent in (_SCREEN, _PAPER)
    )
    return Drawing(screen, paper, said)


def _ratio(gauges: Sequence[Gauge], name: str) -> float:
    """The height of a row to the width of a stitch, by the gauge of that fabric, else by the first."""
    known = [gauge for gauge in gauges if gauge.stitches is not None and gauge.rows is not None]
    meant = [gauge for gauge in known if name and gauge.over and name.casefold() in gauge.over.text.casefold()]
    for gauge in (meant or known)[:1]:
        if gauge.stitches is not None and gauge.rows is not None:
            ratio = float(gauge.stitches.quantity.value / gauge.rows.quantity.value)
            return min(1.2, max(0.4, ratio))
    return _USUAL_RATIO
