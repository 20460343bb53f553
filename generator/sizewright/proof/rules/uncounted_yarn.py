"""Instructions whose stitches cannot be counted, in a pattern that says how much yarn it takes.

**Why it matters.** The yarn is what every stitch of every row takes. What is only described, or measured without a
row gauge, is not in it, so the page can only say “at least”, and a reader may run out.

**Example.** `Work the heel as you like best.   # declared: 64 sts, 24 rows`

**Instead.** Write the rows out, or give the row gauge. What works no row says so: `# declared: 64 sts, 0 rows`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.place import Span
from sizewright.proof.grouped import name_of
from sizewright.proof.yarn_calls import is_unread
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("uncounted-yarn", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a place, for all sizes concerned; behind a fault nothing can be counted, and that is told by it."""
    counting = any(need.yarn.swatch for need in worked.yarns)
    untold = worked.faults or worked.graded.findings or is_unread(worked.graded.pattern)
    if not counting or untold:
        return
    places: dict[Span, list[str]] = {}
    for size, spans in enumerate(worked.uncounted):
        for span in dict.fromkeys(spans):
            places.setdefault(span, []).append(name_of(worked, size))
    for span, sizes in places.items():
        message = "The stitches told here cannot be counted, so the amounts of yarn are too small."
        mend = "Write the rows out, or give the row gauge; “# declared: 64 sts, 0 rows” says that none is worked."
        yield RULE.at(span, message, mend, tuple(filter(None, sizes)))
