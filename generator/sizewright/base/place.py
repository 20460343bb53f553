"""In: offsets into a text. Out: places a person can find: file, line and column, counted from 1.

A text may be put together from lines of several files. Its places are then counted in the whole, so that they keep its
order, and each knows the file and the line where it really stands (`Span.shown`).
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field, replace


@dataclass(frozen=True, slots=True)
class Home:
    """Lines of a text that is put together, from `first` on: they stand in `source`, there from line `there` on."""

    first: int
    source: str
    there: int


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """A stretch of one file; `source` is the path as the person would type it, the end is exclusive.

    `home` is where it stands in truth, in a text put together from several files.
    """

    source: str
    line: int
    column: int
    end_line: int
    end_column: int
    home: Home | None = field(default=None, compare=False, repr=False)

    @property
    def shown(self) -> "Span":
        """The place as a person finds it."""
        if self.home is None:
            return self
        shift = self.home.there - self.home.first
        return replace(self, source=self.home.source, line=self.line + shift, end_line=self.end_line + shift, home=None)

    def line_near(self, other: "Span") -> str:
        """ "line 31", with the file where that is another than that of a place nearby."""
        here, there = self.shown, other.shown
        return f"line {here.line}" if here.source == there.source else f"line {here.line} of {here.source}"

    def __str__(self) -> str:
        shown = self.shown
        return f"{shown.source}:{shown.line}:{shown.column}"


class Lines:
    """The text of one file with the offsets where its lines begin, so that any slice of it can be placed.

    `homes` are the stretches of a text that is put together, in their order; none in a text that is one file.
    """

    def __init__(self, source: str, text: str, homes: Sequence[Home] = ()) -> None:
        self.source = source
        self.text = text
        self.lines = text.split("\n")
        self._homes = tuple(homes)
        self._firsts = [home.first for home in homes]
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
        begin = self.place(start)
        return Span(self.source, *begin, *self.place(max(start, end)), home=self.home(begin[0]))

    def home(self, line: int) -> Home | None:
        """Where a line of a text that is put together stands in truth; None in a text that is one file."""
        return self._homes[max(0, bisect_right(self._firsts, line) - 1)] if self._homes else None

    def text_of(self, span: Span) -> str:
        """The text of a span."""
        return self.text[self.offset(span.line, span.column) : self.offset(span.end_line, span.end_column)]

    def whole_line(self, line: int) -> Span:
        """The span of one line, from 1, without the space around it."""
        text = self.lines[line - 1]
        lead = len(text) - len(text.lstrip())
        return Span(self.source, line, lead + 1, line, max(lead, len(text.rstrip())) + 1, self.home(line))
