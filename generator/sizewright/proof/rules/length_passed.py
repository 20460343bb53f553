"""Rows until a length that the piece has already: not one row would be worked.

**Why it matters.** The reader measures, finds more than is asked for, and takes rows back or goes on without a part of
the piece. Most often a length from here on was meant, or a number was mistyped.

**Example.** `Rep Rnd 1 until piece measures 6 cm.`, and later `Rep last rnd until piece measures 4 cm.`

**Instead.** `Rep last rnd until piece measures 10 cm.`, or `Rep last rnd for 4 cm.`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import as_text, printed
from sizewright.base.units import LENGTH
from sizewright.proof.grouped import grouped, name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import LengthPassed
from sizewright.work.worked import Worked

RULE = Rule("length-passed", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, LengthPassed):

        def told(fault: LengthPassed) -> str:
            wanted, reached = (
                as_text(printed((cm,), LENGTH, None, metric_first=project.studio.metric_first))
                for cm in (fault.length, fault.reached)
            )
            return f"{wanted}, and {reached} are worked"

        said = by_size((name_of(worked, fault.size), told(fault)) for fault in faults)
        mend = "Write the whole length from where it is measured, or “for 4 cm” for a length from here."
        yield RULE.at(faults[0].span, f"This length is passed already, so no row is worked: {said}.", mend, sizes)
