"""In: the drawings of a pattern. Out: the charts and pictures of cloth that its page and its paper show."""

from base64 import b64encode
from collections.abc import Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from sizewright.base.place import Span
from sizewright.draw.drawings import Drawing, DrawnChart
from sizewright.publish.drawn import drawn, drawn_path
from sizewright.publish.links import Links
from sizewright.publish.view import Picture
from sizewright.publish.view_chart import ChartView, KeyView
from sizewright.work.worked import Worked

_CAPTION = "The cloth of the first piece, drawn from its rows"


@dataclass(frozen=True, slots=True)
class Figures:
    """What is drawn of a stitch block, as a page shows it."""

    chart: ChartView | None
    cloth: Picture | None


def piece_picture(worked: Worked, links: Links) -> Picture | None:
    """The picture drawn for a pattern that has none of its own."""
    picture = _picture(drawn_path(worked), drawn(worked).piece, links)
    return picture and replace(picture, caption=_CAPTION)


def figures(worked: Worked, links: Links) -> Mapping[Span, Figures]:
    """The drawings of every stitch block, by its place."""
    return {
        span: Figures(_chart(drawings.chart), _picture(drawn_path(worked, number), drawings.cloth, links))
        for number, (span, drawings) in enumerate(drawn(worked).stitches.items(), start=1)
    }


def _picture(path: str, drawing: Drawing | None, links: Links) -> Picture | None:
    """A picture beside the page; on paper it stands in the page itself, which has nothing beside it."""
    if drawing is None:
        return None
    if links.paper:
        return Picture(f"data:image/svg+xml;base64,{b64encode(drawing.paper.encode()).decode()}", drawing.words)
    return Picture(links.file(path), drawing.words)


def _chart(chart: DrawnChart | None) -> ChartView | None:
    if chart is None:
        return None
    key = tuple(KeyView(Markup(sign), words) for sign, words in chart.key)  # noqa: S704 (markup of the draw stage)
    return ChartView(Markup(chart.svg), key, chart.notes)  # noqa: S704 (markup of the draw stage)
