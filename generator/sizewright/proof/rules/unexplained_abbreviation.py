"""An abbreviation in the instructions that nothing explains: no list, no technique and no sentence of the text.

**Why it matters.** The tool knows many stitches and carries them out; the reader has the list of abbreviations and what
the pattern says. Local symbols vary, so every abbreviation is defined (craftstarstudios.com, joeliskitchen.com).

**Example.** `Row 5: K3, sssk, k to end.`, and no word of what sssk is

**Instead.** Add it to `content/stitches.yaml`, or explain it in the text: `**sssk**: slip 3 one by one as if to knit …`
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.place import Span
from sizewright.proof.actions import actions_of
from sizewright.proof.wording import Wording
from sizewright.read.notation.stitches import Stitch
from sizewright.read.notation.tree import Work
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("unexplained-abbreviation", Level.WARNING, __doc__)

_SPOKEN = re.compile(r"[^\W\d_]{5,}")  # a word of five letters is no abbreviation: "right twist", "make bobble"


def check(worked: Worked, project: Project) -> Iterator[Finding]:
    """A finding at the first of each abbreviation that no list, technique or sentence explains."""
    known = {spelling.casefold() for term in project.terms for spelling in term.spellings}
    known.update(words.text.casefold() for technique in project.techniques for words in technique.header.terms)
    wording = Wording.of(worked.graded.pattern)
    told: set[str] = set()
    for action in actions_of(worked.graded.pattern):
        if not isinstance(action, Work) or action.stitch.term in told or _explained(action.stitch, known):
            continue
        spellings, typed = action.stitch.spellings, _typed(action.span, wording)
        in_the_row = any(_close(word) in _close(typed) for word in spellings)  # and not in a chart, which has its key
        if in_the_row and not _SPOKEN.search(typed) and not any(_said(word, wording.prose) for word in spellings):
            told.add(action.stitch.term)
            message = f"“{action.stitch.term}” is used here, and nothing says what it means."
            mend = f"Explain it in the text, “{action.stitch.term}: …”, or in content/stitches.yaml."
            yield RULE.at(action.span, message, mend)


def _explained(stitch: Stitch, known: set[str]) -> bool:
    """Whether the list has the word, or every part of it: "k2tog tbl"."""
    spellings = (*stitch.spellings, stitch.term)
    return any(word.casefold() in known or set(word.casefold().split()) <= known for word in spellings)


def _typed(span: Span, wording: Wording) -> str:
    lines = wording.lines
    return lines.text[lines.offset(span.line, span.column) : lines.offset(span.end_line, span.end_column)]


def _close(word: str) -> str:
    return "".join(word.casefold().split())


def _said(word: str, prose: str) -> bool:
    """Whether the text explains a word: "mb: …", "**mb** = …", "make bobble (mb)", "| mb | make bobble |"."""
    escaped = re.escape(word)
    return (
        re.search(
            rf"(?<!\w){escaped}[*_`]*\s*(?:[:=|(–—]|-\s|stands for\b|means\b)|\([*_`]*{escaped}[*_`]*\)", prose, re.I
        )
        is not None
    )
