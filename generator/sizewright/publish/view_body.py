"""In: the pieces of a body and the numbers for them. Out: parts in reading order, finished but for their looks."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import assert_never

from markupsafe import Markup, escape

from sizewright.base.language import named, tr
from sizewright.base.place import Span
from sizewright.base.telling import listed
from sizewright.grade.graded import Inserts, Schematic
from sizewright.publish.departure_marks import Marks, marked
from sizewright.publish.links import Links
from sizewright.publish.plan_words import as_said
from sizewright.publish.told_lines import ToldLines
from sizewright.publish.view import Body, HeadingView, Line, Part
from sizewright.publish.view_drawn import Figures, chart_view
from sizewright.publish.view_explained import Explained
from sizewright.publish.view_notes import NOTE_CLOSING, note_opening, without_notes
from sizewright.publish.view_numbers import insert_html, size_class, typed_html
from sizewright.publish.view_schematic import schematic_view
from sizewright.publish.view_start import START, start_of
from sizewright.read.pattern import (
    Address,
    Clause,
    DepartureClose,
    DepartureOpen,
    GradeBlock,
    Heading,
    Image,
    Insert,
    InstructionLine,
    LinePiece,
    NoteClose,
    NoteOpen,
    PassageClose,
    PassageOpen,
    Pattern,
    Piece,
    SchematicBlock,
    StitchBlock,
    TypedList,
    WorkBlock,
)
from sizewright.read.pattern import (
    Markup as Finished,
)

_TABLE = "<table>"
_TABLE_END = "</table>"


def body_view(  # noqa: PLR0913 (what a body holds, one each)
    pattern: Pattern,
    inserts: Inserts,
    links: Links,
    *,
    metric_first: bool,
    drawn: Mapping[Span, Figures],
    schematics: Sequence[Schematic],
    explained: Explained | None = None,
    only: int | None = None,
) -> Body:
    """The body of a pattern, a technique or a page; `drawn` are the figures of its stitch blocks.

    Without `explained` its words stand as they are, in its own terms alone: a page of text cannot be switched. `only`
    is the place of the one size it is for, where the pieces are those that it reads.
    """
    by_place = {one.span: one for one in schematics}
    explained, told = explained or Explained(), ToldLines.of(pattern)
    return _Writer(
        pattern, inserts, links, metric_first, drawn, by_place, explained, marked(pattern), only, told
    ).write()


@dataclass(slots=True)
class _Writer:
    pattern: Pattern
    inserts: Inserts
    links: Links
    metric_first: bool
    drawn: Mapping[Span, Figures]
    schematics: Mapping[Span, Schematic]
    explained: Explained
    marks: Marks
    only: int | None
    told: ToldLines
    parts: list[Part] = field(default_factory=list)
    text: list[str] = field(default_factory=list)
    headings: list[HeadingView] = field(default_factory=list)
    tables: int = 0
    notes: int = 0
    start: Span | None = None
    printed: dict[tuple[str, str | None, tuple[str, ...] | None], str] = field(default_factory=dict)

    def write(self) -> Body:
        self.start = start_of(self.pattern.body)
        for piece in without_notes(self.pattern.body) if self.links.paper else self.pattern.body:
            self.piece(piece)
        self.end_text()
        return Body(tuple(self.parts), tuple(self.headings), START if self.start else "", self.notes)

    def piece(self, piece: Piece) -> None:  # noqa: C901, PLR0912 (one arm a kind of piece)
        match piece:
            case Finished(html=html):
                told = self.explained.markup(html)
                self.text.append(self.enclosed(told) if "table>" in told else told)
            case Insert():
                self.text.append(f"{self.insert(piece)}{self.marks.behind(piece)}")
            case Heading():
                self.text.append(self.heading(piece))
            case Image():
                self.text.append(self.image(piece))
            case Address(address=address):
                self.text.append(self.opened(self.links.followed(address)))
            case PassageOpen(sizes=sizes):
                self.text.append(self.passage(sizes))
            case PassageClose():
                self.explained.for_some -= 1
                self.text.append("</div>")
            case DepartureOpen() | DepartureClose():
                self.text.append(self.explained.plain(Markup(self.marks.stretch(piece))))  # noqa: S704 (made there)
            case NoteOpen(title=title):
                self.notes += 1
                self.text.append(note_opening(title))
            case NoteClose():
                self.text.append(NOTE_CLOSING)
            case WorkBlock(span=span, lines=lines):
                self.block(Part("work", lines=self.lines(lines), anchor=START if span == self.start else ""))
            case StitchBlock(span=span, name=name, lines=lines):
                figures = self.drawn.get(span)
                chart = chart_view(figures, self.number) if figures else None
                self.block(
                    Part("stitch", None, named(name.text), self.lines(lines), chart, figures.cloth if figures else None)
                )
            case SchematicBlock(span=span):
                self.schematic(span)
            case GradeBlock():
                pass
            case _:
                assert_never(piece)

    def image(self, piece: Image) -> str:
        """A picture, with the room it takes where that is known."""
        source, size = escape(self.links.media(piece.file)), self.links.size(piece.file)
        room = f' width="{size.width}" height="{size.height}"' if size else ""
        return f'<img src="{source}" alt="{escape(piece.alt)}"{room} loading="lazy">'

    def enclosed(self, html: str) -> str:
        """Tables, which may be wider than a phone, in a region of their own that a keyboard can scroll.

        HTML in a source is not passed on, so that these tags can only be the reader's.
        """
        before, *tables = html.split(_TABLE)
        for table in tables:
            self.tables += 1
            label = tr("Table {number}", number=self.tables)
            before += f'<div class="wide" role="region" aria-label="{label}" tabindex="0">{_TABLE}{table}'
        return before.replace(_TABLE_END, f"{_TABLE_END}</div>")

    def heading(self, heading: Heading) -> str:
        self.headings.append(HeadingView(heading.level, heading.text, heading.anchor))
        self.explained.heading()
        return f'<h{heading.level} id="{escape(heading.anchor)}">'

    def opened(self, href: str) -> str:
        self.explained.inside += 1
        return f'<a href="{escape(href)}">' if href else "<a>"

    def passage(self, sizes: tuple[str, ...]) -> str:
        """What only some sizes read; the note says whom it is for, as long as all sizes are shown."""
        self.explained.for_some += 1
        names = self.pattern.size_names
        classes = " ".join(size_class(names.index(name)) for name in sizes if name in names)
        only = escape(tr("{sizes} only", sizes=listed(tuple(map(named, sizes)))))
        return f'<div class="z only {classes}"><p class="only-for zp"><b>{only}</b></p>\n'

    def insert(self, piece: Insert) -> str:
        values = self.inserts.get(piece.key)
        if values is None:  # only a refused pattern, in the preview, has numbers that could not be worked out
            return f'<mark class="missing">{escape(piece.formula.text)}</mark>'
        style = piece.style.text if piece.style else None
        key = (piece.formula.text, style, piece.sizes)
        if key not in self.printed:
            places = self.places(piece.sizes)
            self.printed[key] = insert_html(values, style, places, metric_first=self.metric_first, only=self.only)
        return self.printed[key]

    def number(self, piece: Insert | TypedList) -> str:
        return (
            self.insert(piece) if isinstance(piece, Insert) else typed_html(piece, self.places(piece.sizes), self.only)
        )

    def places(self, sizes: tuple[str, ...] | None) -> Sequence[int]:
        """Which values the sizes of a passage have; all where there is none, one where the pattern has one size."""
        names = self.pattern.size_names
        read = [place for place, name in enumerate(names) if sizes is None or name in sizes]
        return read or range(max(1, len(names)))  # a passage of unknown sizes is shown whole, by the preview only

    def lines(self, lines: tuple[InstructionLine, ...]) -> tuple[Line, ...]:
        return tuple(view for line in self.told.whole(lines) for view in self.marked(line))

    def marked(self, line: InstructionLine) -> Iterator[Line]:
        """A line; the first view of one that departs from the base bears its marks."""
        marks = self.marks.before(line)
        for view in self.line(line):
            yield replace(view, marks=marks) if marks else view
            marks = Markup()

    def line(self, line: InstructionLine) -> Iterator[Line]:
        """A line, or several where the sizes have different things to do: a clause that does nothing is left out."""
        first = next((clause.number for clause in line.clauses), None)
        groups: dict[tuple[LinePiece, ...], list[int]] = {}
        for place in self.places(first.sizes) if first is not None else ():
            groups.setdefault(self.said(line, place), []).append(place)
        if not groups:
            yield self.told.view(line, line.pieces, self.number, self.explained)
        for pieces, places in groups.items():
            if not pieces or (self.only is not None and self.only not in places):
                continue
            if len(groups) == 1:
                yield self.told.view(line, pieces, self.number, self.explained)
            else:
                yield self.line_for(line, pieces, places)

    def said(self, line: InstructionLine, place: int) -> tuple[LinePiece, ...]:
        """What a size reads of a line."""
        left_out = {at for clause in line.clauses if not self.says(clause, place) for at in clause.places}
        pieces = (piece for at, piece in enumerate(line.pieces) if at not in left_out)
        return as_said(pieces, lambda number: self.is_one(number, place), self.is_two)

    def is_one(self, number: Insert, place: int) -> bool:
        """Whether a number is one in a size."""
        values = self.inserts.get(number.key)
        return values is not None and values.values[place] == 1

    def is_two(self, number: Insert) -> bool:
        """Whether a number is two in every size that has it at all, so that all read the same words."""
        values = self.inserts.get(number.key)
        return values is not None and {*values.values} - {0} == {2}

    def says(self, clause: Clause, place: int) -> bool:
        """Whether a size has something to do in a clause."""
        values = self.inserts.get(clause.number.key)
        return values is None or values.values[place] != 0

    def line_for(self, line: InstructionLine, pieces: Sequence[LinePiece], places: Sequence[int]) -> Line:
        """A line that these sizes alone read."""
        names = tuple(self.pattern.size_names[place] for place in places)
        own = [replace(piece, sizes=names) if isinstance(piece, Insert | TypedList) else piece for piece in pieces]
        self.explained.for_some += 1
        told = self.told.view(line, own, self.number, self.explained)
        self.explained.for_some -= 1
        alone = self.only is not None
        return (
            told if alone else replace(told, sizes=tuple(map(named, names)), classes=" ".join(map(size_class, places)))
        )

    def schematic(self, span: Span) -> None:
        names, only = self.pattern.size_names, self.only
        view = schematic_view(self.schematics[span], metric_first=self.metric_first, only=only, sizes=names)
        if view is not None:
            self.block(Part("schematic", schematic=view))

    def block(self, part: Part) -> None:
        self.end_text()
        self.parts.append(part)

    def end_text(self) -> None:
        if self.text:
            self.parts.append(Part("text", Markup("".join(self.text))))  # noqa: S704 (markup of the reader and of this module)
            self.text.clear()
