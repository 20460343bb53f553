"""Shaping told for the edges of a stitch pattern that does not work each stitch for one.

**Why it matters.** Where a repeat is cut at the edge, a yarn over may lose its decrease: what becomes of the half
repeat is the designer's to say, and the count depends on it.

**Example.** `Work in Old shale for 24 rows and at the same time dec 1 st at each end of every 4th row 5 times.`

**Instead.** Write the rows out, or declare what they come to: `# declared: 62 sts, 24 rows` at the end of the line.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.faults import NotTogether
from sizewright.work.worked import Worked

RULE = Rule("shaping-in-lace", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, NotTogether):
        first = faults[0]
        message = f"“{first.words}” does not work each stitch for one, so shaping in it cannot be carried out."
        mend = "Write the rows out, or declare what they come to: “# declared: 62 sts, 24 rows” at the end of the line."
        yield RULE.at(first.span, message, mend, sizes)
