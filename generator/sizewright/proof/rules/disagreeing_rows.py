"""A row of a stitch pattern that cannot be worked over what the row before it leaves, whatever is cast on.

**Why it matters.** No count of stitches helps: the reader stops in the same row each time.

**Example.** `Row 1: *K2, k2tog; rep from * to end.` and `Row 2: K1, k2tog.`: the one leaves a multiple of 3, the other
needs three stitches in all.

**Instead.** Mend the row of the two that is wrong; the finding says what each needs and leaves.
"""

from collections.abc import Iterator, Sequence

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project
from sizewright.work.worked import Clash, Worked

RULE = Rule("disagreeing-rows", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each stitch block whose rows disagree."""
    for pattern in worked.stitch_patterns:
        if pattern.clash is not None:
            message = f"In “{pattern.name}” {_told(pattern.clash)}."
            yield RULE.at(pattern.clash.span, message, "Mend the row that is wrong of the two.")


def _told(clash: Clash) -> str:
    needs = f"needs {_counts(clash.needs, more=clash.more)}" if clash.needs else "can be worked over no count"
    if not clash.before:
        return f"{clash.label} {needs}, and nothing can be cast on for it"
    return f"{clash.label} {needs}, and {clash.before} leaves {_counts(clash.leaves, more=True)}"


def _counts(counts: Sequence[int], *, more: bool) -> str:
    return f"{', '.join(map(str, counts))}{' …' if more else ''} sts"
