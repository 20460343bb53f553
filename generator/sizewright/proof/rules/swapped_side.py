"""A row that says it is a right-side row where the work shows its wrong side, or the reverse.

**Why it matters.** A row too many or too few was written before it, or the sides are swapped: the texture turns out.

**Example.** `Row 1 (RS): Knit.` and then `Row 2 (RS): Purl.`

**Instead.** `Row 2 (WS): Purl.`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.faults import WrongSide
from sizewright.work.worked import Worked

RULE = Rule("swapped-side", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, WrongSide):
        first = faults[0]
        message = f"{first.label} says {first.said}, but the work shows its other side here."
        yield RULE.at(first.span, message, "Mend the side, or look for a row too many before it.", sizes)
