"""A pattern that names no needles, neither in `needles:` nor with its gauge.

**Why it matters.** The reader has to guess what to buy or to begin with.

**Example.** a header without `needles:`

**Instead.** `needles: [4 mm circular needle, 40 cm long]`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("missing-needles", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding at the header."""
    header = worked.graded.pattern.header
    if not header.needles and not any(gauge.needle for gauge in header.gauges):
        yield RULE.at(header.span, "The header names no needles.", "Add “needles: [4 mm circular needle, 40 cm long]”.")
