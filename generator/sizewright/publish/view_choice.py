"""What a page is given to choose a size with: the measures to find it by, and the sizes set side by side."""

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class MeasureView:
    """One measure that a size can be found by; `of_body` where a finished measurement is compared with it."""

    key: str
    label: str
    of_body: bool


@dataclass(frozen=True, slots=True)
class FitView:
    """The measures of a pattern, the unit its studio measures in, and all that is known of them as data.

    Lengths in the data are exact and in cm, ease that is a part of the body is a plain number, as text: "145/2".
    """

    measures: tuple[MeasureView, ...]
    unit: str
    data: Markup


@dataclass(frozen=True, slots=True)
class BesideRow:
    """One line of the comparison; `cells` has what each size has."""

    label: str
    cells: tuple[Markup, ...]


@dataclass(frozen=True, slots=True)
class BesideGroup:
    """Lines of the comparison that belong together: measurements, yarn, stitches and rows."""

    label: str
    rows: tuple[BesideRow, ...]
