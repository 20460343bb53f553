"""What proofing gives: a pattern with its numbers and all that was found in it, in reading order, and what else was."""

from dataclasses import dataclass

from sizewright.base.finding import Finding, has_error
from sizewright.grade.graded import Graded
from sizewright.proof.acceptance import Accepted
from sizewright.work.worked import Worked


@dataclass(frozen=True, slots=True)
class Proofed:
    """A pattern carried out, all findings of all stages, and beside them those that are accepted at their place."""

    worked: Worked
    findings: tuple[Finding, ...]
    accepted: tuple[Accepted, ...] = ()

    @property
    def graded(self) -> Graded:
        """The pattern with its numbers."""
        return self.worked.graded

    @property
    def refused(self) -> bool:
        """Whether it may not be published."""
        return has_error(self.findings)


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """What was found outside of patterns, and what of it is accepted at its place."""

    findings: tuple[Finding, ...]
    accepted: tuple[Accepted, ...] = ()
