"""In: a pattern of a project. Out: it graded, with all that reading, grading and the rules found, in reading order."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType

from sizewright.base.finding import Finding, Rule
from sizewright.grade.rules import GRADE_RULES
from sizewright.grade.run import grade
from sizewright.proof.acceptance import sort_out, sort_out_shared
from sizewright.proof.levels import Levels
from sizewright.proof.proofed import Elsewhere, Proofed
from sizewright.proof.rules import (
    broken_promise,
    broken_repeat,
    chart_against_words,
    child_without_caution,
    contrary_care,
    contrary_count,
    contrary_gauge,
    contrary_meaning,
    contrary_needle_sizes,
    contrary_number,
    contrary_schematic,
    count_never_reached,
    danger_without_caution,
    disagreeing_rows,
    doubled_marker,
    ease_out_of_range,
    empty_passage,
    flat_and_round,
    forgotten_stitches,
    gauge_outside_yarn,
    half_a_pair,
    idle_acceptance,
    idle_number,
    idle_term,
    implausible_yarn,
    length_passed,
    missing_care,
    missing_count,
    missing_gauge,
    missing_licence,
    missing_marker,
    missing_needles,
    missing_permission,
    missing_swatch,
    missing_turn,
    missing_yarn,
    missing_yarn_over,
    mixed_terms,
    moved_since_sign_off,
    needle_outside_yarn,
    negative_count,
    no_count,
    nothing_on_needle,
    refused_base,
    reserve_in_next_ball,
    rounded_too_far,
    row_too_long,
    same_as_neighbour,
    shaping_in_lace,
    shaping_unfinished,
    size_out_of_line,
    sizes_out_of_order,
    skipped_row,
    split_stitch,
    stale_departure,
    stitches_left_over,
    swapped_side,
    typed_though_computed,
    unclear_needle,
    unclear_pattern,
    uncounted_yarn,
    uneven_graft,
    uneven_parts,
    unexplained_abbreviation,
    units_apart,
    unknown_fabric,
    unknown_row,
    unknown_yarn,
    unlisted_needle,
    unlisted_notion,
    unlisted_technique,
    unmarked_departure,
    unsafe_level,
    unsigned,
    unused_needle,
    unused_notion,
    unused_technique,
    unused_yarn,
    wrong_count,
    wrong_face,
    wrong_multiple,
    wrong_plural,
    wrong_style,
)
from sizewright.proof.signing import signed_findings
from sizewright.proof.told_once import in_header, without_echoes
from sizewright.read.adapting.rules import ADAPTING_RULES, MISSING_BASE
from sizewright.read.pattern import Adaptation, Pattern
from sizewright.read.project import Project
from sizewright.read.rules import READ_RULES, UNREADABLE_HEADER
from sizewright.read.translating.rules import TRANSLATING_RULES
from sizewright.work.run import work
from sizewright.work.worked import Worked

Check = Callable[[Worked, Project], Iterator[Finding]]
ProjectCheck = Callable[[Project, Mapping[str, Rule]], Iterator[Finding]]

# Every rule of judgement, in the order they run.
CHECKS: tuple[tuple[Rule, Check], ...] = tuple(
    (module.RULE, module.check)
    for module in (
        broken_promise,
        broken_repeat,
        split_stitch,
        negative_count,
        wrong_style,
        count_never_reached,
        flat_and_round,
        forgotten_stitches,
        missing_marker,
        doubled_marker,
        missing_turn,
        missing_yarn_over,
        no_count,
        nothing_on_needle,
        row_too_long,
        stitches_left_over,
        swapped_side,
        unknown_fabric,
        unclear_pattern,
        unknown_row,
        wrong_count,
        uneven_graft,
        uneven_parts,
        length_passed,
        same_as_neighbour,
        wrong_multiple,
        disagreeing_rows,
        shaping_in_lace,
        shaping_unfinished,
        chart_against_words,
        sizes_out_of_order,
        size_out_of_line,
        ease_out_of_range,
        child_without_caution,
        danger_without_caution,
        missing_count,
        contrary_count,
        contrary_number,
        typed_though_computed,
        contrary_gauge,
        rounded_too_far,
        empty_passage,
        idle_number,
        skipped_row,
        units_apart,
        wrong_plural,
        mixed_terms,
        unlisted_notion,
        unused_notion,
        unlisted_needle,
        unused_needle,
        unlisted_technique,
        unused_technique,
        unexplained_abbreviation,
        contrary_meaning,
        unclear_needle,
        contrary_needle_sizes,
        contrary_schematic,
        gauge_outside_yarn,
        needle_outside_yarn,
        unknown_yarn,
        unused_yarn,
        uncounted_yarn,
        implausible_yarn,
        half_a_pair,
        reserve_in_next_ball,
        missing_gauge,
        missing_needles,
        missing_yarn,
        missing_swatch,
        missing_licence,
        missing_care,
        contrary_care,
        missing_permission,
        stale_departure,
        unmarked_departure,
        wrong_face,
    )
)

# Those of a whole project, which know every rule.
PROJECT_CHECKS: tuple[tuple[Rule, ProjectCheck], ...] = tuple(
    (module.RULE, module.check) for module in (unsafe_level, idle_term)
)

# Those that tell of what a header leaves out.
LEFT_OUT = tuple(
    module.RULE
    for module in (missing_gauge, missing_needles, missing_yarn, missing_swatch, missing_licence, missing_care)
)

# Every rule of the tool by its name, the stages' own among them.
RULES: Mapping[str, Rule] = MappingProxyType(
    {
        rule.name: rule
        for rule in (
            *READ_RULES,
            *ADAPTING_RULES,
            *TRANSLATING_RULES,
            *GRADE_RULES,
            *(rule for rule, _ in CHECKS),
            *(rule for rule, _ in PROJECT_CHECKS),
            idle_acceptance.RULE,
            moved_since_sign_off.RULE,
            unsigned.RULE,
            refused_base.RULE,
        )
    }
)


def proof(pattern: Pattern, project: Project) -> Proofed:
    """The pattern, graded and judged."""
    worked = work(grade(pattern))
    findings = _found(worked, project)
    if pattern.adapts is not None:
        findings = tuple(_own(pattern.header.title, pattern.adapts, findings, project))
    levels = Levels.of(project.studio, RULES)
    found = sort_out(pattern, tuple(levels.weighed(findings)))
    signed = signed_findings(worked, found.accepted, project.studio)
    left = (*found.left, *levels.weighed((*idle_acceptance.idle(found, RULES), *signed)))
    return Proofed(worked, tuple(sorted(left, key=Finding.place_key)), found.accepted)


def _found(worked: Worked, project: Project) -> tuple[Finding, ...]:
    """All that reading, grading and the rules find in a pattern."""
    findings = [finding for finding in project.findings if _in(finding, worked.graded.pattern)]
    if any(finding.rule == UNREADABLE_HEADER.name for finding in findings):
        return tuple(in_header(worked.graded.pattern, findings))
    unread = any(finding.rule == MISSING_BASE.name for finding in findings)
    findings.extend(worked.graded.findings)
    for rule, check in CHECKS:
        if not (unread and rule in LEFT_OUT):  # what a base says that is not there is not known
            findings.extend(check(worked, project))
    return tuple(without_echoes(findings))


def _own(title: str, adapts: Adaptation, findings: tuple[Finding, ...], project: Project) -> Iterator[Finding]:
    """What is found in an adaptation and not in its base alone, and whether the base is sound."""
    of_base = _found(work(grade(adapts.base)), replace(project, findings=adapts.found))
    known = {_placed(finding) for finding in of_base}
    for finding in findings:
        if _placed(finding) not in known:
            in_base = finding.span is not None and finding.span.shown.source != finding.span.source
            yield replace(finding, message=f"In “{title}”, based on this: {finding.message}") if in_base else finding
    yield from refused_base.of_base(adapts, tuple(Levels.of(project.studio, RULES).weighed(of_base)))


def _placed(finding: Finding) -> Finding:
    return replace(finding, span=finding.span.shown) if finding.span else finding


def elsewhere(project: Project) -> Elsewhere:
    """What was found outside the patterns: in the studio's file, tables, pictures, and in pages with their numbers."""
    pages = (*project.pages, *project.techniques)
    sources = {source for one in (*project.patterns, *pages) for source in one.sources}
    found = [finding for finding in project.findings if finding.span is None or finding.span.source not in sources]
    for _, check in PROJECT_CHECKS:
        found.extend(check(project, RULES))
    levels = Levels.of(project.studio, RULES)
    several = [sort_out_shared(project.translations, tuple(levels.weighed(found)))]
    for page in pages:
        own = (*(finding for finding in project.findings if _in(finding, page)), *grade(page).findings)
        several.append(sort_out(page, tuple(levels.weighed(own))))
    left = (finding for one in several for finding in (*one.left, *levels.weighed(idle_acceptance.idle(one, RULES))))
    return Elsewhere(tuple(left), tuple(accepted for one in several for accepted in one.accepted))


def _in(finding: Finding, pattern: Pattern) -> bool:
    return finding.span is not None and finding.span.source in pattern.sources
