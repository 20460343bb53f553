"""In: the inline tokens of Markdown, in reading order. Out: the place in the file of any position in their text.

markdown-it keeps the lines of a token and no columns. Each line of its text is found again in the line of the file,
behind what was found there before: the cells of a table share one line.
"""

from bisect import bisect_right
from dataclasses import dataclass

from markdown_it.token import Token

from sizewright.base.place import Lines


@dataclass(frozen=True, slots=True)
class _Strip:
    """One line of a token's text: where it begins there, and the offset in the file of each of its characters."""

    start: int
    text: str
    offset: int
    bars: bool  # whether each "|" of the text is "\\|" in the file, as in the cells of a table

    def place(self, position: int) -> int:
        within = position - self.start
        return self.offset + within + (self.text.count("|", 0, within) if self.bars else 0)


class Columns:
    """Finds places in the tokens of one source; `shift` is how many lines stand before the text they were made of."""

    def __init__(self, lines: Lines, shift: int) -> None:
        self._lines = lines
        self._shift = shift
        self._found: dict[int, int] = {}
        self._strips: list[_Strip] = []
        self._starts: list[int] = []

    def enter(self, token: Token) -> None:
        """Turns to the next inline token; places are asked of it until the next is entered."""
        first, end = token.map or (0, 0)
        self._strips = []
        number, start = first + self._shift + 1, 0
        for text in token.content.split("\n"):
            strip = self._strip(number, start, text)
            # A first line of nothing but space of another kind (one pasted in, say) is no line of the text.
            while strip is None and not self._strips and number < end + self._shift:
                number += 1
                strip = self._strip(number, start, text)
            if strip is None:
                raise AssertionError(f"{text!r} is not in line {number} of {self._lines.source}")
            self._strips.append(strip)
            number, start = number + 1, start + len(text) + 1
        self._starts = [strip.start for strip in self._strips]

    def _strip(self, number: int, start: int, text: str) -> _Strip | None:
        """A line of the text; the space before it may be written otherwise in the file (tabs, quotation signs)."""
        line = self._lines.lines[min(number, len(self._lines.lines)) - 1]
        stripped = text.lstrip(" \t")
        lead = len(text) - len(stripped)
        for wanted, bars in ((stripped, False), (stripped.replace("|", "\\|"), True)):
            column = line.find(wanted, self._found.get(number, 0))
            if column >= 0:
                self._found[number] = column + len(wanted)
                return _Strip(start + lead, stripped, self._lines.offset(number, column + 1), bars)
        return None

    def offset(self, position: int) -> int:
        """The offset in the file of a position in the text of the token."""
        return self._strips[bisect_right(self._starts, position) - 1].place(position)
