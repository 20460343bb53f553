"""In: YAML text. Out: scalars, lists and mappings as they were typed, each with its place, and what is wrong.

YAML's own reading of scalars is not used: it turns `no`, `010`, `12:30` and `1.10` into other values, and drops
repeated keys. Built from parser events, so that hostile nesting or aliases cost nothing.
"""

from dataclasses import dataclass
from typing import Protocol

import yaml

from sizewright.base.finding import Finding
from sizewright.base.place import Lines, Span
from sizewright.read.rules import REPEATED_KEY, UNREADABLE_HEADER
from sizewright.read.typed_numbers import shortened

_DEEPEST = 12
_NO_LINE_ENDS = dict.fromkeys(map(ord, "\x85\u2028\u2029"), " ")

# What the reader of YAML says, and how a person would: what is wrong, and how to mend it.
_QUOTES = "Put a value that holds “: ” or begins with a sign in quotes."
_MARGIN = "Begin it as far from the margin as the lines it belongs with, with spaces, not tabs."
_CLOSE = "Close it, or put the value in quotes."
_SAID = {
    "mapping values are not allowed in this context": ("a second “: ” stands in it, or spaces before it", _QUOTES),
    "did not find expected ',' or '}'": ("a “,” or “}” is missing", _CLOSE),
    "did not find expected ',' or ']'": ("a “,” or “]” is missing", _CLOSE),
    "did not find expected key": ("“key: value” was expected here", _MARGIN),
    "did not find expected '-' indicator": ("a “-” was expected here, as in the lines before", _MARGIN),
    "did not find expected node content": ("a value is missing", _QUOTES),
    "could not find expected ':'": ("a “:” is missing", "Write “key: value”."),
    "found a tab character that violates indentation": ("a tab stands where spaces belong", _MARGIN),
    "found character that cannot start any token": ("no value begins with such a sign, or with a tab", _QUOTES),
    "found unexpected end of stream": ("a quote or bracket that is opened in it is never closed", _CLOSE),
    "control characters are not allowed": ("there is a sign in it that cannot be seen", "Type the line anew."),
}
_Loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@dataclass(frozen=True, slots=True)
class Scalar:
    """One value, as typed. `start` is the offset of its first character in the file, behind a quote."""

    span: Span
    text: str
    start: int
    quoted: bool


@dataclass(frozen=True, slots=True)
class Listing:
    """A list."""

    span: Span
    items: tuple["Node", ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A mapping; its keys are in the order they stand."""

    span: Span
    entries: tuple[tuple[Scalar, "Node"], ...]


Node = Scalar | Listing | Table


class _Mark(Protocol):
    line: int
    column: int


class _Unreadable(Exception):  # noqa: N818 -- carries a finding to the door of this module
    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding


class _Builder:
    """Builds the tree from events; `first_line` is the line of the file, from 1, where the YAML begins."""

    def __init__(self, lines: Lines, first_line: int) -> None:
        self.lines = lines
        self.first_line = first_line
        self.findings: list[Finding] = []

    def offset(self, mark: _Mark | None) -> int:
        assert mark is not None  # noqa: S101 -- events of a parser always carry their marks
        line = min(mark.line + self.first_line, len(self.lines.lines))
        column = min(mark.column, len(self.lines.lines[line - 1])) + 1
        return self.lines.offset(line, column)

    def span(self, event: yaml.Event) -> Span:
        return self.lines.span(self.offset(event.start_mark), self.offset(event.end_mark))

    def build(self, text: str) -> Node | None:
        """The one document of a text, or None where there is nothing."""
        open_nodes: list[tuple[yaml.Event, list[Node]]] = []
        root: Node | None = None
        for event in yaml.parse(text, Loader=_Loader):
            self._refuse_extras(event, root, len(open_nodes))
            node = self._finished(event, open_nodes)
            if node is None:
                continue
            if open_nodes:
                open_nodes[-1][1].append(node)
            else:
                root = node
        return root

    def _refuse_extras(self, event: yaml.Event, root: Node | None, depth: int) -> None:
        if isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None):
            raise self._fault(event, "“&name” and “*name” (anchors) are not used here.", "Write the value out.")
        if isinstance(event, yaml.DocumentStartEvent) and root is not None:
            raise self._fault(event, "Here begins a second header.", "Keep one.")
        if getattr(event, "tag", None):
            raise self._fault(event, "“!…” (a tag) is not used here.", "Put the value in quotes.")
        if depth > _DEEPEST:
            raise self._fault(event, "These values are nested too deeply.", "No key needs more than three levels.")

    def _fault(self, event: yaml.Event, message: str, mend: str) -> _Unreadable:
        return _Unreadable(UNREADABLE_HEADER.at(self.span(event), message, mend))

    def _finished(self, event: yaml.Event, open_nodes: list[tuple[yaml.Event, list[Node]]]) -> Node | None:
        """The node an event completes; None where it only opens one."""
        match event:
            case yaml.ScalarEvent():
                quoted = event.style in ("'", '"')
                start = self.offset(event.start_mark) + (1 if quoted else 0)
                return Scalar(self.span(event), event.value, start, quoted)
            case yaml.MappingStartEvent() | yaml.SequenceStartEvent():
                open_nodes.append((event, []))
            case yaml.SequenceEndEvent():
                opened, items = open_nodes.pop()
                return Listing(self._between(opened, event), tuple(items))
            case yaml.MappingEndEvent():
                opened, items = open_nodes.pop()
                return self._table(self._between(opened, event), items)
        return None

    def _between(self, first: yaml.Event, last: yaml.Event) -> Span:
        return self.lines.span(self.offset(first.start_mark), self.offset(last.end_mark))

    def _table(self, span: Span, items: list[Node]) -> Table:
        entries: dict[str, tuple[Scalar, Node]] = {}
        for key, value in zip(items[::2], items[1::2], strict=True):
            if not isinstance(key, Scalar):
                raise _Unreadable(UNREADABLE_HEADER.at(key.span, "A key must be a word.", "Write “key: value”."))
            if key.text in entries:
                first = entries[key.text][0].span.line
                message = f"“{key.text}” is written twice; it stands in line {first} already."
                self.findings.append(REPEATED_KEY.at(key.span, message, "Keep one of them."))
                continue
            entries[key.text] = (key, value)
        return Table(span, tuple(entries.values()))


def read_yaml(lines: Lines, first_line: int, end_line: int) -> tuple[Node | None, tuple[Finding, ...]]:
    """The tree of the lines from `first_line` up to `end_line` (from 1, end exclusive), and what is wrong with it."""
    builder = _Builder(lines, first_line)
    # YAML would take these for the ends of lines, and every place behind them would be another.
    text = "\n".join(lines.lines[first_line - 1 : end_line - 1]).translate(_NO_LINE_ENDS) + "\n"
    try:
        return builder.build(text), tuple(builder.findings)
    except _Unreadable as fault:
        return None, (*builder.findings, fault.finding)
    except yaml.YAMLError as fault:
        return None, (*builder.findings, _yaml_finding(builder, fault))


def _yaml_finding(builder: _Builder, fault: yaml.YAMLError) -> Finding:
    lines = builder.lines.lines
    marks = [mark for name in ("problem_mark", "context_mark") if (mark := getattr(fault, name, None)) is not None]
    numbers = [min(mark.line + builder.first_line, len(lines)) for mark in marks] or [builder.first_line]
    # What is opened and never closed is noticed at the end, where nothing stands: told where it was opened.
    line = next((number for number in numbers if lines[number - 1].strip(" \t-")), numbers[0])
    span = builder.lines.whole_line(line)
    said = getattr(fault, "problem", None) or getattr(fault, "reason", None) or "it is not YAML"
    words, mend = _SAID.get(said, (said, _QUOTES))
    return UNREADABLE_HEADER.at(span, f"“{shortened(lines[line - 1])}” cannot be read: {words}.", mend)
