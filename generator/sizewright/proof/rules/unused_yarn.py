"""A yarn of the header in which no stitch of the instructions is worked, where they say which yarn to use.

**Why it matters.** Either a reader buys yarn for nothing, or the rows do not say where it is used, and all their
stitches are counted for the main yarn. Nothing is said of instructions that name no yarn and have no amounts to get
wrong, nor where a part of them is told in words only.

**Example.** the yarns `main` and `contrast`, and rows that only ever say `MC`

**Instead.** Say it where the yarn changes, `Change to CC.` or `Rnd 3 (contrast): Knit.`; tell what the rows call it,
`contrast: {called: B}`; or take the yarn out. Two yarns held together answer to one word: `halo: {called: main}`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.yarn_calls import is_unread, yarns_called
from sizewright.read.project import Project
from sizewright.read.yarn_names import YarnNames
from sizewright.work.worked import Worked

RULE = Rule("unused-yarn", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each yarn."""
    pattern = worked.graded.pattern
    called = YarnNames(pattern.header.yarns).calls(yarns_called(pattern))
    if is_unread(pattern) or any(worked.uncounted) or not any(map(any, worked.stitches.values())):
        return
    for need in worked.yarns:
        said = any(called.values()) or need.yarn.swatch is not None
        if said and all(called.values()) and not any(need.stitches):
            message = f"No stitch is worked in “{need.yarn.name}”."
            mend = "Say where it is used, as in “Change to CC.”, tell what the rows call it, or take it out."
            yield RULE.at(need.yarn.span, message, mend)
