"""In: rows and the needles before them. Out: the same rows stitch by stitch: what each was worked as, and into what.

The engine works on runs, so that a wide piece costs no more than a narrow one. A chart and a picture need the single
stitches of a few rows: the recorder works those rows in the same way, one by one, and writes them down.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from sizewright.base.place import Span
from sizewright.read.notation.direction_tree import Row
from sizewright.read.notation.stitches import STITCHES
from sizewright.read.notation.tree import (
    Across,
    Action,
    Add,
    BindOff,
    Drop,
    Hold,
    IntoOne,
    PassOver,
    Repeat,
    Turning,
    Work,
)
from sizewright.work.counts import Counts
from sizewright.work.needle import FLIP, PLAIN, Needle
from sizewright.work.row_parts import row_parts
from sizewright.work.row_work import RowWork
from sizewright.work.runs import Run
from sizewright.work.trial import fresh_needle

_TERMS = {spelling: stitch.term for stitch in STITCHES for spelling in stitch.spellings}
_PASSED = {1: "psso", 2: "p2sso"}
# What takes stitches off the needle and leaves none, and what brings new ones.
BOUND_OFF, DROPPED, HELD, ADDED = "bind off", "drop", "hold", "cast on"


@dataclass(frozen=True, slots=True)
class Cell:
    """One stitch as it was worked: the stitches it took from the row below and those it left.

    `term` is the trade's word for what was done, on the side that faced the knitter, and `manner` how ("wyif"); `looks`
    is one letter for each stitch it left, as seen from the right side; `colour` names the yarn that is seen ("" where
    none was named).
    """

    term: str
    uses: int
    looks: str
    colour: str = ""
    manner: str = ""

    @property
    def makes(self) -> int:
        """The stitches it left."""
        return len(self.looks)


@dataclass(frozen=True, slots=True)
class RecordedRow:
    """One row in working order. `skipped` stitches lay behind where it begins; what is left over lies ahead.

    `written` is the row it was worked from, of which it may be a part only.
    """

    label: str
    number: int
    wrong_side: bool
    in_the_round: bool
    before: int
    after: int
    skipped: int
    cells: tuple[Cell, ...]
    written: Row

    @property
    def left(self) -> int:
        """The stitches not worked, where the work was turned before the end of the row."""
        return self.before - self.skipped - sum(cell.uses for cell in self.cells)


class Recording:
    """Works rows one after the other on a needle and keeps them; the needle ends as it would without."""

    def __init__(self, needle: Needle, counts: Counts) -> None:
        self._needle = needle
        self._counts = counts
        self._colours = [""] * len(needle.left)
        self._behind = [""] * len(needle.behind)
        self.rows: list[RecordedRow] = []

    @property
    def follows(self) -> bool:
        """Whether the needle is as the last row left it, and not laid anew by a count that was only declared."""
        return (len(self._needle.left), len(self._needle.behind)) == (len(self._colours), len(self._behind))

    def row(self, row: Row) -> None:
        """Works a row, one after the other the parts it is turned into. Raises `Stopped`."""
        for number, part in enumerate(row_parts(row.actions, self._counts)):
            self._part(row, part, turned=number > 0)

    def _part(self, row: Row, actions: Sequence[Action], *, turned: bool) -> None:
        needle = self._needle
        before, skipped, wrong = needle.total, len(needle.behind), needle.wrong_side
        in_the_round = bool(needle.in_the_round)
        recorder = _Recorder(needle, self._counts, row.label, row.span, self._colours)
        recorder.work(actions, turned=turned)
        if recorder.beside:
            return  # a row goes on along an edge that no picture shows: what is recorded ends here
        made = [cell.colour for cell in recorder.cells for _ in cell.looks]
        rest = self._colours[sum(cell.uses for cell in recorder.cells) :]
        if recorder.idle:
            self._colours = rest
            return
        self._colours, self._behind = recorder.arranged(self._behind, made, rest)
        if recorder.turned is Turning.DOUBLE:
            self._doubled(in_the_round)
        number = row.numbers.listed[0] if row.numbers.listed else 0
        recorded = RecordedRow(
            row.label, number, wrong, in_the_round, before, needle.total, skipped, tuple(recorder.cells), row
        )
        self.rows.append(recorded)

    def _doubled(self, in_the_round: bool) -> None:  # noqa: FBT001 -- one of two ways round
        """The first stitch behind the turn is slipped."""
        if in_the_round:
            self._colours = self._colours[1:] + self._colours[:1]
        else:
            self._behind, self._colours = self._behind + self._colours[:1], self._colours[1:]


class _Recorder(RowWork):
    """Works one row as `RowWork` does, stitch by stitch; `colours` are those of the stitches on the left needle."""

    def __init__(self, needle: Needle, counts: Counts, label: str, span: Span, colours: Sequence[str]) -> None:
        super().__init__(needle, counts, label, span)
        self._colours = colours
        self.cells: list[Cell] = []

    def one(self, action: Action) -> None:
        """Works one action and writes down what leaves the needle or comes onto it; stitches have their own way."""
        start, given = self.at, len(self.right)
        super().one(action)
        match action:
            case BindOff():
                self.cells.extend(self._each(BOUND_OFF, self.at - start))
            case Drop():
                self.cells.extend(self._each(DROPPED, self.at - start))
            case Hold():
                self.cells.extend(self._each(HELD, self.at - start))
                self._held(given - len(self.right))
            case Across():
                looks, uses = self.right[given:], 0 if self.at == start else 1
                self.cells.extend(Cell(action.stitch.term, uses, chr(look), self.colour) for look in looks)
            case Add():
                self.cells.extend(Cell(ADDED, 0, chr(look), self.colour) for look in self.right[given:])
            case _:
                pass

    def _held(self, count: int) -> None:
        """So many of the stitches worked last are on a holder."""
        for place in range(len(self.cells) - 1, -1, -1):
            if count <= 0:
                return
            cell = self.cells[place]
            count -= cell.makes
            looks = cell.looks[: max(0, -count)]
            self.cells[place] = replace(cell, term=cell.term if looks else HELD, looks=looks)

    def _each(self, term: str, count: int) -> Iterator[Cell]:
        return (Cell(term, 1, "", self.colour) for _ in range(count))

    def stitches(self, action: Work) -> None:
        """A stitch so many times, or up to a place."""
        start, given = self.at, len(self.right)
        super().stitches(action)
        stitch, looks = action.stitch, self.right[given:].decode()
        times = len(looks) // stitch.makes if stitch.makes else (self.at - start) // max(1, stitch.uses)
        for place in range(times):
            mine = looks[place * stitch.makes : (place + 1) * stitch.makes]
            colour = action.colour or self.colour
            if stitch.term == "sl":
                colour = self._colours[start + place]
            self.cells.append(Cell(stitch.term, stitch.uses, mine, colour, action.manner))

    def into_one(self, action: IntoOne) -> None:
        """Several stitches worked into one are one thing to do."""
        given = len(self.right)
        super().into_one(action)
        term = f"({', '.join(_spelled(action.actions))}) in {'double yo' if action.double else '1 st'}"
        self.cells.append(Cell(term, action.uses, self.right[given:].decode(), self.colour))

    def pass_over(self, action: PassOver) -> None:
        """The slipped stitches, what was worked behind them and the passing over are one thing to do."""
        super().pass_over(action)
        merged: list[Cell] = []
        while sum(cell.makes for cell in merged) < action.slipped + action.over:
            merged.insert(0, self.cells.pop())
        left = sum(cell.makes for cell in merged) - action.slipped
        words = [*_counted(cell.term for cell in merged), _PASSED.get(action.slipped, "psso")]
        term = _TERMS.get("-".join(words), ", ".join(words))
        looks = self.right[len(self.right) - left :].decode()
        self.cells.append(Cell(term, sum(cell.uses for cell in merged), looks, merged[-1].colour))

    def work_as(self, span: Span, count: int, manner: bytes) -> None:
        """Stitches worked as those below tell are knitted or purled in the end."""
        given = len(self.right)
        super().work_as(span, count, manner)
        faces = self.right[given:].translate(PLAIN)
        worked = faces.translate(FLIP) if self.needle.wrong_side else faces
        pairs = zip(worked.decode(), self.right[given:].decode(), strict=True)
        self.cells.extend(Cell(term, 1, look, self.colour) for term, look in pairs)

    def many(self, action: Repeat, run: Run, times: int) -> None:  # noqa: ARG002 -- the same call as in what it stands for
        """The stretch of a repeat, each time by itself."""
        for _ in range(times):
            self.all(action.actions)


def _counted(terms: Iterator[str]) -> list[str]:
    """ "sl", "k", "k" are "sl1", "k2"; a term that ends in words of its own stays as it is."""
    counted = {stitch.term for stitch in STITCHES if stitch.counted}
    found = []
    for term, alike in groupby(terms):
        count = len(list(alike))
        found.extend([f"{term}{count}"] if term in counted else [term] * count)
    return found


def _spelled(actions: Sequence[Action]) -> Iterator[str]:
    for action in actions:
        match action:
            case Work(stitch=stitch, count=count):
                number = 1 if count is None else count.value
                many = stitch.counted and isinstance(number, int) and (number > 1 or stitch.term in ("k", "p"))
                yield f"{stitch.term}{number}" if many else stitch.term
            case Repeat():
                yield f"[{', '.join(_spelled(action.actions))}]"
            case _:
                pass


def recorded(rows: Sequence[Row], width: int, counts: Counts, times: int = 1) -> tuple[RecordedRow, ...]:
    """The rows of a stitch pattern over so many stitches, so many times. Raises `Stopped`."""
    needle = fresh_needle(rows, width)
    recording = Recording(needle, counts)
    for _ in range(times):
        for row in rows:
            if row.side is not None and not needle.in_the_round and not recording.rows:
                needle.wrong_side = row.side.value == "WS"
            recording.row(row)
    return tuple(recording.rows)
