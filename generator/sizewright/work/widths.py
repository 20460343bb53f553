"""In: the rows of a stitch pattern. Out: every count of stitches over which they can be worked again and again.

The rows themselves are the judge: they are worked over one stitch, two, three, until a count fits. From there on
nothing need be tried. In each row the first stretch that goes to the end, or to so many stitches before it, takes up
all stitches that a wider piece has more: it comes out if they are whole repeats, and hands on as many more to the next
row as those repeats leave. So the next count that fits is the first for which every row has whole repeats more and the
last hands on what the first was given, and all others follow in the same steps. Where a row looks at more than the
count (at markers, at stitches turned back from), each count is tried.
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction

from sizewright.read.notation.direction_tree import Row
from sizewright.read.notation.tree import Across, Evenly, Follow, Landmark, Mark, Panel, Place, Repeat, Work
from sizewright.work.counts import Counts
from sizewright.work.row_parts import DOUBLING, row_parts
from sizewright.work.row_work import RowWork
from sizewright.work.runs import Run
from sizewright.work.trial import fresh_needle, totals

WIDEST = 480  # stitches tried; a repeat wider than a third of it is no stitch pattern anybody printed
_ROWS_TRIED = 150_000  # rows worked in all: nobody prints a pattern of so many that this cuts the counts short
_END = Place(Landmark.END)

# What the stretch of a row takes and leaves in one repeat; None where the row has no such stretch.
_Stretch = tuple[int, int] | None


class Tried:
    """The stitches behind each row, begun over a width; each width is tried once, when it is asked for."""

    def __init__(self, rows: Sequence[Row], counts: Counts) -> None:
        self.rows = rows
        self.counts = counts
        self._found: dict[int, tuple[int, ...]] = {}
        self.widest = max(2, min(WIDEST, _ROWS_TRIED // max(1, len(rows))))

    def __getitem__(self, width: int) -> tuple[int, ...]:
        if width not in self._found:
            self._found[width] = totals(self.rows, width, self.counts)
        return self._found[width]

    def fits(self, width: int) -> bool:
        """Whether all rows can be worked over so many stitches, and leave as many."""
        after = self[width]
        return len(after) == len(self.rows) and after[-1] == width


def fitting(tried: Tried) -> tuple[int, ...]:
    """The counts, up to a wide piece, over which the rows can be worked and worked again."""
    least = next(filter(tried.fits, range(1, tried.widest)), None)
    if least is None:
        return ()
    stretches = _stretches(tried.rows, least, tried.counts)
    if stretches is None:
        return tuple(filter(tried.fits, range(least, tried.widest)))
    step = _step(stretches)
    return tuple(range(least, WIDEST, step)) if step else (least,)


def _stretches(rows: Sequence[Row], width: int, counts: Counts) -> tuple[_Stretch, ...] | None:
    """What each row's stretch to the end takes and leaves; None where more than the count decides."""
    needle = fresh_needle(rows, width)
    found: list[_Stretch] = []
    for row in rows:
        parts = row_parts(row.actions, counts)
        watched = _Watched(needle, counts, row.label, row.span)
        watched.work(parts[0])
        if len(parts) > 1 or watched.turned or not watched.by_count:
            return None
        found.append(watched.stretch)
    return tuple(found)


def _step(stretches: Iterable[_Stretch]) -> int:
    """The stitches from one count that fits to the next; 0 where no other fits."""
    step, more = 1, Fraction(1)  # `more` of each stitch that the first row has more come to this one
    for stretch in stretches:
        if stretch is None:
            return 0
        uses, makes = stretch
        step *= (step * more / uses).denominator
        more *= Fraction(makes, uses)
    return step if more == 1 else 0


class _Watched(RowWork):
    """Works one row and keeps what its first stretch to the end takes and leaves."""

    stretch: _Stretch = None
    by_count = True

    def goes_to(self, place: Place, uses: int, makes: int) -> None:
        """A stretch goes to a place."""
        if place.landmark is not Landmark.END:
            self.by_count = False
        elif self.stretch is None:
            self.stretch = uses, makes

    def stitches(self, action: Work) -> None:
        """A stitch so many times, or up to a place."""
        if action.place is not None:
            self.goes_to(action.place, action.stitch.uses, action.stitch.makes)
        self.by_count = self.by_count and action.stitch.term != DOUBLING
        super().stitches(action)

    def follow(self, action: Follow) -> None:
        """Stitches worked as those below tell."""
        if action.count is None:
            self.goes_to(action.place or _END, 1, 1)
        super().follow(action)

    def repeat_to(self, action: Repeat, run: Run, place: Place) -> None:
        """Repeats up to a place, all alike."""
        self.goes_to(place, run.uses, len(run.looks))
        super().repeat_to(action, run, place)

    def repeat_each(self, action: Repeat, place: Place) -> None:
        """Repeats that look at the needle."""
        self.by_count = False
        super().repeat_each(action, place)

    def mark(self, action: Mark) -> None:
        """A marker is placed, slipped or removed."""
        self.by_count = False
        super().mark(action)

    def across(self, action: Across) -> None:
        """Stitches from a holder."""
        self.by_count = False
        super().across(action)

    def panel(self, action: Panel) -> None:
        """Another stitch pattern over a part of the row."""
        self.by_count = False
        super().panel(action)

    def evenly(self, action: Evenly) -> None:
        """Shaping spread over the row."""
        self.by_count = False
        super().evenly(action)
