"""In: the findings of a source, and what it accepts of them. Out: those that are left, and those accepted, with why.

An acceptance fits a finding of its rule on a line that holds its words (below its heading, in its sizes). It is for one
line: where it fits findings of several, none of them is accepted, and it is told. What cannot be printed cannot be
accepted either. A remark in a file of translations accepts what is found in the pair behind it.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from sizewright.base.finding import Finding
from sizewright.base.place import Span
from sizewright.proof.levels import FIRM
from sizewright.read.acceptance import Acceptance
from sizewright.read.pattern import Heading, Pattern
from sizewright.read.translating.translation import Translation


@dataclass(frozen=True, slots=True)
class Accepted:
    """A finding that is let pass, and the acceptance that says why."""

    finding: Finding
    acceptance: Acceptance

    @property
    def reason(self) -> str:
        """Why it is let pass."""
        return self.acceptance.reason.text


@dataclass(frozen=True, slots=True)
class Sorted:
    """The findings that are left, those accepted, and the acceptances that fit nothing or more than one line."""

    left: tuple[Finding, ...]
    accepted: tuple[Accepted, ...]
    idle: tuple[tuple[Acceptance, int], ...]


def sort_out(pattern: Pattern, findings: Sequence[Finding]) -> Sorted:
    """The findings of a source by what its header and its translations accept."""
    said = (*pattern.header.accepted, *(one for told in pattern.translations for one in told.accepted))
    return _sorted_out(said, findings, lambda one, finding: _fits(pattern, one, finding))


def sort_out_shared(translations: Iterable[Translation], findings: Sequence[Finding]) -> Sorted:
    """The findings outside of every source, by what the translations of the studio's own words accept."""
    said = [one for told in translations for one in told.accepted]
    return _sorted_out(said, findings, lambda one, finding: _of_rule(one, finding) and _beside(one, finding))


def _sorted_out(
    said: Iterable[Acceptance], findings: Sequence[Finding], fits: Callable[[Acceptance, Finding], bool]
) -> Sorted:
    """`idle` tells how many lines an acceptance fits."""
    accepted: dict[Finding, Acceptance] = {}
    idle: list[tuple[Acceptance, int]] = []
    for one in said:
        fitting = [finding for finding in findings if fits(one, finding)]
        lines = {finding.span.line if finding.span else 0 for finding in fitting}
        if len(lines) == 1:
            accepted.update((finding, one) for finding in fitting)
        else:
            idle.append((one, len(lines)))
    left = tuple(finding for finding in findings if finding not in accepted)
    return Sorted(left, tuple(Accepted(*pair) for pair in accepted.items()), tuple(idle))


def _of_rule(one: Acceptance, finding: Finding) -> bool:
    return finding.rule == one.rule.text and finding.rule not in FIRM


def _beside(one: Acceptance, finding: Finding) -> bool:
    """Whether a finding stands in the pair of translations behind a remark, or on the line of the remark itself."""
    span = finding.span
    return span is not None and span.source == one.span.source and span.line in one.beside


def _fits(pattern: Pattern, one: Acceptance, finding: Finding) -> bool:
    if one.beside or not _of_rule(one, finding):
        return _of_rule(one, finding) and _beside(one, finding)
    if one.sizes and not set(finding.sizes) <= {size.text for size in one.sizes}:
        return False
    if finding.span is None or finding.span.source != pattern.source:
        return one.text is None
    if one.under is not None and one.under.text != _above(pattern, finding.span):
        return False
    if one.text is None:
        return finding.span.line == pattern.header.span.line
    return one.text.text in " ".join(pattern.line_at(finding.span).split())


def _above(pattern: Pattern, span: Span) -> str:
    """The heading above a place; none above a departure as such, which stands in no section."""
    found = ""
    for piece in pattern.body if span.home or not pattern.adapts else ():
        if isinstance(piece, Heading) and piece.span.line <= span.line:
            found = piece.text
    return found
