"""In: what every size should come to, and a sheet that a test knitter sent back. Out: it compared, line by line.

A sheet tells which version of the pattern it was made for. Where that is another one, only those lines are compared of
which both versions expect the same.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from sizewright.base.nearest import did_you_mean
from sizewright.proof.expected import ASKED, KNITTER, NAME, Expectation, Expected, Kind
from sizewright.proof.typed_answer import NoNumber, number_in
from sizewright.read.returned import Given, Returned, Trouble, same

# How far a test knitter may be off before it is told: a part of what is expected, and at least so much in the unit of
# the line (common practice, no source). A count is right or wrong. A tape is read to half a centimetre, a kitchen scale
# to a gram at either end; rows until a length is reached come out as the knitter's own row gauge has it.
_MAY_BE_OFF: Mapping[Kind, tuple[Fraction, Fraction]] = {
    Kind.COUNT: (Fraction(0), Fraction(0)),
    Kind.ROWS: (Fraction(0), Fraction(0)),
    Kind.GAUGE: (Fraction(2, 100), Fraction(1, 2)),
    Kind.LENGTH: (Fraction(3, 100), Fraction(1, 2)),
    Kind.YARN: (Fraction(10, 100), Fraction(2)),
}
_TO_LENGTH = (Fraction(5, 100), Fraction(1))


class Verdict(StrEnum):
    """What became of a line of a sheet."""

    AS_EXPECTED = "as-expected"
    DIFFERENT = "different"
    EMPTY = "empty"
    UNREAD = "unread"
    MOVED = "moved"  # another version of the pattern expected something else


@dataclass(frozen=True, slots=True)
class Answer:
    """What a test knitter got at one line; `got` is exact in its unit, None where nothing could be read."""

    line: Expected
    verdict: Verdict
    typed: str = ""
    got: Fraction | None = None
    remarks: str = ""

    @property
    def by(self) -> Fraction:
        """How much more it is than expected; 0 where nothing was read."""
        return Fraction(0) if self.got is None else self.got - self.line.value


@dataclass(frozen=True, slots=True)
class Judged:
    """A sheet compared: who knitted it, what was told in words, and an answer for every line that is expected."""

    source: str
    knitter: str
    expectation: Expectation
    same_version: bool
    told: tuple[tuple[str, str], ...]
    answers: tuple[Answer, ...]

    def having(self, verdict: Verdict) -> tuple[Answer, ...]:
        """The lines of which that became."""
        return tuple(one for one in self.answers if one.verdict is verdict)

    @property
    def filled(self) -> int:
        """How many boxes were filled in."""
        return sum(bool(one.typed) for one in self.answers)


def may_be_off(line: Expected, share: Fraction | None = None) -> Fraction:
    """How far from the expected number is still as expected; `share` stands for the usual part of it, where given."""
    usual, least = _TO_LENGTH if line.to_length else _MAY_BE_OFF[line.kind]
    part = share if share is not None and usual else usual
    return max(part * line.value, least)


def compared(
    expected: Sequence[Expectation], returned: Returned, share: Fraction | None = None
) -> tuple[Judged | None, tuple[Trouble, ...]]:
    """A sheet beside what its pattern expects, and what keeps it or a box of it from being compared."""
    found = _expectation(expected, returned)
    if isinstance(found, Trouble):
        return None, (found,)
    troubles = list(_about_size(returned, found))
    by_key = {_in_rows(one.key): one for one in returned.lines}
    asked = {tuple(map(same, (KNITTER, about, ""))): about for about in ASKED}
    told = tuple((asked[key], given.got) for key, given in by_key.items() if key in asked and given.got)
    same_version = same(returned.version) == found.version
    answers = []
    for line in found.lines:
        answer, trouble = _answer(line, by_key.pop(_key(line), None), returned, share, same_version=same_version)
        answers.append(answer)
        troubles += [trouble] if trouble else []
    unknown = [given for key, given in by_key.items() if key not in asked]
    troubles += _about_version(returned, answers, unknown) if not same_version else _about_lines(returned, unknown)
    tested = Judged(returned.source, dict(told).get(NAME, ""), found, same_version, told, tuple(answers))
    if not tested.filled:
        message = f"No box of size {found.size} is filled in."
        troubles.append(Trouble(returned.source, 0, message, "Ask for the numbers."))
    return tested, tuple(troubles)


def _key(line: Expected) -> tuple[str, str, str]:
    return _in_rows((same(line.stage), same(line.at), same(line.unit)))


def _in_rows(key: tuple[str, str, str]) -> tuple[str, str, str]:
    """A sheet of before called rounds rows: by its rows a line is known whichever word it has."""
    stage, at, unit = key
    return stage, at.replace("rounds of this part", "rows of this part"), unit.replace("rnds", "rows")


def _expectation(expected: Sequence[Expectation], returned: Returned) -> Expectation | Trouble:
    """What the sheet was made for, by its size, or by its version where a spreadsheet made a date of the size."""
    row = returned.lines[0].row if returned.lines else 0
    titles = {same(one.pattern) for one in expected}
    of_pattern = [one for one in expected if same(one.pattern) == same(returned.pattern)]
    if not of_pattern:
        mend = did_you_mean(returned.pattern, titles, f"The sheet is compared with {', '.join(sorted(titles))}.")
        return Trouble(returned.source, row, f"The sheet is of another pattern, “{returned.pattern}”.", mend)
    by_size = {same(one.size): one for one in of_pattern}
    by_version = {one.version: one for one in of_pattern}
    sized, made_for = by_size.get(same(returned.size)), by_version.get(same(returned.version))
    if sized is None and made_for is None:
        names = [one.size for one in of_pattern]
        mend = did_you_mean(returned.size, names, f"Its sizes are {', '.join(names)}.")
        return Trouble(returned.source, row, f"“{returned.size}” is no size of {of_pattern[0].title}.", mend)
    if sized is not None and made_for is not None and sized is not made_for:
        message = f"The sheet says size {sized.size}, but it was made for size {made_for.size}."
        return Trouble(returned.source, row, message, "Ask which size was knitted, and fill in the sheet of that one.")
    return sized or made_for or of_pattern[0]


def _answer(
    line: Expected, given: Given | None, returned: Returned, share: Fraction | None, *, same_version: bool
) -> tuple[Answer, Trouble | None]:
    remarks = given.remarks if given else ""
    if given is None or not given.got:
        return Answer(line, Verdict.EMPTY, remarks=remarks), None
    if not same_version and not _expected_so(line, given):
        return Answer(line, Verdict.MOVED, given.got, remarks=remarks), None
    try:
        got = number_in(given.got, line)
    except NoNumber as reason:
        mend = f"Write the number alone, in {line.unit}, and words under “remarks”."
        trouble = Trouble(returned.source, given.row, f"{line.stage}, {line.at}: {reason}.", mend)
        return Answer(line, Verdict.UNREAD, given.got, remarks=remarks), trouble
    by = got - line.value
    off = abs(by) > may_be_off(line, share) and not (line.least and by > 0)
    return Answer(line, Verdict.DIFFERENT if off else Verdict.AS_EXPECTED, given.got, got, remarks), None


def _expected_so(line: Expected, given: Given) -> bool:
    """Whether the other version expected the same, to the hundredth that a sheet gives."""
    try:
        return abs(number_in(given.expected, line) - line.value) <= Fraction(1, 100)
    except NoNumber:
        return False


def _about_size(returned: Returned, found: Expectation) -> Iterator[Trouble]:
    if same(returned.size) != same(found.size):
        message = f"“{returned.size}” is no size; by its version the sheet is that of {found.size}."
        yield Trouble(returned.source, returned.lines[0].row, message, "Write the size as the sheet had it.")


def _about_version(returned: Returned, answers: Sequence[Answer], unknown: Sequence[Given]) -> Iterator[Trouble]:
    moved = [one.line for one in answers if one.verdict is Verdict.MOVED]
    message = "The sheet was made for another version of the pattern, or its column “version” was changed."
    if moved:
        places = "; ".join(f"{one.stage}, {one.at}" for one in moved[:3])
        more = f" and {len(moved) - 3} more" if len(moved) > 3 else ""
        message += f" These lines expect something else now and were not compared: {places}{more}."
    gone = [one for one in unknown if one.got]
    if gone:
        message += f" {len(gone)} of its filled lines are not in the pattern any more."
    mend = "Give the test knitter the sheet of today, or compare with the source it was made from."
    yield Trouble(returned.source, 0, message, mend)


def _about_lines(returned: Returned, unknown: Sequence[Given]) -> Iterator[Trouble]:
    for given in unknown:
        message = f"The sheet has no line “{given.stage}, {given.at}” in “{given.unit}”."
        yield Trouble(returned.source, given.row, message, "Leave the columns stage, at and unit as they were written.")
