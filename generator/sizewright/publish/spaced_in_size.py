"""In: shaping that comes every so often, and a size. Out: the same with the numbers of that size typed in.

A number that differs by size is told for all of them alike ("every {n}th row"); one size reads "every other row".
"""

from dataclasses import replace
from fractions import Fraction

from sizewright.grade.graded import Inserts
from sizewright.read.inserts import Insert
from sizewright.read.notation.direction_tree import Direction, Meanwhile, Spaced, Spacing
from sizewright.read.notation.tree import Count


def spaced_in_size(direction: Direction, inserts: Inserts, size: int) -> Direction:
    """A direction as a size, from 0, has it; what it does no time at all is left out. Others stay as they are."""
    match direction:
        case Spaced():
            return _spaced(direction, inserts, size)
        case Meanwhile():
            return replace(direction, shaping=_spaced(direction.shaping, inserts, size))
    return direction


def _spaced(direction: Spaced, inserts: Inserts, size: int) -> Spaced:
    found = tuple(_spacing(one, inserts, size) for one in direction.spacings)
    done = tuple(one for one in found if one.times is None or one.times.value != 0)
    return replace(direction, spacings=done or found)


def _spacing(spacing: Spacing, inserts: Inserts, size: int) -> Spacing:
    return replace(spacing, every=_typed(spacing.every, inserts, size), times=_typed(spacing.times, inserts, size))


def _typed(count: Count | None, inserts: Inserts, size: int) -> Count | None:
    """A count with the whole number of the size in the place of one that differs by size."""
    if count is None or isinstance(count.value, int):
        return count
    if isinstance(count.value, Insert):
        values = inserts.get(count.value.key)
        value: Fraction | None = None if values is None else values.values[size]
    else:
        value = count.value.values[size] if count.value.values else None
    return count if value is None or value.denominator != 1 else replace(count, value=int(value))
