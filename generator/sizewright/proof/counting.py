"""In: a worked pattern. Out: the counts a reader meets in it that cannot be counted, each where it is first printed."""

from collections.abc import Callable, Iterator
from fractions import Fraction

from sizewright.base.printing import WHOLE_STYLES, amount
from sizewright.base.units import COUNTS, PLAIN
from sizewright.grade.graded import Values
from sizewright.proof.telling import by_size
from sizewright.read.names_used import inserts_of
from sizewright.read.pattern import Insert
from sizewright.work.worked import Worked


def counts(values: Values, insert: Insert) -> bool:
    """Stitches and rows are counted, and so is a plain number that says how often, which or how many in words."""
    how_often = insert.style is not None and insert.style.text in WHOLE_STYLES
    return values.dimension in COUNTS or (how_often and values.dimension == PLAIN)


def first_printed(worked: Worked, wrong: Callable[[Fraction], bool]) -> Iterator[tuple[Insert, str, tuple[str, ...]]]:
    """The inserts at which a wrong count is first read, the counts in words, and the sizes that read them there."""
    told: set[tuple[str, str]] = set()
    for insert in inserts_of(worked.graded.pattern):
        values = worked.graded.inserts.get(insert.key)
        if values is None or not counts(values, insert):
            continue
        text = insert.formula.text
        read = ((size, values.values[place]) for place, size in worked.graded.read_in(insert.sizes))
        broken = [(size, value) for size, value in read if wrong(value) and (text, size) not in told]
        if broken:
            told.update((text, size) for size, _ in broken)
            shown = by_size((size, amount(value, values.dimension)) for size, value in broken)
            yield insert, shown, tuple(size for size, _ in broken if size)
