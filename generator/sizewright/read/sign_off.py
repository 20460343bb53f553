"""In: the file beside a pattern that says what somebody signed off. Out: its records, or a finding; nothing is guessed.

A line is one record, its parts between bars: the kind, the name, and a value for each size, or one where all agree.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from sizewright.base.finding import Finding
from sizewright.base.place import Lines, Span
from sizewright.read.rules import UNREADABLE_SIGN_OFF

SUFFIX = ".sign-off"
FIRST = ("sign-off", "format 1")
BAR = " | "
NOTHING = "–"
KINDS = ("quantity", "fact", "row", "does", "text", "accepted")
_HEAD = ("by", "on", "sizes")


@dataclass(frozen=True, slots=True)
class Record:
    """One thing that was signed off: its kind, its name, and what it was in each size."""

    kind: str
    name: str
    values: tuple[str, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class SignOff:
    """Who signed a pattern off, when, as they gave it, and everything that it was then."""

    span: Span
    by: str
    on: str
    sizes: tuple[str, ...]
    records: tuple[Record, ...]


def read_sign_off(lines: Lines) -> SignOff | Finding:
    """The records of a file, or what is wrong with it."""
    rows = [(number, line.split(BAR)) for number, line in enumerate(map(str.strip, lines.lines), start=1) if line]
    if not rows or tuple(rows[0][1]) != FIRST:
        return _fault(lines, 1, f"This file does not begin with “{BAR.join(FIRST)}”.")
    head = dict(zip(_HEAD, rows[1:], strict=False))
    for key in _HEAD:
        number, parts = head.get(key, (min(len(lines.lines), len(rows)), [""]))
        if parts[0] != key or len(parts) < 2 or (key != "sizes" and len(parts) > 2):
            return _fault(lines, number, f"Here a line “{key}{BAR}…” was expected.")
    sizes = tuple(head["sizes"][1][1:])
    records = []
    for number, parts in rows[1 + len(_HEAD) :]:
        record = _record(lines, number, parts, len(sizes))
        if record is None:
            return _fault(lines, number, "This line is no record with a value for each size.")
        records.append(record)
    return SignOff(lines.whole_line(1), head["by"][1][1], head["on"][1][1], sizes, tuple(records))


def _record(lines: Lines, number: int, parts: Sequence[str], sizes: int) -> Record | None:
    kind, *rest = parts
    if kind not in KINDS or len(rest) not in (2, 1 + sizes):
        return None
    values = tuple(rest[1:]) if len(rest) == 1 + sizes else (rest[1],) * sizes
    return Record(kind, rest[0], values, lines.whole_line(number))


def _fault(lines: Lines, number: int, message: str) -> Finding:
    span = lines.whole_line(max(1, min(number, len(lines.lines)))) if lines.lines else None
    return UNREADABLE_SIGN_OFF.at(span, message, "Take the file as it was written, or sign the pattern off again.")


def lone_sign_offs(paths: Iterable[Path], typed: Callable[[Path], str]) -> Iterator[Finding]:
    """A finding for each file of a sign-off that has no pattern beside it."""
    for path in paths:
        if not path.with_suffix(".md").is_file():
            message = f"{typed(path)} belongs to no pattern: there is no {path.stem}.md beside it."
            yield UNREADABLE_SIGN_OFF.at(None, message, "Name it like its pattern, or take it away.")
