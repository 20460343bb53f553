"""A count that does not fit the multiple its stitch pattern needs.

**Why it matters.** The last repeat of the round has stitches left over or too few. A reader finds out at the end of a
long round, unravels, counts again, and loses an evening or a week.

**Example.** `require cast_on fits multiple of 8`, and Toddler casts on 74 stitches.

**Instead.** `cast_on = around * stitch_gauge, nearest multiple of 8`; the finding names the two nearest counts that fit
and what each would measure.
"""

from collections.abc import Iterator
from fractions import Fraction
from math import floor

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import amount, decimal
from sizewright.base.units import LENGTH, Dimension
from sizewright.grade.graded import Graded, Promise
from sizewright.proof.gauges import gauge_behind
from sizewright.read.formula import Fit
from sizewright.read.project import Project

RULE = Rule("broken-repeat", Level.ERROR, __doc__)


def check(graded: Graded, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each promise to fit a multiple that some size breaks."""
    for promise in graded.promises:
        if isinstance(promise.statement, Fit):
            yield from _judged(graded, promise, promise.statement)


def _judged(graded: Graded, promise: Promise, statement: Fit) -> Iterator[Finding]:
    gauge = gauge_behind(graded, statement.left, promise.left.dimension)
    rows = zip(graded.sizes or ("",), promise.left.values, promise.of, promise.plus, strict=True)
    broken = [(size, count, of, plus) for size, count, of, plus in rows if (count - plus) % of or count < plus]
    if not broken:
        return
    told, fitting = [], []
    for size, count, of, plus in broken:
        who = f"{size}: " if size else ""
        told.append(f"{who}{amount(count, promise.left.dimension)}, {decimal((count - plus) % of)} left over")
        near = " or ".join(_measured(one, promise.left.dimension, gauge) for one in nearest_fits(count, of, plus))
        fitting.append(f"{who}{near}")
    needed = _multiple(broken[0][2], broken[0][3])
    message = f"“{statement.left.text}” does not fit a {needed}. {'; '.join(told)}."
    mend = f"The nearest that fit: {'; '.join(fitting)}."
    yield RULE.at(statement.span, message, mend, tuple(size for size, *_ in broken if size))


def _multiple(of: Fraction, plus: Fraction) -> str:
    return f"multiple of {decimal(of)}" + (f" plus {decimal(plus)}" if plus else "")


def nearest_fits(count: Fraction, of: Fraction, plus: Fraction) -> tuple[Fraction, ...]:
    """The counts next to `count`, below and above, that are a multiple of `of` plus `plus` with one repeat at least."""
    below = floor((count - plus) / of) * of + plus
    return tuple(dict.fromkeys(max(one, of + plus) for one in (below, below + of)))


def _measured(count: Fraction, dimension: Dimension, gauge: Fraction | None) -> str:
    shown = amount(count, dimension)
    return f"{shown} ({amount(count / gauge, LENGTH)})" if gauge else shown
