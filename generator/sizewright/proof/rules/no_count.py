"""A number among the instructions that measures something else than stitches, rows or times, or far too many of them.

**Why it matters.** Nobody can cast on centimetres, and nobody has a hundred thousand stitches on a needle.

**Example.** `Cast on {brim} sts.`, where `brim` is a length.

**Instead.** `Cast on {cast_on} sts.`, with `cast_on = around * stitch_gauge, nearest multiple of 4`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.faults import NoCount
from sizewright.work.worked import Worked

_MEND = "Turn it into a count with the gauge first."
RULE = Rule("no-count", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, NoCount):
        first = faults[0]
        if first.too_many:
            message, mend = f"“{first.words}” are more than any piece has.", "Look for a number or a repeat too large."
        else:
            message, mend = f"“{first.words}” is no count of stitches, rows or times.", _MEND
        yield RULE.at(first.span, message, mend, sizes)
