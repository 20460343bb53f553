"""A departure made to words of the base that have changed since.

**Why it matters.** The base may have been corrected: the adaptation would go on printing what was wrong, or replace
what is right now.

**Example.** `::: instead of row Rnd 5 under Crown` with `was: 1a2b3c4d`, and the base has another row 5 today.

**Instead.** Look at the row of the base as it is now, change yours where it needs it, and write the mark that is named.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.departure import mark_of
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("stale-departure", Level.ERROR, __doc__ or "")
_LONGEST = 80  # signs that are quoted


def check(worked: Worked, _: Project) -> Iterator[Finding]:
    """Each departure whose mark is not that of what stands in the base."""
    adapts = worked.graded.pattern.adapts
    for one in adapts.departures if adapts else ():
        was, now = one.called.was, mark_of(one.stood)
        if was is not None and one.stood and was.text != now:
            words = " ".join(one.stood.split())
            quoted = words if len(words) <= _LONGEST else f"{words[: _LONGEST - 1]}…"
            message = (
                f"The base has changed since “{one.called.title}” was written; it says now: “{quoted}” ({one.place})."
            )
            yield RULE.at(was.span, message, f"Look whether it still fits, then write “was: {now}”.")
