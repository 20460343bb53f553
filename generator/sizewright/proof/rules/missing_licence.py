"""A pattern that does not say what a reader may do with it.

**Why it matters.** Teachers and readers cannot know whether they may share, teach or adapt it.

**Example.** a header without `licence:`

**Instead.** `licence: CC BY-NC-SA 4.0`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("missing-licence", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding at the header."""
    header = worked.graded.pattern.header
    if header.licence is None:
        yield RULE.at(
            header.span, "The header gives no licence.", "Add “licence: …”: what a reader may do with the pattern."
        )
