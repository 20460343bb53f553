"""A count that does not fit the multiple its stitch pattern needs.

**Why it matters.** The last repeat of the round has stitches left over or too few. A reader finds out at the end of a
long round, unravels, counts again, and loses an evening or a week.

**Example.** `require cast_on fits multiple of 8`, and Toddler casts on 74 stitches.

**Instead.** `cast_on = around * stitch_gauge, nearest multiple of 8`; the finding names the two nearest counts that fit
and what each would measure.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import floor

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import amount, decimal
from sizewright.base.units import LENGTH, STITCHES, Dimension
from sizewright.grade.graded import Graded, Promise
from sizewright.proof.gauges import gauge_behind, only_gauge
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.formula import Fit
from sizewright.read.project import Project
from sizewright.work.faults import BrokenRepeat
from sizewright.work.worked import Worked

RULE = Rule("broken-repeat", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each promise to fit a multiple that some size breaks, and each repeat that does not come out."""
    for promise in worked.graded.promises:
        if isinstance(promise.statement, Fit):
            yield from _judged(worked.graded, promise, promise.statement)
    for faults, sizes in grouped(worked, BrokenRepeat):
        yield _in_row(worked, faults, sizes)


def _in_row(worked: Worked, faults: Sequence[BrokenRepeat], sizes: tuple[str, ...]) -> Finding:
    """The finding for a repeat of a row, with the counts on the needle that would fit and what they measure."""
    told, fitting = [], []
    gauge = only_gauge(worked.graded, STITCHES)
    for one in faults:
        size = name_of(worked, one.size)
        told.append((size, f"{one.over} left over of {one.total} sts"))
        near = " or ".join(_measured(Fraction(count), STITCHES, gauge) for count in one.fitting)
        if near:
            fitting.append((size, near))
    first = faults[0]
    message = f"The repeat of {first.uses} sts in {first.label} does not come out. {by_size(told)}."
    mend = f"Counts that would fit: {by_size(fitting)}." if fitting else "Each repeat must work at least one stitch."
    return RULE.at(first.span, message, mend, sizes)


def _judged(graded: Graded, promise: Promise, statement: Fit) -> Iterator[Finding]:
    gauge = gauge_behind(graded, statement.left, promise.left.dimension)
    rows = zip(graded.sizes or ("",), promise.left.values, promise.of, promise.plus, strict=True)
    broken = [(size, count, of, plus) for size, count, of, plus in rows if (count - plus) % of or count < plus]
    if not broken:
        return
    kind = promise.left.dimension
    told = [(size, f"{amount(count, kind)}, {_rest(count, of, plus)}") for size, count, of, plus in broken]
    fitting = [
        (size, " or ".join(_measured(one, kind, gauge) for one in nearest_fits(count, of, plus)))
        for size, count, of, plus in broken
    ]
    needed = _multiple(broken[0][2], broken[0][3])
    message = f"“{statement.left.text}” does not fit a {needed}. {by_size(told)}."
    mend = f"The nearest that fit: {by_size(fitting)}."
    yield RULE.at(statement.span, message, mend, tuple(size for size, *_ in broken if size))


def _rest(count: Fraction, of: Fraction, plus: Fraction) -> str:
    over = f"{decimal((count - plus) % of)} left over"
    return over if count >= plus else f"fewer than the {decimal(plus)} beside the repeats"


def _multiple(of: Fraction, plus: Fraction) -> str:
    return f"multiple of {decimal(of)}" + (f" plus {decimal(plus)}" if plus else "")


def nearest_fits(count: Fraction, of: Fraction, plus: Fraction) -> tuple[Fraction, ...]:
    """The counts next to `count`, below and above, that are a multiple of `of` plus `plus` with one repeat at least."""
    below = floor((count - plus) / of) * of + plus
    return tuple(dict.fromkeys(max(one, of + plus) for one in (below, below + of)))


def _measured(count: Fraction, dimension: Dimension, gauge: Fraction | None) -> str:
    shown = amount(count, dimension)
    return f"{shown} ({amount(count / gauge, LENGTH)})" if gauge else shown
