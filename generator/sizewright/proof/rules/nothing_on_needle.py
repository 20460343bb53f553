"""Something to be worked before stitches are cast on, or held stitches to be taken up that nobody put on hold.

**Why it matters.** There is nothing to knit.

**Example.** A work block that begins with `Row 1: Knit.`

**Instead.** `Cast on {cast_on} sts.` before the first row.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import NoStitches
from sizewright.work.worked import Worked

RULE = Rule("nothing-on-needle", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, NoStitches):
        first = faults[0]
        if first.wanted is None and not first.held:
            message = "Stitches are to be worked here, but none are on the needles."
            mend = "Begin the piece with “Cast on … sts.”."
        else:
            held = by_size(
                (name_of(worked, one.size), f"{', '.join(map(str, one.held)) or 'none'} held") for one in faults
            )
            message = f"{first.wanted} held stitches are to be taken up: {held}."
            mend = "Take up as many stitches as were put on hold."
        yield RULE.at(first.span, message, mend, sizes)
