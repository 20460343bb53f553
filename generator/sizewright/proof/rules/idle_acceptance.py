"""An acceptance of a header, or in a file of translations, that fits no finding any more, or findings on several lines.

**Why it matters.** The reason was given for one place. Where the line was changed and the finding is gone, the
acceptance would wait for the next fault and silence it; where it fits several lines, nobody looked at all of them.

**Example.** `accepted: [{rule: missing-count, text: "Rnd 5:", reason: …}]`, and there is no such finding

**Instead.** Take the entry or the remark out; or quote more of the line, or name the heading above it: `under: Crown`.
"""

from collections.abc import Iterator, Mapping

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.nearest import did_you_mean
from sizewright.proof.acceptance import Sorted
from sizewright.proof.levels import FIRM
from sizewright.read.acceptance import Acceptance

RULE = Rule("idle-acceptance", Level.WARNING, __doc__)


def idle(found: Sorted, rules: Mapping[str, Rule]) -> Iterator[Finding]:
    """A finding for each acceptance that accepts nothing, but for those of a base: what they were for may be gone."""
    for acceptance, lines in found.idle:
        if acceptance.span.shown.source == acceptance.span.source:
            yield RULE.at(acceptance.span, *_said(acceptance, lines, rules))


def _said(acceptance: Acceptance, lines: int, rules: Mapping[str, Rule]) -> tuple[str, str]:
    name = acceptance.rule.text
    if name not in rules:
        return f"“{name}” is no rule.", did_you_mean(name, list(rules), "“sizewright rule” lists them all.")
    if name in FIRM:
        return f"“{name}” cannot be accepted: what it finds cannot be printed.", "Mend it, and take the entry out."
    if lines:
        mend = "Quote more of the line, or name the heading above it: “under: …”."
        return f"This fits findings of “{name}” on {lines} lines, and accepts none of them.", mend
    if acceptance.beside:
        mend = "Take the remark out, or put it before the words in whose translation something is found."
        return f"Nothing is found by “{name}” in the pair behind this.", mend
    if acceptance.text is None:
        mend = "Quote words of the line where it is found: “text: …”; or take the entry out."
        return f"Nothing is found by “{name}” in the header as a whole.", mend
    return f"Nothing is found by “{name}” where these words stand.", "Take the entry out, or mend its words."
