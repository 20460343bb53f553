"""In: a pattern of a project. Out: it graded, with all that reading, grading and the rules found, in reading order."""

from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType

from sizewright.base.finding import Finding, Rule
from sizewright.grade.graded import Graded
from sizewright.grade.rules import GRADE_RULES
from sizewright.grade.run import grade
from sizewright.proof.proofed import Proofed
from sizewright.proof.rules import (
    broken_promise,
    broken_repeat,
    child_without_caution,
    danger_without_caution,
    missing_gauge,
    missing_licence,
    missing_needles,
    missing_yarn,
    negative_count,
    sizes_out_of_order,
    split_stitch,
    wrong_style,
)
from sizewright.read.pattern import Pattern
from sizewright.read.project import Project
from sizewright.read.rules import READ_RULES

Check = Callable[[Graded, Project], Iterator[Finding]]

# Every rule of judgement, in the order they run.
CHECKS: tuple[tuple[Rule, Check], ...] = tuple(
    (module.RULE, module.check)
    for module in (
        broken_promise,
        broken_repeat,
        split_stitch,
        negative_count,
        wrong_style,
        sizes_out_of_order,
        child_without_caution,
        danger_without_caution,
        missing_gauge,
        missing_needles,
        missing_yarn,
        missing_licence,
    )
)

# Every rule of the tool by its name, the stages' own among them.
RULES: Mapping[str, Rule] = MappingProxyType(
    {rule.name: rule for rule in (*READ_RULES, *GRADE_RULES, *(rule for rule, _ in CHECKS))}
)


def proof(pattern: Pattern, project: Project) -> Proofed:
    """The pattern, graded and judged."""
    graded = grade(pattern)
    findings = [finding for finding in project.findings if _in(finding, pattern)]
    findings.extend(graded.findings)
    for _, check in CHECKS:
        findings.extend(check(graded, project))
    return Proofed(graded, tuple(sorted(findings, key=Finding.place_key)))


def elsewhere(project: Project) -> tuple[Finding, ...]:
    """What reading found outside the patterns: in the studio's file, tables, pages and pictures."""
    sources = {pattern.source for pattern in project.patterns}
    return tuple(finding for finding in project.findings if finding.span is None or finding.span.source not in sources)


def _in(finding: Finding, pattern: Pattern) -> bool:
    return finding.span is not None and finding.span.source == pattern.source
