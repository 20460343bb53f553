"""In: what was proofed. Out: one JSON object for other programs, exact values as strings."""

import json
from collections.abc import Mapping, Sequence
from fractions import Fraction
from importlib.resources import files

from sizewright import command
from sizewright.base.finding import Finding
from sizewright.base.units import base_unit
from sizewright.command.proofing import Checked, Proofing
from sizewright.command.report_text import counted
from sizewright.grade.graded import Named
from sizewright.proof.proofed import Proofed
from sizewright.publish.yarn_data import yarn_data
from sizewright.work.worked import Entry, StitchPattern

Json = str | int | None | Sequence["Json"] | Mapping[str, "Json"]


# The version of the keys below and of `proof.schema.json`, which describes them: it rises when one goes or changes.
VERSION = 1


def json_report(proofing: Proofing) -> bytes:
    """The whole report, in UTF-8, with a line end; the same input always gives the same bytes."""
    errors, warnings = counted(proofing.findings)
    report: Json = {
        "version": VERSION,
        "patterns": [_pattern(one) for one in proofing.checked],
        "findings": [{"source": _source(finding), **_finding(finding)} for finding in proofing.apart],
        "summary": {"patterns": len(proofing.checked), "errors": errors, "warnings": warnings},
    }
    return (json.dumps(report, ensure_ascii=False, indent=2) + "\n").encode("utf-8", "backslashreplace")


def json_schema() -> bytes:
    """The JSON Schema of the report, as it is shipped."""
    return files(command).joinpath("proof.schema.json").read_bytes()


def _pattern(one: Checked) -> Json:
    graded = one.proofed.graded
    quantities = sorted(graded.quantities.values(), key=lambda named: (named.span, named.name))
    return {
        "source": one.source,
        "title": graded.pattern.header.title,
        "sizes": list(graded.sizes),
        "quantities": [_quantity(named, one) for named in quantities],
        **_worked(one.proofed),
        "findings": [_finding(finding) for finding in one.findings],
        "accepted": [{**_finding(accepted.finding), "reason": accepted.reason} for accepted in one.accepted],
    }


def _worked(one: Proofed) -> dict[str, Json]:
    """The rows and stitch patterns as they were carried out; a count is null in a size that does not have the row."""
    return {
        "rows": [_row(entry) for entry in one.worked.entries],
        "stitch_patterns": [_stitch_pattern(pattern) for pattern in one.worked.stitch_patterns],
        "yarn": [{**yarn_data(need), "line": need.yarn.span.line} for need in one.worked.yarns],
    }


def _row(entry: Entry) -> Json:
    """One written direction; `times` are the rows it was worked, `declared` where its effect is said and not proved."""
    return {
        "piece": entry.piece,
        "label": entry.label,
        "line": entry.span.line,
        "before": list(entry.before),
        "after": list(entry.after),
        "times": list(entry.rows),
        "declared": entry.declared,
    }


def _stitch_pattern(pattern: StitchPattern) -> Json:
    """One stitch pattern; `multiple` is null where its rows fit no count together."""
    return {
        "name": pattern.name,
        "multiple": pattern.multiple,
        "plus": pattern.plus,
        "rows": pattern.rows,
        "line": pattern.span.line,
    }


def _quantity(named: Named, one: Checked) -> Json:
    """One quantity; `source` is given only where it comes from another file, such as a table of measurements."""
    source = one.opened.shown(named.span.source)
    told: dict[str, Json] = {
        "name": named.name,
        "unit": base_unit(named.result.dimension),
        "formula": " ".join(named.formula.text.split()) if named.formula else None,
        "relies_on": list(named.relies_on),
        "values": _exact(named.result.values),
        "unrounded": _exact(named.result.unrounded),
        "line": named.span.line,
    }
    return told if source == one.source else {**told, "source": source}


def _exact(values: tuple[Fraction, ...]) -> list[str]:
    return [str(value) for value in values]


def _finding(finding: Finding) -> dict[str, Json]:
    return {
        "rule": finding.rule,
        "level": str(finding.level),
        "message": finding.message,
        "mend": finding.mend,
        "line": finding.span.line if finding.span else None,
        "column": finding.span.column if finding.span else None,
        "sizes": list(finding.sizes),
    }


def _source(finding: Finding) -> str | None:
    return finding.span.source if finding.span else None
