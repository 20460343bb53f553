"""In: what was proofed. Out: the findings in SARIF 2.1.0 (OASIS standard), for editors and review tools.

Every rule that found something is told with its page; sizes and mend of a finding are among its properties.
"""

import json
from importlib.metadata import version
from pathlib import Path
from urllib.parse import quote

from sizewright.base.finding import Finding, Rule
from sizewright.base.place import Span
from sizewright.command.proofing import Proofing
from sizewright.command.report_json import Json
from sizewright.proof.acceptance import Accepted
from sizewright.proof.run import RULES

_SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"


def sarif_report(proofing: Proofing) -> bytes:
    """The whole report, in UTF-8, with a line end; the same input always gives the same bytes."""
    found, accepted = proofing.findings, proofing.accepted
    names = sorted({finding.rule for finding in (*found, *(one.finding for one in accepted))})
    driver: Json = {
        "name": "sizewright",
        "version": version("sizewright"),
        "rules": [_rule(RULES[name]) for name in names],
    }
    run: Json = {
        "tool": {"driver": driver},
        "columnKind": "unicodeCodePoints",
        "results": [
            *(_result(finding, names.index(finding.rule)) for finding in found),
            *(_suppressed(one, names.index(one.finding.rule)) for one in accepted),
        ],
    }
    report: Json = {"$schema": _SCHEMA, "version": "2.1.0", "runs": [run]}
    return (json.dumps(report, ensure_ascii=False, indent=2) + "\n").encode("utf-8", "backslashreplace")


def _rule(rule: Rule) -> Json:
    return {
        "id": rule.name,
        "shortDescription": {"text": rule.gist},
        "help": {"text": rule.page.strip(), "markdown": rule.page.strip()},
        "defaultConfiguration": {"level": str(rule.level)},
    }


def _result(finding: Finding, index: int) -> dict[str, Json]:
    told: dict[str, Json] = {
        "ruleId": finding.rule,
        "ruleIndex": index,
        "level": str(finding.level),
        "message": {"text": f"{finding.message} {finding.mend}".strip()},
        "properties": {"sizes": list(finding.sizes), "mend": finding.mend},
    }
    return told if finding.span is None else {**told, "locations": [_location(finding.span)]}


def _suppressed(one: Accepted, index: int) -> Json:
    """A finding that is accepted in the source, with the reason (3.35 of the standard)."""
    told = _result(one.finding, index)
    return {**told, "suppressions": [{"kind": "inSource", "status": "accepted", "justification": one.reason}]}


def _location(span: Span) -> Json:
    """The place; SARIF counts lines and columns from 1 and ends behind the last sign, as a span does."""
    region: Json = {
        "startLine": span.line,
        "startColumn": span.column,
        "endLine": span.end_line,
        "endColumn": span.end_column,
    }
    return {"physicalLocation": {"artifactLocation": {"uri": _address(span.source)}, "region": region}}


def _address(source: str) -> str:
    path = Path(source)
    return path.as_uri() if path.is_absolute() else quote(path.as_posix())
