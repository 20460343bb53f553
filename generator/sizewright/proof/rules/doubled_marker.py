"""A row that is worked again and places a marker once more where it has placed one.

**Why it matters.** With each working one marker more hangs at the same place, and the next row says “sm” to one.

**Example.** `Row 1: K5, pm, k10, pm, k5.` and then `Rep Rows 1 and 2 until piece measures 10 cm.`

**Instead.** `Set-up Row: K5, pm, k10, pm, k5.`, and in the rows that are worked again `Row 1: K5, sm, k10, sm, k5.`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import DoubledMarker
from sizewright.work.worked import Worked

RULE = Rule("doubled-marker", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, DoubledMarker):
        first = faults[0]
        marker = f"Marker “{first.name}”" if first.name else "A marker"
        said = by_size((name_of(worked, fault.size), f"behind {fault.behind} sts") for fault in faults)
        message = f"{marker} is here already when {first.label} is worked again and places one: {said}."
        mend = "Place markers once, in a row of their own, and slip them from then on: “sm”."
        yield RULE.at(first.span, message, mend, sizes)
