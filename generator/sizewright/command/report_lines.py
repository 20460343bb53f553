"""In: what was proofed. Out: one line a finding, for scripts: place, level, rule, message, sizes, mend.

What is accepted comes last, with the reason in the place of the mend.
"""

from sizewright.base.finding import Finding
from sizewright.command.proofing import Proofing
from sizewright.command.terminal import safe


def lines_report(proofing: Proofing) -> bytes:
    """The lines, in UTF-8; nothing at all where nothing was found."""
    found = [_line(finding, finding.level, finding.mend) for finding in proofing.findings]
    found.extend(_line(one.finding, "accepted", one.reason) for one in proofing.accepted)
    return "".join(f"{line}\n" for line in found).encode("utf-8", "backslashreplace")


def _line(finding: Finding, level: str, more: str) -> str:
    place = f"{finding.span}: " if finding.span else ""
    sizes = f" (sizes: {', '.join(finding.sizes)})" if finding.sizes else ""
    return safe(" ".join(f"{place}{level}: {finding.rule}: {finding.message}{sizes} {more}".split()))
