"""The functions of the grading language, one table: what each takes, gives and says of itself."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import ceil, floor
from types import MappingProxyType

from sizewright.base.units import COUNTS, LENGTH, PLAIN, Dimension, per, spoken
from sizewright.grade.worth import Worth, paired

Arguments = tuple[Worth, ...]


class Unsuitable(Exception):  # noqa: N818 -- said to the designer, as a finding at the call
    """Why a function cannot work on what it is given."""


@dataclass(frozen=True, slots=True)
class Function:
    """A function: how many values it takes (`most` is None for any number), and how it works them out by size."""

    name: str
    least: int
    most: int | None
    page: str
    apply: Callable[[Arguments], Worth]
    divides: bool = False  # whether the second value divides the first, and must be above zero


def _alike(arguments: Arguments) -> Dimension:
    first = arguments[0].dimension
    for argument in arguments[1:]:
        if argument.dimension != first:
            raise Unsuitable(f"compares {spoken(first)} with {spoken(argument.dimension)}")
    return first


def _folded(pick: Callable[[Fraction, Fraction], Fraction]) -> Callable[[Arguments], Worth]:
    def apply(arguments: Arguments) -> Worth:
        dimension = _alike(arguments)
        values = arguments[0].values
        for argument in arguments[1:]:
            values = paired(pick, values, argument.values)
        return Worth(dimension, values)

    return apply


def _each(change: Callable[[Fraction], Fraction]) -> Callable[[Arguments], Worth]:
    return lambda arguments: Worth(arguments[0].dimension, tuple(change(value) for value in arguments[0].values))


def _whole(change: Callable[[Fraction], int], word: str) -> Callable[[Arguments], Worth]:
    """Whole numbers are for counts: a length would be rounded to the unit the tool happens to keep it in."""

    def apply(arguments: Arguments) -> Worth:
        dimension = arguments[0].dimension
        if dimension not in (*COUNTS, PLAIN):
            raise Unsuitable(f"rounds {spoken(dimension)}; write the step instead: “{word} 0.5 cm”")
        return Worth(dimension, tuple(Fraction(change(value)) for value in arguments[0].values))

    return apply


def _across(pick: Callable[[tuple[Fraction, ...]], Fraction]) -> Callable[[Arguments], Worth]:
    return lambda arguments: Worth(arguments[0].dimension, (pick(arguments[0].values),))


def _repeats(arguments: Arguments) -> Worth:
    _alike(arguments)
    return Worth(PLAIN, paired(lambda count, one: Fraction(count // one), arguments[0].values, arguments[1].values))


def _left_over(arguments: Arguments) -> Worth:
    dimension = _alike(arguments)
    return Worth(dimension, paired(lambda count, one: count % one, arguments[0].values, arguments[1].values))


def _finished(arguments: Arguments) -> Worth:
    """A count of stitches or rows by its own gauge, as a length."""
    count, gauge = arguments
    if count.dimension not in COUNTS or gauge.dimension != per(count.dimension, LENGTH):
        raise Unsuitable(
            f"measures a count by its own gauge, not {spoken(count.dimension)} by {spoken(gauge.dimension)}"
        )
    return Worth(LENGTH, paired(lambda many, each: many / each, count.values, gauge.values))


def _ease(arguments: Arguments) -> Worth:
    dimension = _alike(arguments)
    if dimension != LENGTH:
        raise Unsuitable(f"compares two lengths, not two of {spoken(dimension)}")
    finished, body = arguments
    return Worth(dimension, paired(lambda made, worn: made - worn, finished.values, body.values))


def _steps(values: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    """What each size is more than the one before; 0 where all agree."""
    return tuple(after - before for before, after in pairwise(values)) or (Fraction(0),)


def _to_next(arguments: Arguments) -> Worth:
    (worth,) = arguments
    steps = _steps(worth.values)
    return Worth(worth.dimension, (*steps, Fraction(0)) if len(worth.values) > 1 else steps)


FUNCTIONS: Mapping[str, Function] = MappingProxyType(
    {
        function.name: function
        for function in (
            Function("min", 2, None, "The smallest of the values, size by size: `min(a, b)`.", _folded(min)),
            Function("max", 2, None, "The largest of the values, size by size: `max(a, 60 st)`.", _folded(max)),
            Function("abs", 1, 1, "The value without its sign: `abs(ease)`.", _each(abs)),
            Function("half", 1, 1, "Half of the value: `half(cast_on)`.", _each(lambda value: value / 2)),
            Function(
                "floor",
                1,
                1,
                "A count or plain number rounded down to whole: `floor(a)` is `a, down to whole`.",
                _whole(floor, "down to"),
            ),
            Function(
                "ceil",
                1,
                1,
                "A count or plain number rounded up to whole: `ceil(a)` is `a, up to whole`.",
                _whole(ceil, "up to"),
            ),
            Function("smallest", 1, 1, "The smallest value of all sizes: `smallest(chest)`.", _across(min)),
            Function("largest", 1, 1, "The largest value of all sizes: `largest(chest)`.", _across(max)),
            Function(
                "finished",
                2,
                2,
                "The finished measurement of a count by its own gauge: `finished(184 st, stitch_gauge)` at 4 sts to "
                "the inch is 46 in, at 4.5 sts 40.9 in. Source: double-ewe-yarn.com.",
                _finished,
                divides=True,
            ),
            Function(
                "ease_of",
                2,
                2,
                "How much larger a finished measurement is than the body, below zero where it is smaller: "
                "`ease_of(finished_chest, chest)` for 106 cm on a chest of 100 cm is 6 cm. Source: ease is the "
                "finished less the body measurement, tincanknits.com and knotions.com.",
                _ease,
            ),
            Function(
                "to_next",
                1,
                1,
                "The difference to the next size, 0 in the last: `to_next(chest)` of 80 (90, 105) cm is 10 (15, 0) cm.",
                _to_next,
            ),
            Function(
                "smallest_step",
                1,
                1,
                "The smallest difference from one size to the next: `smallest_step(chest)` of 80 (90, 105) cm is 10 "
                "cm; below zero where a size is smaller than the one before.",
                _across(lambda values: min(_steps(values))),
            ),
            Function(
                "largest_step",
                1,
                1,
                "The largest difference from one size to the next: `largest_step(chest)` of 80 (90, 105) cm is 15 cm.",
                _across(lambda values: max(_steps(values))),
            ),
            Function(
                "repeats",
                2,
                2,
                "How often the second goes into the first, whole: `repeats(cast_on, 8 st)`.",
                _repeats,
                divides=True,
            ),
            Function(
                "left_over",
                2,
                2,
                "What is left of the first when the second has gone into it: `left_over(cast_on, 8 st)`.",
                _left_over,
                divides=True,
            ),
        )
    }
)
