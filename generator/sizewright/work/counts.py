"""In: a count among the instructions. Out: its whole number in one size."""

from fractions import Fraction

from sizewright.base.units import COUNTS, PLAIN
from sizewright.grade.graded import Graded
from sizewright.read.inserts import Insert, TypedList
from sizewright.read.notation.tree import Count
from sizewright.work.blocks import half_read, stitch_blocks
from sizewright.work.faults import NoCount, Stopped
from sizewright.work.patterns import Patterns

MOST = 99_999  # stitches, rows or times: more than any piece has


class Counts:
    """The counts of one size, and the stitch patterns its rows speak of.

    A value that is no whole number stops the row; grading or the proof says why.
    """

    def __init__(self, graded: Graded, size: int, patterns: Patterns | None = None) -> None:
        self._graded = graded
        self.size = size
        self._patterns = patterns

    @property
    def patterns(self) -> Patterns:
        """The stitch patterns that rows speak of."""
        if self._patterns is None:
            self._patterns = Patterns(stitch_blocks(self._graded), half_read(self._graded))
        return self._patterns

    def __call__(self, count: Count) -> int:
        """The number; a dash in a typed list stands for nothing. Raises `Stopped`."""
        value = count.value
        if isinstance(value, int):
            return value
        exact = self.exact(value)
        if exact is None or exact.denominator != 1 or exact < 0:
            raise Stopped(None)
        if exact > MOST:
            raise Stopped(NoCount(count.span, self.size, str(exact), too_many=True))
        return int(exact)

    def exact(self, value: Insert | TypedList) -> Fraction | None:
        """The exact value of `{...}` or of a typed list in this size; None where it has none."""
        if isinstance(value, TypedList):
            return (value.values[self.size] or Fraction(0)) if value.values else None
        values = self._graded.inserts.get(value.key)
        if values is None:
            return None
        if values.dimension not in (*COUNTS, PLAIN):
            raise Stopped(NoCount(value.span, self.size, value.formula.text))
        return values.values[self.size]
