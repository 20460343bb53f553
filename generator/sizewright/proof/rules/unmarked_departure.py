"""A departure that keeps no mark of what it replaces, so that nobody is told when the base changes there.

**Why it matters.** A designer corrects a row; whoever replaced it in an adaptation has to hear of it.

**Example.** `::: instead of row Rnd 1 under Brim`, with its reason and no more.

**Instead.** The line the finding names, below the reason: `was: 1a2b3c4d`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.departure import Verb, mark_of
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("unmarked-departure", Level.WARNING, __doc__ or "")


def check(worked: Worked, _: Project) -> Iterator[Finding]:
    """Each departure that replaces something and does not keep its mark; what is turned is turned as it is now."""
    adapts = worked.graded.pattern.adapts
    for one in adapts.departures if adapts else ():
        if one.called.was is None and one.stood and one.called.verb is not Verb.INSIDE_OUT:
            message = f"Nothing tells later whether “{one.called.title}” still fits its base."
            yield RULE.at(one.called.span, message, f"Add “was: {mark_of(one.stood)}” below its reason.")
