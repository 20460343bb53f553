"""Rows “in pattern as set” where it is not known which row of the stitch pattern comes next, or over which stitches.

**Why it matters.** Behind Row 2 of a lace the reader goes on with Row 3. The tool cannot follow when the count has
changed, or when the pattern was worked over a part of the row: it works all stitches as they appear, and counts those.

**Example.** `Row 1: K2, work Row 1 of lace over next 13 sts, k2.` and then `Continue in pattern as set for 6 rows.`

**Instead.** The rows with the pattern by its name: `Row 3: K2, work Row 3 of lace over next 13 sts, k2.`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.as_set import UnclearPattern
from sizewright.work.worked import Worked

RULE = Rule("unclear-pattern", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, UnclearPattern):
        first = faults[0]
        message = f"“{first.words}” does not tell which row of {first.of} comes next: no row of it is worked here."
        mend = f"Write the rows, or call them by name: “Work Rows 3 and 4 of {first.of}”."
        yield RULE.at(first.span, message, mend, sizes)
