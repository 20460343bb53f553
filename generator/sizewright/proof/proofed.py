"""What proofing gives: a pattern with its numbers and everything that was found in it, in reading order."""

from dataclasses import dataclass

from sizewright.base.finding import Finding, has_error
from sizewright.grade.graded import Graded


@dataclass(frozen=True, slots=True)
class Proofed:
    """A graded pattern and all findings of all stages."""

    graded: Graded
    findings: tuple[Finding, ...]

    @property
    def refused(self) -> bool:
        """Whether it may not be published."""
        return has_error(self.findings)
