"""In: a source that is read. Out: all of its texts that are told in another language, in the order they are read."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from sizewright.base.place import Span
from sizewright.read.markdown import tokens_of
from sizewright.read.measure_names import USUAL_NAMES, name_words
from sizewright.read.names_used import measured_names
from sizewright.read.pattern import NoteOpen, Pattern, SchematicBlock, StitchBlock
from sizewright.read.translating.departures import quantity_words
from sizewright.read.translating.header import Tell, told_header
from sizewright.read.translating.lines import hand_lines
from sizewright.read.translating.pairs import key_of
from sizewright.read.translating.passages import Passage, passages


@dataclass(frozen=True, slots=True)
class Text:
    """Words of a source, as typed, and where they stand. `passage` is set where they are Markdown of its body.

    What is not `asked` for is told in another language without a translation, and by one where there is one.
    """

    span: Span
    words: str
    passage: Passage | None = None
    asked: bool = True

    @property
    def key(self) -> str:
        """By what their translation is found."""
        return key_of(self.words)


def texts_of(pattern: Pattern) -> tuple[Text, ...]:
    """The texts of a source, each once: the header's, then those of the body."""
    found: dict[str, Text] = {}
    passages = (Text(passage.span, passage.text, passage) for passage in passages_of(pattern))
    body = sorted((*passages, *_apart(pattern)), key=lambda text: (text.span.line, text.span.column))
    for text in (*_header(pattern), *body):
        if _said(text.words) and (text.key not in found or (text.asked and not found[text.key].asked)):
            found[text.key] = text
    return tuple(found.values())


def texts_apart(pattern: Pattern) -> Iterator[Text]:
    """Those that are no passages of its body, and that are asked for."""
    yield from (text for text in (*_header(pattern), *_apart(pattern)) if text.asked and _said(text.words))


def collected(told: Callable[[Tell], object]) -> tuple[Text, ...]:
    """The texts that somebody tells who takes a thing through all of them."""
    found: list[Text] = []

    def tell(span: Span, words: str) -> str:
        found.append(Text(span, words))
        return words

    told(tell)
    return tuple(found)


def _said(words: str) -> bool:
    """Whether there is anything to be told otherwise: "36" and "{brim}" are the same in every language."""
    return any(sign.isalpha() for sign in words)


def _header(pattern: Pattern) -> Iterator[Text]:
    yield from collected(lambda tell: told_header(pattern.header, tell, tell))


def _apart(pattern: Pattern) -> Iterator[Text]:
    for measured, place in measured_names(pattern).items():
        if name_words(measured).casefold() not in USUAL_NAMES:
            yield Text(place, name_words(measured))
    for line in hand_lines(pattern):
        yield Text(line.span, line.typed, asked=line.asked)
    for piece in pattern.body:
        match piece:
            case NoteOpen(span=span, title=title):
                yield Text(span, title)
            case StitchBlock(span=span, name=name):
                yield Text(span, name.text)
            case SchematicBlock(pieces=pieces):
                for one in pieces:
                    yield Text(one.name.span, one.name.name)
            case _:
                pass
    for called in (one.called for one in pattern.adapts.departures) if pattern.adapts else ():
        yield Text(called.because.span, called.because.text)
        yield Text(called.span, quantity_words(called))


def passages_of(pattern: Pattern) -> tuple[Passage, ...]:
    """The passages of a body, their tokens counted in those of all of it."""
    shift = pattern.header.span.end_line
    return passages(pattern.lines, shift, tokens_of("\n".join(pattern.lines.lines[shift:])))
