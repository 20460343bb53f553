"""In: the lines of `NAME.CODE.md`. Out: its pairs, the words of a source and their translation, and what is wrong.

The words stand in an HTML comment that begins a line, the translation behind it up to the next comment. A comment with
one dash more, `<!--- … --->`, is a remark and belongs to no pair; `<!--- accepted RULE: reason --->` lets pass what
that rule finds in the pair behind it.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from sizewright.base.finding import Finding
from sizewright.base.place import Lines, Span
from sizewright.read.acceptance import Acceptance
from sizewright.read.inserts import Words
from sizewright.read.translating.rules import TRANSLATING_RULES, UNREADABLE_TRANSLATION
from sizewright.read.typed_numbers import shortened

OPEN, CLOSE = "<!--", "-->"
_REMARK = "<!---"
_ACCEPTED = re.compile(r"accepted\s+(?P<rule>[a-z]+(?:-[a-z]+)+)\s*:\s*(?P<reason>\S.*)", re.DOTALL)
_BROKEN_CLOSE = "-- >"  # "-->" at the end of a line among the words
_RULES = frozenset(rule.name for rule in TRANSLATING_RULES)


@dataclass(frozen=True, slots=True)
class Pair:
    """Words of a source and their translation, "" where there is none yet; `span` is where the words begin.

    `at` is where the translation begins, `remarks` are those of the translator before the pair, and `accepted` those
    of them that let a finding pass.
    """

    span: Span
    words: str
    translation: str
    at: Span
    remarks: tuple[str, ...] = ()
    accepted: tuple[Acceptance, ...] = ()

    @property
    def key(self) -> str:
        """By what the words are found in the source."""
        return key_of(self.words)


def key_of(words: str) -> str:
    """Words as they are compared: white space and line ends apart."""
    return " ".join(words.replace(_BROKEN_CLOSE, CLOSE).split())


def commented(words: str) -> str:
    """Words as the comment of a pair."""
    return f"{OPEN} {re.sub(r'-->(?=[ ]*$)', _BROKEN_CLOSE, words, flags=re.M)} {CLOSE}"


def remark(words: str) -> str:
    """A remark, for the translator alone."""
    return f"{_REMARK} {words} --->"


@dataclass(frozen=True, slots=True)
class PairFile:
    """All pairs of a file in their order, those without a translation among them, and the remarks behind the last.

    `accepted` are the findings that any of its remarks let pass.
    """

    pairs: tuple[Pair, ...]
    remarks: tuple[str, ...]
    findings: tuple[Finding, ...]
    accepted: tuple[Acceptance, ...] = ()


def read_pairs(lines: Lines) -> PairFile:
    """The pairs of a file."""
    reader = _Reader(lines)
    pairs = tuple(reader.pairs())
    accepted = (*(one for pair in pairs for one in pair.accepted), *reader.accepted)
    return PairFile(pairs, tuple(reader.remarks), (*reader.findings, *_told_twice(pairs)), accepted)


class _Reader:
    def __init__(self, lines: Lines) -> None:
        self.lines = lines
        self.at = 1
        self.findings: list[Finding] = []
        self.remarks: list[str] = []  # those before the next pair
        self.accepted: list[Acceptance] = []

    def pairs(self) -> Iterator[Pair]:
        self.judge_text(self.text(), 1)
        while self.at <= len(self.lines.lines):
            first, is_remark = self.at, self.line().startswith(_REMARK)
            words = self.comment()
            if words is None:
                self.judge_open(first)
                continue
            start, translation = self.at, self.text()
            if is_remark:
                self.remark(words.removesuffix("-").rstrip(), self.lines.whole_line(first))
                self.judge_text(translation, start)
            else:
                begun = self.begun(start, first)
                accepted = tuple(replace(one, beside=(*one.beside, first, begun.line)) for one in self.accepted)
                yield Pair(self.lines.whole_line(first), words, translation, begun, tuple(self.remarks), accepted)
                self.remarks.clear()
                self.accepted.clear()

    def remark(self, words: str, span: Span) -> None:
        self.remarks.append(words)
        found = _ACCEPTED.fullmatch(words)
        if found is not None:
            rule, reason = Words(span, found["rule"]), Words(span, " ".join(found["reason"].split()))
            self.accepted.append(Acceptance(span, rule, reason, beside=(span.line,)))
        elif words.removesuffix(":").removeprefix("accepted ").strip() in _RULES and words.startswith("accepted "):
            self.fault(
                span, "This accepts a finding without saying why.", f"Write “{remark('accepted RULE: reason')}”."
            )

    def judge_open(self, first: int) -> None:
        """A comment without an end: reading goes on at the next that begins a line."""
        message = f"The comment “{shortened(self.line())}” is not closed at the end of a line."
        self.fault(self.lines.whole_line(first), message, f"Write “{CLOSE}” there, and the translation in a new line.")
        self.at = first + 1
        self.text()

    def line(self) -> str:
        return self.lines.lines[self.at - 1]

    def comment(self) -> str | None:
        """The words of the comment that begins in this line; None where it has no end."""
        found: list[str] = []
        opening = _REMARK if self.line().startswith(_REMARK) else OPEN
        for number in range(self.at, len(self.lines.lines) + 1):
            line = self.lines.lines[number - 1].rstrip()
            if number == self.at:
                line = line.removeprefix(opening)
            elif line.startswith(OPEN):
                return None
            if line.endswith(CLOSE):
                self.at = number + 1
                return "\n".join((*found, line.removesuffix(CLOSE))).strip()
            found.append(line)
        return None

    def text(self) -> str:
        """What stands before the next comment, without the empty lines around it."""
        start = self.at
        while self.at <= len(self.lines.lines) and not self.line().startswith(OPEN):
            self.at += 1
        return "\n".join(self.lines.lines[start - 1 : self.at - 1]).strip("\n").rstrip()

    def begun(self, start: int, otherwise: int) -> Span:
        """The first line of a translation; that of its words where there is none."""
        written = (number for number in range(start, self.at) if self.lines.lines[number - 1].strip())
        return self.lines.whole_line(next(written, otherwise))

    def judge_text(self, text: str, start: int) -> None:
        """Text that belongs to no pair is told of, a header by its name."""
        if not text.strip():
            return
        mend = "Write the words of the source before it, in a comment: “<!-- Brim -->”."
        if start == 1 and text.startswith("---"):
            message = "A translation has no header: title and sizes are those of the source."
            mend = "Take the lines between “---” away, and write “<!-- the words of the source -->” before each text."
        else:
            message = f"“{shortened(text)}” stands behind no words of the source."
        self.fault(self.begun(start, start), message, mend)

    def fault(self, span: Span, message: str, mend: str) -> None:
        self.findings.append(UNREADABLE_TRANSLATION.at(span, message, mend))


def _told_twice(pairs: tuple[Pair, ...]) -> Iterator[Finding]:
    """Words that are translated twice, and not alike."""
    first: dict[str, Pair] = {}
    for pair in pairs:
        if not pair.translation:
            continue
        other = first.setdefault(pair.key, pair)
        if key_of(other.translation) != key_of(pair.translation):
            message = f"“{shortened(pair.words)}” is translated otherwise in {other.span.line_near(pair.span)}."
            yield UNREADABLE_TRANSLATION.at(pair.span, message, "Keep one of the two.")
