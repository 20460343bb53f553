"""A row number that is left out of a sequence of rows, that stands there twice, or that is 0.

**Why it matters.** A reader keeps the place by these numbers. Where Row 5 is followed by Row 7, something may be
missing; where Row 4 stands twice, one of them is worked twice or not at all. Looked at are rows written one after the
other, with nothing repeated between them: behind a repeat the count may go on at any number. Rows told by kind, as in
“All WS rows: Purl.”, stand for all of that kind that are not written out.

**Example.** `Row 3: Knit.`, and in the next line `Row 5: Purl.`

**Instead.** `Row 4: Purl.`, or write the row that is missing; “Rows 4 and 6: Purl.” fills gaps too.
"""

from collections.abc import Iterator, Sequence

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.notation.direction_tree import Direction, Row
from sizewright.read.pattern import StitchBlock, WorkBlock
from sizewright.read.project import Project
from sizewright.work.arrange import arranged
from sizewright.work.worked import Worked

RULE = Rule("skipped-row", Level.WARNING, __doc__)
_MOST = 10_000  # rows of one range; a higher number is a slip of its own


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each number that a sequence lacks or has twice."""
    for piece in worked.graded.pattern.body:
        if isinstance(piece, WorkBlock | StitchBlock):
            for sequence in _sequences(piece.directions, anew=isinstance(piece, WorkBlock)):
                yield from _judged(sequence)


def _sequences(directions: Sequence[Direction], *, anew: bool) -> Iterator[list[tuple[Row, tuple[int, ...]]]]:
    """The numbered rows that stand together, each with its numbers.

    Anything but a row with numbers or told by kind ends a sequence, and so does a row between rounds, a range whose end
    is not the same in every size, and a row 1 where numbers may begin `anew`.
    """
    rows: list[tuple[Row, tuple[int, ...]]] = []
    for direction in directions:
        row = direction if isinstance(direction, Row) else None
        numbers = _numbers(row) if row is not None else ()
        told = row is not None and (numbers or row.numbers.every)
        begins = not told or (anew and 1 in numbers and any(before for _, before in rows))
        if rows and (begins or row is None or row.in_the_round is not rows[0][0].in_the_round):
            yield rows
            rows = []
        if row is not None and told:
            rows.append((row, numbers))
    if rows:
        yield rows


def _numbers(row: Row) -> tuple[int, ...]:
    """The numbers of a row; none where they differ by size."""
    numbers = row.numbers
    if numbers.last is None:
        return numbers.listed
    last = numbers.last.value
    return tuple(range(numbers.first, last + 1)) if isinstance(last, int) and last < _MOST else ()


def _judged(sequence: Sequence[tuple[Row, tuple[int, ...]]]) -> Iterator[Finding]:
    known = {number for _, numbers in sequence for number in numbers} | _by_kind(sequence)
    seen: dict[int, Row] = {}
    for row, numbers in sequence:
        between = range(max(seen) + 1, min(numbers)) if seen and numbers else ()
        lacking = [at for at in between if at not in known]
        if lacking:
            message = f"{row.label} comes behind {_last(seen).label}, and there is no {_or(lacking)}."
            yield RULE.at(row.span, message, "Write the row that is missing, or mend the number.")
        if 0 in numbers:
            yield RULE.at(row.span, f"{row.label} has the number 0.", "Rows begin with 1.")
        twice = [number for number in numbers if number in seen]
        if twice:
            message = (
                f"Row {_or(twice)} stands here a second time, the first time in line {seen[twice[0]].span.shown.line}."
            )
            yield RULE.at(row.span, message, "Mend the number, or take one of the two out.")
        seen.update(dict.fromkeys(numbers, row))


def _by_kind(sequence: Sequence[tuple[Row, tuple[int, ...]]]) -> set[int]:
    """The numbers that rows told by kind have among those written out."""
    rows = arranged([row for row, _ in sequence])
    return {number for row in rows if isinstance(row, Row) for number in row.numbers.listed}


def _last(seen: dict[int, Row]) -> Row:
    return seen[max(seen)]


def _or(numbers: Sequence[int]) -> str:
    *before, last = (str(number) for number in numbers)
    return f"{', '.join(before)} or {last}" if before else last
