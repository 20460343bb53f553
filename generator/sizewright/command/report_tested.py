"""In: sheets of test knitters, compared. Out: what differs, by pattern, size and stage: in words, and as JSON."""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import groupby
from pathlib import PurePosixPath

from sizewright.base.printing import decimal, exact_text
from sizewright.command.report_json import Json
from sizewright.command.report_text import number
from sizewright.command.terminal import safe
from sizewright.proof.expected import NAME, Expected, Kind
from sizewright.proof.tested import Answer, Judged, Verdict
from sizewright.publish.tester.view import expected_text
from sizewright.read.returned import Trouble

VERSION = 1  # of the keys of the JSON; it rises when one goes or changes its meaning


@dataclass(frozen=True, slots=True)
class Results:
    """All sheets in the order they were given, and what could not be read or compared."""

    sheets: tuple[Judged, ...]
    troubles: tuple[Trouble, ...]

    def count(self, verdict: Verdict) -> int:
        """How many lines of all sheets became that."""
        return sum(len(one.having(verdict)) for one in self.sheets)

    @property
    def differ(self) -> bool:
        """Whether anything needs a look."""
        return bool(self.troubles or self.count(Verdict.DIFFERENT))


def text_tested(results: Results) -> bytes:
    """For a person: size by size, then what could not be read, and a line that sums up."""
    lines: list[str] = []
    ordered = sorted(results.sheets, key=lambda one: one.expectation.title)
    for title, of_pattern in groupby(ordered, key=lambda one: one.expectation.title):
        lines.append(title)
        sizes: dict[str, list[Judged]] = {}
        for one in of_pattern:
            sizes.setdefault(one.expectation.size, []).append(one)
        for size, sheets in sizes.items():
            lines += [f"  Size {size}", *(f"    {line}" for line in _of_size(sheets))]
        lines.append("")
    lines += [_trouble(one) for one in results.troubles]
    lines += [""] if results.troubles else []
    lines.append(_summary(results))
    return "".join(f"{safe(line)}\n" for line in lines).encode("utf-8", "backslashreplace")


def _of_size(sheets: Sequence[Judged]) -> Iterator[str]:
    for one in sheets:
        filled = f"{one.filled} of {number(len(one.answers), 'box', 'boxes')} filled in"
        yield f"{_who(one)} ({one.source}): {filled}{_verdict(one)}"
        words = "; ".join(f"{about}: {' '.join(text.split())}" for about, text in one.told if about != NAME)
        if words:
            yield f"  {words}"
    for answers in zip(*(one.answers for one in sheets), strict=True):
        yield from _of_line(sheets, answers)


def _verdict(one: Judged) -> str:
    different, right = len(one.having(Verdict.DIFFERENT)), len(one.having(Verdict.AS_EXPECTED))
    if different:
        return f", {different} not as expected"
    return ", all of them as expected" if right and right == one.filled else ""


def _of_line(sheets: Sequence[Judged], answers: Sequence[Answer]) -> Iterator[str]:
    line = answers[0].line
    if any(one.verdict is Verdict.DIFFERENT for one in answers):
        yield f"{line.stage}, {line.at}: {expected_text(line)} expected"
    else:
        if any(one.remarks for one in answers):
            yield f"{line.stage}, {line.at}"
        answers = [replace(one, verdict=Verdict.EMPTY) for one in answers]
    for sheet, answer in zip(sheets, answers, strict=True):
        told = [*_differs(answer), *([f"“{' '.join(answer.remarks.split())}”"] if answer.remarks else [])]
        if told:
            yield f"  {_who(sheet)}: {'; '.join(told)}"


def _differs(answer: Answer) -> Iterator[str]:
    if answer.verdict is Verdict.AS_EXPECTED:
        yield "as expected"
    elif answer.verdict is Verdict.DIFFERENT and answer.got is not None:
        yield f"{_plain(answer.line, answer.got)}, {difference(answer)}"


def difference(answer: Answer) -> str:
    """By how much, in words: "2 fewer", "3 cm / 1¼ in less (6 %)"."""
    line, by = answer.line, answer.by
    counted = line.kind in (Kind.COUNT, Kind.ROWS, Kind.GAUGE)
    word = "more" if by > 0 else "fewer" if counted else "less"
    if line.kind is Kind.GAUGE:
        return f"{decimal(abs(by))} {word} in 10 cm"
    if counted:
        return f"{decimal(abs(by))} {word}"
    share = f" ({decimal(abs(by) / line.value * 100, 0)} %)" if line.value else ""
    return f"{_plain(line, abs(by))} {word}{share}"


def _plain(line: Expected, value: Fraction) -> str:
    """A value as the sheet prints what is expected."""
    return expected_text(replace(line, value=value, to_length=False, least=False, length=None))


def _who(one: Judged) -> str:
    return " ".join(one.knitter.split()) or PurePosixPath(one.source).stem


def _trouble(one: Trouble) -> str:
    place = f"{one.source}, row {one.row}" if one.row else one.source
    return f"{place}: {one.message} {one.mend}"


def _summary(results: Results) -> str:
    sizes = {(one.expectation.pattern, one.expectation.size) for one in results.sheets}
    counts = (
        (results.count(Verdict.DIFFERENT), "difference", "differences"),
        (results.count(Verdict.UNREAD), "box that could not be read", "boxes that could not be read"),
        (results.count(Verdict.MOVED), "box of another version", "boxes of another version"),
        (results.count(Verdict.EMPTY), "box left empty", "boxes left empty"),
    )
    told = ", ".join(number(*one) for one in counts if one[0])
    compared = f"{number(len(results.sheets), 'sheet')} of {number(len(sizes), 'size')} compared"
    if not told and results.sheets and not results.troubles:
        return f"{compared}: everything is as expected."
    return f"{compared}: {told or 'no difference'}."


def json_tested(results: Results) -> bytes:
    """For programs: every sheet with every line, exact values as strings, and what could not be read."""
    told: Json = {
        "version": VERSION,
        "sheets": [_sheet(one) for one in results.sheets],
        "troubles": [
            {"source": one.source, "row": one.row or None, "message": one.message, "mend": one.mend}
            for one in results.troubles
        ],
        "summary": {
            "sheets": len(results.sheets),
            "troubles": len(results.troubles),
            **{str(verdict): results.count(verdict) for verdict in Verdict},
        },
    }
    return (json.dumps(told, ensure_ascii=False, indent=2) + "\n").encode("utf-8", "backslashreplace")


def _sheet(one: Judged) -> Json:
    return {
        "source": one.source,
        "pattern": one.expectation.pattern,
        "size": one.expectation.size,
        "knitter": one.knitter,
        "same_version": one.same_version,
        "told": dict(one.told),
        "lines": [_answer(answer) for answer in one.answers],
    }


def _answer(answer: Answer) -> Json:
    line, read = answer.line, answer.got is not None
    return {
        "stage": line.stage,
        "at": line.at,
        "unit": line.unit,
        "expected": exact_text(line.value),
        "typed": answer.typed,
        "got": exact_text(answer.got) if answer.got is not None else None,
        "by": exact_text(answer.by) if read else None,
        "verdict": str(answer.verdict),
        "text": difference(answer) if answer.verdict is Verdict.DIFFERENT else "",
        "remarks": answer.remarks,
    }
