"""Shaping told to be done at the same time as rows that end before it does.

**Why it matters.** The reader has worked all the rows, and has too many stitches left, or too few.

**Example.** `Work in stockinette for 12 rows and at the same time dec 1 st at each end of every 4th row 5 times.`,
which takes 20 rows.

**Instead.** Give the rows the shaping takes, or shape more often, or fewer times.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import Unfinished
from sizewright.work.worked import Worked

RULE = Rule("shaping-unfinished", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, Unfinished):
        told = by_size((name_of(worked, one.size), f"{one.rows} rows, shaped {one.done} times") for one in faults)
        message = f"The rows end before the shaping told for the same time: {told}."
        mend = "Give the rows that the shaping takes, or shape more often or fewer times."
        yield RULE.at(faults[0].span, message, mend, sizes)
