"""In: the drawings of a pattern. Out: the charts and pictures of cloth that its page and its paper show."""

from base64 import b64encode
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from sizewright.base.language import later, tr
from sizewright.base.place import Span
from sizewright.draw.drawings import Drawing, DrawnChart, DrawnRow, StitchDrawings
from sizewright.publish.drawn import drawn, drawn_path
from sizewright.publish.links import Links
from sizewright.publish.picture_size import picture_size
from sizewright.publish.view import Line, Picture
from sizewright.publish.view_chart import ChartRowView, ChartView, KeyView
from sizewright.publish.view_lines import printed_view
from sizewright.read.pattern import Insert, TypedList
from sizewright.work.worked import Worked

_CAPTION = later("The cloth of the first piece, drawn from its rows")
_CLOTH = later("Its cloth, drawn from the rows")


@dataclass(frozen=True, slots=True)
class Figures:
    """What is drawn of a stitch block, for a page or for paper; the numbers of its rows are put in by `chart_view`."""

    drawings: StitchDrawings
    cloth: Picture | None
    paper: bool


def piece_picture(worked: Worked, links: Links) -> Picture | None:
    """The picture drawn for a pattern that has none of its own."""
    picture = _picture(drawn_path(worked), drawn(worked).piece, links)
    return picture and replace(picture, caption=tr(_CAPTION))


def figures(worked: Worked, links: Links) -> Mapping[Span, Figures]:
    """The drawings of every stitch block, by its place."""
    return {
        span: Figures(drawings, _cloth(drawn_path(worked, number), drawings.cloth, links), links.paper)
        for number, (span, drawings) in enumerate(drawn(worked).stitches.items(), start=1)
    }


def _cloth(path: str, drawing: Drawing | None, links: Links) -> Picture | None:
    picture = _picture(path, drawing, links)
    return picture and replace(picture, caption=tr(_CLOTH))


def _picture(path: str, drawing: Drawing | None, links: Links) -> Picture | None:
    """A picture beside the page; on paper it stands in the page itself, which has nothing beside it."""
    if drawing is None:
        return None
    if links.paper:
        return Picture(f"data:image/svg+xml;base64,{b64encode(drawing.paper.encode()).decode()}", drawing.words)
    return Picture(links.file(path), drawing.words, size=picture_size(drawing.svg.encode()))


def chart_view(figures: Figures, number: Callable[[Insert | TypedList], str]) -> ChartView | None:
    """The chart of a stitch block; `number` gives the markup of a number among the words of a row."""
    right, left = figures.drawings.chart, figures.drawings.mirrored
    if right is None:
        return None
    if figures.paper:
        return replace(_chart(right, number), gutters=(), rows=())
    return replace(_chart(right, number), mirrored=_chart(left, number) if left else None)


def _chart(chart: DrawnChart, number: Callable[[Insert | TypedList], str]) -> ChartView:
    key = tuple(KeyView(Markup(sign), words) for sign, words in chart.key)  # noqa: S704 (markup of the draw stage)
    rows = tuple(_row(row, printed_view(row.words, number)) for row in chart.rows)
    gutters = tuple(map(Markup, chart.gutters))
    return ChartView(Markup(chart.svg), key, chart.notes, gutters, rows)  # noqa: S704 (markup of the draw stage)


def _row(row: DrawnRow, line: Line) -> ChartRowView:
    text = line.text + (Markup(" ({})").format(line.count) if line.count else "")
    return ChartRowView(row.number, row.from_left, f"{row.top:.3%}", f"{row.height:.3%}", line.label, text)
