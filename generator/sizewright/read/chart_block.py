"""In: the lines of a chart block. Out: its rows as directions, written from the cells; what is wrong is a finding.

The chart shows the right side, its last row on top. A row with its number at the right is worked from the right; one
with its number at the left is a wrong-side row and is worked from the left.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby, pairwise

from sizewright.base.finding import Finding
from sizewright.base.place import Lines, Span
from sizewright.read.notation.chart_signs import FRAME, KEY_LINE, NO_STITCH, Sign, given_signs, keyed_sign, worded_cell
from sizewright.read.notation.direction_tree import Numbers, Row
from sizewright.read.notation.kinds import Landmark, Side
from sizewright.read.notation.not_understood import NotUnderstood
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.notation.tree import Action, Count, Place, Repeat, Work
from sizewright.read.pattern import InstructionLine
from sizewright.read.rules import UNREADABLE_CHART

_GRID = re.compile(r"(?:(?P<left>\d{1,4})\s+)?(?P<cells>[^\d\s](?:\s*[^\d\s])*)(?:\s+(?P<right>\d{1,4}))?")
_ALWAYS_COUNTED = ("k", "p", "sl")  # "k1", but "yo"
_ROUND = re.compile(r"worked in (?:the round|rounds)", re.IGNORECASE)
_PANEL = re.compile(r"panel of \d+", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class _Cell:
    sign: str
    span: Span


@dataclass(frozen=True, slots=True)
class GridRow:
    """One row of cells, from left to right; `frame` are the cells between which the repeat stands, None without one."""

    span: Span
    number: int
    at_left: bool
    cells: tuple[_Cell, ...]
    frame: tuple[int, int] | None


class _Unreadable(Exception):  # noqa: N818 -- carries a finding, is no error of ours
    def __init__(self, span: Span, message: str, mend: str) -> None:
        super().__init__(message)
        self.finding = UNREADABLE_CHART.at(span, message, mend)


class ChartReader:
    """Reads the chart blocks of one source."""

    def __init__(self, lines: Lines, vocabulary: Vocabulary) -> None:
        self._lines = lines
        self._vocabulary = vocabulary
        self.findings: list[Finding] = []

    def read(self, span: Span, first: int, end: int) -> tuple[tuple[Row, ...], frozenset[int]]:
        """The rows that the lines `first` up to `end` draw, from the first to be worked, and the lines that draw them.

        All other lines of the block are ordinary instructions.
        """
        before = len(self.findings)
        signs, keys = self._key(span, range(first, end))
        rest = [number for number in range(first, end) if number not in keys]
        worded = {number for number in rest if self._refuse_worded(number, signs)}
        rest = [number for number in rest if number not in worded]
        drawn = {number: row for number in rest if (row := self._grid_row(number, signs)) is not None}
        words = " ".join(self._lines.lines[number - 1] for number in rest if number not in drawn)
        in_the_round, panel = _ROUND.search(words) is not None, _PANEL.search(words) is not None
        if not drawn and not worded:
            mend = "Draw its rows, the last on top: “| o / | 1”."
            self.findings.append(UNREADABLE_CHART.at(span, "This chart has no row.", mend))
        if len(self.findings) == before:
            self._judge_all(tuple(drawn.values()), in_the_round=in_the_round)
        faulty = len(self.findings) > before
        rows = () if faulty else self._rows(tuple(drawn.values()), signs, in_the_round=in_the_round, panel=panel)
        return rows, frozenset(keys) | frozenset(drawn) | worded

    def _key(self, span: Span, numbers: Sequence[int]) -> tuple[Mapping[str, Sign | None], set[int]]:
        """What each sign means, and the lines that say so."""
        signs: dict[str, Sign | None] = {NO_STITCH: None, **given_signs(span)}
        keys: set[int] = set()
        for number in numbers:
            found = KEY_LINE.fullmatch(self._lines.lines[number - 1].strip())
            if found is None:
                continue
            keys.add(number)
            line = InstructionLine(self._lines.whole_line(number), ())
            try:
                if found["sign"] in (*FRAME, NO_STITCH) or found["sign"].isdecimal():
                    raise NotUnderstood(line.span, found["sign"], "Take another sign for a stitch.")
                signs[found["sign"]] = keyed_sign(line, found["words"], self._vocabulary)
            except NotUnderstood as fault:
                signs[found["sign"]] = None
                message = f"“{fault.words}” is no stitch a sign of the chart can stand for."
                self.findings.append(UNREADABLE_CHART.at(line.span, message, fault.mend))
        return signs, keys

    def _refuse_worded(self, number: int, signs: Mapping[str, Sign | None]) -> bool:
        """Whether a line is a row of cells with a stitch typed among them, as in "| c6f | 1"; a finding says so."""
        span = self._lines.whole_line(number)
        found = worded_cell(self._lines.lines[number - 1], signs, self._vocabulary)
        if found is not None:
            message = f"“{found.words}” is typed as a cell, and a cell is one sign."
            cells = " ".join(found.sign * found.width)
            mend = f"Say “{found.sign} = {found.stitch}” in a line above the rows and write “{cells}” in this one."
            self.findings.append(UNREADABLE_CHART.at(span, message, mend))
        return found is not None

    def _grid_row(self, number: int, signs: Mapping[str, Sign | None]) -> GridRow | None:
        """The row that a line draws; None where the line is no row of cells, or a finding says what is wrong."""
        line = self._lines.lines[number - 1]
        found = _GRID.fullmatch(line.strip())
        if found is None or not _drawn(found["cells"], signs):
            return None
        span = self._lines.whole_line(number)
        cells: list[_Cell] = []
        edges: list[int] = []
        for at, sign in enumerate(found["cells"]):
            if sign in FRAME:
                edges.append(len(cells))
            elif not sign.isspace():
                offset = self._lines.offset(number, span.column) + found.start("cells") + at
                cells.append(_Cell(sign, self._lines.span(offset, offset + 1)))
        typed = found["left"] or found["right"] or "0"
        frame = (edges[0], edges[1]) if len(edges) == 2 else None
        row = GridRow(span, int(typed), found["left"] is not None, tuple(cells), frame)
        self._judge(row, found, edges, signs)
        return row

    def _judge(self, row: GridRow, found: re.Match[str], edges: list[int], signs: Mapping[str, Sign | None]) -> None:
        """What is wrong with a row by itself."""
        if (found["left"] is None) == (found["right"] is None):
            message = "This row of the chart does not say from which side it is worked."
            mend = (
                "Write its number once: at the right of a row worked from the right, at the left of a wrong-side row."
            )
            self.findings.append(UNREADABLE_CHART.at(row.span, message, mend))
        if edges and (len(edges) != 2 or edges[0] == edges[1] or found["cells"].index("[") > found["cells"].index("]")):
            mend = "Set “[” before the first cell of the repeat and “]” behind its last, once in a row."
            self.findings.append(UNREADABLE_CHART.at(row.span, "The repeat is not framed once.", mend))
        for cell in row.cells:
            if cell.sign not in signs:
                message = f"The key does not say what “{cell.sign}” stands for."
                mend = f"Add a line such as “{cell.sign} = k2tog” above the rows."
                self.findings.append(UNREADABLE_CHART.at(cell.span, message, mend))
        self._judge_widths(row, signs)

    def _judge_widths(self, row: GridRow, signs: Mapping[str, Sign | None]) -> None:
        """A sign that leaves several stitches must stand in as many cells."""
        for part in _parts(row):
            for mark, together in groupby(part, lambda cell: cell.sign):
                group, sign = tuple(together), signs.get(mark)
                if sign is not None and len(group) % sign.width:
                    times = "once" if len(group) == 1 else f"{len(group)} times"
                    message = f"“{mark}” leaves {sign.width} stitches, takes as many cells, and stands here {times}."
                    mend = f"Write “{' '.join(mark * sign.width)}” for each."
                    self.findings.append(UNREADABLE_CHART.at(group[0].span, message, mend))

    def _rows(
        self, drawn: tuple[GridRow, ...], signs: Mapping[str, Sign | None], *, in_the_round: bool, panel: bool
    ) -> tuple[Row, ...]:
        found: list[Row] = []
        for row in reversed(drawn):
            try:
                found.append(written(row, signs, in_the_round=in_the_round, panel=panel))
            except _Unreadable as fault:
                self.findings.append(fault.finding)
        return tuple(found)

    def _judge_all(self, drawn: tuple[GridRow, ...], *, in_the_round: bool) -> None:
        """What is wrong with the rows beside one another."""
        for above, below in pairwise(drawn):
            if above.number <= below.number:
                message = f"Row {above.number} stands above Row {below.number}."
                mend = "A chart is read from its bottom row upwards: the highest number stands on top."
                self.findings.append(UNREADABLE_CHART.at(above.span, message, mend))
            if len(above.cells) != len(below.cells):
                message = f"Row {above.number} has {len(above.cells)} cells and Row {below.number} {len(below.cells)}."
                mend = f"Fill the shorter one with “{NO_STITCH}”, which stands for no stitch."
                self.findings.append(UNREADABLE_CHART.at(above.span, message, mend))
        framed = [row for row in drawn if row.frame is not None]
        for row in drawn if framed else ():
            if row.frame is None:
                message = f"Row {row.number} has no frame, and other rows have."
                mend = "Set “[” and “]” around the repeat in every row."
                self.findings.append(UNREADABLE_CHART.at(row.span, message, mend))
        self._judge_sides(drawn, in_the_round=in_the_round)

    def _judge_sides(self, drawn: tuple[GridRow, ...], *, in_the_round: bool) -> None:
        for row in drawn:
            if in_the_round and row.at_left:
                message = f"Rnd {row.number} has its number at the left, and rounds are worked from the right."
                self.findings.append(UNREADABLE_CHART.at(row.span, message, "Write the number at the right."))
        for above, below in pairwise(drawn):
            if not in_the_round and above.number == below.number + 1 and above.at_left == below.at_left:
                message = f"Rows {below.number} and {above.number} are both worked from the same side."
                mend = "Write “Worked in the round.” in the block, or set the number of the wrong-side row at the left."
                self.findings.append(UNREADABLE_CHART.at(above.span, message, mend))


def _drawn(cells: str, signs: Mapping[str, Sign | None]) -> bool:
    """Whether this is a row of cells: single signs with space between, or signs of the key without."""
    run = cells.split()
    return all(len(sign) == 1 for sign in run) if len(run) > 1 else all(sign in (*signs, *FRAME) for sign in cells)


def written(row: GridRow, signs: Mapping[str, Sign | None], *, in_the_round: bool, panel: bool = False) -> Row:
    """The row as it is worked; without a frame all of it again and again, a `panel` once. Raises `_Unreadable`."""
    lead, repeat, tail = (tuple(_worked(part, signs, wrong=row.at_left)) for part in _parts(row))
    if not row.at_left:
        lead, repeat, tail = (tuple(reversed(part)) for part in (tail, repeat, lead))
    alike = {*lead, *repeat, *tail}
    spared = sum(_uses(action) for action in tail)
    place = Place(Landmark.END, Count(row.span, spared) if spared else None)
    once = panel and row.frame is None
    again = _runs(repeat) if once else (Repeat(row.span, _runs(repeat), None, place),)
    actions = (*_runs(lead), *again, *_runs(tail))
    if len(alike) == 1 and isinstance(plain := alike.pop(), Work) and plain.stitch.term in ("k", "p"):
        actions = (replace(plain, place=Place(Landmark.END)),)  # "Knit."
    side = None if in_the_round else Side.WRONG if row.at_left else Side.RIGHT
    word = f"Rnd {row.number}" if side is None else f"Row {row.number} ({'WS' if row.at_left else 'RS'})"
    return Row(row.span, word, Numbers((row.number,)), side, in_the_round, actions)


def _parts(row: GridRow) -> tuple[tuple[_Cell, ...], ...]:
    """The cells before the repeat, in it and behind it."""
    first, end = row.frame or (0, len(row.cells))
    return row.cells[:first], row.cells[first:end], row.cells[end:]


def _worked(cells: Sequence[_Cell], signs: Mapping[str, Sign | None], *, wrong: bool) -> Iterator[Action]:
    """The stitches of some cells, from left to right; one that leaves several stitches takes as many cells."""
    for mark, together in groupby(cells, lambda cell: cell.sign):
        group = tuple(together)
        sign = signs[mark]
        if sign is None:
            continue
        action = sign.wrong if wrong else sign.right
        if action is None:
            mend = f"Say it in the key: “{mark} = … on RS, … on WS”."
            raise _Unreadable(group[0].span, f"The key does not say how “{mark}” is worked on the wrong side.", mend)
        yield from (action,) * (len(group) // sign.width)


def _runs(actions: Sequence[Action]) -> tuple[Action, ...]:
    """The stitches with those that are alike counted together."""
    found: list[Action] = []
    for action, together in groupby(actions):
        count = Count(action.span, len(tuple(together)))
        told = count.value != 1 or (isinstance(action, Work) and action.stitch.term.split()[0] in _ALWAYS_COUNTED)
        if isinstance(action, Work) and action.stitch.counted and action.count is None and told:
            found.append(replace(action, count=count))
        else:
            found.append(action if count.value == 1 else Repeat(action.span, (action,), count))
    return tuple(found)


def _uses(action: Action) -> int:
    """The stitches of the row below that a stitch takes."""
    if not isinstance(action, Work):
        return 1
    times = action.count.value if action.count is not None else 1
    return action.stitch.uses * (times if isinstance(times, int) else 1)
