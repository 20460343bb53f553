"""In: a pattern carried out. Out: the cloth it makes, row upon row, as it is seen from the right side.

Only as much is worked stitch by stitch as a picture can show; the rest goes on in runs.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from sizewright.grade.graded import Graded
from sizewright.read.notation.cables import Crossing, crossing_of
from sizewright.read.notation.direction_tree import Row
from sizewright.work.blocks import stitch_blocks
from sizewright.work.counts import Counts
from sizewright.work.faults import Fault
from sizewright.work.maker import Maker
from sizewright.work.needle import Needle
from sizewright.work.recording import RecordedRow, Recording, recorded
from sizewright.work.rowing import Rowing

WIDEST, TALLEST = 48, 60  # stitches and rows of a picture: more of them are too small to be told apart
_OTHER_FACE = str.maketrans("kp", "pk")


@dataclass(frozen=True, slots=True)
class Cabled:
    """Where stitches crossed: the first of them from the left, and how, as seen from the right side."""

    start: int
    crossing: Crossing


@dataclass(frozen=True, slots=True)
class ClothRow:
    """The stitches one row made, from left to right as seen from the right side.

    `looks` is one letter a stitch (see `read/notation/stitches.py`), `colours` the name of its yarn, `stands_on` the
    place in the row below, from its left end, of what it was worked into: between two stitches for one made from none.
    """

    looks: str
    colours: tuple[str, ...]
    stands_on: tuple[float, ...]
    crossings: tuple[Cabled, ...] = ()


@dataclass(frozen=True, slots=True)
class Cloth:
    """A cloth from its lower edge up, whole or its beginning. `cast_on` stitches were there before the first row.

    `finished` where the last row shown is the last of the piece.
    """

    cast_on: int
    rows: tuple[ClothRow, ...]
    in_the_round: bool
    finished: bool

    @property
    def widest(self) -> int:
        """The stitches of its widest row."""
        return max((len(row.looks) for row in self.rows), default=0)


def woven(rows: Sequence[RecordedRow], *, finished: bool) -> Cloth:
    """The cloth of rows that were worked one after the other."""
    first = rows[0].before if rows else 0
    return Cloth(first, tuple(map(_cloth_row, rows)), any(row.in_the_round for row in rows), finished)


def _cloth_row(row: RecordedRow) -> ClothRow:
    """The stitches of a row by where they stand; those not worked, behind and ahead, stretch up to this row too."""
    looks: list[str] = []
    colours: list[str] = []
    below: list[float] = []
    crossings: list[tuple[int, Crossing]] = []
    at = 0
    for cell in (*[None] * row.skipped, *row.cells, *[None] * row.left):
        uses, made, colour = (1, "s", "") if cell is None else (cell.uses, cell.looks, cell.colour)
        crossing = crossing_of(cell.term) if cell is not None else None
        if crossing is not None:
            crossings.append((len(looks), crossing))
        below.extend(at - 0.5 + (place + 0.5) * uses / len(made) for place in range(len(made)))
        looks.extend(made)
        colours.extend([colour] * len(made))
        at += uses
    if not row.wrong_side:
        looks, colours = looks[::-1], colours[::-1]
        below = [row.before - 1 - place for place in reversed(below)]
        crossings = [(len(looks) - start - crossing.over, crossing) for start, crossing in crossings]
    cabled = tuple(Cabled(start, seen(crossing, wrong_side=row.wrong_side)) for start, crossing in crossings)
    return ClothRow("".join(looks), tuple(colours), tuple(below), cabled)


def seen(crossing: Crossing, *, wrong_side: bool) -> Crossing:
    """A crossing as the right side shows it: one worked on the wrong side has there in front what lay behind."""
    if not wrong_side:
        return crossing
    front, back, middle = (part.translate(_OTHER_FACE) for part in (crossing.back, crossing.front, crossing.middle))
    return Crossing(crossing.to_left, front, back, middle)


def pattern_cloth(rows: Sequence[Row], width: int, height: int, graded: Graded) -> Cloth:
    """The cloth of a stitch pattern over so many stitches and rows.

    Raises `Stopped` where the rows cannot be worked over that many stitches.
    """
    times = max(1, -(-height // len(rows)))
    return woven(recorded(rows, width, Counts(graded, 0), times)[:height], finished=False)


def piece_cloth(graded: Graded, size: int) -> Cloth | None:
    """The cloth of the first piece of a pattern in one size; None where it has no rows."""
    maker = Maker(graded, size, stitch_blocks(graded))
    watched = _WatchedRowing(maker.counts, maker.made.faults)
    maker.rows.work_by(watched)
    maker.make()
    rows = watched.rows
    return woven(rows, finished=not watched.more) if rows else None


class _WatchedRowing(Rowing):
    """Works rows, those of the first piece stitch by stitch up to the height of a picture."""

    def __init__(self, counts: Counts, faults: list[Fault]) -> None:
        super().__init__(counts, faults)
        self._counts_of_size = counts
        self._first: Needle | None = None
        self._recording: Recording | None = None
        self.more = False

    @property
    def rows(self) -> list[RecordedRow]:
        """The rows recorded."""
        return self._recording.rows if self._recording is not None else []

    def again(self, needle: Needle, rows: Sequence[Row], times: int) -> None:
        """The rows so many times; the first ones of the first piece are recorded."""
        if self._recording is None:
            self._first, self._recording = needle, Recording(needle, self._counts_of_size)
        recording = self._recording
        while needle is self._first and times and rows and recording.follows and len(recording.rows) < TALLEST:
            for row in rows:
                recording.row(row)
            times -= 1
        if times and needle is self._first:
            self.more = True
            self._first = None
        super().again(needle, rows, times)
