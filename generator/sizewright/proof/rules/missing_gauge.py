"""A pattern whose header gives no gauge.

**Why it matters.** Without it a reader cannot know whether the size will come out, and no count can be measured.

**Example.** a header without `gauge:`

**Instead.** `gauge: {stitches: 22 st / 10 cm, rows: 30 row / 10 cm, over: stockinette stitch, needle: 4 mm}`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("missing-gauge", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding at the header."""
    header = worked.graded.pattern.header
    if not header.gauges:
        yield RULE.at(
            header.span, "The header gives no gauge.", "Add “gauge: {stitches: 22 st / 10 cm, rows: 30 row / 10 cm}”."
        )
