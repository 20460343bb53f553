"""In: `{formula:style}` among words. Out: the formula and the style it is printed in."""

import re

from sizewright.base.finding import Finding
from sizewright.base.nearest import did_you_mean
from sizewright.base.place import Lines
from sizewright.base.printing import STYLES
from sizewright.read.formula_parser import FormulaParser
from sizewright.read.pattern import Insert, Words
from sizewright.read.rules import UNKNOWN_STYLE

_STYLE = re.compile(r":\s*(?P<word>[^\W\d]\w*)\s*$")


class BraceReader:
    """Reads the braces of one source."""

    def __init__(self, lines: Lines, sizes: tuple[str, ...]) -> None:
        self._lines = lines
        self._parser = FormulaParser(lines, sizes)
        self.findings: list[Finding] = []

    def read(self, start: int, end: int, sizes: tuple[str, ...] | None) -> Insert | None:
        """The insert between the offset of its “{” and the one behind its “}”; None where it has a finding.

        `sizes` are those of the passage around it, None outside one.
        """
        inner_end = end - 1
        style = None
        found = _STYLE.search(self._lines.text[start + 1 : inner_end])
        if found:
            at = start + 1 + found.start("word")
            style = Words(self._lines.span(at, at + len(found["word"])), found["word"])
            inner_end = start + 1 + found.start()
        formula = self._parser.formula(start + 1, inner_end)
        if isinstance(formula, Finding):
            self.findings.append(formula)
            return None
        if style is not None and style.text not in STYLES:
            mend = did_you_mean(style.text, STYLES, f"Known styles: {', '.join(STYLES)}.")
            self.findings.append(UNKNOWN_STYLE.at(style.span, f"“{style.text}” is no style of printing.", mend))
            return None
        return Insert(self._lines.span(start, end), formula, style, sizes)
