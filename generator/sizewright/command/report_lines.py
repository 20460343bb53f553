"""In: what was proofed. Out: one line a finding, for scripts: place, level, rule, message, sizes, mend."""

from sizewright.base.finding import Finding
from sizewright.command.proofing import Proofing
from sizewright.command.terminal import safe


def lines_report(proofing: Proofing) -> bytes:
    """The lines, in UTF-8; nothing at all where nothing was found."""
    return "".join(f"{_line(finding)}\n" for finding in proofing.findings).encode("utf-8", "backslashreplace")


def _line(finding: Finding) -> str:
    place = f"{finding.span}: " if finding.span else ""
    sizes = f" (sizes: {', '.join(finding.sizes)})" if finding.sizes else ""
    return safe(" ".join(f"{place}{finding.level}: {finding.rule}: {finding.message}{sizes} {finding.mend}".split()))
