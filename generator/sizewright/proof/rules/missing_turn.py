"""A row that is worked to a turn, a wrapped or a double stitch, where none lies ahead.

**Why it matters.** In short rows each turn is found by the one before; without that, there is no place to stop at.

**Example.** `Short Row 1 (RS): K to 3 sts before wrapped st, w&t.`, where no stitch has been wrapped.

**Instead.** Say the place of the first turns by the end or a marker: `K to last 3 sts, w&t.`; later ones by the last
turn on the same side, in the words of the method: wrapped st for w&t, double st for German short rows.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.faults import NoTurn
from sizewright.work.worked import Worked

RULE = Rule("missing-turn", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, NoTurn):
        first = faults[0]
        message = f"{first.label} is worked to a {first.what}, and none lies ahead in this row."
        mend = "Name a place that is there: the end, a marker, or a turn of this kind made before on the same side."
        yield RULE.at(first.span, message, mend, sizes)
