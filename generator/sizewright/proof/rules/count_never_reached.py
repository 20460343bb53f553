"""Rows that are to be repeated until a count is left, and never leave it.

**Why it matters.** The reader goes on decreasing and never meets the number, or stands still.

**Example.** `Rep last rnd until 8 sts remain.`, where eight stitches are lost a round from 60.

**Instead.** A count that the rows can reach, or another number of stitches to begin with.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import NeverReached
from sizewright.work.worked import Worked

RULE = Rule("count-never-reached", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, NeverReached):
        first = faults[0]
        told = by_size((name_of(worked, one.size), f"{one.found} where {one.wanted} were wanted") for one in faults)
        message = f"Repeated, these rows never leave the count: {told}."
        mend = "Mend the count, or the stitches that are lost in each repeat."
        yield RULE.at(first.span, message, mend, sizes)
