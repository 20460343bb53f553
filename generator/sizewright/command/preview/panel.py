"""In: what was found. Out: the panel that lies over a page of the preview, and the page with the panel in it."""

from collections.abc import Sequence
from html import escape
from itertools import groupby

from sizewright.base.finding import Finding
from sizewright.command.proofing import Proofing
from sizewright.command.report_text import summary

OWN = "-preview"  # the first step of the preview's own addresses; no page of a site begins with a hyphen

_BARE = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>{heading}</title></head>
<body><h1>{heading}</h1>{body}<p><a href="/">To the start page</a></p></body></html>
"""

NO_PAGE = _BARE.format(heading="No page here", body="<p>The preview has no page at this address.</p>")


def faulty_paper(faults: Sequence[str]) -> str:
    """The page that stands for a PDF that cannot be shown."""
    body = "".join(f"<p>{escape(fault)}</p>" for fault in faults)
    return _BARE.format(heading="This PDF cannot be laid out", body=body)


def panel_of(proofing: Proofing) -> str:
    """The findings as markup; "" where there are none. It stands open where there is an error, else folded."""
    findings = proofing.findings
    if not findings:
        return ""
    refused = [one.source for one in proofing.checked if one.proofed.refused]
    note = _note(refused) if refused else ""
    groups = groupby(findings, key=lambda finding: finding.span.source if finding.span else "")
    files = "".join(_file(proofing, source, tuple(group)) for source, group in groups)
    return _section(summary(proofing), note + files, is_error=proofing.refused)


def message_panel(heading: str, words: str) -> str:
    """A panel for what keeps the preview from reading the project at all."""
    return _section(heading, f"<p>{escape(words)}</p>", is_error=True)


def with_panel(page: str, panel: str, shown: str) -> str:
    """The page with the panel over it and the script that waits for the next state.

    The panel stands in a tree of its own, so that the styles of the theme and those of the panel do not meet.
    """
    framed = (
        f"""<div id="sizewright-panel"><template shadowrootmode="open"><link rel="stylesheet" href="/{OWN}/panel.css">\
{panel}</template></div>"""
        if panel
        else ""
    )
    added = f'{framed}<script src="/{OWN}/panel.js" data-shown="{escape(shown)}"></script>'
    before, end, after = page.rpartition("</body>")
    return f"{before}{added}{end}{after}" if end else page + added


def _section(heading: str, body: str, *, is_error: bool) -> str:
    kind, opened = ("errors", " open") if is_error else ("warnings", "")
    return (
        f'<section class="{kind}" aria-label="Findings"><details{opened}><summary>{escape(heading)}</summary>'
        f'<div class="body">{body}</div></details></section>'
    )


def _note(refused: Sequence[str]) -> str:
    names = ", ".join(f"<code>{escape(source)}</code>" for source in refused)
    return f"<p>Refused: {names}. What the page shows of it is the last version without errors.</p>"


def _file(proofing: Proofing, source: str, findings: Sequence[Finding]) -> str:
    title = escape(proofing.title(source))
    items = "".join(_item(proofing, finding) for finding in findings)
    return f"<h2>{title} <code>{escape(source)}</code></h2><ol>{items}</ol>"


def _item(proofing: Proofing, finding: Finding) -> str:
    place = f"line {finding.span.line}, column {finding.span.column}: " if finding.span else ""
    parts = [
        f'<p><span class="level">{finding.level}</span> {place}{escape(finding.message)}</p>',
        _excerpt(proofing, finding),
    ]
    if finding.sizes:
        parts.append(f"<p>Sizes: {escape(', '.join(finding.sizes))}</p>")
    if finding.mend:
        parts.append(f"<p>Mend: {escape(finding.mend)}</p>")
    return f'<li class="{finding.level}">{"".join(parts)}</li>'


def _excerpt(proofing: Proofing, finding: Finding) -> str:
    span, line = finding.span, proofing.line(finding.span)
    if span is None or line is None:
        return ""
    start = span.column - 1
    end = span.end_column - 1 if span.end_line == span.line else len(line)
    before, at, after = line[:start], line[start:end], line[end:]
    return f"<pre>{escape(before)}<mark>{escape(at)}</mark>{escape(after)}</pre>"
