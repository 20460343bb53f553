"""Stitches picked up with their halves or quarters marked, of which there are too many or too few for equal parts.

**Why it matters.** The reader comes to the marker with a stitch too many, moves it, and the next edge no longer fits.

**Example.** `Pick up and knit 21 sts along the side, marking halves.`

**Instead.** `Pick up and knit 20 sts along the side, marking halves.`, or a number made with `, nearest even`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import UnevenParts
from sizewright.work.worked import Worked

RULE = Rule("uneven-parts", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, UnevenParts):
        parts = "halves" if faults[0].parts == 2 else "quarters"
        told = by_size((name_of(worked, fault.size), f"{fault.count} sts") for fault in faults)
        message = f"These stitches have no equal {parts}: {told}."
        mend = f"Make it a multiple of {faults[0].parts}, or place the marker by a count of its own."
        yield RULE.at(faults[0].span, message, mend, sizes)
