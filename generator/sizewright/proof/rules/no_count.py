"""A number among the instructions that measures something else than is wanted there, or far too many stitches or rows.

**Why it matters.** Nobody can cast on centimetres, and nobody has a hundred thousand stitches on a needle.

**Example.** `Cast on {brim} sts.`, where `brim` is a length.

**Instead.** `Cast on {cast_on} sts.`, with `cast_on = around * stitch_gauge, nearest multiple of 4`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.units import LENGTH, PLAIN, ROWS, STITCHES, spoken
from sizewright.grade.sums import no_unit
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.faults import NoCount, NoLength
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
    for lengths, sizes in grouped(worked, NoLength):
        yield RULE.at(lengths[0].span, *_no_length(lengths[0]), sizes)


def _no_length(fault: NoLength) -> tuple[str, str]:
    """What is said of a number that a piece should measure, and how to mend it."""
    message = f"A length is wanted here, and “{fault.words}” is {spoken(fault.dimension)}."
    if fault.dimension == PLAIN:
        return message, no_unit(fault.words, fault.value, LENGTH)
    gauge = {STITCHES: "stitch_gauge", ROWS: "row_gauge"}.get(fault.dimension)
    return message, f"Divide it by the gauge: “{fault.words} / {gauge}”." if gauge else "Write a length."
