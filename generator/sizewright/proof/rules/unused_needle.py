"""A needle that is listed and nowhere taken up: two sizes are listed, and the text never says to change.

**Why it matters.** The reader does not know where the ribbing ends on the smaller needle, works all of it on one, and
gets a brim that does not grip. A needle that says what it is for (“for the cuff”) has its place.

**Example.** `needles: [3.5 mm circular needle, 4 mm circular needle]`, and no word of either in the text

**Instead.** “Change to the larger needle.” where it is taken up, or `3.5 mm circular needle, for the brim`.
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import decimal
from sizewright.proof.wording import Wording
from sizewright.read.pattern import StitchBlock, WorkBlock
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("unused-needle", Level.WARNING, __doc__)

_PURPOSE = re.compile(r"\b(?:for|or|to)\b", re.I)
_CHANGE = re.compile(
    r"\b(?:smaller|larger|thinner|thicker|finer|other|first|second|main|both)[- ](?:sized?[- ])?(?:\w+ )?"
    r"(?:needles?|circulars?|dpns?)\b"
    r"|\b(?:change|switch)(?: back)? to\b|\bneedles? [AB12]\b|\bgo (?:up|down)\b",
    re.I,
)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each size that the text does not name, where it speaks of no change either."""
    pattern = worked.graded.pattern
    sizes = {mm for one in pattern.header.needles if (mm := one.sure) is not None}
    if len(sizes) < 2 or not any(isinstance(piece, WorkBlock | StitchBlock) for piece in pattern.body):
        return
    body = Wording.of(pattern).body
    if _CHANGE.search(body):
        return
    gauge = {one.needle.sure for one in pattern.header.gauges if one.needle}
    for one in pattern.header.needles:
        mm = one.sure
        if (
            mm is None
            or mm in gauge
            or _PURPOSE.search(one.text)
            or re.search(rf"\b{re.escape(decimal(mm))}\s?mm\b", body)
        ):
            continue
        message = f"“{one.text}” is listed, and the text never says where it is taken up."
        yield RULE.at(one.span, message, "Say where needles are changed, or what it is for: “…, for the brim”.")
