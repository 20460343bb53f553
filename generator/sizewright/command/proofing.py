"""In: projects, read. Out: every pattern in them proofed, and all findings in the order a person reads the files."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import chain
from pathlib import Path

from sizewright.base.finding import Finding, has_error
from sizewright.base.place import Lines, Span
from sizewright.command.reading import Opened
from sizewright.proof.acceptance import Accepted
from sizewright.proof.proofed import Proofed
from sizewright.proof.run import elsewhere, proof
from sizewright.publish.progress import Progress
from sizewright.read.pattern import Pattern
from sizewright.read.project import Project


@dataclass(frozen=True, slots=True)
class Checked:
    """One pattern, proofed, with its findings placed as a person who stands here would type the path.

    `accepted` are findings that its header lets pass, each with the reason.
    """

    source: str
    proofed: Proofed
    opened: Opened = field(repr=False)
    findings: tuple[Finding, ...]
    accepted: tuple[Accepted, ...] = ()


@dataclass(frozen=True, slots=True)
class Proofing:
    """Everything one run proofed. `apart` are the findings of what is no pattern: pages, tables, the studio itself.

    `apart_accepted` is what is accepted there.
    """

    checked: tuple[Checked, ...]
    apart: tuple[Finding, ...]
    texts: Mapping[str, Pattern] = field(repr=False)
    apart_accepted: tuple[Accepted, ...] = ()

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All findings, file by file."""
        return _sorted(chain(self.apart, *(one.findings for one in self.checked)))

    @property
    def accepted(self) -> tuple[Accepted, ...]:
        """All that is accepted at its place, file by file."""
        return (*self.apart_accepted, *(accepted for one in self.checked for accepted in one.accepted))

    @property
    def refused(self) -> bool:
        """Whether anything may not be published as it is."""
        return has_error(self.findings)

    def title(self, source: str) -> str:
        """The title of a source, "" where it has none."""
        text = self.texts.get(source)
        return text.header.title if text else ""

    def line(self, span: Span | None) -> str | None:
        """The line of a source in which a span begins, or None where it cannot be shown."""
        if span is None:
            return None
        text = self.texts.get(span.source)
        lines = text.typed.lines if text else _lines_of_file(span.source)
        return lines[span.line - 1] if 0 < span.line <= len(lines) else None


def proof_opened(opened: Sequence[Opened], progress: Progress) -> Proofing:
    """Proofs every pattern of the projects. A source that two of them hold is proofed once."""
    patterns = {one.shown(pattern.source): (one, pattern) for one in opened for pattern in one.project.patterns}
    checked = []
    progress.start(len(patterns), "Proofing patterns")
    for source in sorted(patterns):
        one, pattern = patterns[source]
        checked.append(checked_of(one, source, proof(pattern, one.project)))
        progress.step()
    return gathered(opened, checked)


def checked_of(opened: Opened, source: str, proofed: Proofed) -> Checked:
    """A proofed pattern of a project, as a person here sees it."""
    accepted = _accepted(opened, proofed.accepted)
    return Checked(source, proofed, opened, _sorted(_placed(opened, proofed.findings)), accepted)


def _accepted(opened: Opened, several: Sequence[Accepted]) -> tuple[Accepted, ...]:
    placed = zip(_placed(opened, (one.finding for one in several)), several, strict=True)
    return tuple(sorted((replace(one, finding=finding) for finding, one in placed), key=_place_of))


def _place_of(one: Accepted) -> tuple[str, int, int, str]:
    return one.finding.place_key()


def gathered(opened: Sequence[Opened], checked: Sequence[Checked]) -> Proofing:
    """The proofed patterns, and what reading found in everything else."""
    apart: dict[Finding, None] = {}
    accepted: dict[Accepted, None] = {}
    texts: dict[str, Pattern] = {}
    for one in opened:
        found = elsewhere(one.project)
        apart.update(dict.fromkeys(_placed(one, found.findings)))
        accepted.update(dict.fromkeys(_accepted(one, found.accepted)))
        texts.update({one.shown(text.source): text for text in _texts(one.project)})
    return Proofing(tuple(checked), _sorted(apart), texts, tuple(accepted))


def _texts(project: Project) -> Iterator[Pattern]:
    return chain(project.patterns, project.pages, project.techniques)


def _placed(opened: Opened, findings: Iterable[Finding]) -> Iterator[Finding]:
    for finding in findings:
        span = finding.span.shown if finding.span else None
        yield replace(finding, span=replace(span, source=opened.shown(span.source))) if span else finding


def _sorted(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(sorted(findings, key=Finding.place_key))


def _lines_of_file(source: str) -> Sequence[str]:
    """The lines of a YAML file. It could be read a moment ago; if it cannot be any more, no line is shown."""
    try:
        return Lines(source, Path(source).read_text(encoding="utf-8-sig")).lines
    except (OSError, ValueError):
        return ()
