"""A row that asks for more stitches than are on the needle.

**Why it matters.** The reader stands in mid row with an empty left needle, and cannot know which stitch was meant.

**Example.** `Row 1: K5, p5.` over eight stitches.

**Instead.** Mend the number that is too large, or the count before the row; the finding says what is left there.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import TooFew
from sizewright.work.worked import Worked

RULE = Rule("row-too-long", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, TooFew):
        first = faults[0]
        told = by_size(
            (name_of(worked, one.size), f"{one.needs} needed, {one.left} left of {one.total}") for one in faults
        )
        message = f"{first.label} asks for more stitches than there are: {told}."
        mend = "Mend the number here, or the count of the row before."
        yield RULE.at(first.span, message, mend, sizes)
