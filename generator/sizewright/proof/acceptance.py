"""In: the findings of a pattern, and what its header accepts. Out: those that are left, and those accepted, with why.

An acceptance fits a finding of its rule on a line that holds its words (below its heading, in its sizes). It is for one
line: where it fits findings of several, none of them is accepted, and it is told. What cannot be printed cannot be
accepted either.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from sizewright.base.finding import Finding
from sizewright.base.place import Span
from sizewright.proof.levels import FIRM
from sizewright.read.acceptance import Acceptance
from sizewright.read.pattern import Heading, Pattern


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
    """The findings of a pattern by what its header accepts; `idle` tells how many lines an acceptance fits."""
    accepted: dict[Finding, Acceptance] = {}
    idle: list[tuple[Acceptance, int]] = []
    for one in pattern.header.accepted:
        fitting = [finding for finding in findings if _fits(pattern, one, finding)]
        lines = {finding.span.line if finding.span else 0 for finding in fitting}
        if len(lines) == 1:
            accepted.update((finding, one) for finding in fitting)
        else:
            idle.append((one, len(lines)))
    left = tuple(finding for finding in findings if finding not in accepted)
    return Sorted(left, tuple(Accepted(*pair) for pair in accepted.items()), tuple(idle))


def _fits(pattern: Pattern, one: Acceptance, finding: Finding) -> bool:
    if finding.rule != one.rule.text or finding.rule in FIRM:
        return False
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
