"""In: the text behind the header. Out: the stream of pieces, Markdown parsed once, every node with its place."""

import re
from collections.abc import Iterator, Sequence

from markdown_it.token import Token

from sizewright.base.finding import Finding
from sizewright.base.nearest import did_you_mean, nearest
from sizewright.base.place import Lines, Span
from sizewright.read.braces import BraceReader
from sizewright.read.grade_block import read_grade_block
from sizewright.read.instructions import InstructionReader
from sizewright.read.markdown import INSERT, PASSAGE_CLOSE, PASSAGE_OPEN, rendered, tokens_of
from sizewright.read.notation.directions import DirectionReader
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.pattern import (
    Address,
    Heading,
    Image,
    Markup,
    PassageClose,
    PassageOpen,
    Piece,
    StitchBlock,
    Words,
    WorkBlock,
)
from sizewright.read.references import References
from sizewright.read.rules import MISSING_ALT, UNCLOSED, UNKNOWN_BLOCK, UNKNOWN_SIZE

_BLOCKS = ("grade", "work", "stitch")


class BodyReader:
    """Reads the body of one source. `first_line` is the line, from 1, where it begins."""

    def __init__(
        self, lines: Lines, first_line: int, sizes: tuple[str, ...], references: References, stitches: Vocabulary
    ) -> None:
        self._lines = lines
        self._shift = first_line - 1
        self._sizes = sizes
        self._references = references
        self._braces = BraceReader(lines, sizes)
        self._instructions = InstructionReader(lines, self._braces, sizes)
        self._directions = DirectionReader(stitches)
        self._findings: list[Finding] = []
        self._open: list[tuple[str, ...]] = []
        self._anchors: set[str] = set()
        self._searched: dict[int, int] = {}

    def read(self) -> tuple[Piece, ...]:
        """The pieces, in reading order; neighbouring markup is joined."""
        self._tokens = tokens_of("\n".join(self._lines.lines[self._shift :]))
        pieces = (piece for index in range(len(self._tokens)) for piece in self._block(index))
        return tuple(_joined(pieces))

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What is wrong, gathered while reading."""
        return (
            *self._findings,
            *self._braces.findings,
            *self._instructions.findings,
            *self._directions.findings,
        )

    def _block(self, index: int) -> Iterator[Piece]:
        token = self._tokens[index]
        match token.type:
            case "inline":
                yield from self._inline(token)
            case "fence":
                yield from self._fence(index)
            case "heading_open":
                yield self._heading(index)
            case "heading_close":
                yield Markup(f"</h{_level(token)}>\n")
            case _ if token.type == PASSAGE_OPEN:
                yield from self._passage(token)
            case _ if token.type == PASSAGE_CLOSE:
                self._open.pop()
                yield PassageClose()
            case _:
                yield Markup(rendered(self._tokens, index))

    def _within(self) -> tuple[str, ...] | None:
        """The sizes of the passage that is open, None outside one."""
        return self._open[-1] if self._open else None

    def _heading(self, index: int) -> Heading:
        token, words = self._tokens[index], self._tokens[index + 1].content
        plain = re.sub(r"[`*_\\]", "", words)
        stem = re.sub(r"[^\w]+", "-", plain.casefold()).strip("-") or "part"
        anchor, number = stem, 2
        while anchor in self._anchors:
            anchor, number = f"{stem}-{number}", number + 1
        self._anchors.add(anchor)
        return Heading(self._block_span(token), _level(token), anchor, plain)

    def _block_span(self, token: Token) -> Span:
        return self._lines.whole_line((token.map or [0, 0])[0] + self._shift + 1)

    def _passage(self, token: Token) -> Iterator[Piece]:
        span = self._block_span(token)
        word, _, rest = token.info.strip().partition(" ")
        named = tuple(name.strip() for name in rest.split(",") if name.strip())
        if word != "sizes":
            mend = did_you_mean(word, ("sizes",), "Write “::: sizes A, B”.")
            self._findings.append(UNKNOWN_BLOCK.at(span, f"“::: {word}” is no passage the tool knows.", mend))
        elif not named:
            message = "“::: sizes” names no size."
            self._findings.append(UNKNOWN_SIZE.at(span, message, f"Name some of: {', '.join(self._sizes)}."))
        else:
            self._judge_sizes(named, span)
        end = (token.map or [0, 0])[1] + self._shift
        if end >= len(self._lines.lines) or not self._lines.lines[end].lstrip().startswith(":::"):
            message = f"“::: {token.info.strip()}” is never closed."
            self._findings.append(UNCLOSED.at(span, message, "Close the passage with a line “:::”."))
        within = self._open[-1] if self._open else self._sizes
        self._open.append(tuple(name for name in within if name in named))
        yield PassageOpen(span, self._open[-1])

    def _judge_sizes(self, named: Sequence[str], span: Span) -> None:
        for name in named:
            if name not in self._sizes:
                mend = did_you_mean(name, self._sizes, f"The sizes are: {', '.join(self._sizes) or 'one only'}.")
                self._findings.append(UNKNOWN_SIZE.at(span, f"“{name}” is no size of this pattern.", mend))

    def _fence(self, index: int) -> Iterator[Piece]:
        token = self._tokens[index]
        word, _, rest = token.info.strip().partition(" ")
        first, end = (number + self._shift + 1 for number in (token.map or [0, 0]))
        span = self._lines.whole_line(first)
        if end - 1 > len(self._lines.lines) or not self._lines.lines[end - 2].strip().startswith(token.markup):
            self._findings.append(UNCLOSED.at(span, f"“{token.markup}{token.info}” is never closed.", _CLOSE_FENCE))
            end += 1
        match word:
            case "grade":
                block, findings = read_grade_block(self._lines, span, first + 1, end - 1, self._sizes)
                self._findings.extend(findings)
                yield block
            case "work":
                sizes = self._within()
                lines = self._instructions.read(first + 1, end - 1, sizes)
                yield WorkBlock(span, lines, sizes, self._directions.read(lines))
            case "stitch":
                yield self._stitch(span, rest.strip(), first + 1, end - 1)
            case _:
                if meant := nearest(word, _BLOCKS):
                    message = f"“{word}” is no block the tool knows."
                    self._findings.append(UNKNOWN_BLOCK.at(span, message, f"Did you mean “{meant}”?"))
                yield Markup(rendered(self._tokens, index))

    def _stitch(self, span: Span, name: str, first: int, end: int) -> StitchBlock:
        if not name:
            message = "This stitch block has no name."
            self._findings.append(UNKNOWN_BLOCK.at(span, message, "Write “stitch Old shale” behind the backticks."))
        lines = self._instructions.read(first, end, None)
        return StitchBlock(span, Words(span, name or "unnamed"), lines, self._directions.read(lines))

    def _inline(self, token: Token) -> Iterator[Piece]:
        children = token.children or []
        for index, child in enumerate(children):
            match child.type:
                case _ if child.type == INSERT:
                    yield from self._insert(token, child)
                case "image":
                    yield from self._image(token, child)
                case "link_open":
                    yield from self._link(token, child)
                case _:
                    yield Markup(rendered(children, index))

    def _insert(self, token: Token, child: Token) -> Iterator[Piece]:
        start = self._offset(token, int(child.meta["start"]), child.content)
        if child.info == "open":
            span = self._lines.span(start, start + len(child.content))
            message = f"“{child.content}” opens a brace that is never closed in this line."
            self._findings.append(UNCLOSED.at(span, message, "Close it with “}”, or write “\\{” for a brace."))
            return
        insert = self._braces.read(start, start + len(child.content), self._within())
        if insert is not None:
            yield insert

    def _offset(self, token: Token, position: int, content: str) -> int:
        """The offset in the file of a position in the text of an inline token; markdown-it keeps lines, no columns."""
        number = (token.map or [0, 0])[0] + token.content.count("\n", 0, position)
        line_number = number + self._shift + 1
        line = self._lines.lines[line_number - 1]
        own = token.content.split("\n")[token.content.count("\n", 0, position)]
        start = line.find(own) if line.count(own) == 1 else -1
        if start >= 0:
            at = start + position - token.content.rfind("\n", 0, position) - 1
            self._searched[line_number] = at + len(content)
            return self._lines.offset(line_number, at + 1)
        # A cell of a table whose words stand in its row twice: the braces are met in reading order.
        found = line.find(content, self._searched.get(line_number, 0))
        self._searched[line_number] = found + len(content)
        return self._lines.offset(line_number, max(found, 0) + 1)

    def _image(self, token: Token, child: Token) -> Iterator[Piece]:
        span = self._find_span(token, str(child.attrs.get("src", "")))
        if not child.content.strip():
            mend = "Write what a reader should know who does not see it: ![The hat from the side](hat.svg)"
            self._findings.append(MISSING_ALT.at(span, "This picture has no words for it.", mend))
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


def _level(token: Token) -> int:
    """The title is the page's first heading, so a heading of the text is of level 2 at least."""
    return max(2, int(token.tag[1:]))


def _joined(pieces: Iterator[Piece]) -> Iterator[Piece]:
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
