"""In: a fenced block of the text, of one of the kinds the tool knows. Out: its piece, with its directions read."""

from collections.abc import Iterable
from dataclasses import replace

from sizewright.base.finding import Finding
from sizewright.base.place import Lines, Span
from sizewright.read.braces import BraceReader
from sizewright.read.chart_block import ChartReader
from sizewright.read.grade_block import read_grade_block, read_schematic
from sizewright.read.inserts import Told
from sizewright.read.instructions import InstructionReader
from sizewright.read.notation.direction_tree import Numbers, Row
from sizewright.read.notation.directions import DirectionReader
from sizewright.read.notation.printed import printed_row
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.pattern import InstructionLine, Piece, StitchBlock, Words, WorkBlock
from sizewright.read.plan_lines import Sentences, expanded
from sizewright.read.rules import UNKNOWN_BLOCK
from sizewright.read.yarn_names import YarnNames

BLOCKS = ("grade", "work", "stitch", "chart", "schematic")


class BlockReader:
    """Reads the blocks of one source; `sizes` are those of the pattern."""

    def __init__(
        self, lines: Lines, braces: BraceReader, sizes: tuple[str, ...], stitches: Vocabulary, yarns: YarnNames
    ) -> None:
        self._lines = lines
        self._sizes = sizes
        self._instructions = InstructionReader(lines, braces, sizes)
        self._directions = DirectionReader(stitches, yarns)
        self._charts = ChartReader(lines, stitches)
        self._findings: list[Finding] = []

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What is wrong, gathered while reading."""
        return (*self._findings, *self._instructions.findings, *self._directions.findings, *self._charts.findings)

    def read(self, word: str, name: str, span: Span, within: tuple[int, int], sizes: tuple[str, ...] | None) -> Piece:
        """The block whose lines are those from the first up to the second of `within`, in a passage of these sizes."""
        if word == "grade":
            block, findings = read_grade_block(self._lines, span, *within, self._sizes)
            self._findings.extend(findings)
            return block
        if word == "schematic":
            drawn, findings = read_schematic(self._lines, span, within, self._sizes, sizes)
            self._findings.extend(findings)
            return drawn
        if word == "work":
            return WorkBlock(span, self._instructions.read(*within, sizes), sizes)
        if not name:
            message = f"This {word} block has no name."
            self._findings.append(UNKNOWN_BLOCK.at(span, message, f"Write “{word} Old shale” behind the backticks."))
        called = Words(span, name or "unnamed")
        lines = self._instructions.read(*within, None)
        return StitchBlock(span, called, lines) if word == "stitch" else self._chart(span, called, lines, within)

    def _chart(
        self, span: Span, name: Words, lines: tuple[InstructionLine, ...], within: tuple[int, int]
    ) -> StitchBlock:
        """A stitch pattern drawn as a chart, with its rows written out."""
        rows, drawn = self._charts.read(span, *within)
        said = tuple(line for line in lines if line.span.line not in drawn)
        written = tuple(InstructionLine(row.span, printed_row(row), drawn=True) for row in _joined(rows))
        return StitchBlock(span, name, (*said, *written), (*self._directions.read(said), *rows), drawn=True)

    def directed(self, piece: Piece, plans: Sentences) -> Piece:
        """A block with its directions read; the plans it names may stand in any grade block."""
        if not isinstance(piece, WorkBlock | StitchBlock) or (isinstance(piece, StitchBlock) and piece.drawn):
            return piece
        lines = expanded(piece.lines, plans, self._findings)
        return replace(piece, lines=lines, directions=self._directions.read(lines))


def _joined(rows: Iterable[Row]) -> tuple[Row, ...]:
    """The rows for print, those of the same words under one label where the first of them stands: "Rnds 1 and 3"."""
    alike: dict[Told, Row] = {}
    for row in rows:
        words = printed_row(replace(row, numbers=Numbers()))
        first = alike.get(words)
        numbers = (*(first.numbers.listed if first is not None else ()), *row.numbers.listed)
        alike[words] = replace(first or row, numbers=Numbers(numbers))
    return tuple(alike.values())
