"""In: a pattern's source. Out: what a reader reads of it, sign by sign in its place, all else made blank.

Rules that look for words search these texts and place what they find: an offset here is one of the source. Numbers in
braces are one sign, so that a word beside them is not taken for one beside a typed number.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from sizewright.base.place import Lines, Span
from sizewright.read.inserts import Insert, typed_piece
from sizewright.read.pattern import Header, Pattern, StitchBlock, Words, WorkBlock

INSERT = "\ufffc"  # stands for every sign of `{...}`
_BRACES = re.compile(r"(?<!\\)\{[^{}\n]*(?:\}|$)", re.M)
_ADDRESS = re.compile(r"\]\([^()\n]*\)|https?://\S+")
_PASSAGE = re.compile(r"^:::.*$", re.M)
_FENCE = re.compile(r"^[ >]*(`{3,}|~{3,})(.*)$")
_REMARK = re.compile(r"[ \t]#[ \t].*$", re.M)


@dataclass(frozen=True, slots=True)
class Wording:
    """The words of a pattern's body: running text, instructions, and both; each as long as the source."""

    lines: Lines
    prose: str
    instructions: str
    body: str

    @classmethod
    def of(cls, pattern: Pattern) -> "Wording":
        """The words of one pattern."""
        worked = frozenset(piece.span.line for piece in pattern.body if isinstance(piece, WorkBlock | StitchBlock))
        header = pattern.header.span
        return _wording(pattern.lines, header.end_line if header.end_line > header.line else 0, worked)

    def span(self, found: re.Match[str], group: int | str = 0) -> Span:
        """Where something found in one of the texts stands."""
        return self.lines.span(found.start(group), found.end(group))


@lru_cache(maxsize=4)
def _wording(lines: Lines, first: int, worked: frozenset[int]) -> Wording:
    """The words of one source, kept for the next rule that asks: behind its header, with these lines opening work."""
    blank = [" " * len(line) for line in lines.lines]
    prose, shown, body = blank.copy(), blank.copy(), blank.copy()
    prose[first:] = body[first:] = lines.lines[first:]
    for opening, closing in _fenced(lines, first):
        prose[opening - 1 : closing] = body[opening - 1 : closing] = blank[opening - 1 : closing]
        if opening in worked:
            within = slice(opening, closing - 1)
            shown[within] = body[within] = [_REMARK.sub(_blank, line) for line in lines.lines[within]]
    return Wording(lines, *(_plain("\n".join(text)) for text in (prose, shown, body)))


def header_words(header: Header) -> Iterator[Words]:
    """What a reader reads of a header in words."""
    yield from (words for words in (header.summary, *(gauge.over for gauge in header.gauges)) if words)
    for yarn in header.yarns:
        yield from (words for words in (yarn.fibre, yarn.colour, yarn.note) if words)
    yield from (Words(needle.span, needle.text) for needle in header.needles)
    yield from (*header.notions, *header.care)


def typed_here(lines: Lines, insert: Insert) -> bool:
    """Whether a number in braces stands in the source as it is, and was not put there by a plan."""
    start, end = (lines.offset(*place) for place in _ends(insert.span))
    return "".join(lines.text[start:end].split()) == "".join(typed_piece(insert).split())


def _ends(span: Span) -> tuple[tuple[int, int], tuple[int, int]]:
    return (span.line, span.column), (span.end_line, span.end_column)


def _fenced(lines: Lines, first: int) -> Iterator[tuple[int, int]]:
    """The lines that open and close each fenced block behind a line; one never closed goes on to the end."""
    opened: tuple[int, str] | None = None
    for number, line in enumerate(lines.lines[first:], start=first + 1):
        fence = _FENCE.search(line)
        if fence and opened is None:
            opened = number, fence[1]
        elif fence and opened is not None and fence[1].startswith(opened[1]) and not fence[2].strip():
            yield opened[0], number
            opened = None
    if opened is not None:
        yield opened[0], len(lines.lines) + 1


def _plain(text: str) -> str:
    text = _PASSAGE.sub(_blank, text)
    text = _BRACES.sub(lambda found: INSERT * len(found.group()), text)
    return _ADDRESS.sub(_blank, text)


def _blank(found: re.Match[str]) -> str:
    return " " * len(found.group())
