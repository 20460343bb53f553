"""In: the values of a quantity, one a size. Out: how it grows from size to size, and whether one size is out of line.

Sizes are spaced as their designer likes, so uneven steps are no fault. Out of line is only what no spacing explains:
one size whose value alone keeps the others from growing (or shrinking) evenly onwards, by more than any other step; or
a value more than four times the one before, by a step of more than eight times every other. The bounds are our own (no
source): they let every published body table through, and a slip of the decimal point not.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from itertools import pairwise

_FEWEST = 4  # sizes; of three nobody can say which one is out of line
_LEAP = 8  # times the largest other step
_TIMES = 4  # the value before


class Course(StrEnum):
    """Which way a quantity goes from the smallest size to the largest."""

    LEVEL = "level"
    RISING = "rising"
    FALLING = "falling"
    MIXED = "mixed"


@dataclass(frozen=True, slots=True)
class Growth:
    """The steps of a quantity from each size to the next, exact, and each as a part of the value before it.

    A part is None where the value before is nothing. `astray` is the place of the one size that is out of line, None
    where none is, or where it cannot be said.
    """

    steps: tuple[Fraction, ...]
    parts: tuple[Fraction | None, ...]
    course: Course
    astray: int | None


def growth(values: Sequence[Fraction]) -> Growth:
    """How the values grow. Takes one a size, smallest size first, all in one unit."""
    steps = _steps(values)
    parts = tuple(step / before if before else None for step, before in zip(steps, values, strict=False))
    astray = None
    if len(values) >= _FEWEST:
        astray = _against_the_others(values, steps) if _course(steps) is Course.MIXED else _leap(steps, parts)
    return Growth(steps, parts, _course(steps), astray)


def _steps(values: Sequence[Fraction]) -> tuple[Fraction, ...]:
    return tuple(after - before for before, after in pairwise(values))


def _course(steps: Sequence[Fraction]) -> Course:
    up, down = any(step > 0 for step in steps), any(step < 0 for step in steps)
    if up and down:
        return Course.MIXED
    return Course.RISING if up else Course.FALLING if down else Course.LEVEL


def _against_the_others(values: Sequence[Fraction], steps: Sequence[Fraction]) -> int | None:
    """The size without which all others go one way, where it is further off them than any other step is wide."""
    off = {place: _off(values, steps, place) for place in range(len(values)) if _goes_without(values, place)}
    return max(off, key=lambda place: off[place]) if any(beyond > 0 for beyond in off.values()) else None


def _goes_without(values: Sequence[Fraction], place: int) -> bool:
    return _course(_steps([*values[:place], *values[place + 1 :]])) is not Course.MIXED


def _off(values: Sequence[Fraction], steps: Sequence[Fraction], place: int) -> Fraction:
    """How far a value lies outside its neighbours', less what rounding explains: the widest of the other steps.

    Where the others do not step at all, a quarter of the neighbour's value takes its place.
    """
    beside = [values[at] for at in (place - 1, place + 1) if 0 <= at < len(values)]
    away = max(min(beside) - values[place], values[place] - max(beside))
    others = [abs(step) for at, step in enumerate(steps) if at not in (place - 1, place)]
    return away - (max(others) or abs(beside[0]) / 4)


def _leap(steps: Sequence[Fraction], parts: Sequence[Fraction | None]) -> int | None:
    """The size before which the value leaps, where at least two other steps tell how wide a step is."""
    for place, (step, part) in enumerate(zip(steps, parts, strict=True)):
        others = [abs(other) for at, other in enumerate(steps) if at != place and other]
        if len(others) >= 2 and part is not None and part > _TIMES - 1 and step > _LEAP * max(others):
            return place + 1
    return None
