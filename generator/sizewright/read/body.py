"""In: the text behind the header. Out: the stream of pieces, Markdown parsed once, every node with its place."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import chain

from markdown_it.token import Token

from sizewright.base.finding import Finding
from sizewright.base.nearest import nearest
from sizewright.base.place import Lines, Span
from sizewright.read.adapting.departing import Departing
from sizewright.read.blocks import BLOCKS, BlockReader
from sizewright.read.braces import BraceReader
from sizewright.read.columns import Columns
from sizewright.read.departure import Departure
from sizewright.read.markdown import INSERT, PASSAGE_CLOSE, PASSAGE_OPEN, rendered, tokens_of
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.passages import NOT_IN_NOTES, PassageReader
from sizewright.read.pattern import (
    Address,
    Header,
    Heading,
    Image,
    Insert,
    Markup,
    Piece,
)
from sizewright.read.plan_lines import plans_of
from sizewright.read.references import References
from sizewright.read.rules import IDLE_BRACES, MISSING_ALT, NOT_UNDERSTOOD, UNCLOSED, UNKNOWN_BLOCK
from sizewright.read.typed_numbers import shortened
from sizewright.read.values import BRACES
from sizewright.read.yarn_names import YarnNames


class BodyReader:
    """Reads the body of one source. `first_line` is the line, from 1, where it begins."""

    def __init__(
        self,
        lines: Lines,
        first_line: int,
        header: Header,
        references: References,
        stitches: Vocabulary,
        departures: tuple[Departure, ...] = (),
    ) -> None:
        sizes = tuple(size.name for size in header.sizes)
        self._lines = lines
        self._shift = first_line - 1
        self._references = references
        self._braces = BraceReader(lines, sizes)
        self._blocks = BlockReader(lines, self._braces, sizes, stitches, YarnNames(header.yarns))
        self._findings: list[Finding] = []
        self._passages = PassageReader(lines, sizes)
        self._columns = Columns(lines, self._shift)
        self._anchors: set[str] = set()
        self._parts: Counter[str] = Counter()
        self._quoted = 0
        self._departing = Departing(departures, self._shift)

    def read(self) -> tuple[Piece, ...]:
        """The pieces, in reading order; neighbouring markup is joined."""
        self._tokens = tokens_of("\n".join(self._lines.lines[self._shift :]))
        found = (piece for index in range(len(self._tokens)) for piece in self._block(index))
        pieces = tuple(joined(chain(found, self._departing.rest())))
        plans = plans_of(pieces)
        return tuple(self._blocks.directed(piece, plans) for piece in pieces)

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What is wrong, gathered while reading."""
        found = (*self._findings, *self._passages.findings, *self._braces.findings, *self._blocks.findings)
        return tuple(one for one in found if not self._at_broken_brace(one, found))

    def _at_broken_brace(self, finding: Finding, found: Sequence[Finding]) -> bool:
        """Whether a "{" is not understood because what it opens is told of already."""
        span = finding.span
        if finding.rule != NOT_UNDERSTOOD.name or span is None:
            return False
        brace = self._lines.lines[span.line - 1][span.column - 1 : span.column] == "{"
        others = (one.span for one in found if one.rule != finding.rule and one.span is not None)
        return brace and any(other.line == span.line and other.column >= span.column for other in others)

    def _block(self, index: int) -> Iterator[Piece]:
        token = self._tokens[index]
        yield from self._departing.before(token, self._block_span(token))
        match token.type:
            case "inline":
                yield from self._inline(token)
            case "fence":
                yield from self._fence(index)
            case "heading_open":
                yield self._heading(index)
            case "heading_close":
                yield Markup(f"</h{heading_level(token)}>\n")
            case _ if token.type == PASSAGE_OPEN:
                yield self._passage(token)
            case _ if token.type == PASSAGE_CLOSE:
                yield self._passages.closed()
            case _:
                self._quoted += {"blockquote_open": 1, "blockquote_close": -1}.get(token.type, 0)
                yield Markup(rendered(self._tokens, index))

    def _heading(self, index: int) -> Heading:
        token, words = self._tokens[index], self._tokens[index + 1].content
        plain = plain_words(words)
        stem = re.sub(r"[^\w]+", "-", plain.casefold()).strip("-") or "part"
        anchor = stem
        while anchor in self._anchors:
            self._parts[stem] += 1
            anchor = f"{stem}-{self._parts[stem] + 1}"
        self._anchors.add(anchor)
        return Heading(self._block_span(token), heading_level(token), anchor, plain)

    def _block_span(self, token: Token) -> Span:
        return self._lines.whole_line((token.map or [0, 0])[0] + self._shift + 1)

    def _passage(self, token: Token) -> Piece:
        return self._passages.opened(token.info, self._block_span(token), (token.map or [0, 0])[1] + self._shift)

    def _written(self, number: int) -> str:
        """A line, from 1, without the space and the signs of quotation before it."""
        return self._lines.lines[number - 1].lstrip(" \t>")

    def _fence(self, index: int) -> Iterator[Piece]:
        token = self._tokens[index]
        word, _, rest = token.info.strip().partition(" ")
        first, last = ((token.map or [0, 0])[0] + self._shift + 1, (token.map or [0, 0])[1] + self._shift)
        span = self._lines.whole_line(first)
        end = last if last > first and self._written(last).startswith(token.markup) else 0
        if not end:
            self._findings.append(UNCLOSED.at(span, f"“{token.markup}{token.info}” is never closed.", _CLOSE_FENCE))
        if word not in BLOCKS or self._quoted or self._only_read(word):
            self._judge_fence(word, span)
            yield Markup(rendered(self._tokens, index))
            return
        within = (first + 1, self._block_end(first, end or last + 1))
        yield self._read_block(word, rest.strip(), span, within)

    def _read_block(self, word: str, rest: str, span: Span, within: tuple[int, int]) -> Piece:
        return self._blocks.read(word, rest, span, within, self._passages.within)

    def _only_read(self, word: str) -> bool:
        return self._passages.in_note and word in NOT_IN_NOTES

    def _judge_fence(self, word: str, span: Span) -> None:
        """A fence that is no block of the tool, though its word or its place says it might be meant as one."""
        if self._only_read(word):
            message = f"“{word}” stands in a note for learners, which is read and never carried out."
            self._findings.append(UNKNOWN_BLOCK.at(span, message, "Close the note with “:::” before the block."))
        elif word in BLOCKS:
            message = f"“{word}” stands in a quotation, where no block is read."
            self._findings.append(UNKNOWN_BLOCK.at(span, message, "Take the “>” away from all its lines."))
        elif meant := nearest(word, BLOCKS):
            message = f"“{word}” is no block the tool knows."
            self._findings.append(UNKNOWN_BLOCK.at(span, message, f"Did you mean “{meant}”?"))

    def _block_end(self, first: int, end: int) -> int:
        """The line a block ends before: a new block that begins within means that the first was left open."""
        for number in range(first + 1, end):
            if self._written(number).startswith(("```", "~~~")):
                message = f"The block of line {first} is not closed before this line."
                self._findings.append(UNCLOSED.at(self._lines.whole_line(number), message, _CLOSE_FENCE))
                return number
        return end

    def _inline(self, token: Token) -> Iterator[Piece]:
        children = token.children or []
        self._columns.enter(token)
        for index, child in enumerate(children):
            match child.type:
                case _ if child.type == INSERT:
                    yield from self._insert(child)
                case "image":
                    yield from self._image(token, child)
                case "link_open":
                    yield from self._link(token, child)
                case _:
                    yield Markup(rendered(children, index))

    def _insert(self, child: Token) -> Iterator[Piece]:
        start = self._columns.offset(int(child.meta["start"]))
        if child.info == "open":
            span = self._lines.span(start, start + len(child.content))
            message = f"“{shortened(child.content)}” begins with a brace that is not closed in its line."
            self._findings.append(UNCLOSED.at(span, message, "Close it with “}”, or write “\\{” for a brace."))
            return
        insert = self._read_braces(start, start + len(child.content))
        if insert is not None:
            yield insert

    def _read_braces(self, start: int, end: int) -> Insert | None:
        return self._braces.read(start, end, self._passages.within)

    def _image(self, token: Token, child: Token) -> Iterator[Piece]:
        span = self._find_span(token, str(child.attrs.get("src", "")))
        if not child.content.strip():
            mend = "Write what a reader should know who does not see it: ![The hat from the side](hat.svg)"
            self._findings.append(MISSING_ALT.at(span, "This picture has no words for it.", mend))
        if braces := BRACES.search(child.content):
            message = f"“{braces.group()}” stands in the words of a picture, where nothing is worked out."
            self._findings.append(IDLE_BRACES.at(span, message, "Write the number out, or tell it in the text."))
        file = self._references.picture(str(child.attrs.get("src", "")), span)
        if isinstance(file, Finding):
            self._findings.append(file)
        else:
            yield Image(span, file, child.content)

    def _link(self, token: Token, child: Token) -> Iterator[Piece]:
        target = str(child.attrs.get("href", ""))
        span = self._find_span(token, target)
        address = self._references.link(target, span)
        if isinstance(address, Finding):
            self._findings.append(address)
            address = "#"
        yield Address(span, address)

    def _find_span(self, token: Token, words: str) -> Span:
        """The place of some words of an inline token, its first line where they are written otherwise."""
        first, end = (number + self._shift + 1 for number in (token.map or [0, 1]))
        for number in range(first, end):
            column = self._lines.lines[number - 1].find(words)
            if column >= 0 and words:
                start = self._lines.offset(number, column + 1)
                return self._lines.span(start, start + len(words))
        return self._lines.whole_line(first)


_CLOSE_FENCE = "Close the block with a line of three backticks."


def plain_words(words: str) -> str:
    """The words of a heading without marks and numbers."""
    return " ".join(re.sub(r"(?<!\\)\{[^{}]*\}|[`*_\\]", "", words).split())


def heading_level(token: Token) -> int:
    """The title is the page's first heading, so a heading of the text is of level 2 at least."""
    return max(2, int(token.tag[1:]))


def joined(pieces: Iterable[Piece]) -> Iterator[Piece]:
    """The pieces with neighbouring markup made one."""
    html: list[str] = []
    for piece in pieces:
        if isinstance(piece, Markup):
            html.append(piece.html)
            continue
        if html:
            yield Markup("".join(html))
            html = []
        yield piece
    if html:
        yield Markup("".join(html))
