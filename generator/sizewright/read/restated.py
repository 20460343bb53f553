"""In: a pattern. Out: its lines of instructions in house style, where every word of them is understood and they differ.

A line is left as it is typed where a word of it is not understood or declared, where a plan writes it, and where it is
a row of a chart, drawn in cells.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby

from sizewright.read.inserts import Insert, Told, Words
from sizewright.read.notation.direction_tree import Promise, TakeYarn
from sizewright.read.notation.directions import DirectionReader
from sizewright.read.notation.printed import printed, source_text
from sizewright.read.notation.printed_pieces import listed, said
from sizewright.read.notation.printed_rows import printed_promise
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.notation.words import Sentence, paragraphs, sentences, told_sentence
from sizewright.read.pattern import InstructionLine, Pattern, StitchBlock, WorkBlock
from sizewright.read.yarn_names import YarnNames

_SAME_TIME = ("at", "the", "same", "time")


@dataclass(frozen=True, slots=True)
class Restated:
    """Lines from `first` to `last` (from 1) that say one thing, as typed and in house style; "" where they are left."""

    first: int
    last: int
    typed: str
    house: str

    @property
    def differs(self) -> bool:
        """Whether they are understood and said otherwise in house style."""
        return self.house not in ("", self.typed)


def restated(pattern: Pattern, vocabulary: Vocabulary) -> tuple[Restated, ...]:
    """The lines of every work and stitch block; `vocabulary` are the stitches the pattern may use."""
    return tuple(_restated(pattern, vocabulary))


def _restated(pattern: Pattern, vocabulary: Vocabulary) -> Iterator[Restated]:
    yarns = YarnNames(pattern.header.yarns)
    for piece in pattern.body:
        if isinstance(piece, WorkBlock | StitchBlock):
            typed = (line for line in piece.lines if not line.drawn)
            for declared, together in groupby(typed, lambda line: bool(line.declared)):
                for paragraph in paragraphs(tuple(together)):
                    if paragraph[0].span.shown.source == pattern.source:  # those of a base are its own to restate
                        house = "" if declared or _planned(paragraph) else _house(paragraph, vocabulary, yarns)
                        yield _told(pattern, paragraph, house)


def _told(pattern: Pattern, paragraph: tuple[InstructionLine, ...], house: str) -> Restated:
    spans = [line.span for line in paragraph]
    typed = " ".join(pattern.lines.text_of(span) for span in spans)
    return Restated(spans[0].shown.line, spans[-1].shown.line, typed, house)


def _planned(paragraph: Iterable[InstructionLine]) -> bool:
    """Whether a plan writes some of the words."""
    pieces = [piece for line in paragraph for piece in line.pieces]
    return any(isinstance(piece, Words) or (isinstance(piece, Insert) and piece.part) for piece in pieces)


def _house(paragraph: tuple[InstructionLine, ...], vocabulary: Vocabulary, yarns: YarnNames) -> str:
    """What a line says, in house style; "" where it is not understood or says nothing that is worked."""
    reader = DirectionReader(vocabulary, yarns)
    found: list[Told] = []
    worked = False
    for sentence in sentences(paragraph):
        if _left(sentence):
            return ""
        words = _sentence(reader, sentence)
        worked = worked or bool(words)
        found.append(words or said(told_sentence(sentence), "."))
    return source_text(said(*_spaced(found))) if worked and not reader.findings else ""


def _left(sentence: Sentence) -> bool:
    """Whether a sentence goes on with the one before it, or tells of a yarn that is cut, which is in no direction."""
    texts = tuple(token.text for token in sentence[:4])
    return texts == _SAME_TIME or texts[0] in ("cut", "break")


def _sentence(reader: DirectionReader, sentence: Sentence) -> Told:
    """A sentence in house style; nothing where it changes nothing that is worked."""
    found = tuple(reader.sentence(sentence))
    yarns = [one.words or (f"With {one.name}",) for one in found if isinstance(one, TakeYarn)]
    parts = [
        printed_promise(one) if isinstance(one, Promise) else printed(one)
        for one in found
        if not isinstance(one, TakeYarn)
    ]
    rest = said(*_spaced(parts))
    if not yarns:
        return rest
    return said(listed(yarns), ", " if rest else ".", _small(rest) if rest else "")


def _small(words: Told) -> Told:
    first = words[0]
    return (first[:1].lower() + first[1:], *words[1:]) if isinstance(first, str) else words


def _spaced(parts: Iterable[Told]) -> Iterator[Told]:
    for number, part in enumerate(parts):
        yield said(" " if number else "", part)
