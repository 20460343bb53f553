"""In: the rows of a part, and which of them are worked to a length. Out: how long it is at another row gauge.

Rows that are counted grow shorter or longer with their gauge. Rows worked to a length end at that length and are more
or fewer; where the rows before them reach further already, there are none.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import floor


@dataclass(frozen=True, slots=True)
class Stretch:
    """Rows worked to a length: the rows of the part before and behind them, the row it is measured from, and the cm."""

    first: int
    last: int
    since: int
    length: Fraction


@dataclass(frozen=True, slots=True)
class Tall:
    """How long a part is in cm, and how many rows that takes, to the nearest whole."""

    length: Fraction
    rows: int


def tall(rows: int, stretches: Sequence[Stretch], gauge: Fraction) -> Tall:
    """A part of so many rows, as its own gauge has it, where another many come to the cm; `gauge` is above zero."""
    marks = [(0, Fraction(0))]
    for one in stretches:
        start = _at(marks, one.first, gauge)
        marks += [(one.first, start), (one.last, max(start, _at(marks, one.since, gauge) + one.length))]
    length = _at(marks, rows, gauge)
    return Tall(length, floor(length * gauge + Fraction(1, 2)))


def _at(marks: Sequence[tuple[int, Fraction]], row: int, gauge: Fraction) -> Fraction:
    """How far up a row is: the rows behind the last mark below it are counted."""
    below, length = next(mark for mark in reversed(marks) if mark[0] <= row)
    return length + (row - below) / gauge
