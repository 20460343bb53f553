"""In: a base, and words by which a departure calls a place in it. Out: the lines there, or why there are none."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sizewright.base.finding import Finding
from sizewright.base.nearest import nearest
from sizewright.base.place import Lines, Span
from sizewright.read.adapting.rules import UNKNOWN_PLACE
from sizewright.read.departure import Called, Part
from sizewright.read.formula import Definition
from sizewright.read.inserts import typed_piece
from sizewright.read.notation.words import paragraphs
from sizewright.read.pattern import GradeBlock, Heading, InstructionLine, Pattern, StitchBlock, WorkBlock

_FENCE = re.compile(r"[ >]*(`{3,}|~{3,})(.*)")
_MOST = 12  # places that are listed where none is near
_LABEL = re.compile(r"[^:.,;(]{1,40}")


@dataclass(frozen=True, slots=True)
class Place:
    """Lines of a base from `first` up to `end`, from 1; in a `block` they are lines of it, else text of their own."""

    first: int
    end: int
    block: bool


@dataclass(frozen=True, slots=True)
class _Named:
    name: str
    place: Place


class Places:
    """The places of one base by what they are called."""

    def __init__(self, base: Pattern) -> None:
        self.base = base
        self.sections = tuple(_sections(base))

    def find(self, called: Called) -> Place | Finding:
        """The place a departure is at."""
        if called.under:
            above = self.named(self.sections, called.under)
            if len(above) != 1:
                return self.fault(called, f"section “{called.under}”", called.under, self.sections, above)
            within = above[0].place
            found = tuple(self.of(called.part, within))
        else:
            found = tuple(self.of(called.part, None))
        fitting = (
            self.begun(found, called.name) if called.part in (Part.ROW, Part.TEXT) else self.named(found, called.name)
        )
        if len(fitting) != 1:
            where = f" under “{called.under}”" if called.under else ""
            return self.fault(called, f"{_SAID[called.part]} “{called.name}”{where}", called.name, found, fitting)
        place = fitting[0].place
        if called.part is Part.SECTION and not _balanced(self.base.lines, place):
            message = f"The section “{called.name}” of the base runs over the beginning or the end of a passage “:::”."
            return UNKNOWN_PLACE.at(called.span, message, "Depart in its rows and paragraphs.")
        return place

    def of(self, part: Part, within: Place | None) -> Iterator[_Named]:
        """All places of a kind, those within a section where one is said."""
        kinds = {
            Part.SECTION: lambda: iter(self.sections),
            Part.ROW: lambda: _rows(self.base),
            Part.QUANTITY: lambda: _quantities(self.base),
            Part.TEXT: lambda: _texts(self.base),
        }
        for one in kinds[part]():
            if within is None or within.first <= one.place.first < within.end:
                yield one

    @staticmethod
    def named(found: Sequence[_Named], name: str) -> tuple[_Named, ...]:
        """Those of a name; capitals and spaces do not count."""
        return tuple(one for one in found if _plain(one.name) == _plain(name))

    @staticmethod
    def begun(found: Sequence[_Named], name: str) -> tuple[_Named, ...]:
        """Those that begin with some words."""
        wanted = re.compile(re.escape(_plain(name)) + r"(?!\w)")
        return tuple(one for one in found if wanted.match(_plain(one.name)))

    def fault(
        self, called: Called, what: str, name: str, known: Sequence[_Named], fitting: Sequence[_Named]
    ) -> Finding:
        """The finding where a name fits no place, or several."""
        if fitting:
            lines = " and ".join(str(one.place.first) for one in fitting[:_MOST])
            message = f"The base has several places that answer to {what}: lines {lines} of {self.base.source}."
            mend = "Say more of its words, or the heading above a row: “… under Crown”."
            return UNKNOWN_PLACE.at(called.span, message, mend)
        names = list(dict.fromkeys(_begins(one.name) for one in known))
        near = nearest(_begins(name), names, 0.5)
        listed = ", ".join(f"“{one}”" for one in names[:_MOST])
        mend = f"Did you mean “{near}”?" if near else f"It has: {listed}." if names else ""
        message = f"The base “{self.base.header.title}” has no {what}."
        return UNKNOWN_PLACE.at(called.span, message, mend)


_SAID = {
    Part.SECTION: "section",
    Part.ROW: "row",
    Part.QUANTITY: "quantity",
    Part.TEXT: "paragraph that begins",
    Part.KEY: "key",
}


def _plain(words: str) -> str:
    return " ".join(words.split()).casefold()


def _begins(name: str) -> str:
    """What a row or a paragraph is called by: its first words."""
    found = _LABEL.match(name)
    return found.group().strip() if found else name


def _sections(base: Pattern) -> Iterator[_Named]:
    headings = [piece for piece in base.body if isinstance(piece, Heading)]
    for at, heading in enumerate(headings):
        end = next((other.span.line for other in headings[at + 1 :] if other.level <= heading.level), None)
        yield _Named(heading.text, Place(heading.span.line, end or len(base.lines.lines) + 1, block=False))


def _rows(base: Pattern) -> Iterator[_Named]:
    for piece in base.body:
        if isinstance(piece, WorkBlock) or (isinstance(piece, StitchBlock) and not piece.drawn):
            typed = tuple(_once(piece.lines))
            for together in paragraphs(typed):
                words = " ".join("".join(map(typed_piece, line.pieces)) for line in together)
                yield _Named(words, _lines_of(together[0].span, together[-1].span))


def _once(lines: Sequence[InstructionLine]) -> Iterator[InstructionLine]:
    """Lines as they are typed: a plan makes several of one."""
    before = 0
    for line in lines:
        if line.span.line != before:
            yield line
        before = line.span.line


def _quantities(base: Pattern) -> Iterator[_Named]:
    for piece in base.body:
        for statement in piece.statements if isinstance(piece, GradeBlock) else ():
            name = statement.name.name if isinstance(statement, Definition) else base.lines.text_of(statement.span)
            yield _Named(name, _lines_of(statement.span, statement.span))


def _lines_of(first: Span, last: Span) -> Place:
    return Place(first.line, last.end_line + 1, block=True)


def _texts(base: Pattern) -> Iterator[_Named]:
    """The paragraphs between the blocks, headings and passages."""
    together: list[int] = []
    for number in (*_prose(base), 0):
        if together and (number != together[-1] + 1):
            words = " ".join(base.lines.lines[line - 1].strip() for line in together)
            yield _Named(words, Place(together[0], together[-1] + 1, block=False))
            together = []
        together.append(number)


def _prose(base: Pattern) -> Iterator[int]:
    """The lines with running text."""
    fence = ""
    for number in range(base.header.span.end_line + 1, len(base.lines.lines) + 1):
        text = base.lines.lines[number - 1].strip()
        marks = _FENCE.fullmatch(text)
        if marks and not fence:
            fence = marks[1]
        elif marks and marks[1].startswith(fence) and not marks[2].strip():
            fence = ""
        elif not fence and text and not text.startswith((":::", "#")):
            yield number


def _balanced(lines: Lines, place: Place) -> bool:
    """Whether every passage that is opened in some lines is closed in them, and none that was open before."""
    depth = 0
    for text in map(str.strip, lines.lines[place.first - 1 : place.end - 1]):
        if text.startswith(":::"):
            depth += 1 if text.strip(": \t") else -1
        if depth < 0:
            return False
    return not depth
