"""Exact values of a piece of a formula: one for all sizes, or one a size, in base units, with what they measure."""

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import NamedTuple

from sizewright.base.finding import Finding
from sizewright.base.units import Dimension


class Worth(NamedTuple):
    """`values` has one entry where all sizes agree, else one a size."""

    dimension: Dimension
    values: tuple[Fraction, ...]


class Fault(Exception):  # noqa: N818 -- carries what is wrong with a formula to where its statement is graded
    """A formula that has no value. `finding` is None where the reason is told elsewhere already."""

    def __init__(self, finding: Finding | None) -> None:
        super().__init__(finding.message if finding else "")
        self.finding = finding


def listed(names: Sequence[str]) -> str:
    """Names as a sentence has them: "S", "S and M", "S, M and L"."""
    *before, last = names
    return f"{', '.join(before)} and {last}" if before else last


def spread(values: tuple[Fraction, ...], count: int) -> tuple[Fraction, ...]:
    """One value a size."""
    return values * count if len(values) == 1 and count != 1 else values


def paired(
    operation: Callable[[Fraction, Fraction], Fraction], left: tuple[Fraction, ...], right: tuple[Fraction, ...]
) -> tuple[Fraction, ...]:
    """The operation, size by size; a value for all sizes meets each of the other's."""
    if len(left) == len(right):
        return tuple(map(operation, left, right))
    if len(left) == 1:
        first = left[0]
        return tuple([operation(first, value) for value in right])
    second = right[0]
    return tuple([operation(value, second) for value in left])


def where(values: Sequence[bool], sizes: Sequence[str]) -> tuple[str, ...]:
    """The sizes for which a condition holds; all of them where it was asked once for all."""
    if len(values) == 1:
        return tuple(sizes) if values[0] else ()
    return tuple(size for size, value in zip(sizes, values, strict=True) if value)
