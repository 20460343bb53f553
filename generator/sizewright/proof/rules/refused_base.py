"""An adaptation whose base has an error of its own.

**Why it matters.** What is wrong in the base is wrong in all that is made from it, and cannot be mended here.

**Example.** The base says `(36 sts)` behind a row that leaves 32; its adaptation changes another section.

**Instead.** Mend the base, or ask its designer to.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.pattern import Adaptation

RULE = Rule("refused-base", Level.ERROR, __doc__ or "")


def of_base(adapts: Adaptation, found: tuple[Finding, ...]) -> Iterator[Finding]:
    """The finding where any of those of the base stops it from being published."""
    wrong = [finding for finding in found if finding.level is Level.ERROR]
    if wrong:
        first = wrong[0]
        place = f" ({first.span})" if first.span else ""
        many = "an error" if len(wrong) == 1 else f"{len(wrong)} errors"
        message = f"The base “{adapts.base.header.title}” has {many} of its own: {first.message}{place}"
        yield RULE.at(adapts.based_on.pattern.span, message, f"Mend {adapts.base.source} first.")
