"""In: what is found in a pattern. Out: the same without what only follows from another finding that tells the cause."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from sizewright.base.finding import Finding
from sizewright.base.place import Span
from sizewright.grade.rules import MISSING_MEASUREMENT, UNKNOWN_NAME
from sizewright.read.pattern import Pattern
from sizewright.read.rules import NOT_UNDERSTOOD, UNREADABLE_FORMULA, UNREADABLE_HEADER, WRONG_VALUE


def in_header(pattern: Pattern, findings: Sequence[Finding]) -> Iterator[Finding]:
    """What is told of a header that cannot be read: all else hangs on it."""
    header = pattern.header.span
    for finding in findings:
        span = finding.span
        if finding.rule == UNREADABLE_HEADER.name:
            yield replace(finding, mend=f"{finding.mend} All else is judged when the header can be read.")
        elif span is not None and span.source == header.source and span.line < header.end_line:
            yield finding


def without_echoes(findings: Sequence[Finding]) -> Iterator[Finding]:
    """The findings without what only follows from others.

    A `{name}` is not understood as nothing defines the name; one size lacks a measurement as a value of it is unread.
    """
    unknown = {_braced(one.span) for one in findings if one.rule == UNKNOWN_NAME.name and one.span is not None}
    for finding in findings:
        if finding.rule == NOT_UNDERSTOOD.name and finding.span in unknown:
            continue
        if not (finding.rule == MISSING_MEASUREMENT.name and len(finding.sizes) == 1 and _unread(finding, findings)):
            yield finding


def _unread(lacking: Finding, findings: Sequence[Finding]) -> bool:
    """Whether a value of the size that lacks a measurement could not be read, in the one line it stands in."""
    size = lacking.span
    values = (one.span for one in findings if one.rule in (UNREADABLE_FORMULA.name, WRONG_VALUE.name))
    return size is not None and any(
        span is not None and (span.source, span.line) == (size.source, size.line) for span in values
    )


def _braced(name: Span) -> Span:
    """The place of a name with the braces around it."""
    return replace(name, column=name.column - 1, end_column=name.end_column + 1)
