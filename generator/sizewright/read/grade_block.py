"""In: the lines of a grade block or a schematic. Out: its statements; one that cannot be read is a finding."""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding
from sizewright.base.place import Lines, Span
from sizewright.read.formula import Definition
from sizewright.read.formula_parser import FormulaParser
from sizewright.read.pattern import GradeBlock, SchematicBlock
from sizewright.read.rules import UNREADABLE_FORMULA

_DEFINED = re.compile(r"(?P<name>[^\W\d]\w*)\s*=")
_UNFINISHED = (",", "+", "*", "/", "×", "÷")  # no statement ends with one of these
_BEGINS = re.compile(r"\s*(?:require\b|[^\W\d]\w*(?:\.\w+)*\s*=)")


def read_grade_block(
    lines: Lines, span: Span, first: int, end: int, sizes: tuple[str, ...]
) -> tuple[GradeBlock, tuple[Finding, ...]]:
    """The block whose lines are `first` up to `end` (from 1, end exclusive)."""
    parser = FormulaParser(lines, sizes)
    read = [(start, parser.statement(start, stop)) for start, stop in _statements(lines, first, end)]
    statements = tuple(one for _, one in read if not isinstance(one, Finding))
    findings = tuple(one for _, one in read if isinstance(one, Finding))
    names = (_DEFINED.match(lines.text, start) for start, one in read if isinstance(one, Finding))
    return GradeBlock(span, statements, frozenset(match["name"] for match in names if match)), findings


def read_schematic(
    lines: Lines, span: Span, within: tuple[int, int], names: tuple[str, ...], sizes: tuple[str, ...] | None
) -> tuple[SchematicBlock, tuple[Finding, ...]]:
    """The pieces of a schematic, written as the definitions of a grade block are; `names` are the pattern's sizes."""
    block, findings = read_grade_block(lines, span, *within, names)
    promised = [one for one in block.statements if not isinstance(one, Definition)]
    mend = "Put it into a grade block; a schematic holds pieces only, such as “body = tube(around = …, length = …)”."
    misplaced = [UNREADABLE_FORMULA.at(one.span, "A promise stands in a schematic.", mend) for one in promised]
    pieces = tuple(one for one in block.statements if isinstance(one, Definition))
    return SchematicBlock(span, pieces, sizes), (*findings, *misplaced)


def _statements(lines: Lines, first: int, end: int) -> Iterator[tuple[int, int]]:
    """The offsets of each statement: one a line; a bracket, comma or sign left open goes on in the next."""
    number = first
    while number < end:
        text = _code(lines.lines[number - 1])
        lead = _lead(text)
        last = number
        while _left_open(text) and last + 1 < end and _goes_on(lines.lines[last], lead):
            last += 1
            text += _code(lines.lines[last - 1])
        if text.strip():
            start = lines.whole_line(number)
            ending = len(_code(lines.lines[last - 1]).rstrip())
            yield lines.offset(number, start.column), lines.offset(last, ending + 1)
        number = last + 1


def _goes_on(line: str, lead: int) -> bool:
    """Whether a line can be the next of a statement left open: it says something, and begins none of its own.

    Further in than the statement began, "name = …" is an argument of its call.
    """
    return bool(line.strip()) and (_lead(line) > lead or not _BEGINS.match(line))


def _lead(line: str) -> int:
    return len(line) - len(line.lstrip())


def _code(line: str) -> str:
    return line.split("#", 1)[0]


def _left_open(text: str) -> bool:
    return text.count("(") > text.count(")") or text.rstrip().endswith(_UNFINISHED)
