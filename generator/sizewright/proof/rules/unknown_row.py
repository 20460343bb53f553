"""Rows to be repeated that are not written in this part of the piece.

**Why it matters.** The reader looks for a row that is not there, or finds one of another part.

**Example.** `Rep Rows 1-6 until piece measures 12 cm.` after Rows 1 to 4.

**Instead.** Name rows that stand above, since the last cast-on.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.grouped import grouped
from sizewright.read.project import Project
from sizewright.work.faults import NoRow
from sizewright.work.worked import Worked

RULE = Rule("unknown-row", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned."""
    for faults, sizes in grouped(worked, NoRow):
        first = faults[0]
        message = f"The rows to be repeated are not written in this part{_told(first.words)}."
        mend = "Name rows that stand above, or write the missing one."
        if first.known:
            mend = (
                f"Rows with a name stand above: {', '.join(first.known)}. Call one of them, or write “{first.words}:”."
            )
        yield RULE.at(first.span, message, mend, sizes)


def _told(words: str) -> str:
    """ " (row 5)", " (dec row)"."""
    if not words:
        return ""
    return f" ({words})" if words.endswith("row") else f" (row {words})"
