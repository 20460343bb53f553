"""Two lines of `care:` that name different symbols for one thing: washing by hand and not washing at all.

**Why it matters.** A reader follows the one that is less trouble, and the piece comes out felted or bleached.

**Example.** `care: [wash by hand, wash 60]`

**Instead.** `care: [wash by hand, dry flat]`: one symbol for washing, bleaching, tumble drying, drying and ironing.
"""

from collections.abc import Iterator
from itertools import combinations

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.care_words import Step, care_word
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("contrary-care", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding at the second of two such lines; a label may have two circles for professional care, dry and wet."""
    known = [(line, word) for line in worked.graded.pattern.header.care if (word := care_word(line)) is not None]
    for (first, one), (second, other) in combinations(known, 2):
        both = one.step == Step.PROFESSIONAL and one.forbids == other.forbids
        if one.step == other.step and not both:
            message = f"“{first.text}” and “{second.text}” both say how it is done."
            yield RULE.at(second.span, message, "Keep the one that is meant.")
