"""A row that ends before all stitches are worked.

**Why it matters.** The reader has stitches on the left needle and no word about them; all that follows is off.

**Example.** `Row 1: K5.` over eight stitches.

**Instead.** Say what happens to the last stitches: `Row 1: K5, p to end.`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import LeftOver
from sizewright.work.worked import Worked

RULE = Rule("stitches-left-over", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, LeftOver):
        first = faults[0]
        told = by_size((name_of(worked, one.size), f"{one.left} of {one.total} left") for one in faults)
        message = f"{first.label} ends before all stitches are worked: {told}."
        mend = "Say what is done with the last stitches, for example “k to end”."
        yield RULE.at(first.span, message, mend, sizes)
