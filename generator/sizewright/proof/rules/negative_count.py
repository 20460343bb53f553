"""A count of stitches, rows or times below zero, where a reader would read it.

**Why it matters.** It means the shaping does not fit into that size; the printed row would be nonsense.

**Example.** `slow = section / 1 st - 12`, printed as `{slow:times}` in a size of ten stitches a section.

**Instead.** Mend the formula for the small sizes, for example with `max(0, …)`, or give them a passage of their own.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import amount
from sizewright.grade.run import inserts_of
from sizewright.proof.counting import counts
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("negative-count", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding where each such count is first printed, for the sizes that read it there."""
    told: set[tuple[str, str]] = set()
    for insert in inserts_of(worked.graded.pattern):
        values = worked.graded.inserts.get(insert.span)
        if values is None or not counts(values, insert):
            continue
        read = [(size, values.values[place]) for place, size in worked.graded.read_in(insert.sizes)]
        broken = [(size, value) for size, value in read if value < 0 and (insert.formula.text, size) not in told]
        if broken:
            told.update((insert.formula.text, size) for size, _ in broken)
            shown = by_size((size, amount(value, values.dimension)) for size, value in broken)
            mend = "Mend the formula for these sizes, or give them a passage of their own."
            message = f"“{insert.formula.text}” is below zero: {shown}."
            yield RULE.at(insert.span, message, mend, tuple(size for size, _ in broken if size))
