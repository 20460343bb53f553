"""In: the body of an adaptation. Out: it with its sections turned inside out, in house style where they change.

What is worked the same on both faces stays as it was typed.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from sizewright.base.finding import Finding
from sizewright.read.adapting.mirror import Mirror, Unmirrored
from sizewright.read.adapting.rules import NO_MIRROR
from sizewright.read.departure import Departure, Verb
from sizewright.read.inserts import Told
from sizewright.read.notation.direction_tree import Direction, Promise
from sizewright.read.notation.directions import DirectionReader
from sizewright.read.notation.printed import printed
from sizewright.read.notation.printed_pieces import said
from sizewright.read.notation.printed_rows import printed_promise
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.notation.words import paragraphs, sentences
from sizewright.read.pattern import InstructionLine, Piece, StitchBlock, WorkBlock
from sizewright.read.yarn_names import YarnNames

_MEND = "Write its rows yourself: “::: instead of section …”."


def turned(
    body: tuple[Piece, ...], departures: Iterable[Departure], stitches: Vocabulary, yarns: YarnNames
) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
    """The body, and what in it cannot be turned."""
    inside_out = tuple(one for one in departures if one.called.verb is Verb.INSIDE_OUT)
    if not inside_out:
        return body, ()
    here = [piece for piece in body if isinstance(piece, StitchBlock) and _in(piece, inside_out)]
    turner = _Turner(Mirror(frozenset(piece.name.text.casefold() for piece in here)), stitches, yarns)
    found = tuple(
        turner.block(piece) if isinstance(piece, WorkBlock | StitchBlock) and _in(piece, inside_out) else piece
        for piece in body
    )
    return found, tuple(turner.findings)


def _in(piece: WorkBlock | StitchBlock, departures: Iterable[Departure]) -> bool:
    """Whether a block of the base is turned; what the adaptation itself puts behind a section is as it was typed."""
    own = piece.span.shown.source == piece.span.source
    return not own and any(one.first <= piece.span.line < one.end for one in departures)


class _Turner:
    def __init__(self, mirror: Mirror, stitches: Vocabulary, yarns: YarnNames) -> None:
        self._mirror = mirror
        self._stitches = stitches
        self._yarns = yarns
        self.findings: list[Finding] = []

    def block(self, piece: WorkBlock | StitchBlock) -> WorkBlock | StitchBlock:
        """A block with its directions turned, and its lines as they are said then."""
        directions = tuple(self.one(direction) for direction in piece.directions)
        if directions == piece.directions:
            return piece
        lines = tuple(line for together in paragraphs(piece.lines) for line in self.lines(together))
        return replace(piece, directions=directions, lines=lines)

    def one(self, direction: Direction) -> Direction:
        try:
            return self._mirror.direction(direction)
        except Unmirrored as fault:
            message = f"Here {fault.term} has no counterpart on the other face."
            finding = NO_MIRROR.at(fault.span, message, f"{fault.mend or _MEND} {fault.hint}".rstrip())
            if finding not in self.findings:
                self.findings.append(finding)
            return direction

    def lines(self, together: tuple[InstructionLine, ...]) -> Iterator[InstructionLine]:
        """The lines of a paragraph; those of a plan, which may differ by size, only where they stay as they are."""
        if any(line.declared for line in together):
            yield from together
            return
        reader = DirectionReader(self._stitches, self._yarns)
        told: list[Told] = []
        changed = False
        for sentence in sentences(together):
            read = tuple(reader.sentence(sentence))
            other = tuple(one if isinstance(one, Promise) else self.one(one) for one in read)
            changed = changed or other != read
            told.extend(printed_promise(one) if isinstance(one, Promise) else printed(one) for one in other)
        clauses = next((line for line in together if line.clauses), None)
        if changed and clauses is not None:
            message = "Here a sentence that a plan writes has no counterpart on the other face."
            self.findings.append(NO_MIRROR.at(clauses.span, message, _MEND))
        if not changed or clauses is not None:
            yield from together
            return
        spaced = (said(" " if at else "", one) for at, one in enumerate(told))
        yield InstructionLine(together[0].span, said(*spaced))
