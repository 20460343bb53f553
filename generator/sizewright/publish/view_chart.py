"""What templates are given of a chart: it is drawn already, so that they only say where it stands."""

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class KeyView:
    """One sign of a chart, drawn, and what it stands for."""

    sign: Markup
    words: str


@dataclass(frozen=True, slots=True)
class ChartRowView:
    """A row of a chart in words, "Row 4 (WS):" and what is worked, and where it lies in the drawing: "12.5%".

    `top` is from the upper edge. It is read `from_left` or from the right.
    """

    number: int
    from_left: bool
    top: str
    height: str
    label: Markup
    text: Markup


@dataclass(frozen=True, slots=True)
class ChartView:
    """A chart, drawn, with its key and what has to be known to read it; the same rows always stand in words too.

    On a page it has its rows one by one, from the lowest up, its row numbers by themselves (`gutters`, laid over the
    drawing while it is scrolled), and the chart in mirror image; paper has none of them.
    """

    drawing: Markup
    key: tuple[KeyView, ...]
    notes: tuple[str, ...]
    gutters: tuple[Markup, ...] = ()
    rows: tuple[ChartRowView, ...] = ()
    mirrored: "ChartView | None" = None
