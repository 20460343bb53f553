"""One stitch in the plural, or several in the singular: “1 sts”, “2 stitch”.

**Why it matters.** A reader stops: is the number wrong, or the word? In a list for all sizes, “1 (2, 2) sts”, the
plural is the trade's.

**Example.** `Row 3: Knit to last 1 sts, p1.`

**Instead.** `Row 3: Knit to last st, p1.`
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.wording import Wording, typed_here
from sizewright.read.inserts import Insert, typed_piece
from sizewright.read.names_used import inserts_of
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("wrong-plural", Level.WARNING, __doc__)

_PLURAL = {"sts": "st", "stitches": "stitch", "rows": "row", "rnds": "rnd", "rounds": "round", "markers": "marker"}
_SINGULAR = {one: many for many, one in _PLURAL.items()} | {"time": "times"}
# What stands before a number that does not stand alone: part of a list, of a fraction, of another number or word, or
# the number of a size, row, step or needle.
_BESIDE = re.compile(
    r"(?:[\w.,/(–—-]|[\d)] |\b(?:rows?|rnds?|rounds?|sizes?|step|chart|and|to|or|us|uk|no\.) )$", re.IGNORECASE
)
_ONE = re.compile(rf"(?:1|one) ({'|'.join(_PLURAL)})\b", re.I)
_MANY = re.compile(
    rf"([2-9]|[1-9]\d{{1,3}}) ({'|'.join(_SINGULAR)})"
    r"(?=[.,;:)\]]|\s*$|\s(?:to|before|from|remain\w*|left|on|in|at|and|after|de\w*creased|increased|dec|inc|more|held)\b)",
    re.I | re.M,
)
_LONGEST = 8  # signs of what is looked at before a number
_BEHIND = re.compile(r"[ \t]+(sts|stitches|rows|rnds|rounds|markers)\b")


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each typed number beside the wrong form, and each computed one that is 1 for everybody."""
    pattern = worked.graded.pattern
    wording = Wording.of(pattern)
    for form, words in ((_ONE, _PLURAL), (_MANY, _SINGULAR)):
        for found in form.finditer(wording.body):
            if _BESIDE.search(wording.body[max(0, found.start() - _LONGEST) : found.start()]):
                continue
            word = found.groups()[-1]
            right = words[word.casefold()]
            message = f"“{found.group()}” has a number and a word that do not go together."
            yield RULE.at(wording.span(found), message, f"Write “{found.group()[: -len(word)]}{right}”.")
    for insert in inserts_of(pattern):
        word = _behind(insert, wording)
        values = worked.graded.inserts.get(insert.key)
        if word and values is not None and all(values.values[at] == 1 for at, _ in worked.graded.read_in(insert.sizes)):
            message = f"“{typed_piece(insert)}” is 1 in every size, and “{word}” stands behind it."
            yield RULE.at(insert.span, message, f"Write “{_PLURAL[word]}”.")


def _behind(insert: Insert, wording: Wording) -> str:
    """The word in the plural behind braces of the source; "" where there is none, or where a plan has put them."""
    lines, span = wording.lines, insert.span
    found = _BEHIND.match(lines.text, lines.offset(span.end_line, span.end_column))
    return found[1] if found and typed_here(lines, insert) else ""
