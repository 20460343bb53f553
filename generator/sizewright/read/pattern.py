"""The tree of one source: header and body, each node with its place, nothing evaluated.

The body is one flat stream of pieces in reading order: what all sizes share is finished markup, all else a node.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from sizewright.base.finding import Finding
from sizewright.base.place import Lines, Span
from sizewright.base.quantity import Quantity
from sizewright.read.acceptance import Acceptance as Acceptance  # noqa: PLC0414 -- a node of this tree too
from sizewright.read.departure import BasedOn, Called, Departure
from sizewright.read.departure import DepartureClose as DepartureClose  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.departure import DepartureOpen as DepartureOpen  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.formula import Definition, Formula, Statement
from sizewright.read.inserts import Insert as Insert  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.inserts import LinePiece as LinePiece  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.inserts import TypedList as TypedList  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.inserts import Words as Words  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.materials import Gauge as Gauge  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.materials import Measure as Measure  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.materials import Reserve as Reserve  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.materials import Swatch as Swatch  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.materials import Yarn as Yarn  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.media import Film as Film  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.media import Image as Image  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.media import Picture as Picture  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.needles import Needle as Needle  # noqa: PLC0414 -- nodes of this tree too
from sizewright.read.notation.direction_tree import Direction
from sizewright.read.sign_off import SignOff
from sizewright.read.translating.translation import Translation


@dataclass(frozen=True, slots=True)
class Day:
    """A date from the header, with its place."""

    span: Span
    date: date


@dataclass(frozen=True, slots=True)
class Size:
    """One size: its name, the body measurements it fits, and what else is said of it ("age", "note")."""

    span: Span
    name: str
    measurements: Mapping[str, Measure]
    remarks: Mapping[str, Words]


@dataclass(frozen=True, slots=True)
class Ease:
    """How much larger than the body a finished measurement is meant to be: two lengths, or two parts of the body."""

    span: Span
    least: Quantity
    most: Quantity
    typed: str


@dataclass(frozen=True, slots=True)
class Finished:
    """A finished measurement the page shows: the formula, its label, and the body measurement it is compared with.

    `ease` is how much larger than that body it is meant to be, where the designer says so; `tolerance` is how far
    rounding may move it.
    """

    span: Span
    label: str
    formula: Formula
    body: Words | None
    ease: Ease | None
    tolerance: Measure | None = None


@dataclass(frozen=True, slots=True)
class Change:
    """One entry of the errata."""

    span: Span
    date: Day
    text: Words


@dataclass(frozen=True, slots=True)
class Header:
    """What stands between the `---` lines. What is left out is None or empty."""

    span: Span
    title: str = ""
    summary: Words | None = None
    designer: Words | None = None
    published: Day | None = None
    revised: Day | None = None
    licence: Words | None = None
    skill: Words | None = None
    kind: Words | None = None
    picture: Picture | None = None
    sizes: tuple[Size, ...] = ()
    gauges: tuple[Gauge, ...] = ()
    needles: tuple[Needle, ...] = ()
    yarns: tuple[Yarn, ...] = ()
    notions: tuple[Words, ...] = ()
    techniques: tuple[Words, ...] = ()
    cautions: tuple[Words, ...] = ()
    care: tuple[Words, ...] = ()
    credits: tuple[Words, ...] = ()
    finished: tuple[Finished, ...] = ()
    tolerance: Measure | None = None
    changes: tuple[Change, ...] = ()
    accepted: tuple[Acceptance, ...] = ()
    terms: tuple[Words, ...] = ()
    films: tuple[Film, ...] = ()
    based_on: BasedOn | None = None
    departures: tuple[Called, ...] = ()  # those of its keys


@dataclass(frozen=True, slots=True)
class Markup:
    """Finished HTML, the same in every size."""

    html: str


@dataclass(frozen=True, slots=True)
class Heading:
    """The start of a heading: level, anchor and words. Its words and closing are in the markup after it."""

    span: Span
    level: int
    anchor: str
    text: str


@dataclass(frozen=True, slots=True)
class Address:
    """The start of a link in the text; its words and its closing are in the markup after it."""

    span: Span
    address: str


@dataclass(frozen=True, slots=True)
class PassageOpen:
    """`::: sizes A, B`: what follows is read in these sizes only."""

    span: Span
    sizes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PassageClose:
    """The end of such a passage."""


@dataclass(frozen=True, slots=True)
class NoteOpen:
    """`::: learners TITLE`: what follows is a note for learners, read on request and never carried out."""

    span: Span
    title: str


@dataclass(frozen=True, slots=True)
class NoteClose:
    """The end of such a note."""


@dataclass(frozen=True, slots=True)
class GradeBlock:
    """A block of the grading language, and the names whose definitions could not be read."""

    span: Span
    statements: tuple[Statement, ...]
    unreadable: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Clause:
    """Pieces of a line, from `first` up to `end`: a size in which their number is 0 has nothing to do there."""

    number: Insert
    first: int
    end: int

    @property
    def places(self) -> range:
        """Which pieces of the line they are."""
        return range(self.first, self.end)


@dataclass(frozen=True, slots=True)
class InstructionLine:
    """One line of instructions: the words as typed, or as a plan has them, with the numbers among them as nodes.

    `declared` are the words behind "# declared:", which are not printed: what the line does to the count. `clauses`
    are parts of the words of a plan that only some sizes may have to read; `drawn` where a chart's cells are typed.
    """

    span: Span
    pieces: tuple[LinePiece, ...]
    declared: tuple[LinePiece, ...] = ()
    clauses: tuple[Clause, ...] = ()
    drawn: bool = False


@dataclass(frozen=True, slots=True)
class WorkBlock:
    """Instructions. `sizes` are those of the passage around it, None outside one."""

    span: Span
    lines: tuple[InstructionLine, ...]
    sizes: tuple[str, ...] | None
    directions: tuple[Direction, ...] = ()


@dataclass(frozen=True, slots=True)
class StitchBlock:
    """A stitch pattern to work from elsewhere: its name and its rows. `drawn` where they are written from a chart."""

    span: Span
    name: Words
    lines: tuple[InstructionLine, ...]
    directions: tuple[Direction, ...] = ()
    drawn: bool = False


@dataclass(frozen=True, slots=True)
class SchematicBlock:
    """Pieces to draw to scale, each a shape with its edges. `sizes` are those of the passage around it, or None."""

    span: Span
    pieces: tuple[Definition, ...]
    sizes: tuple[str, ...] | None


Passage = PassageOpen | PassageClose | NoteOpen | NoteClose
Block = GradeBlock | WorkBlock | StitchBlock | SchematicBlock
Piece = Markup | Heading | Insert | Image | Address | Passage | DepartureOpen | DepartureClose | Block


@dataclass(frozen=True, slots=True)
class Adaptation:
    """What a pattern that is based on another is made of.

    `base` is that pattern with what reading found in it, and `lines` the text of the adaptation's own file. `alone` has
    for each departure the base with just that one, None where there is only one or it cannot be read so.
    """

    base: "Pattern"
    found: tuple[Finding, ...]
    lines: Lines = field(repr=False, compare=False)
    based_on: BasedOn
    departures: tuple[Departure, ...] = ()
    alone: tuple["Pattern | None", ...] = field(default=(), repr=False, compare=False)


@dataclass(frozen=True, slots=True)
class Pattern:
    """One source, read. `name` is its address: the file name without its ending.

    `sign_off` and `translations` stand in files beside it. An adaptation is read as a whole, its base with its
    departures, and `lines` are those of both put together; `adapts` tells what of it is whose.
    """

    name: str
    lines: Lines = field(repr=False, compare=False)
    header: Header
    body: tuple[Piece, ...]
    sign_off: SignOff | None = field(default=None, repr=False)
    adapts: Adaptation | None = field(default=None, repr=False)
    translations: tuple[Translation, ...] = field(default=(), repr=False)

    @property
    def sources(self) -> tuple[str, ...]:
        """The paths of its own file and of its translations."""
        return self.source, *(one.lines.source for one in self.translations)

    @property
    def typed(self) -> Lines:
        """The text of its own file."""
        return self.adapts.lines if self.adapts else self.lines

    def line_at(self, span: Span) -> str:
        """The line in which a place of it begins; that of a departure as such stands in its own file alone."""
        return (self.lines if span.home else self.typed).lines[span.line - 1]

    @property
    def source(self) -> str:
        """The path as a person would type it."""
        return self.lines.source

    @property
    def size_names(self) -> tuple[str, ...]:
        """The sizes, smallest first; empty in a pattern of one size."""
        return tuple(size.name for size in self.header.sizes)
