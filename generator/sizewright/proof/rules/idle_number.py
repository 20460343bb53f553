"""A number of stitches or times among the instructions that is nothing in every size: “k0”, “0 times”, all dashes.

**Why it matters.** The reader looks for what is to be done no times. In a list for all sizes a 0 or a dash tells one
size that the step is not for it; where it is nothing for everybody, the step or the number is a mistake.

**Example.** `Row 5: K0, p2, k to end.`; `rep from * {turns} more times`, and `turns` is 0 in every size

**Instead.** Take the step out, or mend the number.
"""

from collections.abc import Iterator
from fractions import Fraction

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.place import Span
from sizewright.grade.graded import Graded
from sizewright.proof.actions import actions_in, directions_of
from sizewright.proof.wording import typed_here
from sizewright.read.inserts import Insert, typed_piece
from sizewright.read.notation.direction_tree import Direction, Even, Meanwhile, RepeatRows, Spaced
from sizewright.read.notation.tree import (
    Across,
    Action,
    Add,
    BindOff,
    Count,
    Drop,
    Evenly,
    Follow,
    Hold,
    Panel,
    Repeat,
    Work,
)
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("idle-number", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each count that is nothing for everybody who reads it."""
    told: set[Span] = set()
    for direction in directions_of(worked.graded.pattern):
        for count in _counts(direction):
            words = _nothing(worked.graded, count)
            if words and count.span not in told:
                told.add(count.span)
                yield RULE.at(count.span, f"“{words}” is nothing in every size.", "Take it out, or mend the number.")


def _counts(direction: Direction) -> Iterator[Count]:
    """Every count that says how much is to be done."""
    match direction:
        case RepeatRows(extent=extent) | Even(extent=extent):
            yield from (count for count in (extent.times, extent.rows) if count)
        case Meanwhile(rows=rows, shaping=shaping):
            yield from (*_counts(rows), *_counts(shaping))
            return
        case Spaced(spacings=spacings):
            yield from (spacing.times for spacing in spacings if spacing.times)
        case _:
            pass
    for action in actions_in(direction):
        yield from _of_action(action)


def _of_action(action: Action) -> Iterator[Count]:
    match action:
        case Repeat(times=count):
            pass
        case Work(count=count) | Follow(count=count) | Hold(count=count) | Across(count=count) | Panel(count=count):
            pass
        case Add(count=count) | BindOff(count=count) | Drop(count=count) | Evenly(count=count):
            pass
        case _:
            return
    if count is not None:
        yield count


def _nothing(graded: Graded, count: Count) -> str:
    """The words of a count that is nothing for everybody; "" of one that is not."""
    value = count.value
    if isinstance(value, int):
        return "" if value else "0"
    if isinstance(value, Insert):
        if not typed_here(graded.pattern.lines, value):
            return ""  # the words of a plan, which are left out where a size has nothing to do
        values = graded.inserts.get(value.key)
        read = [values.values[place] for place, _ in graded.read_in(value.sizes)] if values else [Fraction(1)]
    else:
        read = [value.values[place] or Fraction(0) for place, _ in graded.read_in(value.sizes)] if value.values else []
    return typed_piece(value) if read and not any(read) else ""
