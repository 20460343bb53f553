"""Instructions that tell of hot water or of dye, in a pattern without the caution that goes with it.

**Why it matters.** Hot water scalds and felts; dye that bleeds spoils the work and the wash.

**Example.** “Felt the slippers in hot water.” and no `cautions:`

**Instead.** `cautions: [hot-water]`; for dye and colours that bleed `cautions: [dye]`.
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("danger-without-caution", Level.WARNING, __doc__)

# The words that tell of a danger, and the caution that belongs to it.
_SIGNS = {
    "hot-water": re.compile(r"\b(hot water|boiling|felt it|felt the|felting|fulling|hot wash)\b", re.I),
    "dye": re.compile(r"\b(dye|dyes|dyed|dyeing|overdye)\b", re.I),
}


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding at the first line that tells of each danger."""
    lines, header = worked.graded.pattern.lines, worked.graded.pattern.header
    said = [words.text for words in header.cautions]
    for caution, signs in _SIGNS.items():
        found = signs.search(lines.text)
        if found and not any(text == caution or signs.search(text) for text in said):
            message = f"“{found.group()}” stands here, but the pattern has no caution for it."
            yield RULE.at(lines.span(found.start(), found.end()), message, f"Add “{caution}” to “cautions:”.")
