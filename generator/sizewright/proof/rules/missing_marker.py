"""A row that works to a marker, slips or removes one, where none is.

**Why it matters.** The reader has no place to stop at.

**Example.** `Row 1: K to marker, k2tog, k to end.` with no marker placed.

**Instead.** Place it in a row before: `K12, pm, k to end.`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.faults import NoMarker
from sizewright.work.worked import Worked

RULE = Rule("missing-marker", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, NoMarker):
        first = faults[0]
        marker = f"a marker “{first.name}”" if first.name else "a marker"
        message = f"{first.label} speaks of {marker}, and there is none at this place."
        mend = "Place the marker in a row before (pm), or slip it (sm) where it is passed."
        if first.known:
            known = ", ".join(dict.fromkeys(f"“{name}”" if name else "one without a name" for name in first.known))
            mend = f"{mend} Markers in this row: {known}."
        yield RULE.at(first.span, message, mend, sizes)
