"""Words of the US and of the UK in one pattern: “bind off” and “cast off”, “gauge” and “tension”.

**Why it matters.** The reader has learned the one or the other. Two words for one thing look like two things, and some
words mean something else across the water: US moss stitch is not UK moss stitch, which is US seed stitch.

**Example.** `Bind off 6 sts`, and further down `Cast off all sts.`

**Instead.** Take one word throughout, that of the market the pattern is written for.
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.wording import Wording
from sizewright.read.pattern import Pattern, StitchBlock
from sizewright.read.project import Project
from sizewright.read.trade_words import PAIRS, SEED_AND_MOSS
from sizewright.work.worked import Worked

RULE = Rule("mixed-terms", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding at the later of two words for one thing; one that only explains the other is none."""
    wording = Wording.of(worked.graded.pattern)
    for pair in PAIRS:
        if pair is SEED_AND_MOSS and _written_out(worked.graded.pattern):
            continue
        if pair.explained.search(wording.body):
            continue
        both = (words for words in pair.proving.values() if words is not None)
        found = sorted((first for words in both if (first := words.search(wording.body))), key=_start)
        if len(found) == 2:
            earlier, later = found
            other = f"“{_plain(earlier)}” in line {wording.span(earlier).shown.line}"
            message = f"“{_plain(later)}” stands here, and {other}: two words for one thing."
            yield RULE.at(wording.span(later), message, "Take one of them throughout, as the readers' country has it.")


def _written_out(pattern: Pattern) -> bool:
    """Whether a moss or seed stitch has rows of its own in the pattern, so that nobody can mistake it."""
    names = (piece.name.text.casefold() for piece in pattern.body if isinstance(piece, StitchBlock))
    return any("moss" in name or "seed" in name for name in names)


def _start(found: re.Match[str]) -> int:
    return found.start()


def _plain(found: re.Match[str]) -> str:
    return " ".join(found.group().split())
