"""A level set in `site.yaml` for a rule that does not exist, or that would let a wrong number into print.

**Why it matters.** A studio may silence what it does not care for. But a count that does not come out is knitted by a
stranger: it is never silent, and made a warning only where somebody says why. What cannot be worked out cannot be
printed at all.

**Example.** `rules: {broken-repeat: off}`

**Instead.** `rules: {broken-repeat: {level: warning, reason: the samplers are read by one designer}}`; a warning may be
`off`, `warning` or `error` without a reason.
"""

from collections.abc import Iterator, Mapping

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.nearest import did_you_mean
from sizewright.proof.levels import FIRM, may_be_set
from sizewright.read.acceptance import LevelSet
from sizewright.read.project import Project

RULE = Rule("unsafe-level", Level.ERROR, __doc__)


def check(project: Project, rules: Mapping[str, Rule]) -> Iterator[Finding]:
    """A finding for each setting that is not followed."""
    for said in project.studio.levels:
        rule = rules.get(said.rule.text)
        if rule is None:
            mend = did_you_mean(said.rule.text, list(rules), "“sizewright rule” lists them all.")
            yield RULE.at(said.span, f"“{said.rule.text}” is no rule.", mend)
        elif not may_be_set(said, rule):
            yield RULE.at(said.span, *_refusal(said, rule))


def _refusal(said: LevelSet, rule: Rule) -> tuple[str, str]:
    if rule.name in FIRM:
        return f"“{rule.name}” stays an error: what it finds cannot be printed.", "Take the line out."
    mend = f"Write “{rule.name}: {{level: warning, reason: …}}”."
    if said.level.text == "off":
        return f"“{rule.name}” is an error, which is never turned off.", mend
    return f"“{rule.name}” is an error, and made a warning without a reason.", mend
