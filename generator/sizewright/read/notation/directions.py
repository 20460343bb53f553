"""In: the lines of a work or stitch block. Out: its directions: rows, repeats of rows, casting on, joining and so on.

What is no set phrase and no row is a finding that quotes it, never a guess; the rest of the block is still read.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from sizewright.base.finding import Finding
from sizewright.read.notation.cast_on_parser import CastOnParser
from sizewright.read.notation.direction_tree import (
    Apart,
    CastOn,
    Declared,
    Direction,
    Even,
    Join,
    Meanwhile,
    Numbers,
    Promise,
    RepeatRows,
    Row,
    Spaced,
    Unread,
)
from sizewright.read.notation.not_understood import NotUnderstood
from sizewright.read.notation.phrases import read_phrase
from sizewright.read.notation.refused_phrases import refuse
from sizewright.read.notation.respelled import respelled
from sizewright.read.notation.row_labels import Label, read_label
from sizewright.read.notation.row_parser import RowParser
from sizewright.read.notation.rows_like import rows_like
from sizewright.read.notation.sentence_parts import parted, place_of, trimmed, whole_row
from sizewright.read.notation.shaping_parser import ShapingParser
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.notation.tree import Action, Colour
from sizewright.read.notation.words import Kind, Sentence, sentences, spanned, tokens, told_sentence, typed
from sizewright.read.notation.yarn_words import YarnWords
from sizewright.read.pattern import InstructionLine
from sizewright.read.rules import NOT_UNDERSTOOD
from sizewright.read.yarn_names import YarnNames

_SAME_TIME = ("at", "the", "same", "time")
_MOST_JOINTS = 4  # instructions joined in one sentence
_DECLARE = "Write the rows out, or say what they come to: “# declared: 72 sts, 12 rows” at the end of the line."


class DirectionReader:
    """Reads the directions of one source; `vocabulary` are the stitches it may use, `yarns` those of its header."""

    def __init__(self, vocabulary: Vocabulary, yarns: YarnNames) -> None:
        self._vocabulary = vocabulary
        self._yarns = YarnWords(yarns)
        self.findings: list[Finding] = []
        self._last: tuple[Direction, ...] = ()  # the direction read last in this block

    def read(self, lines: Sequence[InstructionLine]) -> tuple[Direction, ...]:
        """The directions of a block, in reading order."""
        found: list[Direction] = []
        self._last = ()
        for declared, together in groupby(lines, lambda line: bool(line.declared)):
            for direction in self._declared(together) if declared else self._said(tuple(together)):
                if isinstance(direction, Promise):
                    _promised(found, direction)
                elif isinstance(direction, Meanwhile) and self._last and direction.span == self._last[0].span:
                    found[-1] = direction
                else:
                    found.append(direction)
                self._last = tuple(found[-1:])
        return tuple(found)

    def _said(self, lines: Sequence[InstructionLine]) -> Iterator[Direction | Promise]:
        for sentence in sentences(lines):
            yield from self.sentence(sentence)

    def _declared(self, lines: Iterable[InstructionLine]) -> Iterator[Direction]:
        """ "# declared: 72 sts, 12 rows" behind words that cannot be carried out."""
        for line in lines:
            declared = tuple(tokens(replace(line, pieces=line.declared)))
            counts = [token.count for token in declared if token.count is not None]
            if counts:
                yield Declared(
                    line.span, counts[0], counts[1] if len(counts) > 1 else None, told_sentence(tuple(tokens(line)))
                )
            else:
                mend = "Write for example “# declared: 72 sts, 12 rows”."
                self.findings.append(NOT_UNDERSTOOD.at(line.span, "This declares no count.", mend))

    def sentence(self, sentence: Sentence) -> Iterator[Direction | Promise]:
        """The directions of one sentence, or the count that it promises; what is not understood is a finding too."""
        try:
            _refuse_oversized(sentence)
            plain = respelled(sentence)
            refuse(plain)
            labelled = read_label(plain)
            if labelled is not None:
                yield from self._row(*labelled, plain)
                return
            parser = RowParser(plain, self._vocabulary)
            promise = parser.promise()
            if promise is not None and parser.done:
                yield promise
                return
            taken, rest = self._yarns.first(plain)
            yield from taken
            if rest:
                yield from self._unlabelled(rest)
        except NotUnderstood as fault:
            message = f"“{fault.words}” is not understood in “{_short(typed(sentence))}”."
            self.findings.append(NOT_UNDERSTOOD.at(fault.span, message, fault.mend))
            yield self._unread(sentence)

    def _unread(self, sentence: Sentence) -> Unread:
        parser = RowParser(sentence, self._vocabulary)
        promise = parser.last_promise()
        words = sentence if promise is None else tuple(token for token in sentence if token.span < promise.span)
        return Unread(spanned(sentence), promise, told_sentence(words[:-1] if promise is not None else words))

    def _unlabelled(self, sentence: Sentence) -> Iterator[Direction]:
        inside = self._yarns.within(sentence)
        said = self._phrased(inside[1]) if inside is not None else None
        if inside is not None and said is not None:
            yield inside[0]
        else:
            said = self._phrased(sentence)
        yield from self._bare_row(sentence) if said is None else said

    def _phrased(self, sentence: Sentence, joints: int = _MOST_JOINTS) -> tuple[Direction, ...] | None:
        """What a sentence of set phrases says; None where it is none. Two may be joined by "then"."""
        single = ShapingParser(sentence, self._vocabulary).spaced() or self._cast_on(sentence)
        if single is not None:
            return (single,)
        together = self._together(sentence)
        if together is not None:
            return (together,)
        parts = parted(sentence) if joints else None
        if parts is not None:
            first, second = (self._phrased(part, joints - 1) for part in parts)
            if first is not None and second is not None:
                return (*first, *second)
        body, promise = self._without_promise(sentence)
        phrase = read_phrase(body)
        if phrase is None or promise is None:
            return phrase
        return _with_promise(phrase, promise)

    def _together(self, sentence: Sentence) -> Meanwhile | None:
        """ "Work in stockinette for 12 rows and at the same time dec 1 st ..."."""
        place = place_of(sentence, _SAME_TIME)
        if place is None:
            return None
        before, behind = trimmed(sentence[:place]), trimmed(sentence[place + len(_SAME_TIME) :])
        rows = (self._phrased(before) or ()) if before else self._last
        shaping = ShapingParser(behind, self._vocabulary).spaced() if behind else None
        if len(rows) != 1 or not isinstance(rows[0], RepeatRows | Even) or shaping is None:
            raise NotUnderstood(spanned(sentence[place : place + len(_SAME_TIME)]), "at the same time", _DECLARE)
        if rows[0].extent.begins or rows[0].extent.ends:
            raise NotUnderstood(rows[0].span, typed(before), "Say how many rows, without the side of the last.")
        promise = shaping.promise or rows[0].promise
        span = spanned(sentence) if before else rows[0].span
        return Meanwhile(span, replace(rows[0], promise=None), replace(shaping, promise=None), promise)

    def _cast_on(self, sentence: Sentence) -> CastOn | None:
        return CastOnParser(sentence, self._vocabulary).cast_on()

    def _without_promise(self, sentence: Sentence) -> tuple[Sentence, Promise | None]:
        """The sentence without the count in brackets at its end."""
        if sentence[-1].text not in (")", "]"):
            return sentence, None
        opening = next((place for place in range(len(sentence) - 1, 0, -1) if sentence[place].text in ("(", "[")), None)
        if opening is None:
            return sentence, None
        parser = RowParser(sentence[opening:], self._vocabulary)
        promise = parser.promise()
        return (sentence[:opening], promise) if promise is not None and parser.done else (sentence, None)

    def _bare_row(self, sentence: Sentence) -> Iterator[Direction]:
        """A row without a label, as in "K2, p2 to end."."""
        actions, promise = RowParser(sentence, self._vocabulary).row()
        yield Row(spanned(sentence), "", Numbers(), None, in_the_round=False, actions=actions, promise=promise)

    def _row(self, label: Label, rest: Sentence, sentence: Sentence) -> Iterator[Direction]:
        place = place_of(rest, _SAME_TIME)
        if place is not None:
            raise NotUnderstood(spanned(rest[place : place + len(_SAME_TIME)]), "at the same time", _DECLARE)
        like, promise = self._like(rest, label.numbers)
        actions: tuple[Action, ...] = ()
        if like is None:
            if not rest:
                raise NotUnderstood(spanned(sentence), label.text, "Say what is worked in this row.")
            taken, rest = self._yarns.first(rest)
            if rest:
                actions, promise = RowParser(whole_row(rest), self._vocabulary).row()
            actions = (*(Colour(one.span, one.name) for one in taken), *actions)
        if label.remark:
            yarn = self._yarns.remarked(label.remark)
            actions = (Colour(spanned(sentence), yarn or label.remark, yarn is not None), *actions)
        yield Row(
            spanned(sentence),
            label.text,
            label.numbers,
            label.side,
            label.in_the_round,
            actions,
            promise,
            like,
            label.name,
            label.heading,
        )

    def _like(self, rest: Sentence, numbers: Numbers) -> tuple[Numbers | None, Promise | None]:
        """ "As Row 2", "Rep Row 2", "Work as for Rows 1 and 2", which are as many as those that are like them."""
        body, promise = self._without_promise(rest) if rest else (rest, None)
        like = rows_like(body, numbers)
        return like, None if like is None else promise


def _with_promise(phrase: tuple[Direction, ...], promise: Promise) -> tuple[Direction, ...]:
    """The count in brackets behind a sentence belongs to the last thing it says that can have one."""
    kinds = CastOn | Join | Apart | RepeatRows | Even
    last = next((at for at in reversed(range(len(phrase))) if isinstance(phrase[at], kinds)), None)
    return tuple(
        replace(direction, promise=promise) if at == last and isinstance(direction, kinds) else direction
        for at, direction in enumerate(phrase)
    )


def _promised(found: list[Direction], promise: Promise) -> None:
    """A count that stands as a sentence of its own belongs to the direction before it."""
    last = found[-1] if found else None
    if isinstance(last, Row | CastOn | Join | Apart | RepeatRows | Even | Spaced | Meanwhile | Unread):
        found[-1] = replace(last, promise=promise)


def _refuse_oversized(sentence: Sentence) -> None:
    """Raises `NotUnderstood` for a number of more figures than anything knitted has."""
    for token in sentence:
        if token.kind is Kind.NUMBER and token.count is None and token.typed.isdecimal():
            raise NotUnderstood(token.span, token.typed, "A count must be a whole number below 100 000.")


def _short(text: str) -> str:
    return text if len(text) <= 70 else f"{text[:67]}…"
