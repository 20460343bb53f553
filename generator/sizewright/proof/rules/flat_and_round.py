"""A round on a piece that was not joined, or a row on one that was.

**Why it matters.** Rounds and rows are worked differently: what is stockinette in the round is garter stitch flat.

**Example.** `Cast on 80 sts.` and then `Rnd 1: Knit.`

**Instead.** `Cast on 80 sts. Join to work in the round.`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.faults import NotJoined
from sizewright.work.worked import Worked

RULE = Rule("flat-and-round", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, NotJoined):
        first = faults[0]
        is_round = "a round, but the piece was not joined" if first.in_the_round else "a row, but the piece was joined"
        mend = "Write “Join to work in the round.”, or Row for Rnd." if first.in_the_round else "Write Rnd for Row."
        yield RULE.at(first.span, f"{first.label} is {is_round}.", mend, sizes)
