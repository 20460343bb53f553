"""What the templates of a proof sheet are given: plain frozen data in the order a sheet shows it, numbers as text.

A row of a table has one cell a size. `Markup` fields are finished HTML; every other field is escaped by the templates.
"""

from dataclasses import dataclass, field

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class Ref:
    """Words that lead to a place of the sheet; without an anchor they are only words."""

    text: str
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class FoundView:
    """A finding, or one that is accepted, with the reason; `quoted` is the line of the source it stands on."""

    anchor: str
    level: str
    rule: str
    message: str
    mend: str
    line: int | None
    quoted: str
    sizes: str
    reason: str = ""


@dataclass(frozen=True, slots=True)
class Cell:
    """What a table says of one size, and `more` in a line below.

    `mark` is a class: "changed", "astray", "far", "none", "" for nothing special.
    """

    text: str
    mark: str = ""
    more: str = ""


@dataclass(frozen=True, slots=True)
class RowView:
    """A row of a table: what it tells, and a cell for each size; `main` where it is the row looked for first."""

    label: str
    cells: tuple[Cell, ...]
    main: bool = False


@dataclass(frozen=True, slots=True)
class QuantityView:
    """A quantity by size. `looks` are reasons for a second look; the numbers at the end are what it is sorted by."""

    name: str
    anchor: str
    formula: str
    unit: str
    place: str
    relies_on: tuple[Ref, ...]
    used_by: tuple[Ref, ...]
    gauge: str
    rounding: str
    rows: tuple[RowView, ...]
    plot: Markup
    found: tuple[FoundView, ...]
    looks: tuple[str, ...]
    moved: str
    growing: str


@dataclass(frozen=True, slots=True)
class GroupView:
    """Rows of a table that belong together: a finished measurement, a yarn, a piece, a number of the text."""

    label: str
    facts: tuple[str, ...]
    rows: tuple[RowView, ...]
    found: tuple[FoundView, ...] = ()
    looks: tuple[str, ...] = ()
    code: str = ""
    relies_on: tuple[Ref, ...] = ()


@dataclass(frozen=True, slots=True)
class RegradedView:
    """What a pattern would be if it were graded for another gauge: the numbers that change, and what is then found."""

    groups: tuple[GroupView, ...]
    told: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LedgerRow:
    """One direction of the ledger: as it is labelled and typed, and by size the stitches before and after it."""

    label: str
    line: int
    typed: str
    cells: tuple[Cell, ...]
    declared: bool
    found: tuple[FoundView, ...]
    looks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LedgerPart:
    """A piece from its first stitches to its last."""

    label: str
    rows: tuple[LedgerRow, ...]


@dataclass(frozen=True, slots=True)
class MultipleView:
    """A stitch pattern: the multiple its words state and the one its rows have."""

    name: str
    line: int
    stated: str
    has: str
    rows: int
    agree: str
    found: tuple[FoundView, ...]


@dataclass(frozen=True, slots=True)
class PromiseView:
    """A `require` with its place, and its two sides by size."""

    text: str
    line: int
    left: str
    right: str
    found: tuple[FoundView, ...]


@dataclass(frozen=True, slots=True)
class RuleView:
    """The page of a rule that found something."""

    name: str
    level: str
    page: Markup


@dataclass(frozen=True, slots=True)
class SheetView:
    """Everything one sheet shows. `sizes` has one empty name where the pattern names none."""

    title: str
    name: str
    source: str
    summary: str
    sizes: tuple[str, ...]
    found: tuple[FoundView, ...]
    accepted: tuple[FoundView, ...]
    quantities: tuple[QuantityView, ...]
    printed: tuple[GroupView, ...]
    ledger: tuple[LedgerPart, ...]
    multiples: tuple[MultipleView, ...]
    promises: tuple[PromiseView, ...]
    finished: tuple[GroupView, ...]
    shifted: tuple[GroupView, ...]
    regraded: RegradedView
    parts: tuple[GroupView, ...]
    yarns: tuple[GroupView, ...]
    gauges: tuple[str, ...]
    needles: tuple[str, ...]
    rules: tuple[RuleView, ...]


@dataclass(frozen=True, slots=True)
class EntryView:
    """A sheet in the index."""

    title: str
    source: str
    href: str
    tables: tuple[Ref, ...]
    summary: str
    looks: int


@dataclass(frozen=True, slots=True)
class IndexView:
    """The index: every sheet, and what was found in no pattern."""

    entries: tuple[EntryView, ...]
    apart: tuple[FoundView, ...]
    rules: tuple[RuleView, ...] = field(default=())
