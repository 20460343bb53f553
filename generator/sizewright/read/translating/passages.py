"""In: the tokens of a body. Out: its passages, the blocks of text that are translated one by one.

A passage is a heading, a paragraph, a list, a table, a quotation. What holds a block of the tool or a passage for some
sizes is no passage; those within it are.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markdown_it.token import Token

from sizewright.base.place import Lines, Span
from sizewright.read.blocks import BLOCKS
from sizewright.read.markdown import PASSAGE_CLOSE, PASSAGE_OPEN

_SPACED = re.compile(r"\s*")
_QUOTED = re.compile(r"[>\s]*")
_BRACES = re.compile(r"(?<!\\)\{[^{}]*\}")


@dataclass(frozen=True, slots=True)
class Passage:
    """A passage: its words as typed, where they stand, and which tokens it is, the end exclusive."""

    span: Span
    text: str
    first: int
    end: int
    heading: bool


def passages(lines: Lines, shift: int, tokens: Sequence[Token]) -> tuple[Passage, ...]:
    """The passages in reading order; `shift` are the lines before the text that the tokens are of."""
    found = _cut(tokens, 0, len(tokens))
    return tuple(_passage(lines, shift, tokens, (first, end), quoted) for first, end, quoted in found)


def _cut(tokens: Sequence[Token], first: int, end: int, quoted: int = 0) -> Iterator[tuple[int, int, int]]:
    """The stretches of tokens that are passages, each with the quotations it stands in."""
    at = first
    while at < end:
        token = tokens[at]
        behind = _behind(tokens, at)
        inside = quoted + (token.type == "blockquote_open")
        if _holds(tokens[at:behind], quoted):
            yield from _cut(tokens, at + 1, behind - 1, inside)
        elif _said(tokens[at:behind]):
            yield at, behind, quoted
        at = behind


def _behind(tokens: Sequence[Token], at: int) -> int:
    """The token behind a block and all that it holds."""
    depth = 0
    for number in range(at, len(tokens)):
        depth += tokens[number].nesting
        if depth == 0:
            return number + 1
    return len(tokens)


def is_block(token: Token) -> bool:
    """Whether a token is a block of the tool, where it does not stand in a quotation."""
    return token.type == "fence" and token.info.strip().partition(" ")[0] in BLOCKS


def _holds(tokens: Sequence[Token], quoted: int) -> bool:
    """Whether some tokens hold what is read for itself."""
    for token in tokens:
        quoted += {"blockquote_open": 1, "blockquote_close": -1}.get(token.type, 0)
        if token.type in (PASSAGE_OPEN, PASSAGE_CLOSE) or (is_block(token) and not quoted):
            return True
    return False


def _said(tokens: Sequence[Token]) -> bool:
    """Whether a reader finds words there that could be told otherwise."""
    return any(re.search(r"[^\W\d_]", _BRACES.sub("", token.content)) for token in tokens)


def _passage(lines: Lines, shift: int, tokens: Sequence[Token], stretch: tuple[int, int], quoted: int) -> Passage:
    first, end = stretch
    start, behind = tokens[first].map or (0, 1)
    written = lines.lines[start + shift : behind + shift]
    while len(written) > 1 and not written[-1].strip(" \t>"):
        written.pop()
    number = start + shift + 1
    span = lines.whole_line(number)
    last = lines.whole_line(number + len(written) - 1)
    whole = Span(span.source, span.line, span.column, last.end_line, last.end_column, span.home)
    return Passage(
        whole, _set_out(written, _QUOTED if quoted else _SPACED), first, end, tokens[first].type == "heading_open"
    )


def _set_out(written: Sequence[str], before: re.Pattern[str]) -> str:
    """The lines without what all of them have before them: space, or the signs of the quotation they stand in."""
    leads = [before.match(line) for line in written if line.strip()]
    found = [lead.group() for lead in leads if lead is not None]
    shared = min(found, key=len, default="")
    while shared and not all(lead.startswith(shared) for lead in found):
        shared = shared[:-1]
    return "\n".join(line.removeprefix(shared) for line in written)
