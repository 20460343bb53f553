"""In: what was proofed. Out: one JSON object for other programs, exact values as strings."""

import json
from collections.abc import Mapping, Sequence
from fractions import Fraction
from importlib.resources import files

from sizewright import command
from sizewright.base.finding import Finding
from sizewright.base.place import Span
from sizewright.base.units import base_unit
from sizewright.command.proofing import Checked, Proofing
from sizewright.command.report_text import counted
from sizewright.grade.graded import Named
from sizewright.publish.departures_data import departures_data
from sizewright.publish.yarn_data import yarn_data
from sizewright.work.worked import Entry, StitchPattern

Json = str | int | None | Sequence["Json"] | Mapping[str, "Json"]


# The version of the keys below and of `proof.schema.json`, which describes them: it rises when one goes or changes.
VERSION = 1


def json_report(proofing: Proofing) -> bytes:
    """The whole report, in UTF-8, with a line end; the same input always gives the same bytes."""
    counts = {f"{level}s": count for level, count in counted(proofing.findings).items()}
    report: Json = {
        "version": VERSION,
        "patterns": [_pattern(one) for one in proofing.checked],
        "findings": [{"source": _source(finding), **_finding(finding)} for finding in proofing.apart],
        "accepted": [
            {"source": _source(one.finding), **_finding(one.finding), "reason": one.reason}
            for one in proofing.apart_accepted
        ],
        "summary": {"patterns": len(proofing.checked), **counts},
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
        **_worked(one),
        **departures_data(one.proofed.worked),
        "findings": [_found(finding, one) for finding in one.findings],
        "accepted": [{**_found(accepted.finding, one), "reason": accepted.reason} for accepted in one.accepted],
    }


def _worked(one: Checked) -> dict[str, Json]:
    """The rows and stitch patterns as they were carried out; a count is null in a size that does not have the row."""
    worked = one.proofed.worked
    return {
        "rows": [{**_row(entry), **_line(entry.span, one)} for entry in worked.entries],
        "stitch_patterns": [{**_stitch_pattern(found), **_line(found.span, one)} for found in worked.stitch_patterns],
        "yarn": [{**yarn_data(need), **_line(need.yarn.span, one)} for need in worked.yarns],
    }


def _line(span: Span, one: Checked) -> dict[str, Json]:
    """The line of a place; `source` is given only where it is in another file, such as a base or a shared table."""
    source, line = one.opened.shown(span.shown.source), span.shown.line
    return {"line": line} if source == one.source else {"line": line, "source": source}


def _row(entry: Entry) -> dict[str, Json]:
    """One written direction; `times` are the rows it was worked, `declared` where its effect is said and not proved."""
    return {
        "piece": entry.piece,
        "label": entry.label,
        "before": list(entry.before),
        "after": list(entry.after),
        "times": list(entry.rows),
        "declared": entry.declared,
    }


def _stitch_pattern(pattern: StitchPattern) -> dict[str, Json]:
    """One stitch pattern; `multiple` is null where its rows fit no count together."""
    return {
        "name": pattern.name,
        "multiple": pattern.multiple,
        "plus": pattern.plus,
        "rows": pattern.rows,
    }


def _quantity(named: Named, one: Checked) -> Json:
    """One quantity; `source` is given only where it comes from another file, such as a table of measurements."""
    return {
        "name": named.name,
        "unit": base_unit(named.result.dimension),
        "formula": " ".join(named.formula.text.split()) if named.formula else None,
        "relies_on": list(named.relies_on),
        "values": _exact(named.result.values),
        "unrounded": _exact(named.result.unrounded),
        **_line(named.span, one),
    }


def _exact(values: tuple[Fraction, ...]) -> list[str]:
    return [str(value) for value in values]


def _found(finding: Finding, one: Checked) -> dict[str, Json]:
    """A finding in a pattern; `source` is given only where it is in another file, such as the base it is based on."""
    told, source = _finding(finding), _source(finding)
    return told if source in (None, one.source) else {**told, "source": source}


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
