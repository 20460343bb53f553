"""What templates are given of a chart: it is drawn already, so that they only say where it stands."""

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class KeyView:
    """One sign of a chart, drawn, and what it stands for."""

    sign: Markup
    words: str


@dataclass(frozen=True, slots=True)
class ChartView:
    """A chart, drawn, with its key and what has to be known to read it; the same rows always stand in words too."""

    drawing: Markup
    key: tuple[KeyView, ...]
    notes: tuple[str, ...]
