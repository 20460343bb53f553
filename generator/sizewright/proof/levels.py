"""In: what a studio says of the rules. Out: the findings as it weighs them.

A warning may be turned off or made an error. An error may be made a warning with a reason, and is never turned off; one
without which a number could not be printed or worked out stays an error.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from sizewright.base.finding import Finding, Level, Rule
from sizewright.grade.rules import GRADE_RULES
from sizewright.proof.rules import negative_count, no_count, wrong_style
from sizewright.read.acceptance import LevelSet
from sizewright.read.project import Studio
from sizewright.read.rules import READ_RULES
from sizewright.read.translating.rules import UNREADABLE_TRANSLATION

# Errors behind which there is nothing to print: numbers that have no value, and words that were not read.
FIRM = frozenset(
    rule.name
    for rule in (
        *READ_RULES,
        *GRADE_RULES,
        UNREADABLE_TRANSLATION,
        wrong_style.RULE,
        negative_count.RULE,
        no_count.RULE,
    )
    if rule.level is Level.ERROR
)


@dataclass(frozen=True, slots=True)
class Levels:
    """The rules as one studio weighs them: None for those that are not looked for."""

    by_rule: Mapping[str, Level | None]

    @classmethod
    def of(cls, studio: Studio, rules: Mapping[str, Rule]) -> "Levels":
        """The levels; what a studio may not set is left as it is."""
        levels: dict[str, Level | None] = {name: None for name, rule in rules.items() if rule.asked}
        for said in studio.levels:
            rule = rules.get(said.rule.text)
            if rule is not None and may_be_set(said, rule):
                levels[rule.name] = None if said.level.text == "off" else Level(said.level.text)
        return cls(levels)

    def weighed(self, findings: Iterable[Finding]) -> Iterator[Finding]:
        """The findings that are looked for, at their levels."""
        for finding in findings:
            level = self.by_rule.get(finding.rule, finding.level)
            if level is not None:
                yield finding if level is finding.level else replace(finding, level=level)


def may_be_set(said: LevelSet, rule: Rule) -> bool:
    """Whether a studio may weigh a rule so."""
    if rule.level is Level.WARNING or said.level.text == "error":
        return True
    return said.level.text == "warning" and rule.name not in FIRM and said.reason is not None
