"""A yarn without a swatch, so that nobody is told how much of it a size takes. Looked for only where a studio asks.

**Why it matters.** A reader buys yarn before the first stitch. The ball that is missing later is of another dye lot.

**Example.** `yarn: {main: {weight: light}}`, in a studio with `rules: {missing-swatch: warning}` in `content/site.yaml`

**Instead.** `yarn: {main: {weight: light, length: 105 m, mass: 50 g, swatch: {stitches: 2400 st, mass: 12 g}}}`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("missing-swatch", Level.WARNING, __doc__, asked=True)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding at each yarn."""
    for yarn in worked.graded.pattern.header.yarns:
        if yarn.swatch is None:
            message = f"“{yarn.name}” has no swatch, so nobody is told how much of it each size takes."
            mend = "Weigh a swatch: “swatch: {stitches: 2400 st, mass: 12 g}”, or give its width, height and mass."
            yield RULE.at(yarn.span, message, mend)
