"""In: a direction or a row of a pattern, and a size. Out: its label, words and count as plain text of that size.

The words are those of the line in the page where they have it to themselves; else the row in house style.
"""

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from markupsafe import Markup, escape

from sizewright.base.language import in_english, named
from sizewright.base.printing import printed as printed_number
from sizewright.base.spoken_units import figures_typed
from sizewright.grade.graded import Graded
from sizewright.proof.said_in_size import series_in
from sizewright.publish.plan_words import as_said
from sizewright.publish.spaced_in_size import spaced_in_size
from sizewright.publish.told_lines import ToldLines
from sizewright.publish.view import Line as LineView
from sizewright.publish.view_explained import WHOLE, Explained
from sizewright.publish.view_lines import line_view, printed_view
from sizewright.publish.view_words import WordsView
from sizewright.read.inserts import Insert, LinePiece, TypedList
from sizewright.read.notation.direction_tree import Declared, Direction, Row
from sizewright.read.notation.phrasing import told_or_english
from sizewright.read.notation.printed import line_of
from sizewright.read.notation.printed_actions import printed_actions
from sizewright.read.notation.printed_pieces import behind_label
from sizewright.read.notation.printed_rows import Line, row_line, row_word
from sizewright.read.pattern import Clause, InstructionLine, StitchBlock, WorkBlock
from sizewright.work.course import Pass

# Around what is told twice, in both unit systems or in the terms of both countries, so that a page can show one of
# them: of a plane of Unicode that no writing uses.
METRIC_FIRST, IMPERIAL_FIRST, BETWEEN, BEHIND, US_FIRST = "\ue000", "\ue001", "\ue002", "\ue003", "\ue004"
SIGNS = (METRIC_FIRST, IMPERIAL_FIRST, BETWEEN, BEHIND, US_FIRST)

_TERMS = re.compile(r'<span class="us">(.*?)</span><span class="uk">(.*?)</span>')

# What the engine calls rows that stand nowhere by themselves: those of a fabric, and shaping told by its place.
_UNWRITTEN = ("these rows", "this row")


@dataclass(frozen=True, slots=True)
class Said:
    """ "Rnd 1:", the words, and the count promised behind them; what is not there is ""."""

    label: str
    words: str
    count: str = ""


class RowWords:
    """Finds the words of directions and rows."""

    def __init__(self, graded: Graded, terms: WordsView, *, metric_first: bool) -> None:
        self._graded = graded
        self._terms = terms
        self._metric_first = metric_first
        blocks = [piece for piece in graded.pattern.body if isinstance(piece, WorkBlock | StitchBlock)]
        self._told = ToldLines.of(graded.pattern)
        self._lines = {line.span.line: line for block in blocks for line in self._told.whole(block.lines)}
        self._begins = dict(_beginnings(blocks, self._lines))
        directions = [one for block in blocks for one in block.directions]
        self._patterns = {
            one.span: block.name.text for block in blocks if isinstance(block, StitchBlock) for one in block.directions
        }
        works = [block for block in blocks if isinstance(block, WorkBlock)]
        self._sharing = Counter(self._begins.get(one.span.line, one.span.line) for one in directions)
        saying = {one.span.line for one in directions}
        self._silent = [[line for line in block.lines if line.span.line not in saying] for block in works]
        self._found: dict[tuple[int, int, int], Said] = {}
        self._translations: dict[tuple[int, tuple[LinePiece, ...]], Line | None] = {}

    def together(self, directions: Sequence[Direction], size: int) -> Said | None:
        """The line that these directions have to themselves, None where it tells of more."""
        line = self._lines.get(directions[0].span.line)
        if line is None or self._sharing[line.span.line] != len(directions):
            return None
        return self._line(line, size)

    def silent(self, block: int, behind: int, before: int, size: int) -> Iterator[Said]:
        """The lines of a block of instructions, from 0, that change no stitch ("Cut yarn."), between two lines.

        In another language a line that another goes on with says it all, and that other nothing.
        """
        for line in self._silent[block]:
            if behind < line.span.line < before:
                begins = self._begins[line.span.line]
                alone = self._sharing[begins] < 2
                if alone and begins != line.span.line:
                    yield Said("", "")
                else:
                    yield self._line(self._lines[begins] if alone else line, size)

    def direction(self, direction: Direction, size: int) -> Said:
        """The words of one direction."""
        alone = self.together((direction,), size)
        return self._labelled(alone or self._by_itself(direction, size), direction)

    def _by_itself(self, direction: Direction, size: int) -> Said:
        """The words of a direction that has no line to itself; as English where they cannot be told otherwise."""
        if isinstance(direction, Declared):
            return self._said(direction.words, size)
        own = spaced_in_size(direction, self._graded.inserts, size)
        return self._printed(told_or_english(lambda: line_of(own)), size)

    def row(self, worked: Pass, within: Direction, size: int) -> Said:
        """The words of a row that a direction works; one that is written nowhere is told by its stitches."""
        row = worked.row
        if row.label in _UNWRITTEN and not isinstance(within, Row):
            return Said(f"{row_word(in_the_round=worked.in_the_round)}:", self._actions(row, size))
        if row.like is not None:
            return Said(self._label(row), self._actions(row, size))
        key = (id(row), row.numbers.first, size)
        if key not in self._found:
            self._found[key] = replace(self.direction(replace(row, promise=None), size), count="")
        return self._found[key]

    def pattern(self, worked: Pass) -> str:
        """The stitch pattern that a row stands in, "" for any other."""
        return named(self._patterns.get(worked.row.span, ""))

    def _actions(self, row: Row, size: int) -> str:
        words = told_or_english(lambda: behind_label(printed_actions(row.actions)))
        return self._printed(Line((), (*words, ".")), size).words

    def _labelled(self, said: Said, direction: Direction) -> Said:
        """A line may tell of several rows, "Rnds 1 and 5:": each is called by its own number."""
        if isinstance(direction, Row) and len(direction.numbers.listed) == 1:
            return replace(said, label=self._label(direction))
        return said

    def _label(self, row: Row) -> str:
        """The label of a row: as it is typed, in another language as it is printed."""
        if in_english():
            return f"{row.label}:"
        return self._printed(Line(told_or_english(lambda: row_line(row)).label, ()), 0).label

    def _line(self, line: InstructionLine, size: int) -> Said:
        key = (id(line), -1, size)
        if key not in self._found:
            idle = frozenset(at for one in line.clauses if self._is_idle(one, size) for at in one.places)
            said = (one for at, one in enumerate(line.pieces) if at not in idle)
            pieces = self._as_said(said, size) if line.clauses else tuple(said)
            told = self._translated(line, pieces) if pieces else None
            yarn_overs = self._told.yarn_overs.get(line.span.line, ())
            self._found[key] = self._said(pieces, size, yarn_overs) if told is None else self._printed(told, size)
        return self._found[key]

    def _translated(self, line: InstructionLine, pieces: tuple[LinePiece, ...]) -> Line | None:
        """A line of these pieces in another language, worked out once for all sizes that read them; None in English."""
        key = (id(line), pieces if line.clauses else ())
        if key not in self._translations:
            self._translations[key] = self._told.printed(replace(line, pieces=pieces, clauses=()))
        return self._translations[key]

    def _is_idle(self, clause: Clause, size: int) -> bool:
        """Whether the size has nothing to do in a part of the words of a plan."""
        values = self._graded.inserts.get(clause.number.key)
        return values is not None and not values.values[size]

    def _as_said(self, pieces: Iterable[LinePiece], size: int) -> tuple[LinePiece, ...]:
        return as_said(pieces, lambda number: self._is(1, number, size), lambda number: self._is(2, number, size))

    def _is(self, value: int, number: Insert, size: int) -> bool:
        values = self._graded.inserts.get(number.key)
        return values is not None and values.values[size] == value

    def _said(self, pieces: Iterable[LinePiece], size: int, yarn_overs: Sequence[str] = ()) -> Said:
        return _said(line_view(pieces, self._numbers(size), Explained(words=self._terms), yarn_overs))

    def _printed(self, line: Line, size: int) -> Said:
        told = replace(line, words=self._as_said(line.words, size))
        return _said(printed_view(told, self._numbers(size), Explained(words=self._terms)))

    def _numbers(self, size: int) -> Callable[[Insert | TypedList], str]:
        return lambda piece: str(escape(self._number(piece, size)))

    def _number(self, piece: Insert | TypedList, size: int) -> str:
        if isinstance(piece, TypedList):
            value = piece.values[size] if piece.values else None
            return piece.text if not piece.values else "–" if value is None else figures_typed(f"{float(value):g}")
        values = self._graded.inserts.get(piece.key)
        if values is None:  # only a refused pattern, in the preview, has numbers that could not be worked out
            return piece.formula.text
        style = piece.style.text if piece.style else None
        series = printed_number(values.values, values.dimension, style, metric_first=self._metric_first)
        told = [series_in((one,), size) for one in series]
        if len(told) == 1:
            return told[0]
        return f"{METRIC_FIRST if self._metric_first else IMPERIAL_FIRST}{BETWEEN.join(told)}{BEHIND}"


def _beginnings(
    blocks: Iterable[WorkBlock | StitchBlock], lines: Mapping[int, InstructionLine]
) -> Iterator[tuple[int, int]]:
    """Each typed line, and the one in which it begins where several are told as one."""
    for block in blocks:
        begins = 0
        for line in block.lines:
            begins = line.span.line if line.span.line in lines else begins
            yield line.span.line, begins


def _said(line: LineView) -> Said:
    return Said(_plain(line.label), _plain(line.text), _plain(line.count))


def _plain(text: Markup) -> str:
    """Text without markup; words that differ in US and UK terms stand between signs."""
    told = _TERMS.sub(rf"{US_FIRST}\1{BETWEEN}\2{BEHIND}", WHOLE.sub(r"\1", text))
    return Markup(told).unescape()  # noqa: S704 (markup of `view_words`)
