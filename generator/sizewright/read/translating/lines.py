"""In: the instructions of a pattern. Out: the lines that must be translated by hand, and such a line told.

What can be printed from its tree is printed in every language, and so is what a plan writes. A line of which the tree
keeps the designer's own words is told in another language by the pair of its words.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from sizewright.base.place import Span
from sizewright.read.inserts import Insert, LinePiece, Told, TypedList, Words, joined, typed_piece
from sizewright.read.notation.direction_tree import Declared, Direction, RepeatRows, Row, Spaced, Unread
from sizewright.read.notation.words import paragraphs
from sizewright.read.pattern import InstructionLine, Pattern, StitchBlock, WorkBlock


@dataclass(frozen=True, slots=True)
class HandLine:
    """A line with those that go on with it: where it begins, and its pieces; what it declares is not printed."""

    span: Span
    pieces: tuple[LinePiece, ...]

    @property
    def typed(self) -> str:
        """Its words as they stand in a source."""
        return "".join(map(typed_piece, self.pieces))


def hand_lines(pattern: Pattern) -> Iterator[HandLine]:
    """The lines that only a translator can tell, in reading order."""
    for piece in pattern.body:
        if isinstance(piece, WorkBlock | StitchBlock):
            for _, together in groupby(piece.lines, lambda line: bool(line.declared)):
                for paragraph in paragraphs(tuple(together)):
                    if not _printable(paragraph, piece.directions):
                        yield _hand_line(paragraph)


def _hand_line(paragraph: tuple[InstructionLine, ...]) -> HandLine:
    spaced = [piece for line in paragraph for piece in (" ", *line.pieces)]
    return HandLine(paragraph[0].span, joined(spaced[1:]))


def _printable(paragraph: tuple[InstructionLine, ...], read: tuple[Direction, ...]) -> bool:
    """Whether all that a line says is in the trees of its directions, or a plan says it."""
    if any(isinstance(piece, Words) for line in paragraph for piece in line.pieces):
        return True
    first, last = paragraph[0].span.line, paragraph[-1].span.end_line
    own = [one for one in read if first <= one.span.line <= last]
    return bool(own) and not any(map(_keeps_words, own))


def _keeps_words(direction: Direction) -> bool:
    match direction:
        case Declared() | Unread():
            return True
        case RepeatRows() | Row() | Spaced():
            return False
    return bool(getattr(direction, "words", ()))


def told_line(line: HandLine, translation: str) -> Told:
    """A line in the words of a translation: its `{…}` and typed lists are the very ones of the line."""
    numbers = {typed_piece(one): one for one in line.pieces if isinstance(one, Insert | TypedList)}
    text = " ".join(translation.split())
    if not numbers:
        return (text,) if text else ()
    found = re.split("|".join(f"({re.escape(typed)})" for typed in sorted(numbers, key=len, reverse=True)), text)
    return joined(numbers.get(part, part) for part in found if part)
