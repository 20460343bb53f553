"""In: an adaptation. Out: where on its page each departure is met, and the markup of the marks there."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from markupsafe import Markup, escape

from sizewright.base.language import later, later_as, named, tr, tr_as
from sizewright.base.place import Span
from sizewright.publish.departed_names import spoken_words
from sizewright.read.departure import Called, DepartureClose, DepartureOpen, Part, Verb
from sizewright.read.formula import Formula, names_in
from sizewright.read.pattern import Insert, InstructionLine, Pattern, Piece, StitchBlock, WorkBlock

# Where on the page a key of the header is told of.
_SECTIONS: Mapping[str, str] = MappingProxyType(
    {"gauge": "gauge", "needles": "materials", "yarn": "materials", "notions": "materials"}
    | dict.fromkeys(("table", "sizes", "finished", "tolerance"), "sizes")
    | dict.fromkeys(("cautions", "care"), "cautions")
)
_DONE: Mapping[Verb, str] = MappingProxyType(
    {
        Verb.INSTEAD: later("replaced"),
        Verb.WITHOUT: later("left out"),
        Verb.BEFORE: later("something before it"),
        Verb.AFTER: later("something behind it"),
        Verb.INSIDE_OUT: later("turned inside out, knit and purl exchanged"),
        Verb.WITH: later("added"),
    }
)
_KINDS = MappingProxyType(
    {
        Part.SECTION: later("Section {name}"),
        Part.ROW: later("Row {name}"),
        Part.QUANTITY: later("Number {name}"),
        Part.TEXT: later("Paragraph {name}"),
    }
)
# What is said where its own words are in another language.
_UNNAMED = MappingProxyType({Part.ROW: later("A row"), Part.TEXT: later("A paragraph")})
# The keys of a header that a departure may be about, where readers see them.
_KEYS = frozenset(
    (
        later_as("key of a header", "gauge"),
        later_as("key of a header", "needles"),
        later_as("key of a header", "yarn"),
        later_as("key of a header", "notions"),
        later_as("key of a header", "table"),
        later_as("key of a header", "sizes"),
        later_as("key of a header", "finished"),
        later_as("key of a header", "tolerance"),
        later_as("key of a header", "cautions"),
        later_as("key of a header", "care"),
    )
)


def anchor_of(number: int) -> str:
    """The fragment of the mark of a departure."""
    return f"departure--{number}"


def told_at(number: int) -> str:
    """The fragment of its entry in the list."""
    return f"departure--{number}--told"


def called(one: Called) -> str:
    """ "Section Brim: replaced"."""
    done = tr(_DONE[one.verb])
    if one.part is Part.KEY:
        known = tr_as("key of a header", one.name) if one.name in _KEYS else one.name
        return f"{known[:1].upper()}{known[1:]}: {done}"
    shown = one.name.partition("{")[0].strip()
    name = one.name.replace("_", " ") if one.part is Part.QUANTITY else shown
    cut = "…" if one.part is Part.TEXT or shown != one.name else ""
    if one.part in _UNNAMED and not spoken_words(name):
        what = tr(_UNNAMED[one.part])
    else:
        quoted = named(name) if one.part is Part.SECTION else tr("“{words}”", words=named(name) + cut)
        what = tr(_KINDS[one.part], name=quoted)
    if one.under:
        what = tr("{what} under {heading}", what=what, heading=named(one.under))
    return f"{what}: {done}"


@dataclass(frozen=True, slots=True)
class Marks:
    """Where departures are met that have no stretch of their own: by the line, or by the number in the text.

    `opened` are those that have one, and `sections` those told at the top of a section of the page.
    """

    lines: Mapping[int, tuple[int, ...]]
    inserts: Mapping[tuple[Span, int], tuple[int, ...]]
    opened: frozenset[int]
    sections: Mapping[int, str]
    called: Mapping[int, Called]

    def stretch(self, piece: DepartureOpen | DepartureClose) -> str:
        """The markup where a stretch begins that is not as in the base, with what is said of it, or where it ends."""
        if isinstance(piece, DepartureClose):
            return "</div>"
        number, one = piece.number, self.called[piece.number]
        words = f"{escape(called(one))}. {escape(sentence(named(one.because.text)))}"
        note = f'<p class="departs-note">{link(number)} {words}</p>'
        return f'<div class="departs" id="{anchor_of(number)}">{note}\n'

    def behind(self, insert: Insert) -> str:
        """The marks behind a number that is met first there."""
        return "".join(f" {link(number, anchor_of(number))}" for number in self.inserts.get(insert.key, ()))

    def before(self, line: InstructionLine) -> Markup:
        """The marks before a line of instructions."""
        found = self.lines.get(line.span.line, ())
        return Markup(" ".join(link(number, anchor_of(number)) for number in found))  # noqa: S704 (made here)


NO_MARKS = Marks({}, {}, frozenset(), {}, {})


def link(number: int, anchor: str = "") -> str:
    """A link from where a departure is met to its entry in the list; with an anchor it is the mark itself."""
    place, words = f' id="{anchor}"' if anchor else "", escape(tr("Departure {number}", number=number))
    return f'<a class="departs-mark" href="#{told_at(number)}"{place}>{words}</a>'


def sentence(words: str) -> str:
    """A reason as a sentence."""
    words = words[:1].upper() + words[1:]
    return words if words.endswith((".", "!", "?")) else f"{words}."


def marked(pattern: Pattern) -> Marks:
    """Where the departures of a pattern are met."""
    if pattern.adapts is None:
        return NO_MARKS
    lines: dict[int, tuple[int, ...]] = {}
    inserts: dict[tuple[Span, int], tuple[int, ...]] = {}
    sections: dict[int, str] = {}
    for one in pattern.adapts.departures:
        if one.called.part is Part.KEY:
            sections[one.number] = _SECTIONS[one.called.name]
        elif one.called.part is Part.QUANTITY:
            place = _first_use(pattern.body, one.called.name)
            if isinstance(place, InstructionLine):
                lines[place.span.line] = (*lines.get(place.span.line, ()), one.number)
            elif place is not None:
                inserts[place.key] = (*inserts.get(place.key, ()), one.number)
            elif any(_names(finished.formula, one.called.name) for finished in pattern.header.finished):
                sections[one.number] = "sizes"
        elif one.block:
            line = next((line for line in _lines(pattern.body) if line.span.line >= one.first), None)
            if line is not None:
                lines[line.span.line] = (*lines.get(line.span.line, ()), one.number)
    opened = frozenset(piece.number for piece in pattern.body if isinstance(piece, DepartureOpen))
    return Marks(lines, inserts, opened, sections, {one.number: one.called for one in pattern.adapts.departures})


def _lines(body: Sequence[Piece]) -> Iterator[InstructionLine]:
    for piece in body:
        if isinstance(piece, WorkBlock | StitchBlock):
            yield from piece.lines


def _first_use(body: Sequence[Piece], name: str) -> InstructionLine | Insert | None:
    """Where a reader meets a number first."""
    for piece in body:
        if isinstance(piece, Insert) and _names(piece.formula, name):
            return piece
        for line in piece.lines if isinstance(piece, WorkBlock | StitchBlock) else ():
            if any(isinstance(one, Insert) and _names(one.formula, name) for one in line.pieces):
                return line
    return None


def _names(formula: Formula, name: str) -> bool:
    return any(one.name.partition(".")[0] == name for one in (*names_in(formula.tree), *names_in(formula.rounding)))
