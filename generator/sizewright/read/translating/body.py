"""In: the body of a source and its translation. Out: the same body with its passages in the other language.

The text is walked once more, without its blocks being read again: every block, number, link and picture is the very one
of the source, and so is what begins or ends a passage for some sizes, a note or a departure.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from html import escape
from itertools import chain

from markdown_it.token import Token

from sizewright.base.place import Span
from sizewright.read.body import BodyReader, joined
from sizewright.read.markdown import tokens_of
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.pattern import (
    Address,
    DepartureClose,
    DepartureOpen,
    GradeBlock,
    Heading,
    Image,
    Insert,
    Markup,
    NoteOpen,
    Pattern,
    Piece,
    SchematicBlock,
    StitchBlock,
    WorkBlock,
)
from sizewright.read.references import References
from sizewright.read.translating.passages import Passage, passages
from sizewright.read.translating.retold import Retold
from sizewright.read.translating.translation import Translation

_Placed = Address | Image | Insert | GradeBlock | SchematicBlock | StitchBlock | WorkBlock


def told_body(pattern: Pattern, translation: Translation) -> tuple[Piece, ...]:
    """The pieces of a body in the language of a translation; what is not translated says which language it is in."""
    return _ToldBody(pattern, translation).read()


class _ToldBody(BodyReader):
    def __init__(self, pattern: Pattern, translation: Translation) -> None:
        departures = pattern.adapts.departures if pattern.adapts else ()
        references = References("", None, None)
        first_line = pattern.header.span.end_line + 1
        super().__init__(pattern.lines, first_line, pattern.header, references, Vocabulary(), departures)
        self._translation = translation
        placed = [piece for piece in pattern.body if isinstance(piece, _Placed)]
        self._placed = {(type(piece), piece.span): piece for piece in placed}
        self._of_blocks = {piece.span: piece for piece in placed if not isinstance(piece, Address | Image | Insert)}

    def read(self) -> tuple[Piece, ...]:
        """The pieces in reading order."""
        self._tokens = tokens_of("\n".join(self._lines.lines[self._shift :]))
        found = {one.first: one for one in passages(self._lines, self._shift, self._tokens)}
        return tuple(joined(chain(self._pieces(found), self._departing.rest())))

    def _pieces(self, found: dict[int, Passage]) -> Iterator[Piece]:
        at = 0
        while at < len(self._tokens):
            passage = found.get(at)
            end = passage.end if passage is not None else at + 1
            pieces = [piece for index in range(at, end) for piece in self._block(index)]
            yield from self._passage_told(passage, pieces) if passage is not None else map(self._note, pieces)
            at = end

    def _note(self, piece: Piece) -> Piece:
        """A note for learners by its title in the other language."""
        if not isinstance(piece, NoteOpen):
            return piece
        return replace(piece, title=self._translation.of_words(piece.title) or piece.title)

    def _passage_told(self, passage: Passage, pieces: list[Piece]) -> Iterator[Piece]:
        """A passage in the other language; departures that begin or end within it do so before and behind it."""
        said = [piece for piece in pieces if not isinstance(piece, DepartureOpen | DepartureClose)]
        before = pieces.index(said[0]) if said else len(pieces)
        marks = [piece for piece in pieces[before:] if piece not in said]
        yield from pieces[:before]
        yield from (piece for piece in marks if isinstance(piece, DepartureOpen))
        words = self._translation.of_words(passage.text)
        tokens = self._tokens[passage.first : passage.end]
        if words:
            yield from Retold(tokens, said).told(words)
        else:
            yield from _left(said, self._translation.of)
        yield from (piece for piece in marks if isinstance(piece, DepartureClose))

    def _read_block(self, word: str, rest: str, span: Span, within: tuple[int, int]) -> Piece:
        return self._of_blocks.get(span) or super()._read_block(word, rest, span, within)

    def _read_braces(self, start: int, end: int) -> Insert | None:
        found = self._placed.get((Insert, self._lines.span(start, end)))
        return found if isinstance(found, Insert) else None

    def _image(self, token: Token, child: Token) -> Iterator[Piece]:
        found = self._placed.get((Image, self._find_span(token, str(child.attrs.get("src", "")))))
        if isinstance(found, Image):
            yield replace(found, alt=child.content)

    def _link(self, token: Token, child: Token) -> Iterator[Piece]:
        span = self._find_span(token, str(child.attrs.get("href", "")))
        found = self._placed.get((Address, span))
        yield found if isinstance(found, Address) else Address(span, "#")


def _left(pieces: Sequence[Piece], language: str) -> Iterator[Piece]:
    """A passage in the words of the source; those of a heading, which stands alone, are marked within it."""
    if isinstance(pieces[0], Heading):
        yield from (
            pieces[0],
            Markup(f'<span lang="{escape(language)}">'),
            *pieces[1:-1],
            Markup("</span>"),
            pieces[-1],
        )
        return
    yield from (Markup(f'<div lang="{escape(language)}">\n'), *pieces, Markup("</div>\n"))
