"""An abbreviation that is explained otherwise than it is counted.

**Why it matters.** The rows are carried out with the stitches an abbreviation stands for, and the reader works what
the explanation says. Where “k3tog” is explained as two together, every count behind it is wrong for one of the two.

**Example.** `**k2tog**: knit 3 together` in the text; in `content/stitches.yaml` `{term: dd, meaning: "double decrease:
2 stitches fewer", uses: 2, makes: 1}`

**Instead.** Mend the explanation, or `uses` and `makes`.
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.place import Span
from sizewright.proof.actions import actions_of
from sizewright.proof.meanings import meant
from sizewright.proof.wording import Wording
from sizewright.read.notation.stitches import Stitch
from sizewright.read.notation.tree import Work
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("contrary-meaning", Level.WARNING, __doc__)

# A line of a key: a mark of a list or table, the abbreviation, a colon, stroke or sign of equality, and the meaning.
_KEY = re.compile(
    r"^[ \t]*(?:[-*+|][ \t]+)?[*_`]*([\w/&]+(?: (?:[LR]P?C|tbl))?)[*_`]*[ \t]*(?:[:=|–—]|-[ \t])[*_`]*[ \t]*(.+)$", re.M
)


def check(worked: Worked, project: Project) -> Iterator[Finding]:
    """A finding for each line of a key in the text, and each own term used, that contradicts its stitch."""
    stitches = {
        action.stitch.term: action.stitch for action in actions_of(worked.graded.pattern) if isinstance(action, Work)
    }
    spelled = {spelling.casefold(): stitch for stitch in stitches.values() for spelling in stitch.spellings}
    wording = Wording.of(worked.graded.pattern)
    for found in _KEY.finditer(wording.prose):
        stitch = spelled.get(found[1].casefold())
        said = _against(stitch, found[2]) if stitch else ""
        if stitch and said:
            message = f"“{found[1]}” is explained as {said}, and is counted as {_counted(stitch)}."
            yield RULE.at(wording.span(found, 2), message, "Mend the explanation, or use another abbreviation.")
    for term in project.terms:
        own = spelled.get(term.term.casefold()) if term.span is not None and term.uses is not None else None
        said = _against(own, term.meaning) if own else ""
        if own and said:
            message = (
                f"“{term.term}” of content/stitches.yaml is explained as {said}, and is counted as {_counted(own)}."
            )
            yield RULE.at(_first(worked, own), message, "Mend its meaning, or its “uses” and “makes”.")


def _first(worked: Worked, stitch: Stitch) -> Span:
    """Where a stitch is worked first."""
    works = (action for action in actions_of(worked.graded.pattern) if isinstance(action, Work))
    return min(action.span for action in works if action.stitch.term == stitch.term)


def _against(stitch: Stitch, meaning: str) -> str:
    """What a meaning says that its stitch does not do; "" where they agree as far as it says."""
    said = meant(meaning)
    if said.uses is not None and said.uses != stitch.uses:
        return f"{said.uses} sts worked"
    if said.change is not None and said.change != stitch.makes - stitch.uses:
        return _change(said.change)
    return ""


def _counted(stitch: Stitch) -> str:
    return f"{stitch.uses} worked into {stitch.makes}, {_change(stitch.makes - stitch.uses)}"


def _change(change: int) -> str:
    if not change:
        return "as many sts as before"
    return f"{abs(change)} {'st' if abs(change) == 1 else 'sts'} {'more' if change > 0 else 'fewer'}"
