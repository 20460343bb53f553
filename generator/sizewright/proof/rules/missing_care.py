"""A pattern that says nothing of how the finished thing is washed. Looked for only where a studio asks for it.

**Why it matters.** A reader gives it away, and it comes back felted. The label of the yarn is long gone by then.

**Example.** a header without `care:`, in a studio with `rules: {missing-care: warning}` in `content/site.yaml`

**Instead.** `care: [Wash by hand in cool water and dry flat.]`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("missing-care", Level.WARNING, __doc__, asked=True)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding at the header."""
    header = worked.graded.pattern.header
    if not header.care:
        yield RULE.at(header.span, "The header says nothing of washing and drying.", "Add “care: […]”.")
