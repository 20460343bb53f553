"""In: offsets into a text. Out: places a person can find: file, line and column, counted from 1."""

from bisect import bisect_right
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """A stretch of one file; `source` is the path as the person would type it, the end is exclusive."""

    source: str
    line: int
    column: int
    end_line: int
    end_column: int

    def __str__(self) -> str:
        return f"{self.source}:{self.line}:{self.column}"


class Lines:
    """The text of one file with the offsets where its lines begin, so that any slice of it can be placed."""

    def __init__(self, source: str, text: str) -> None:
        self.source = source
        self.text = text
        self.lines = text.split("\n")
        self._starts = [0]
        for line in self.lines:
            self._starts.append(self._starts[-1] + len(line) + 1)

    def offset(self, line: int, column: int) -> int:
        """The offset of a place counted from 1."""
        return self._starts[line - 1] + column - 1

    def place(self, offset: int) -> tuple[int, int]:
        """The line and column, from 1, of an offset."""
        line = min(bisect_right(self._starts, offset), len(self.lines))
        return line, offset - self._starts[line - 1] + 1

    def span(self, start: int, end: int) -> Span:
        """The span between two offsets."""
        return Span(self.source, *self.place(start), *self.place(max(start, end)))

    def text_of(self, span: Span) -> str:
        """The text of a span."""
        return self.text[self.offset(span.line, span.column) : self.offset(span.end_line, span.end_column)]

    def whole_line(self, line: int) -> Span:
        """The span of one line, from 1, without the space around it."""
        text = self.lines[line - 1]
        lead = len(text) - len(text.lstrip())
        return Span(self.source, line, lead + 1, line, max(lead, len(text.rstrip())) + 1)
