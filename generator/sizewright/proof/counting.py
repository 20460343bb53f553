"""In: an insert and its values. Out: whether a reader counts by it: only whole numbers from nothing up make sense."""

from sizewright.base.printing import WHOLE_STYLES
from sizewright.base.units import COUNTS, PLAIN
from sizewright.grade.graded import Values
from sizewright.read.pattern import Insert


def counts(values: Values, insert: Insert) -> bool:
    """Stitches and rows are counted, and so is a plain number that says how often, which or how many in words."""
    how_often = insert.style is not None and insert.style.text in WHOLE_STYLES
    return values.dimension in COUNTS or (how_often and values.dimension == PLAIN)
