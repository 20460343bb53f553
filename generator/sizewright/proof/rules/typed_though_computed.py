"""A bracket list typed in the text that is, size for size, a number the pattern works out.

**Why it matters.** Today they agree. When the gauge, an ease or a size is changed, the computed number follows and the
typed one stays, and nobody looks for it.

**Example.** `Cast on 72 (80, 88) sts.`, where `cast_on` is 72 (80, 88) stitches

**Instead.** `Cast on {cast_on} sts.`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.typed_lists import typed_lists
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("typed-though-computed", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each list that is a quantity of the pattern."""
    for typed in typed_lists(worked.graded):
        same = [named.name for named, differing in typed.beside if not differing]
        if same:
            message = f"“{typed.text}” is typed, and “{same[0]}” is worked out to be the same."
            yield RULE.at(typed.span, message, f"Write “{{{same[0]}}}”, so that it follows what it is worked out from.")
