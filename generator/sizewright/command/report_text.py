"""In: what was proofed. Out: the findings for a person: place, message, the line with a mark under it, mend."""

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import groupby

from rich.cells import cell_len
from rich.console import Console
from rich.text import Text

from sizewright.base.finding import Finding, Level
from sizewright.base.place import Span
from sizewright.command.proofing import Proofing
from sizewright.command.terminal import print_indented, safe, untabbed
from sizewright.proof.acceptance import Accepted

_COLOURS = {Level.ERROR: "bold red", Level.WARNING: "bold yellow", Level.NOTE: "bold cyan"}
_LEVELS = tuple(Level)  # the gravest first
_INDENT = 4
_MANY = 8  # findings; so many fill a screen, each with its line and its mend
_MOST_RULES = 16  # so that the counts and what sums them up are seen at once, on 24 lines


def print_report(console: Console, proofing: Proofing, more: str = "") -> None:
    """Prints every finding, file by file, what sums them up, and last what else was done."""
    print_findings(console, proofing)
    _print_accepted(console, proofing.accepted)
    _print_counts(console, proofing.findings)
    console.print(Text(summary(proofing), style="bold"), soft_wrap=True)
    if more:
        console.print(Text(safe(more)), soft_wrap=True)


def print_findings(console: Console, proofing: Proofing) -> None:
    """Prints every finding under the name of its file, and nothing where there is none."""
    for source, group in groupby(proofing.findings, key=_source):
        title = proofing.title(source)
        if title or source:
            heading = (
                Text(safe(title), style="bold").append("  " if title else "").append(safe(source), style="not bold")
            )
            print_indented(console, heading, rest=_INDENT)
        for finding in group:
            _print_finding(console, finding, proofing)
        console.print()


def _print_counts(console: Console, findings: Sequence[Finding]) -> None:
    """Prints how often each rule found something, most first, where that is more than a screen's worth of findings."""
    if len(findings) < _MANY:
        return
    levels = {finding.rule: finding.level for finding in sorted(findings, key=_lightness, reverse=True)}
    counts = sorted(Counter(finding.rule for finding in findings).items(), key=lambda one: (-one[1], one[0]))
    counts.sort(key=lambda one: _LEVELS.index(levels[one[0]]))
    console.print(Text("By rule; “sizewright rule NAME” tells what each is about", style="bold"), soft_wrap=True)
    for rule, count in counts[:_MOST_RULES]:
        level = Text(f"{levels[rule]:<7}", style=_COLOURS[levels[rule]])
        console.print(Text(f"  {count:>4}  ").append(level).append(f"  {rule}", style="not bold"), soft_wrap=True)
    if len(counts) > _MOST_RULES:
        others = sum(count for _, count in counts[_MOST_RULES:])
        console.print(Text(f"  {others:>4}  of {len(counts) - _MOST_RULES} other rules"), soft_wrap=True)
    console.print()


def _lightness(finding: Finding) -> int:
    return _LEVELS.index(finding.level)


def _print_accepted(console: Console, accepted: Sequence[Accepted]) -> None:
    """Prints what is accepted at its place, with the reasons, and nothing where nothing is."""
    if not accepted:
        return
    console.print(Text("Accepted", style="bold"))
    for one in accepted:
        _print_head(console, one.finding, "accepted", "dim")
        _print_labelled(console, "reason", one.reason)
    console.print()


def _source(finding: Finding) -> str:
    return finding.span.source if finding.span else ""


def _print_finding(console: Console, finding: Finding, proofing: Proofing) -> None:
    _print_head(console, finding, finding.level, _COLOURS[finding.level])
    line = proofing.line(finding.span)
    if finding.span and line is not None:
        _print_marked(console, finding.span, line, _COLOURS[finding.level])
    if finding.sizes:
        _print_labelled(console, "sizes", ", ".join(finding.sizes))
    if finding.mend:
        _print_labelled(console, "mend", finding.mend)


def _print_head(console: Console, finding: Finding, level: str, style: str) -> None:
    place = f"{safe(str(finding.span))}  " if finding.span else ""
    head = Text(place).append(level, style=style)
    head.append(f"  {safe(finding.message)}").append(f"  [{finding.rule}]", style="dim")
    print_indented(console, head, first=2, rest=_INDENT)


def _print_labelled(console: Console, label: str, words: str) -> None:
    text = Text(f"{label}: ", style="cyan").append(safe(words), style="not bold default")
    print_indented(console, text, first=_INDENT, rest=_INDENT + cell_len(label) + 2)


def _print_marked(console: Console, span: Span, line: str, style: str) -> None:
    """Prints the source line and the mark, both cut to the width of a terminal so that the place stays in view."""
    number = f"{' ' * _INDENT}{span.line} | "
    shown, start, width = marked(span, line)
    if console.is_terminal:
        shown, start, width = _in_view(shown, start, width, max(console.width - len(number), 16))
    console.print(Text(number, style="dim").append(shown, style="not dim"), soft_wrap=True)
    margin = f"{' ' * (len(number) - 2)}| "
    console.print(Text(margin, style="dim").append(" " * start + "^" * width, style=f"not dim {style}"), soft_wrap=True)


def marked(span: Span, line: str) -> tuple[str, int, int]:
    """The line as it is shown, the cell at which the mark begins and how many cells it is long.

    A span that goes on below is marked to the end of its first line; one that is empty has a mark of one cell.
    """
    end = span.end_column - 1 if span.end_line == span.line else len(line)
    before = untabbed(line[: span.column - 1])
    through = untabbed(line[: max(end, span.column - 1)])
    start = cell_len(before)
    return untabbed(line).rstrip(), start, max(1, cell_len(through.rstrip()) - start)


def _in_view(shown: str, start: int, width: int, room: int) -> tuple[str, int, int]:
    if cell_len(shown) <= room:
        return shown, start, min(width, room - start)
    first = max(0, min(start - room // 3, cell_len(shown) - room + 2))
    cut, lost = _dropped(shown, first)
    lead = "… " if lost else ""
    kept = _fitting(cut, room - len(lead) - 2)
    trail = " …" if kept != cut else ""
    begin = max(0, start - lost + len(lead))
    return lead + kept + trail, begin, max(1, min(width, room - begin))


def _dropped(text: str, cells: int) -> tuple[str, int]:
    """The text without its first cells, and how many were really dropped: a wide sign is not cut in two."""
    lost = 0
    for position, sign in enumerate(text):
        if lost >= cells:
            return text[position:], lost
        lost += cell_len(sign)
    return "", lost


def _fitting(text: str, cells: int) -> str:
    used = 0
    for position, sign in enumerate(text):
        used += cell_len(sign)
        if used > cells:
            return text[:position]
    return text


def summary(proofing: Proofing) -> str:
    """ "2 errors, 1 warning in 4 patterns", or what was proved where nothing was found."""
    counts = counted(proofing.findings)
    patterns = number(len(proofing.checked), "pattern")
    found = [number(count, level) for level, count in counts.items() if count]
    if proofing.accepted:
        found.append(f"{len(proofing.accepted)} accepted")
    if found:
        return f"{', '.join(found)} in {patterns}"
    sizes = number(sum(max(1, len(one.proofed.graded.sizes)) for one in proofing.checked), "size")
    quantities = sum(len(one.proofed.graded.quantities) for one in proofing.checked)
    worked_out = number(quantities, "quantity", "quantities")
    return f"{patterns}, {sizes}: {worked_out} worked out exactly, no findings"


def counted(findings: Sequence[Finding]) -> Mapping[Level, int]:
    """How many findings there are of each level."""
    return {level: sum(finding.level is level for finding in findings) for level in Level}


def number(count: int, word: str, plural: str = "") -> str:
    """A count with its word: "1 pattern", "2 patterns"."""
    return f"{count} {word if count == 1 else plural or word + 's'}"
