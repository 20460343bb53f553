"""Exact quantities: a fraction in base units (stitch, row, cm, g) with what it measures; never a binary float."""

from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.units import Dimension


@dataclass(frozen=True, slots=True)
class Quantity:
    """One exact value in base units."""

    value: Fraction
    dimension: Dimension
