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
        if first.wanted is None and not first.held and not first.name:
            message = "Stitches are to be worked here, but none are on the needles."
            mend = "Begin the piece with “Cast on … sts.”."
        else:
            told = ((name_of(worked, one.size), f"{_held(one)} held") for one in faults)
            wanted = f"{first.wanted} held stitches" if first.wanted is not None else "Held stitches"
            wanted += f" ({first.name})" if first.name else ""
            message = f"{wanted} are to be taken up: {by_size(told)}."
            mend = "Take up as many stitches as were put on hold, under the name they were put on hold for."
        yield RULE.at(first.span, message, mend, sizes)


def _held(fault: NoStitches) -> str:
    return ", ".join(fault.names) or ", ".join(map(str, fault.held)) or "none"
