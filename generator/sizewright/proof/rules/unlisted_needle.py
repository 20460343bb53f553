"""A needle that the text names and the header does not list.

**Why it matters.** The reader stands in the shop with the list. Looked at are sizes named beside the word “needle”
(“Change to 3.5 mm needles”), and double-pointed needles where none, and no long circular needle, are listed.

**Example.** `needles: [4 mm circular needle, 60 cm long]`, and in the text “Change to 3.5 mm needles.”

**Instead.** Add it to `needles:`, or write “the smaller needle” where it is listed already.
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import decimal
from sizewright.proof.needles import needles_of
from sizewright.proof.wording import Wording
from sizewright.read.needles import needle
from sizewright.read.pattern import Words
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("unlisted-needle", Level.WARNING, __doc__)

_NAMED = re.compile(
    r"\b(?:\d+(?:\.\d+)?\s?mm|U\.?[SK]\.?\s?(?:size\s|no\.\s?|#)?\d+(?:\.\d+)?)(?:\s?\([^()\n]{1,20}\))?"
    r"(?:\s(?:circular|straight|double-pointed|dpn|long|short|interchangeable))*\s(?:needles?|dpns?|circulars?)\b",
    re.I,
)
_POINTED = re.compile(r"\b(?:dpns?|double[- ]pointed needles?)\b", re.I)
_INSTEAD = re.compile(
    r"\b(?:dpns?|double[- ]pointed|long circular|magic|two circular|(?:80|100|120|150)[- ]?cm|small circ)", re.I
)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each size of needle that is not listed, and one for double-pointed needles."""
    header = worked.graded.pattern.header
    listed = needles_of(header)
    if not listed:
        return
    known = {mm for one in listed for size in one.sizes for mm in size.needles}
    wording = Wording.of(worked.graded.pattern)
    told = set()
    for found in _NAMED.finditer(wording.body):
        mm = needle(Words(wording.span(found), found.group())).sure
        if known and mm is not None and mm not in known and mm not in told:
            told.add(mm)
            message = f"The text names a needle of {decimal(mm)} mm, and the header lists none."
            yield RULE.at(wording.span(found), message, "Add it to “needles:”, or mend its size.")
    pointed = _POINTED.search(wording.body)
    everything = " / ".join((*(one.text for one in listed), *(words.text for words in header.notions)))
    if pointed and not _INSTEAD.search(everything):
        message = f"The text speaks of “{pointed.group()}”, and the header lists none."
        yield RULE.at(wording.span(pointed), message, "Add double-pointed needles, or a long circular needle.")
