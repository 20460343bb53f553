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
from sizewright.work.worked import Worked

RULE = Rule("mixed-terms", Level.WARNING, __doc__)


def _words(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{pattern})\b", re.I)


_SEED_AND_MOSS = (_words("seed (?:stitch|st)"), _words("moss (?:stitch|st)"))
# The same thing in the US and in the UK. Common practice; moss and seed as in read/notation/fabrics.py and P2, P3 of
# the tests (stitchandstory.com, knittingmagic.biz).
_FAMILIES = (
    (_words("b(?:i|ou)nd(?:ing)?[ -]off|BO"), _words("cast(?:ing)?[ -]off")),
    (_words("gauge"), _words("(?:tension (?:square|swatch)|(?:check|correct|stated|to) tension)|(?<=UK: )tension")),
    (_words("stockinette"), _words("stocking (?:stitch|st)")),
    _SEED_AND_MOSS,
    (_words("yarn over|yo"), _words("yfwd|yrn|yon|yfrn")),
)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding at the later of two words for one thing; one that only explains the other is none."""
    wording = Wording.of(worked.graded.pattern)
    for family in _FAMILIES:
        if family is _SEED_AND_MOSS and _written_out(worked.graded.pattern):
            continue
        if any(_explained(wording.body, one, two) for one, two in (family, family[::-1])):
            continue
        found = sorted((first for words in family if (first := words.search(wording.body))), key=_start)
        if len(found) == 2:
            earlier, later = found
            other = f"“{_plain(earlier)}” in line {wording.span(earlier).line}"
            message = f"“{_plain(later)}” stands here, and {other}: two words for one thing."
            yield RULE.at(wording.span(later), message, "Take one of them throughout, as the readers' country has it.")


def _written_out(pattern: Pattern) -> bool:
    """Whether a moss or seed stitch has rows of its own in the pattern, so that nobody can mistake it."""
    names = (piece.name.text.casefold() for piece in pattern.body if isinstance(piece, StitchBlock))
    return any("moss" in name or "seed" in name for name in names)


def _explained(text: str, one: re.Pattern[str], two: re.Pattern[str]) -> bool:
    """Whether the one word stands in brackets or behind a stroke after the other: "gauge (tension)"."""
    return re.search(rf"{one.pattern}[^\S\n]*(?:[(/=]|or\b)[^\S\n]*(?:UK:? )?(?:{two.pattern})", text, re.I) is not None


def _start(found: re.Match[str]) -> int:
    return found.start()


def _plain(found: re.Match[str]) -> str:
    return " ".join(found.group().split())
