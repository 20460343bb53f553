"""In: the body of an adaptation's own file. Out: the departures written in it, and what is wrong with them.

```
::: instead of row Rnd 1 under Brim
because: a firmer rib
was: 1a2b3c4d
Rnd 1: *K1, p1; rep from * to end.
:::
```
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding
from sizewright.base.nearest import nearest
from sizewright.base.place import Lines
from sizewright.read.adapting.rules import UNREAD_DEPARTURE
from sizewright.read.departure import Called, Part, Verb
from sizewright.read.inserts import Words
from sizewright.read.rules import UNCLOSED

_VERBS = tuple(verb for verb in Verb if verb is not Verb.WITH)
_PARTS = tuple(part for part in Part if part is not Part.KEY)
_OPENING = re.compile(r":::+[ \t]*(?P<words>\S.*)")
_CLOSING = re.compile(r":::+[ \t]*")
_FENCE = re.compile(r"[ \t]*(`{3,}|~{3,})(.*)")
_DEPARTURE = re.compile(rf"(?P<verb>{'|'.join(_VERBS)})\s+(?P<part>{'|'.join(_PARTS)})\s+(?P<name>\S.*)", re.IGNORECASE)
_REMARK = re.compile(r"(?P<key>because|was):[ \t]*(?P<text>.*)")
_QUOTES = "\"“”'"
_WRITE = "Write for example “::: instead of section Brim”, and behind it “because: …”."
_KINDS = f"A departure begins with one of: {', '.join(_VERBS)}; then one of: {', '.join(_PARTS)}; then its name."


def read_directives(lines: Lines, first: int) -> tuple[tuple[Called, ...], tuple[Finding, ...]]:
    """The departures of a body that begins in the line `first`, from 1, in the order they stand."""
    reader = _Reader(lines)
    return tuple(reader.read(first)), tuple(reader.findings)


class _Reader:
    def __init__(self, lines: Lines) -> None:
        self.lines = lines
        self.findings: list[Finding] = []

    def read(self, first: int) -> Iterator[Called]:
        number, last = first, len(self.lines.lines)
        stray = False
        while number <= last:
            text = self.lines.lines[number - 1].strip()
            opening = _OPENING.fullmatch(text)
            if opening is None:
                if text and not stray:
                    self.fault(number, f"“{_short(text)}” stands in no departure.", _WRITE)
                stray = bool(text)
                number += 1
                continue
            end = self.closing(number)
            called = self.departure(number, opening["words"], end)
            if called is not None:
                yield called
            number, stray = end + 1, False

    def fault(self, number: int, message: str, mend: str) -> None:
        self.findings.append(UNREAD_DEPARTURE.at(self.lines.whole_line(number), message, mend))

    def closing(self, opening: int) -> int:
        """The line that closes what is opened in a line; passages and blocks may stand within."""
        depth, fence = 1, ""
        for number in range(opening + 1, len(self.lines.lines) + 1):
            text = self.lines.lines[number - 1].strip()
            marks = _FENCE.fullmatch(text)
            if marks and not fence:
                fence = marks[1]
            elif marks and marks[1].startswith(fence) and not marks[2].strip():
                fence = ""
            elif not fence and text.startswith(":::"):
                depth += -1 if _CLOSING.fullmatch(text) else 1
                if not depth:
                    return number
        message = f"“{self.lines.lines[opening - 1].strip()}” is never closed."
        mend = "Close the departure with a line “:::”."
        self.findings.append(UNCLOSED.at(self.lines.whole_line(opening), message, mend))
        return len(self.lines.lines) + 1

    def departure(self, opening: int, words: str, end: int) -> Called | None:
        found = _DEPARTURE.fullmatch(words.strip())
        if found is None:
            meant = nearest(" ".join(words.split()[:3]), [f"{verb} {part}" for verb in _VERBS for part in _PARTS])
            mend = f"Did you mean “::: {meant} …”? {_KINDS}" if meant else _KINDS
            self.fault(opening, f"“::: {_short(words)}” is no departure.", mend)
            return None
        verb, part = Verb(found["verb"].casefold()), Part(found["part"].casefold())
        name, under = _named(found["name"], part)
        remarks, first = self.remarks(opening + 1, end)
        first, stop = self.trimmed(first, end)
        because = remarks.get("because")
        if because is None or not because.text:
            mend = "Add the line “because: …” behind it: what a reader should know who knitted the base before."
            self.fault(opening, f"“::: {_short(words)}” does not say why.", mend)
            return None
        called = Called(
            self.lines.whole_line(opening), verb, part, name, under, because, remarks.get("was"), first, stop
        )
        return called if self.fits(called, opening) else None

    def remarks(self, first: int, end: int) -> tuple[dict[str, Words], int]:
        """What is said of a departure at its top, and the line behind it; set further in, a line goes on."""
        found: dict[str, Words] = {}
        number = first
        while number < end and (match := _REMARK.fullmatch(self.lines.lines[number - 1].rstrip())):
            span, said = self.lines.whole_line(number), [match["text"].strip()]
            while number + 1 < end and self.lines.lines[number][:1] in (" ", "\t") and self.lines.lines[number].strip():
                number += 1
                said.append(self.lines.lines[number - 1].strip())
            found[match["key"]] = Words(span, " ".join(said))
            number += 1
        return found, number

    def trimmed(self, first: int, end: int) -> tuple[int, int]:
        """Lines without the empty ones before and behind."""
        while first < end and not self.lines.lines[first - 1].strip():
            first += 1
        while end > first and not self.lines.lines[end - 2].strip():
            end -= 1
        return first, end

    def fits(self, called: Called, opening: int) -> bool:
        """Whether something stands in a departure just where something must."""
        message = ""
        if called.verb in (Verb.WITHOUT, Verb.INSIDE_OUT) and called.first < called.end:
            message, mend = f"Something stands in “::: {called.title}”.", "Only its reason may stand in it."
        elif called.verb not in (Verb.WITHOUT, Verb.INSIDE_OUT) and called.first >= called.end:
            message, mend = f"Nothing stands in “::: {called.title}”.", "Write what is to be there, or “::: without …”."
        elif called.verb is Verb.INSIDE_OUT and called.part is not Part.SECTION:
            message, mend = f"“{called.part}” cannot be turned inside out.", "Turn the section it stands in."
        if message:
            self.fault(opening, message, mend)
        return not message


def _named(words: str, part: Part) -> tuple[str, str]:
    """The name of a place, and for a row the heading it stands under."""
    name, under = words.strip(), ""
    if part is Part.ROW:
        before, found, behind = name.rpartition(" under ")
        name, under = (before, behind) if found else (name, "")
    return name.strip().strip(_QUOTES), under.strip().strip(_QUOTES)


def _short(text: str) -> str:
    return text if len(text) <= 60 else f"{text[:57]}…"
