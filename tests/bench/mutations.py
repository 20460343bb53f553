"""In: the demo's patterns. Out: the share of planted slips that the proof catches, by kind, and each that it does not.

A slip is what a typist or a designer does to one token of an instruction: a count off by one, a k2 for a k3, a repeat
fewer, "to last 2 sts" for "to last 3 sts", a row number skipped, a decrease forgotten. Slips that change no count (a
purl for a knit, a decrease that leans the other way) are planted too, but stand apart: no count can tell them.
"""

import re
import shutil
import sys
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from sizewright.base.units import PLAIN, ROWS, STITCHES
from sizewright.grade.run import grade
from sizewright.proof.run import proof
from sizewright.read.folder import read_single

BLOCK = re.compile(r"^```(?:work|stitch)[^\n]*\n(.*?)^```", re.MULTILINE | re.DOTALL)
ROW = r"(?:row|rnd|round)s?"
# A number that is no part of a word such as k2tog or of braces; k3 and p10 are a stitch and its count.
NUMBER = re.compile(r"(?<![\w{}./])(?P<stitch>[kps]|sl )?(?P<number>\d+)(?![\w./]|[^{}\n]*\})", re.IGNORECASE)
BRACES = re.compile(r"\{[^{}\n]+\}")
# What a number says, by the words around it; "#" stands for the number itself.
KINDS = tuple(
    (kind, re.compile(words))
    for kind, words in (
        ("row number", rf"(?:^|rep |repeat |last )\s*{ROW} (?:\d+(?: to |-| and |, ))*#"),
        ("length", r"# ?(?:cm|mm|m|in|inches)\b"),
        ("repeat", rf"# (?:more )?times|#x\b|# {ROW}"),
        ("place", r"(?:to|until) (?:the )?last #|# sts? before"),
        ("stated multiple", r"(?:multiple of |plus )#"),
        ("promise", r"[(\[]# sts?\b"),
    )
)
SWAPS = {
    "decrease forgotten": (("k2tog", "k1"), ("ssk", "k1"), ("p2tog", "p1"), ("k3tog", "k2tog")),
    "increase forgotten": (("m1l", "k1"), ("m1r", "k1"), ("yo", "k1"), ("kfb", "k1")),
    "once for twice": (("twice", "once"), ("once", "twice")),
    "marker": (("sm", "rm"), ("pm, ", ""), ("sm, ", "")),
    "knit for purl": (("knit", "purl"), ("purl", "knit"), (r"k(?=\d|\{| to)", "p"), (r"p(?=\d|\{| to)", "k")),
    "other lean": (("k2tog", "ssk"), ("ssk", "k2tog"), ("m1l", "m1r"), ("m1r", "m1l")),
}
NO_WORD = r"(?!\w)"
UNSEEN = ("knit for purl", "other lean", "length")


@dataclass(frozen=True, slots=True)
class Slip:
    """One slip in a source: the line, what stands there, what was typed instead, and the whole text with it."""

    source: str
    line: int
    kind: str
    before: str
    after: str
    text: str


class Slips:
    """The slips of one source; `units` are those of its braces, by their words."""

    def __init__(self, source: str, text: str, units: dict[str, str]) -> None:
        self.source = source
        self.text = text
        self.units = units

    def all(self) -> Iterator[Slip]:
        """Every slip, in reading order of its kind."""
        for block in BLOCK.finditer(self.text):
            start, end = block.span(1)
            yield from self.numbers(start, end)
            yield from self.braces(start, end)
            yield from self.words(start, end)

    def slip(self, kind: str, start: int, end: int, after: str) -> Slip:
        """The text with one stretch of it changed."""
        line = self.text.count("\n", 0, start) + 1
        text = self.text[:start] + after + self.text[end:]
        return Slip(self.source, line, kind, self.text[start:end], after, text)

    def kind(self, start: int, end: int) -> str:
        """What a number says, by the words around it."""
        before = self.text[self.text.rfind("\n", 0, start) + 1 : start]
        around = f"{before}#{self.text[end : end + 24]}".casefold()
        return next((kind for kind, words in KINDS if words.search(around)), "count")

    def numbers(self, start: int, end: int) -> Iterator[Slip]:
        """Typed numbers, one more and one less."""
        for found in NUMBER.finditer(self.text, start, end):
            first, last = found.span("number")
            for off in (1, -1):
                number = int(found["number"]) + off
                if number >= 0:
                    yield self.slip(self.kind(first, last), first, last, str(number))

    def braces(self, start: int, end: int) -> Iterator[Slip]:
        """Counts that are derived, one more and one less; lengths are no counts."""
        for found in BRACES.finditer(self.text, start, end):
            unit = self.units.get(found.group())
            if unit is None:
                continue
            for sign in "+-":
                after = f"{{({found.group()[1:-1]}) {sign} 1{unit}}}"
                yield self.slip(self.kind(*found.span()), *found.span(), after)

    def words(self, start: int, end: int) -> Iterator[Slip]:
        """Stitches and markers put for others."""
        for kind, swaps in SWAPS.items():
            for before, after in swaps:
                word = re.compile(
                    rf"(?<![\w{{]){before}{'' if before.endswith((')', ' ')) else NO_WORD}", re.IGNORECASE
                )
                for found in word.finditer(self.text, start, end):
                    yield self.slip(kind, *found.span(), after)


def units_of(path: Path) -> dict[str, str]:
    """What one more is called for each count in braces of a pattern."""
    (pattern,) = read_single(path).patterns
    called = {STITCHES: " st", ROWS: " row", PLAIN: ""}
    lines = pattern.lines.lines
    return {
        lines[span.line - 1][span.column - 1 : span.end_column - 1]: called[values.dimension]
        for (span, _), values in grade(pattern).inserts.items()
        if values.dimension in called
    }


def found_in(path: Path) -> frozenset[tuple[str, str]]:
    """What the proof of a pattern finds."""
    project = read_single(path)
    return frozenset((one.rule, one.message) for one in proof(project.patterns[0], project).findings)


def slips_of(path: Path) -> list[Slip]:
    """Every slip of a pattern."""
    return list(Slips(path.name, path.read_text(encoding="utf-8"), units_of(path)).all())


def caught(path: Path, slips: Sequence[Slip]) -> Iterator[tuple[Slip, bool]]:
    """Each slip planted in the file, and whether the proof finds anything that it does not find without."""
    whole = path.read_text(encoding="utf-8")
    known = found_in(path)
    for slip in slips:
        path.write_text(slip.text, encoding="utf-8")
        yield slip, bool(found_in(path) - known)
    path.write_text(whole, encoding="utf-8")


def told(results: Sequence[tuple[Slip, bool]]) -> Iterator[str]:
    """The shares by kind, and every slip that was not caught."""
    kinds: dict[str, list[bool]] = defaultdict(list)
    for slip, found in results:
        kinds[slip.kind].append(found)
    seen = [found for slip, found in results if slip.kind not in UNSEEN]
    yield f"caught {sum(seen)} of {len(seen)} that a count can tell: {sum(seen) / len(seen):.1%}"
    for kind in sorted(kinds):
        apart = " (no count tells it)" if kind in UNSEEN else ""
        yield f"  {kind}: {sum(kinds[kind])} of {len(kinds[kind])}{apart}"
    for slip, found in results:
        if not found and slip.kind not in UNSEEN:
            line = slip.text.splitlines()[slip.line - 1].strip()
            yield f"{slip.source}:{slip.line} {slip.kind}: {slip.before} became {slip.after} in “{line}”"


def copied(content: Path, into: Path) -> list[Path]:
    """A copy of a project's content that may be written in: its patterns."""
    shutil.copytree(content, into / "content")
    found = sorted((into / "content" / "patterns").glob("*.md"))
    return [path for path in found if "." not in path.stem]  # without the translations


if __name__ == "__main__":
    with TemporaryDirectory() as folder:
        results = [
            result
            for path in copied(Path(__file__).parents[2] / "content", Path(folder))
            for result in caught(path, slips_of(path))
        ]
    sys.stdout.write("\n".join(told(results)) + "\n")
