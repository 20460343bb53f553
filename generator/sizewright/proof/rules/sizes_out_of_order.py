"""Sizes whose body measurements do not grow from one to the next.

**Why it matters.** Every bracket list is read smallest first. Two sizes in the wrong order, or one mistyped
measurement, gives a reader the numbers of somebody else.

**Example.** `Toddler: {head: 48 cm}` before `Baby: {head: 43 cm}`

**Instead.** Smallest first. The first measurement of a size must never fall (an error); where another one falls, the
finding is a warning, since real bodies sometimes do.
"""

from collections.abc import Iterator
from itertools import pairwise

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.pattern import Size
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("sizes-out-of-order", Level.ERROR, __doc__)
_SOFT = Rule(RULE.name, Level.WARNING, RULE.page)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each step from a size to the next on which measurements fall."""
    for before, after in pairwise(worked.graded.pattern.header.sizes):
        falling = [name for name in before.measurements if _falls(before, after, name)]
        if not falling:
            continue
        hard = falling[0] == next(iter(before.measurements))
        told = ", ".join(
            f"{name} {before.measurements[name].typed} to {after.measurements[name].typed}" for name in falling
        )
        message = f"From “{before.name}” to “{after.name}” the size falls: {told}."
        mend = "List the sizes smallest first, or mend the measurement."
        yield (RULE if hard else _SOFT).at(after.span, message, mend, (before.name, after.name))


def _falls(before: Size, after: Size, name: str) -> bool:
    if name not in after.measurements:
        return False
    one, two = before.measurements[name].quantity, after.measurements[name].quantity
    return one.dimension == two.dimension and two.value < one.value
