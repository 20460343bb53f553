"""A count of stitches, rows or times below zero, where a reader would read it.

**Why it matters.** It means the shaping does not fit into that size; the printed row would be nonsense.

**Example.** `slow = section / 1 st - 12`, printed as `{slow:times}` in a size of ten stitches a section.

**Instead.** Mend the formula for the small sizes, for example with `max(0, …)`, or give them a passage of their own.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.counting import first_printed
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("negative-count", Level.ERROR, __doc__)
_MEND = "Mend the formula for these sizes, or give them a passage of their own."


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding where each such count is first printed, for the sizes that read it there."""
    for insert, shown, sizes in first_printed(worked, lambda count: count < 0):
        message = f"“{insert.formula.text}” is below zero: {shown}."
        yield RULE.at(insert.span, message, _MEND, sizes)
