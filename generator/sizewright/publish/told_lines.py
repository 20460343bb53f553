"""In: a line of instructions. Out: how a page in the spoken language shows it.

In English as it is typed. In another language a translator's own words come first, where the source has some for the
line; else it is printed from its tree; what can be neither stays as it is typed, marked as English.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from markupsafe import Markup

from sizewright.base.language import in_english, spoken
from sizewright.base.place import Span
from sizewright.publish.view import Line
from sizewright.publish.view_explained import Explained
from sizewright.publish.view_lines import line_view, pieces_words, printed_view
from sizewright.read.inserts import Insert, LinePiece, Told, TypedList
from sizewright.read.notation.printed_rows import Line as PrintedLine
from sizewright.read.notation.retelling import Retelling, whole_lines
from sizewright.read.notation.yarn_overs import yarn_overs
from sizewright.read.pattern import InstructionLine, Pattern, StitchBlock, WorkBlock
from sizewright.read.source_terms import country_of_source
from sizewright.read.translating.told import translation_of

_FOREIGN = Markup('<span lang="en">{}</span>')

Number = Callable[[Insert | TypedList], str]


@dataclass(frozen=True, slots=True)
class ToldLines:
    """How the lines of one source are told; without `retelling` as they are typed.

    `yarn_overs` are what those of each line are called in UK terms (`read/notation/yarn_overs.py`).
    """

    retelling: Retelling | None = None
    by_hand: Mapping[Span, Told] = field(default_factory=lambda: MappingProxyType({}))
    yarn_overs: Mapping[int, tuple[str, ...]] = field(default_factory=lambda: MappingProxyType({}))

    @classmethod
    def of(cls, pattern: Pattern) -> "ToldLines":
        """Those of a source in the spoken language."""
        if in_english():
            blocks = (piece for piece in pattern.body if isinstance(piece, WorkBlock | StitchBlock))
            return cls(yarn_overs=yarn_overs(one for block in blocks for one in block.directions))
        translation = translation_of(pattern, spoken().code)
        if translation is None:
            return cls(Retelling.of(pattern, country_of_source(pattern)))
        return cls(Retelling.of(pattern, translation.country), translation.lines_told)

    def whole(self, lines: Sequence[InstructionLine]) -> Iterable[InstructionLine]:
        """The lines that are shown: in another language one that goes on over several is one."""
        return lines if self.retelling is None else whole_lines(lines)

    def printed(self, line: InstructionLine) -> PrintedLine | None:
        """What a line says in another language; None in English, and where it cannot be told."""
        if self.retelling is None:
            return None
        translated = self.by_hand.get(line.span)
        return self.retelling.parted(translated, line) if translated else self.retelling.line(line)

    def words(self, line: InstructionLine) -> str:
        """The words of a line, with a figure where a number stands."""
        told = self.printed(line)
        return pieces_words(line.pieces if told is None else told.whole)

    def view(self, line: InstructionLine, pieces: Sequence[LinePiece], number: Number, explained: Explained) -> Line:
        """A line of these pieces, which are fewer than its own for the sizes that have less to do."""
        if self.retelling is None:
            return line_view(pieces, number, explained, self.yarn_overs.get(line.span.line, ()))
        told = self.printed(replace(line, pieces=tuple(pieces), clauses=()))
        return printed_view(told, number, explained) if told is not None else _foreign(line_view(pieces, number))


def _foreign(line: Line) -> Line:
    """A line in English among those of another language."""
    label, text, count = (_FOREIGN.format(part) if part else part for part in (line.label, line.text, line.count))
    return Line(label, text, count)
