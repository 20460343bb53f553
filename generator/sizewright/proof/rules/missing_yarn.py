"""A pattern that names no yarn.

**Why it matters.** Weight, fibre and amount decide whether the gauge can be met and what to buy.

**Example.** a header without `yarn:`

**Instead.** `yarn: {main: {weight: light, fibre: 100% wool, length: 105 m, mass: 50 g}}`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("missing-yarn", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding at the header."""
    header = worked.graded.pattern.header
    if not header.yarns:
        yield RULE.at(
            header.span,
            "The header names no yarn.",
            "Add “yarn: {main: {weight: light, fibre: 100% wool, length: 105 m, mass: 50 g}}”.",
        )
