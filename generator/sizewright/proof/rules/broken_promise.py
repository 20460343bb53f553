"""A `require` that is not kept in some size.

**Why it matters.** A promise is what the designer knows must be true, such as eight stitches left at the crown. Where
it is broken the instructions cannot come out.

**Example.** `require crown_left = 8`, and the largest size has 9 left.

**Instead.** Mend the formula that gives the size its number; the finding says which sizes and by how much.
"""

from collections.abc import Iterator
from fractions import Fraction
from operator import eq, ge, gt, le, lt, ne

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import amount
from sizewright.base.units import PLAIN
from sizewright.grade.graded import Graded, Promise
from sizewright.proof.telling import by_size
from sizewright.read.formula import Comparison, Relation, names_in
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("broken-promise", Level.ERROR, __doc__)

_HOLDS = {
    Relation.EQUAL: eq,
    Relation.UNEQUAL: ne,
    Relation.LESS: lt,
    Relation.AT_MOST: le,
    Relation.MORE: gt,
    Relation.AT_LEAST: ge,
}


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each comparison that some size breaks."""
    yield from broken(worked.graded)


def broken(graded: Graded) -> Iterator[Finding]:
    """The same, of a pattern that need not be worked."""
    for promise in graded.promises:
        if isinstance(promise.statement, Comparison) and promise.right is not None:
            yield from _judged(graded, promise, promise.statement, promise.right.values)


def _judged(graded: Graded, promise: Promise, statement: Comparison, right: tuple[Fraction, ...]) -> Iterator[Finding]:
    holds = _HOLDS[statement.relation]
    sizes = graded.sizes or ("",)
    broken = [
        (size, left, other)
        for size, left, other in zip(sizes, promise.left.values, right, strict=True)
        if not holds(left, other)
    ]
    if not broken:
        return
    dimension = promise.left.dimension
    if dimension == PLAIN and promise.right is not None:
        dimension = promise.right.dimension
    told = by_size(
        (size, f"{amount(left, dimension)} against {amount(other, dimension)}") for size, left, other in broken
    )
    message = f"“{statement.text}” does not hold: {told}."
    meant = statement.left if names_in(statement.left.tree) or not names_in(statement.right.tree) else statement.right
    mend = f"Mend what gives “{meant.text}” its value, or the promise."
    yield RULE.at(statement.span, message, mend, tuple(size for size, _, _ in broken if size))
