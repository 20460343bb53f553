"""A number among the instructions that measures something else than stitches, rows or times.

**Why it matters.** Nobody can cast on centimetres.

**Example.** `Cast on {brim} sts.`, where `brim` is a length.

**Instead.** `Cast on {cast_on} sts.`, with `cast_on = around * stitch_gauge, nearest multiple of 4`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.faults import NoCount
from sizewright.work.worked import Worked

RULE = Rule("no-count", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, NoCount):
        first = faults[0]
        message = f"“{first.words}” is no count of stitches, rows or times."
        yield RULE.at(first.span, message, "Turn it into a count with the gauge first.", sizes)
