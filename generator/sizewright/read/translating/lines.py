"""In: the instructions of a pattern. Out: the lines that can be translated by hand, and such a line told.

What can be printed from its tree is printed in every language, and so are usual sentences and what a plan writes. A
line that holds the designer's own words is told in another language by the pair of its words. A pair may tell any other
line too, in better words than those it is printed with; but none is asked for.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from sizewright.base.place import Lines, Span
from sizewright.read.inserts import Insert, LinePiece, Told, TypedList, Words, joined, typed_piece
from sizewright.read.notation.direction_tree import (
    BindOffAll,
    Declared,
    Direction,
    Gather,
    SameAgain,
    TakeUp,
    TakeYarn,
)
from sizewright.read.notation.printed import printable
from sizewright.read.notation.retelling import Retelling, whole_lines
from sizewright.read.pattern import InstructionLine, Pattern, StitchBlock, WorkBlock

_UNPROMISED = (TakeUp, BindOffAll, Gather, TakeYarn, SameAgain, Declared)  # directions without a count behind them


@dataclass(frozen=True, slots=True)
class HandLine:
    """A line with those that go on with it: where it begins, and its pieces; what it declares is not printed.

    It is `asked` for where it cannot be printed in another language.
    """

    span: Span
    pieces: tuple[LinePiece, ...]
    asked: bool

    @property
    def typed(self) -> str:
        """Its words as they stand in a source."""
        return "".join(map(typed_piece, self.pieces))


def hand_lines(pattern: Pattern) -> Iterator[HandLine]:
    """The lines that a translator can tell, in reading order."""
    retelling = Retelling.of(pattern)
    for block in (piece for piece in pattern.body if isinstance(piece, WorkBlock | StitchBlock)):
        by_line = {at: tuple(found) for at, found in groupby(block.directions, lambda one: one.span.line)}
        for line in whole_lines(block.lines):
            if not _of_a_plan(line):
                read = by_line.get(line.span.line, ())
                printed = _all_read(pattern.lines, line, read) or retelling.can_tell(line)
                yield HandLine(line.span, joined(line.pieces), asked=not printed)


def _all_read(lines: Lines, line: InstructionLine, read: Sequence[Direction]) -> bool:
    """Whether the directions of a line are all it says, and can be printed. Where they are not sure to be, it is read
    once more by itself, which takes far longer.
    """
    if line.declared or not all(map(printable, read)):
        return False
    text = lines.lines[line.span.line - 1]
    promises = (one.promise for one in read if not isinstance(one, _UNPROMISED) and one.promise is not None)
    for span in (*(one.span for one in read), *(promise.span for promise in promises)):
        if span.line == span.end_line == line.span.line:
            text = text[: span.column - 1] + " " * (span.end_column - span.column) + text[span.end_column - 1 :]
    return bool(read) and not any(map(str.isalnum, text))


def _of_a_plan(line: InstructionLine) -> bool:
    return any(isinstance(piece, Words) for piece in line.pieces)


def told_line(line: HandLine, translation: str) -> Told:
    """A line in the words of a translation: its `{…}` and typed lists are the very ones of the line."""
    numbers = {typed_piece(one): one for one in line.pieces if isinstance(one, Insert | TypedList)}
    text = " ".join(translation.split())
    if not numbers:
        return (text,) if text else ()
    found = re.split("|".join(f"({re.escape(typed)})" for typed in sorted(numbers, key=len, reverse=True)), text)
    return joined(numbers.get(part, part) for part in found if part)
