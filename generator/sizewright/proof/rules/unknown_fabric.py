"""A stitch pattern to be worked that no stitch block of the pattern describes.

**Why it matters.** The reader does not know what to work, and the tool cannot count it.

**Example.** `Work in Old shal until piece measures 20 cm.`

**Instead.** The name of a stitch block, or stockinette, garter, ribbing such as k2, p2.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.nearest import did_you_mean
from sizewright.proof.grouped import grouped
from sizewright.read.notation.fabric_names import FABRICS, usual_fabric
from sizewright.read.project import Project
from sizewright.work.faults import UnknownFabric
from sizewright.work.worked import Worked

_MEND = "Describe it in a stitch block, with its rows."
RULE = Rule("unknown-fabric", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, UnknownFabric):
        first = faults[0]
        known = [pattern.name for pattern in worked.stitch_patterns]
        usual = bool(usual_fabric(first.words))  # one that is known for whole rows, not for a part of one
        mend = did_you_mean(first.words, known if usual else (*known, *FABRICS), _MEND)
        yield RULE.at(first.span, f"No stitch pattern “{first.words}” is described here.", mend, sizes)
