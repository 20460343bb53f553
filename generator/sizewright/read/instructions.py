"""In: the lines of a work or stitch block. Out: the words as typed, with the numbers among them as nodes."""

import re
from collections.abc import Iterator
from fractions import Fraction

from sizewright.base.finding import Finding
from sizewright.base.place import Lines
from sizewright.read.braces import BraceReader
from sizewright.read.inserts import joined
from sizewright.read.pattern import InstructionLine, LinePiece, TypedList
from sizewright.read.rules import UNCLOSED
from sizewright.read.typed_numbers import exact, wrong_list_length

_NUMBER = r"\d+ \d+/0*[1-9]\d*|(?:\d+[ ]?)?[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|\d+\.\d+|\d+"
_NOTHING = r"[-–—]"
_VALUE = rf"(?:{_NUMBER}|{_NOTHING})"
# "8 (9, 10)", "K8 (9, 10)": a number, then numbers alone in round brackets. "Row 1 (RS)" and "(88 sts)" are none.
TYPED_LIST = re.compile(
    rf"(?<![\d.])(?P<first>{_VALUE})\s*(?:(?P<round>\()|\[)"
    rf"(?P<rest>\s*{_VALUE}\s*(?:[,:;]\s*{_VALUE}\s*)*)(?(round)\)|\])"
)
_LONGEST = 12  # figures; a longer number is no count of anything knitted
_EVERY_VALUE = re.compile(_VALUE)
# What a line does to the count that cannot be carried out, said by the designer and not printed.
_DECLARED = re.compile(r"\s+#\s*declared:\s*", re.IGNORECASE)
_OPENING = re.compile(r"\\[{}]|\{")


class InstructionReader:
    """Reads the instruction lines of one source."""

    def __init__(self, lines: Lines, braces: BraceReader, sizes: tuple[str, ...]) -> None:
        self._lines = lines
        self._braces = braces
        self._sizes = sizes
        self._within: tuple[str, ...] | None = None
        self.findings: list[Finding] = []

    def read(self, first: int, end: int, within: tuple[str, ...] | None) -> tuple[InstructionLine, ...]:
        """The lines of the source from `first` up to `end` (from 1, end exclusive); empty lines are left out.

        `within` are the sizes of the passage around them, None outside one.
        """
        self._within = within
        return tuple(self._line(number) for number in range(first, end) if self._lines.lines[number - 1].strip())

    def _line(self, number: int) -> InstructionLine:
        span = self._lines.whole_line(number)
        start, end = (self._lines.offset(number, column) for column in (span.column, span.end_column))
        declared = _DECLARED.search(self._lines.text, start, end)
        if declared is None:
            return InstructionLine(span, joined(self._pieces(start, end)))
        said = joined(self._pieces(start, declared.start()))
        return InstructionLine(span, said, joined(self._pieces(declared.end(), end)))

    def _pieces(self, start: int, end: int) -> Iterator[LinePiece]:
        """The pieces between two offsets: words, `{...}` and typed lists."""
        at = start
        while opening := _OPENING.search(self._lines.text, at, end):
            yield from self._words(at, opening.start())
            if opening.group() != "{":
                yield opening.group()[1]
                at = opening.end()
                continue
            close = self._lines.text.find("}", opening.end(), end)
            if close < 0:
                span = self._lines.span(opening.start(), end)
                self.findings.append(UNCLOSED.at(span, "“{” is never closed in this line.", "Close it with “}”."))
                at = opening.start()
                break
            insert = self._braces.read(opening.start(), close + 1, self._within)
            yield insert if insert is not None else self._lines.text[opening.start() : close + 1]
            at = close + 1
        yield from self._words(at, end)

    def _words(self, start: int, end: int) -> Iterator[LinePiece]:
        """Words between two offsets, with the bracket lists typed among them."""
        at = start
        for match in TYPED_LIST.finditer(self._lines.text, start, end):
            values = (match["first"], *_EVERY_VALUE.findall(match["rest"]))
            span = self._lines.span(match.start(), match.end())
            if max(len(value) for value in values) > _LONGEST:
                continue
            by_size = self._by_size(tuple(_value(value) for value in values))
            if by_size is None:
                self.findings.append(wrong_list_length(span, match.group(), len(values), self._sizes))
            yield self._lines.text[at : match.start()]
            yield TypedList(span, match.group(), by_size or (), self._within)
            at = match.end()
        yield self._lines.text[at:end]

    def _by_size(self, values: tuple[Fraction | None, ...]) -> tuple[Fraction | None, ...] | None:
        """The values, one a size of the pattern; a list in a passage may answer to the sizes of the passage alone."""
        if len(values) == len(self._sizes):
            return values
        if self._within is None or len(values) != len(self._within):
            return None
        typed = dict(zip(self._within, values, strict=True))
        return tuple(typed.get(size) for size in self._sizes)


def _value(text: str) -> Fraction | None:
    return None if re.fullmatch(_NOTHING, text) else exact(text)
