"""What templates are given: plain frozen data in the order a page shows it, every number already text.

`Markup` fields are finished HTML; every other field is plain text, which the templates escape.
"""

from dataclasses import dataclass
from typing import Literal

from markupsafe import Markup

from sizewright.publish.picture_size import Size
from sizewright.publish.view_chart import ChartView
from sizewright.publish.view_choice import BesideGroup, FitView
from sizewright.publish.view_departed import AdaptationView, DeparturesView
from sizewright.publish.view_papers import PapersView
from sizewright.publish.view_piece import SchematicView
from sizewright.publish.view_swatch import MyGaugeView
from sizewright.publish.view_table import SizeChoice, SizeTable
from sizewright.publish.view_words import INTERFACE, WordsView

_NOTHING = Markup()


@dataclass(frozen=True, slots=True)
class Link:
    """Words that lead somewhere; without an address they are only words."""

    text: str
    href: str
    summary: str = ""
    language: str = ""  # of what it leads to, where that is another than the page's


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture, the words that stand for it, and a caption where it does not say by itself what it is.

    `size` is what it measures in pixels, where that is known: a page keeps room for it.
    """

    src: str
    alt: str
    caption: str = ""
    size: Size | None = None


@dataclass(frozen=True, slots=True)
class GaugeView:
    """One gauge: "22 sts and 30 rnds over 10 cm", what it is worked in, and on which needle.

    `again` is what the counts come to in the other unit system.
    """

    name: str
    counts: str
    again: Markup
    over: str
    needle: Markup


@dataclass(frozen=True, slots=True)
class YarnView:
    """One yarn; `facts` are ready to be read one after the other."""

    name: str
    weight: str
    facts: tuple[str | Markup, ...]


@dataclass(frozen=True, slots=True)
class TermView:
    """An abbreviation, its meaning, and where both are explained; `words` says in whose terms."""

    term: str
    meaning: str
    anchor: str
    href: str
    technique: Link | None
    spellings: tuple[str, ...] = ()
    words: WordsView = INTERFACE
    exact: bool = False  # whether it is found with these capitals alone


@dataclass(frozen=True, slots=True)
class CautionView:
    """A warning; one of the designer's own has no title and no source."""

    title: str
    text: str
    source: str


@dataclass(frozen=True, slots=True)
class DayView:
    """A date, for people and for machines."""

    text: str
    iso: str


@dataclass(frozen=True, slots=True)
class ChangeView:
    """One entry of the errata."""

    date: DayView
    text: str


@dataclass(frozen=True, slots=True)
class FilmView:
    """A film of a technique; `start` is the minute and second to begin at, "" for the beginning."""

    title: str
    href: str
    start: str


@dataclass(frozen=True, slots=True)
class Line:
    """One line of instructions: "Rnd 1:", the words, and the stitch count promised at its end.

    `sizes` are those that read it, and `classes` their marks, where the sizes are told a thing in different words.
    `marks` are links to the departures from a base that begin at it.
    """

    label: Markup
    text: Markup
    count: Markup
    sizes: tuple[str, ...] = ()
    classes: str = ""
    marks: Markup = _NOTHING


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of the body: finished text, a block of instructions, a named stitch pattern, or a schematic.

    A stitch pattern has its chart and a picture of its cloth, where its rows can be drawn. `anchor` is the fragment of
    the block that the instructions begin with, "" for all others.
    """

    kind: Literal["text", "work", "stitch", "schematic"]
    html: Markup | None = None
    name: str = ""
    lines: tuple[Line, ...] = ()
    chart: ChartView | None = None
    cloth: Picture | None = None
    schematic: SchematicView | None = None
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class HeadingView:
    """A heading of the body, for the list of contents."""

    level: int
    text: str
    anchor: str


@dataclass(frozen=True, slots=True)
class Body:
    """The text of a page in reading order, its headings, and the fragment where its instructions begin, "" without.

    `notes` is how many notes for learners stand in it.
    """

    parts: tuple[Part, ...]
    headings: tuple[HeadingView, ...]
    start: str = ""
    notes: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class PatternView:
    """Everything a pattern's page and its paper show; `order` is "S (M, L)", "" in a pattern of one size.

    `own_title` is the fragment of the designer's own heading "Instructions", which that of the page stands for. `rows`
    is what each size works one row after the other, as JSON for a script element; "" on paper. `only`
    is the size that the paper of one size is for: then nothing here tells of another. `papers` are the PDFs that its
    page offers.
    """

    title: str
    summary: str
    kind: str
    skill: str
    picture: Picture | None
    sizes: tuple[SizeChoice, ...] = ()
    order: str = ""
    fit: FitView | None = None
    beside: tuple[BesideGroup, ...] = ()
    table: SizeTable | None = None
    gauges: tuple[GaugeView, ...]
    my_gauge: MyGaugeView | None = None
    needles: tuple[Markup, ...]
    yarns: tuple[YarnView, ...]
    amounts: SizeTable | None = None
    amount_notes: tuple[str | Markup, ...] = ()
    notions: tuple[str, ...]
    terms: tuple[TermView, ...] = ()
    techniques: tuple[Link, ...] = ()
    cautions: tuple[CautionView, ...]
    care: tuple[str, ...]
    own_title: str = ""
    words: WordsView
    body: Body = Body((), ())
    changes: tuple[ChangeView, ...]
    designer: str
    licence: str
    credits: tuple[str, ...]
    published: DayView | None
    revised: DayView | None
    address: str
    pdf: str
    data: str
    rows: Markup = _NOTHING
    departures: DeparturesView | None = None
    adaptations: tuple[AdaptationView, ...] = ()
    only: SizeChoice | None = None
    papers: tuple[PapersView, ...] = ()


@dataclass(frozen=True, slots=True)
class TechniqueView:
    """One technique: words, pictures, films and the abbreviations it explains.

    It is `switched` where some of its words differ between the US and the UK.
    """

    title: str
    summary: str
    skill: str
    picture: Picture | None
    body: Body
    films: tuple[FilmView, ...]
    terms: tuple[TermView, ...]
    words: WordsView
    switched: bool


@dataclass(frozen=True, slots=True)
class TextView:
    """A page of plain content, or what introduces another (then without `words`).

    It is `switched` where some of its words differ between the US and the UK.
    """

    title: str
    summary: str
    picture: Picture | None
    body: Body
    words: WordsView | None = None
    switched: bool = False


@dataclass(frozen=True, slots=True)
class Choice:
    """One entry of a filter; `key` is its word in the cards and in an address."""

    key: str
    text: str


@dataclass(frozen=True, slots=True)
class Filter:
    """One question the collection can be narrowed by. `name` is the word before the "=" in an address."""

    name: str
    label: str
    choices: tuple[Choice, ...]
