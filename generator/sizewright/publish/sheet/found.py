"""In: what was found in a pattern. Out: it as a sheet shows it, and what of it stands on the lines of a place."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from sizewright.base.finding import Finding
from sizewright.base.place import Span
from sizewright.proof.proofed import Proofed
from sizewright.proof.run import RULES
from sizewright.publish.sheet.view import FoundView, RuleView
from sizewright.read.markdown import html_of
from sizewright.read.pattern import Pattern


@dataclass(frozen=True, slots=True)
class Found:
    """The findings of a pattern in reading order, those accepted beside them, each with its place."""

    source: str
    views: tuple[tuple[Finding, FoundView], ...]

    @classmethod
    def of(cls, proofed: Proofed) -> "Found":
        """Everything that was found in a pattern."""
        pattern = proofed.graded.pattern
        found = [(finding, "") for finding in proofed.findings]
        found += [(one.finding, one.reason) for one in proofed.accepted]
        views = (
            (finding, _view(finding, pattern, number, reason)) for number, (finding, reason) in enumerate(found, 1)
        )
        return cls(pattern.source, tuple(views))

    def left(self) -> tuple[FoundView, ...]:
        """Those that nothing accepts."""
        return tuple(view for _, view in self.views if not view.reason)

    def accepted(self) -> tuple[FoundView, ...]:
        """Those that are let pass, with the reasons."""
        return tuple(view for _, view in self.views if view.reason)

    def at(self, *spans: Span) -> tuple[FoundView, ...]:
        """What stands on the lines of any of some places."""
        return tuple(
            view for finding, view in self.views if finding.span and any(_on(finding.span, one) for one in spans)
        )


def apart_view(finding: Finding, number: int, reason: str) -> FoundView:
    """A finding outside of every pattern; its place stands before its message. `reason` is why it is accepted."""
    place = f"{finding.span}: " if finding.span else ""
    message = f"{place}{finding.message}"
    return FoundView(f"found--{number}", str(finding.level), finding.rule, message, finding.mend, None, "", "", reason)


def rule_views(found: Sequence[FoundView]) -> Iterator[RuleView]:
    """The pages of the rules that found something, by their names."""
    for name in sorted({one.rule for one in found} & set(RULES)):
        yield RuleView(name, str(RULES[name].level), _page(RULES[name].page))


def _view(finding: Finding, pattern: Pattern, number: int, reason: str) -> FoundView:
    span = finding.span
    own = span if span is not None and span.source == pattern.source else None
    return FoundView(
        f"found--{number}",
        str(finding.level),
        finding.rule,
        finding.message if own or span is None else f"{span}: {finding.message}",
        finding.mend,
        own.shown.line if own else None,
        _quoted(pattern.line_at(own)) if own else "",
        ", ".join(finding.sizes),
        reason,
    )


def _quoted(line: str) -> str:
    """The line of a source; the rule that opens a header says nothing."""
    return "" if line.strip() == "---" else line.strip()


def _on(finding: Span, place: Span) -> bool:
    """Whether a finding begins on the lines of a place; what is told of a whole header begins on its first."""
    return (finding.source, finding.home is None) == (
        place.source,
        place.home is None,
    ) and place.line <= finding.line <= place.end_line


def _page(text: str) -> Markup:
    """The page of a rule, which is Markdown of our own; nothing of a pattern is in it."""
    return Markup(html_of(text.strip()))  # noqa: S704
