"""A yarn that the instructions name, and that no yarn of the header answers to.

**Why it matters.** A reader cannot tell which ball is meant, and its stitches are in no amount of yarn. A yarn answers
to its key and to what it is `called`; `main` is MC too, and `contrast` CC. Where the header has one yarn, the
instructions may call it anything; only where it says how much of it is needed must their words be told apart.

**Example.** `Rnd 3: *K2 MC, k2 B; rep from * to end.`, with the yarns `main` and `contrast`

**Instead.** Give the yarn the word: `contrast: {called: B, weight: light}`, or use its own: `k2 CC`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.yarn_calls import yarns_called
from sizewright.read.project import Project
from sizewright.read.yarn_names import YarnNames
from sizewright.work.worked import Worked

RULE = Rule("unknown-yarn", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each word, where it is first used; a header without yarns is told of already."""
    pattern = worked.graded.pattern
    names = YarnNames(pattern.header.yarns)
    called = yarns_called(pattern)
    if len(names.yarns) < 2 and not any(yarn.swatch for yarn in names.yarns):
        return
    for name, yarns in names.calls(called).items():
        if not yarns:
            known = ", ".join(f"“{yarn.name}”" for yarn in names.yarns)
            meant = names.nearest(name)
            hint = f"Did you mean “{meant}”? " if meant else ""
            mend = f"{hint}Or tell which yarn it is: “called: {name}” beside one of {known}."
            yield RULE.at(called[name][0], f"No yarn of the header answers to “{name}”.", mend)
