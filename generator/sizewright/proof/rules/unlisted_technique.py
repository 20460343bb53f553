"""A stitch that a technique of the studio teaches, in a pattern that does not list the technique.

**Why it matters.** The list of techniques tells a reader what the pattern asks for, and links to the page that shows
it. Looked at are abbreviations such as k2tog or m1l; what every knitter can do, knit, purl, cast on, needs no list.

**Example.** `techniques: [long-tail-cast-on]` in a hat whose crown is worked with k2tog, which a technique teaches

**Instead.** `techniques: [long-tail-cast-on, decreases]`
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.wording import Wording
from sizewright.read.project import Project
from sizewright.read.terms import TERMS
from sizewright.work.worked import Worked

RULE = Rule("unlisted-technique", Level.WARNING, __doc__)

# What every knitter can do, and words that are no stitches.
_BASIC = frozenset(
    [
        "bo",
        "co",
        "k",
        "p",
        "st",
        "sl",
        "rep",
        "rem",
        "rnd",
        "tog",
        "m",
        "pm",
        "sm",
        "rs",
        "ws",
        "dec",
        "inc",
        "mc",
        "cc",
        "cn",
        "dpn",
        "psso",
        "tbl",
        "wyib",
        "wyif",
    ],
)


def check(worked: Worked, project: Project) -> Iterator[Finding]:
    """A finding at the first stitch of each technique that a list of techniques leaves out."""
    pattern = worked.graded.pattern
    listed = {words.text for words in pattern.header.techniques}
    if not listed:
        return
    wording = Wording.of(pattern)
    special = {term.term.casefold() for term in TERMS} - _BASIC
    shown = {words.text.casefold() for one in project.techniques if one.name in listed for words in one.header.terms}
    for technique in project.techniques:
        taught = {words.text.casefold() for words in technique.header.terms} & special - shown
        stitches = "|".join(sorted(map(re.escape, taught), key=len, reverse=True))
        found = re.search(rf"\b(?:{stitches})\d*\b", wording.instructions, re.I) if taught else None
        if found and technique.name not in listed:
            message = f"“{found.group()}” is taught in “{technique.header.title}”, which the pattern does not list."
            yield RULE.at(wording.span(found), message, f"Add “{technique.name}” to “techniques:”.")
