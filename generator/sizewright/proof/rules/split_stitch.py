"""A stitch or row count that is not a whole number, where a reader would read it.

**Why it matters.** Nobody can cast on 71½ stitches. A silent rounding in print would differ from the one the next
formula used.

**Example.** `cast_on = around * stitch_gauge` printed as `{cast_on}`

**Instead.** `cast_on = around * stitch_gauge, nearest multiple of 4`, or `, nearest whole`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import amount
from sizewright.grade.run import inserts_of
from sizewright.proof.counting import counts
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("split-stitch", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding where each such count is first printed, for the sizes that read it there."""
    told: set[tuple[str, str]] = set()
    for insert in inserts_of(worked.graded.pattern):
        values = worked.graded.inserts.get(insert.span)
        if values is None or not counts(values, insert):
            continue
        read = [(size, values.values[place]) for place, size in worked.graded.read_in(insert.sizes)]
        broken = [
            (size, value) for size, value in read if value.denominator != 1 and (insert.formula.text, size) not in told
        ]
        if not broken:
            continue
        told.update((insert.formula.text, size) for size, _ in broken)
        shown = by_size((size, amount(value, values.dimension)) for size, value in broken)
        message = f"“{insert.formula.text}” is not a whole number: {shown}."
        mend = (
            "Write how it is rounded where it is defined: “, nearest whole”, “, up to even”, “, nearest multiple of 4”."
        )
        yield RULE.at(insert.span, message, mend, tuple(size for size, _ in broken if size))
