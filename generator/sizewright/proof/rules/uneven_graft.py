"""Two sets of stitches grafted together that are not as many.

**Why it matters.** Grafting joins one stitch to one: the last ones of the longer side have no partner, and nobody sees
it before the seam is nearly done.

**Example.** `Graft the 9 sole sts to the 8 instep sts.`

**Instead.** Mend the count before it: `Graft the 8 sole sts to the 8 instep sts.`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import UnevenGraft
from sizewright.work.worked import Worked

RULE = Rule("uneven-graft", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, UnevenGraft):
        told = by_size((name_of(worked, fault.size), f"{fault.one} sts to {fault.other}") for fault in faults)
        yield RULE.at(faults[0].span, f"The two sides are not as many: {told}.", "Mend the count of one side.", sizes)
