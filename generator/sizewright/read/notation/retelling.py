"""In: lines of instructions. Out: the same lines in the spoken language, printed from their trees, one by one.

A line is read again by itself: for the sizes that have less to do, its clauses are left out before. A sentence that
changes no count has no tree; it is told where it is a usual one.
"""

from collections.abc import Iterator, Sequence
from dataclasses import fields, is_dataclass, replace
from itertools import groupby

from sizewright.base.language import speaking
from sizewright.base.place import Span
from sizewright.read.inserts import LinePiece, Told, Words, joined
from sizewright.read.notation.direction_tree import (
    Direction,
    Even,
    Meanwhile,
    Promise,
    RepeatRows,
    Row,
    Spaced,
    TakeYarn,
)
from sizewright.read.notation.directions import DirectionReader
from sizewright.read.notation.fabric_names import meant_fabric, plain_words, usual_fabric
from sizewright.read.notation.phrasing import NotTold, phrase
from sizewright.read.notation.printed import NO_LANGUAGE, line_of
from sizewright.read.notation.printed_pieces import listed, said
from sizewright.read.notation.printed_rows import Line, promised, row_line
from sizewright.read.notation.stitches import Stitch, Vocabulary
from sizewright.read.notation.usual_phrases import usual
from sizewright.read.notation.words import Sentence, paragraphs, sentences, told_sentence
from sizewright.read.pattern import Clause, InstructionLine, Pattern, StitchBlock, WorkBlock
from sizewright.read.trade_words import Country
from sizewright.read.yarn_names import YarnNames

_PLANE = 0xF0000  # a number is one character of a private plane of Unicode while words are compared


class Retelling:
    """Tells the lines of one source: with the stitches that its trees hold, and the yarns of its header.

    `country` is whose terms the source is in, `own` the names of its stitch patterns in small letters.
    """

    def __init__(
        self, stitches: Vocabulary, yarns: YarnNames, country: Country | None = None, own: frozenset[str] = frozenset()
    ) -> None:
        self._stitches = stitches
        self._yarns = yarns
        self._country = country
        self._own = own

    @classmethod
    def of(cls, pattern: Pattern, country: Country | None = None) -> "Retelling":
        """For the lines of a pattern or a technique in the terms of a country."""
        blocks = [piece for piece in pattern.body if isinstance(piece, WorkBlock | StitchBlock)]
        used = dict.fromkeys(stitch for block in blocks for stitch in _stitches(block.directions))
        own = frozenset(plain_words(one.name.text) for one in blocks if isinstance(one, StitchBlock))
        return cls(Vocabulary(own=used), YarnNames(pattern.header.yarns), country, own)

    def line(self, line: InstructionLine) -> Line | None:
        """A whole line in the spoken language; None where it holds words that have no message."""
        try:
            found = [one for sentence in sentences((line,)) for one in self._sentence(sentence)]
        except NotTold:
            return None
        return _one_line(found) if found and not line.declared else None

    def can_tell(self, line: InstructionLine) -> bool:
        """Whether a line can be told in another language; else it is for a translator."""
        with speaking(NO_LANGUAGE):
            return self.line(line) is not None

    def parted(self, told: Told, line: InstructionLine) -> Line:
        """A line in the words of a translator: its label and its count apart, where they are those of its tree."""
        read = [one for sentence in sentences((line,)) for one in self._read(sentence)]
        label, count = _label(read[0] if read else None), _count(read[-1] if read else None)
        text, numbers = _flat(told)
        before, behind = (_flat(part, numbers)[0] for part in (label, said("(", count, ")") if count else ()))
        has_label = bool(before) and text.startswith(before)
        has_count = bool(behind) and text.rstrip(".").endswith(behind)
        words = text.removeprefix(before) if has_label else text
        words = words.rstrip(".").removesuffix(behind) if has_count else words
        return Line(label if has_label else (), _filled(words.strip(), numbers), count if has_count else ())

    def _read(self, sentence: Sentence) -> tuple[Direction | Promise, ...]:
        return tuple(map(self._meant, DirectionReader(self._stitches, self._yarns).sentence(sentence)))

    def _meant(self, one: Direction | Promise) -> Direction | Promise:
        """A direction with its fabric by what the source means: its name may be that of another one elsewhere."""
        match one:
            case Even(fabric=name) | Spaced(fabric=name) if self._country is not None and self._is_other(name):
                return replace(one, fabric=meant_fabric(name, self._country))
            case Meanwhile():
                rows, shaping = self._meant(one.rows), self._meant(one.shaping)
                if isinstance(rows, RepeatRows | Even) and isinstance(shaping, Spaced):
                    return replace(one, rows=rows, shaping=shaping)
        return one

    def _is_other(self, name: str) -> bool:
        """Whether a fabric is another one by its name alone; a stitch pattern of the source is what its rows are."""
        return plain_words(name) not in self._own and meant_fabric(name, self._country) != usual_fabric(name)

    def _sentence(self, sentence: Sentence) -> Iterator[Line]:
        """The lines of one sentence; a yarn that is taken stands before what is worked with it. Raises `NotTold`."""
        whole = _usual(sentence)
        if whole:
            yield Line((), said(whole, "."))
            return
        found = self._read(sentence)
        if not found:
            raise NotTold(sentence)
        taken = [line_of(one).words for one in found if isinstance(one, TakeYarn)]
        worked = [one for one in found if not isinstance(one, TakeYarn)]
        if not (taken and worked):
            yield from map(_line, found)
            return
        first, *rest = map(_line, worked)
        yarns = listed(((*words[:-1], str(words[-1]).removesuffix(".")) for words in taken), ", ")
        yield replace(first, words=phrase("{yarn}: {work}", yarn=yarns, work=first.words))
        yield from rest


def whole_lines(lines: Sequence[InstructionLine]) -> Iterator[InstructionLine]:
    """Each line with those that go on with it as one; a line that declares what it comes to stands by itself."""
    for _, together in groupby(lines, lambda line: bool(line.declared)):
        yield from map(_whole, paragraphs(tuple(together)))


def _whole(paragraph: Sequence[InstructionLine]) -> InstructionLine:
    first, *more = paragraph
    for line in more:
        behind = len(first.pieces) + 1
        moved = (Clause(one.number, one.first + behind, one.end + behind) for one in line.clauses)
        pieces = (*first.pieces, " ", *line.pieces)
        first = replace(first, pieces=pieces, clauses=(*first.clauses, *moved))
    return first


def _usual(sentence: Sentence) -> Told:
    try:
        return usual(told_sentence(sentence))
    except NotTold:
        return ()


def _line(one: Direction | Promise) -> Line:
    return Line((), (), promised(one)) if isinstance(one, Promise) else line_of(one)


def _one_line(found: Sequence[Line]) -> Line:
    """Lines that stand behind one another as one: the label is that of the first, the count that of the last."""
    words = [found[0].words, *(Line(one.label, one.words).whole for one in found[1:])]
    counts = [said("(", one.count, ")") if one.count else () for one in found[:-1]]
    told = [part for pair in zip(words, [*counts, ()], strict=True) for part in pair if part]
    return Line(found[0].label, listed(told, " "), found[-1].count)


def _label(read: Direction | Promise | None) -> Told:
    try:
        return row_line(read).label if isinstance(read, Row) else ()
    except NotTold:
        return ()


def _count(read: Direction | Promise | None) -> Told:
    promise = read if isinstance(read, Promise) else getattr(read, "promise", None)
    try:
        return promised(promise) if promise is not None else ()
    except NotTold:
        return ()


def _flat(told: Told, numbers: list[LinePiece] | None = None) -> tuple[str, list[LinePiece]]:
    """Words with a sign for each number, and the numbers that the signs stand for."""
    known = [] if numbers is None else numbers
    text = ""
    for piece in told:
        if isinstance(piece, str | Words):
            text += piece if isinstance(piece, str) else piece.text
            continue
        if piece not in known:
            known.append(piece)
        text += chr(_PLANE + known.index(piece))
    return text, known


def _filled(text: str, numbers: Sequence[LinePiece]) -> Told:
    return joined(numbers[ord(sign) - _PLANE] if ord(sign) >= _PLANE else sign for sign in text)


def _stitches(node: object) -> Iterator[Stitch]:
    """The stitches in a tree."""
    if isinstance(node, Stitch):
        yield node
    elif isinstance(node, tuple):
        for one in node:
            yield from _stitches(one)
    elif is_dataclass(node) and not isinstance(node, Span):
        yield from _stitches(tuple(getattr(node, field.name) for field in fields(node)))
