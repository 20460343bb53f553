"""A stitch or row count that is not a whole number, where a reader would read it.

**Why it matters.** Nobody can cast on 71½ stitches. A silent rounding in print would differ from the one the next
formula used.

**Example.** `cast_on = around * stitch_gauge` printed as `{cast_on}`

**Instead.** `cast_on = around * stitch_gauge, nearest multiple of 4`, or `, nearest whole`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.counting import first_printed
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("split-stitch", Level.ERROR, __doc__)
_MEND = "Write how it is rounded where it is defined: “, nearest whole”, “, up to even”, “, nearest multiple of 4”."


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding where each such count is first printed, for the sizes that read it there."""
    for insert, shown, sizes in first_printed(worked, lambda count: count.denominator != 1):
        message = f"“{insert.formula.text}” is not a whole number: {shown}."
        yield RULE.at(insert.span, message, _MEND, sizes)
