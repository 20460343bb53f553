"""In: a pattern carried out. Out: its instructions and the sentences with numbers as lines, under their headings."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from html import unescape

from sizewright.base.place import Span
from sizewright.grade.graded import Graded
from sizewright.proof.line import Kind, Line
from sizewright.proof.said_in_size import numbers_of, said_in
from sizewright.read.inserts import Insert, Told
from sizewright.read.notation.direction_tree import (
    Apart,
    BindOffAll,
    CastOn,
    Declared,
    Direction,
    Gather,
    Join,
    Numbers,
    Row,
    SameAgain,
    TakeUp,
    TakeYarn,
    Unread,
)
from sizewright.read.notation.printed import printed
from sizewright.read.notation.printed_rows import printed_numbers, printed_promise
from sizewright.read.notation.tree import Aside
from sizewright.read.pattern import Heading, Markup, PassageClose, PassageOpen, StitchBlock, WorkBlock

_TAG = re.compile(r"<[^<>]*>")
_CLOSED = re.compile(r"</(?:p|li|h[1-6]|td|th|dd|dt|blockquote|figcaption|summary)>")
_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=\S)")


def body_lines(graded: Graded) -> tuple[Line, ...]:
    """Every direction, and every sentence of the text that has a number in it, in reading order."""
    return tuple(_Reading(graded).lines())


@dataclass(frozen=True, slots=True)
class _Words:
    """Words of the text in each size, None where a size does not read them."""

    span: Span
    said: tuple[str | None, ...]


class _Reading:
    def __init__(self, graded: Graded) -> None:
        self.graded = graded
        self.everybody = tuple(range(max(1, len(graded.sizes))))
        self.section = ""
        self.passages = [self.everybody]
        self.span = graded.pattern.header.span
        self.begun: list[list[str]] = [[] for _ in self.everybody]

    def lines(self) -> Iterator[Line]:
        for piece in self.graded.pattern.body:
            match piece:
                case Markup():
                    yield from self.markup(piece.html)
                case Insert():
                    self.span = piece.span
                    for size in self.read_by:
                        self.begun[size].append(said_in((piece,), self.graded.inserts, size))
                case Heading():
                    self.section, self.span = piece.text, piece.span
                case PassageOpen():
                    self.passages.append(self.places(piece.sizes))
                case PassageClose():
                    self.passages.pop()
                case WorkBlock():
                    self.span = piece.span
                    yield from self.directions(piece.directions, self.section, self.places(piece.sizes))
                case StitchBlock():
                    self.span = piece.span
                    yield from self.directions(piece.directions, piece.name.text, self.everybody)
                case _:
                    pass
        yield from self.paragraph()

    @property
    def read_by(self) -> tuple[int, ...]:
        """The sizes that read what stands here."""
        return self.passages[-1]

    def places(self, sizes: tuple[str, ...] | None) -> tuple[int, ...]:
        return tuple(place for place, _ in self.graded.read_in(sizes))

    def markup(self, html: str) -> Iterator[Line]:
        first, *others = _CLOSED.split(html)
        self.add(first)
        for part in others:
            yield from self.paragraph()
            self.add(part)

    def add(self, html: str) -> None:
        words = unescape(_TAG.sub("", html))
        for size in self.read_by:
            self.begun[size].append(words)

    def paragraph(self) -> Iterator[Line]:
        """The sentences of a paragraph that ends here; where sizes have more or fewer of them it is taken whole."""
        texts = [" ".join("".join(words).split()) for words in self.begun]
        self.begun = [[] for _ in self.everybody]
        parts = [_SENTENCE.split(text) if text else [] for text in texts]
        lengths = {len(part) for part in parts if part}
        if len(lengths) > 1:
            parts = [[text] if text else [] for text in texts]
        for number in range(max(map(len, parts))):
            said = tuple(part[number] if part else None for part in parts)
            counts = tuple(None if one is None else numbers_of(one) for one in said)
            if any(counts):
                yield Line(Kind.TEXT, self.section, "", self.span, said, counts)

    def directions(self, directions: Iterable[Direction], section: str, sizes: tuple[int, ...]) -> Iterator[Line]:
        for direction in directions:
            yield self.direction(direction, section, sizes)

    def direction(self, direction: Direction, section: str, sizes: tuple[int, ...]) -> Line:
        promise = None if isinstance(direction, PROMISELESS) else direction.promise
        bare = direction if isinstance(direction, PROMISELESS) else replace(direction, promise=None)
        said = self.by_size(printed(_unlabelled(bare)), sizes)
        core = self.by_size(_core(bare), sizes)
        more = self.by_size(printed(bare), sizes) if not isinstance(bare, Row) else said
        counts = tuple(map(_counting, core, more))
        counted = self.by_size(printed_promise(promise), sizes) if promise else ()
        return Line(
            _kind(direction),
            section,
            direction.label.strip().rstrip(":") if isinstance(direction, Row) else "",
            direction.span,
            said,
            counts,
            tuple(one or "" for one in counted),
            direction.side.value if isinstance(direction, Row) and direction.side else "",
        )

    def by_size(self, words: Told, sizes: tuple[int, ...]) -> tuple[str | None, ...]:
        inserts = self.graded.inserts
        return tuple(said_in(words, inserts, size) if size in sizes else None for size in self.everybody)


PROMISELESS = (TakeUp, BindOffAll, Gather, TakeYarn, SameAgain, Declared)


def _kind(direction: Direction) -> Kind:
    match direction:
        case Row():
            return Kind.ROW
        case CastOn():
            return Kind.CAST_ON
    return Kind.DIRECTION


def _counting(core: str | None, whole: str | None) -> str | None:
    """The stitches and numbers of a line; numbers that stand only in its words come behind them."""
    if core is None or whole is None:
        return None
    numbers = numbers_of(whole)
    return core if numbers == numbers_of(core) else f"{core} [{numbers}]".strip()


def _unlabelled(direction: Direction) -> Direction:
    """A row without its label; it is called by it."""
    if not isinstance(direction, Row):
        return direction
    return replace(direction, heading="", numbers=Numbers(), side=None, in_the_round=False)


def _core(direction: Direction) -> Told:
    """What counts in a direction: stitches and numbers, without the words around them."""
    match direction:
        case Row():
            numbers = direction.numbers
            rows: Told = printed_numbers(numbers)
            if numbers.last is None:
                rows = (f"{len(numbers.listed)}",) if len(numbers.listed) > 1 else ()
            actions = tuple(action for action in direction.actions if not isinstance(action, Aside))
            return (*printed(_unlabelled(replace(direction, actions=actions))), " rows: " if rows else "", *rows)
        case Unread() | Declared():
            return ()
        case CastOn() | Join() | Apart() | TakeUp() | BindOffAll() | Gather() | TakeYarn() | SameAgain():
            return printed(replace(direction, words=()))
        case _:
            return printed(direction)
