"""A count behind a row that is not what the row gives when it is knitted.

**Why it matters.** Readers check themselves by it: a right knitter unravels right rows, a wrong one goes on.

**Example.** `Dec Rnd: *K6, k2tog; rep from * to end. (72 sts)` over 80 stitches, which leaves 70.

**Instead.** State the count the row gives, or mend the row.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import WrongCount
from sizewright.work.worked import Worked

RULE = Rule("wrong-count", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, WrongCount):
        first = faults[0]
        told = by_size((name_of(worked, one.size), f"{one.found}, not {one.promised}") for one in faults)
        message = f"The count behind {first.label} does not come true ({first.what}): {told}."
        mend = "The first number is what the rows give. Mend the count, or the row that should give it."
        yield RULE.at(first.span, message, mend, sizes)
    for pattern in worked.stitch_patterns:
        for count in pattern.broken:
            message = f"The count behind {count.label} of “{pattern.name}” does not come true over {count.width} sts: "
            told = f"{message}{count.found}, not {count.promised}."
            yield RULE.at(count.span, told, "Mend the count, or the row; the counts of all rows must be of one width.")
