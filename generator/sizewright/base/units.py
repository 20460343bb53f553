"""In: the word for a unit. Out: what it measures and its exact factor to the base unit (stitch, row, cm, g).

pint knows the units and stands here at the door only; the arithmetic after it is on plain fractions in base units.

Sources: inch and yard, 16 CFR 500.19(a) (2.54 cm and 0.9144 m exactly); ounce and pound, NIST SP 811 appendix B
(28.349523125 g and 0.45359237 kg exactly).
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import Any, NamedTuple

from pint import UnitRegistry

_DEFINITIONS = """
stitch = [stitch] = st
row = [row]
centimetre = [length] = cm
millimetre = 1/10 * centimetre = mm
metre = 100 * centimetre = m
inch = 254/100 * centimetre = in
foot = 12 * inch = ft
yard = 36 * inch = yd
gram = [mass] = g
kilogram = 1000 * gram = kg
ounce = 28349523125/1000000000 * gram = oz
pound = 16 * ounce = lb
"""

# Every spelling a source may use, and the unit it means. A round is counted as a row: both are one pass of the needles.
SPELLINGS: Mapping[str, str] = MappingProxyType(
    {
        **dict.fromkeys(("st", "sts", "stitch", "stitches"), "stitch"),
        **dict.fromkeys(("row", "rows", "rnd", "rnds", "round", "rounds"), "row"),
        **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), "centimetre"),
        **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), "millimetre"),
        **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "metre"),
        **dict.fromkeys(("in", "inch", "inches", '"', "″"), "inch"),
        **dict.fromkeys(("ft", "foot", "feet"), "foot"),
        **dict.fromkeys(("yd", "yds", "yard", "yards"), "yard"),
        **dict.fromkeys(("g", "gram", "grams", "gramme", "grammes"), "gram"),
        **dict.fromkeys(("kg", "kilogram", "kilograms"), "kilogram"),
        **dict.fromkeys(("oz", "ounce", "ounces"), "ounce"),
        **dict.fromkeys(("lb", "lbs", "pound", "pounds"), "pound"),
    }
)


class Dimension(NamedTuple):
    """What a number measures: the powers of stitches, rows, length and mass in it."""

    stitch: int = 0
    row: int = 0
    length: int = 0
    mass: int = 0


PLAIN = Dimension()
STITCHES = Dimension(stitch=1)
ROWS = Dimension(row=1)
LENGTH = Dimension(length=1)
MASS = Dimension(mass=1)
STITCH_GAUGE = Dimension(stitch=1, length=-1)
ROW_GAUGE = Dimension(row=1, length=-1)
COUNTS = (STITCHES, ROWS)

# How a person says what a number measures.
_SPOKEN: Mapping[Dimension, str] = MappingProxyType(
    {
        PLAIN: "a plain number",
        STITCHES: "stitches",
        ROWS: "rows",
        LENGTH: "a length",
        MASS: "a mass",
        STITCH_GAUGE: "a stitch gauge (stitches per length)",
        ROW_GAUGE: "a row gauge (rows per length)",
        Dimension(length=2): "an area",
    }
)

# The unit that exact values of a kind are given in.
_BASE_WORDS = ("st", "row", "cm", "g")


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit by its name: what it measures and how many base units it is."""

    name: str
    dimension: Dimension
    factor: Fraction


PERCENT = Unit("percent", PLAIN, Fraction(1, 100))


@cache
def _registry() -> UnitRegistry[Any]:
    registry: UnitRegistry[Any] = UnitRegistry(None, non_int_type=Fraction)
    registry.load_definitions(_DEFINITIONS.strip().splitlines())
    return registry


@cache
def unit_named(word: str) -> Unit | None:
    """The unit a word means, or None; capitals do not count."""
    name = SPELLINGS.get(word) or SPELLINGS.get(word.casefold())
    if name is None:
        return PERCENT if word in ("%", "percent") else None
    base = _registry().Quantity(Fraction(1), name).to_base_units()
    powers = {str(key).strip("[]"): int(str(power)) for key, power in base.dimensionality.items()}
    return Unit(name, Dimension(**powers), Fraction(base.magnitude))


@cache
def times(left: Dimension, right: Dimension) -> Dimension:
    """What a product measures."""
    return Dimension(*(a + b for a, b in zip(left, right, strict=True)))


@cache
def per(left: Dimension, right: Dimension) -> Dimension:
    """What a quotient measures."""
    return Dimension(*(a - b for a, b in zip(left, right, strict=True)))


def spoken(dimension: Dimension) -> str:
    """What a number measures, as a person says it: "stitches", "a length"."""
    return _SPOKEN.get(dimension) or f"a number in {base_unit(dimension)}"


def base_unit(dimension: Dimension) -> str:
    """The unit that exact values are given in: "st", "cm", "st/cm", "" for a plain number."""
    above = [_powered(word, power) for word, power in zip(_BASE_WORDS, dimension, strict=True) if power > 0]
    below = [_powered(word, -power) for word, power in zip(_BASE_WORDS, dimension, strict=True) if power < 0]
    if not below:
        return " ".join(above)
    return "/".join([" ".join(above) or "1", *below])


def _powered(word: str, power: int) -> str:
    return word if power == 1 else f"{word}^{power}"
