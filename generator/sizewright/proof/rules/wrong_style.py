"""A style of printing that does not suit what the number measures.

**Why it matters.** Seventy-two stitches printed as centimetres would be read as a length.

**Example.** `{cast_on:cm}`

**Instead.** `{cast_on}`, or `{cast_on / stitch_gauge:cm}` for what the stitches measure.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import STYLES
from sizewright.base.units import spoken
from sizewright.read.names_used import inserts_of
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("wrong-style", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each insert whose style is for something else."""
    for insert in inserts_of(worked.graded.pattern):
        values = worked.graded.inserts.get(insert.key)
        if values is None or insert.style is None:
            continue
        allowed = STYLES[insert.style.text][1]
        if values.dimension not in allowed:
            kinds = " or ".join(spoken(dimension) for dimension in allowed)
            message = (
                f"“:{insert.style.text}” prints {kinds}, but “{insert.formula.text}” is {spoken(values.dimension)}."
            )
            mend = "Take the style out, or turn the number into one of that kind: a count into a length by its gauge."
            yield RULE.at(insert.style.span, message, mend)
