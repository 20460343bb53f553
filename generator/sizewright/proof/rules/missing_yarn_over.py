"""A row that drops a yarn over, or works into a double one, where none lies on the needle.

**Why it matters.** The reader drops a stitch instead, and a ladder runs down the piece.

**Example.** `Row 2: *P1, drop yo; rep from * to end.` over `Row 1: Knit.`

**Instead.** Make the yarn over in the row before, or drop the stitch that is meant; a double one is `yo twice`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.faults import NoYarnOver
from sizewright.work.worked import Worked

RULE = Rule("missing-yarn-over", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, NoYarnOver):
        first = faults[0]
        message = f"{first.label} means {'a double yo' if first.double else 'a yo'}, and none comes next on the needle."
        mend = "Make it in the row before (“yo twice” for a double one), or work the stitches that are there."
        yield RULE.at(first.span, message, mend, sizes)
