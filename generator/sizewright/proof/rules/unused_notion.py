"""A thing in the list of notions that nothing in the pattern speaks of.

**Why it matters.** The reader buys it, keeps it at hand, and looks through the pattern for the place where it is used,
or thinks that a step is missing. Looked at are markers, cable needles, holders and waste yarn, tapestry needles, hooks,
buttons and zips; scissors, pins or a tape measure belong to every knitter's bag.

**Example.** `notions: [cable needle]` in a pattern without a cable

**Instead.** Take it out of the list, or say in the text where it is used.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.notions import NOTIONS
from sizewright.proof.wording import Wording
from sizewright.read.pattern import StitchBlock, WorkBlock
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("unused-notion", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each thing listed that is not spoken of, in a pattern that has instructions."""
    pattern = worked.graded.pattern
    if not any(isinstance(piece, WorkBlock | StitchBlock) for piece in pattern.body):
        return
    wording = Wording.of(pattern)
    for words in pattern.header.notions:
        about = [notion for notion in NOTIONS if notion.listed.search(words.text)]
        if about and not any(one.spoken.search(wording.body) or one.work(pattern) for one in about):
            message = f"“{words.text}” is listed, and nothing in the pattern speaks of it."
            yield RULE.at(words.span, message, "Say where it is used, or take it out of the list.")
