"""In: exact values. Out: the words and figures they are printed with. Here and in `figures` numbers become text.

Lengths are printed in centimetres and inches, inches in quarters, as the trade does (common practice, no source).
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from types import MappingProxyType

from sizewright.base.figures import counted as counted  # noqa: PLC0414 -- figures are print too
from sizewright.base.figures import decimal as decimal  # noqa: PLC0414
from sizewright.base.figures import gauge_counts, nearest, to_quarters, vulgar
from sizewright.base.figures import quarters as quarters  # noqa: PLC0414
from sizewright.base.figures import with_point as with_point  # noqa: PLC0414
from sizewright.base.language import spoken, tr_many
from sizewright.base.needle_sizes import NEEDLE_SIZES, SYSTEMS
from sizewright.base.number_words import in_words, ordinal, times
from sizewright.base.spoken_units import with_unit
from sizewright.base.units import (
    COUNTS,
    LENGTH,
    MASS,
    PLAIN,
    ROW_GAUGE,
    ROWS,
    STITCH_GAUGE,
    STITCHES,
    Dimension,
    base_unit,
    unit_named,
)

_LONG = 300  # cm; beyond what is measured on a garment, yarn and cords are given in metres and yards
_VERY_LONG = 2000  # cm; from here on whole metres and yards are near enough
_SYSTEM_OF = {**dict.fromkeys(("mm", "cm", "m", "g"), "metric"), **dict.fromkeys(("in", "yd", "oz"), "imperial")}


@dataclass(frozen=True, slots=True)
class Series:
    """One quantity in print: a text for each size, one alone where all sizes agree, and the unit behind them."""

    values: tuple[str, ...]
    unit: str = ""

    @property
    def system(self) -> str:
        """The system its unit belongs to, "metric" or "imperial"; "" for a count or a plain number."""
        return _SYSTEM_OF.get(self.unit.rpartition(" ")[2], "")


def between_sizes() -> str:
    """What stands between the values of two sizes; where a comma begins decimals, another sign."""
    return "; " if spoken().comma == "," else ", "


def bracketed(values: Sequence[str]) -> str:
    """As the trade writes a value for every size: "72 (80, 88, 96)"."""
    first, *rest = values
    return f"{first} ({between_sizes().join(rest)})" if rest else first


def as_text(series: Sequence[Series]) -> str:
    """The whole text: "4 (4, 5) cm / 1½ (1½, 2) in"."""
    return " / ".join(with_unit(bracketed(one.values), one.unit) for one in series)


def exact_text(value: Fraction) -> str:
    """The exact value as data writes it: "72", "145/2"."""
    return str(value)


def _factor(unit: str) -> Fraction:
    known = unit_named(unit)
    if known is None:
        raise ValueError(unit)
    return known.factor


def _centimetres(values: Sequence[Fraction]) -> tuple[str, ...]:
    return tuple(decimal(value, 1) for value in _to_half_centimetres(values))


def _to_half_centimetres(values: Sequence[Fraction]) -> tuple[Fraction, ...]:
    """To one decimal where every size is exact so, else to the nearest half, as a tape is read; a tie goes up."""
    exact = all(10 % value.denominator == 0 for value in values)
    if exact or all(abs(value.numerator) < 2 * value.denominator for value in values):
        return tuple(_to_tenth(value) for value in values)
    halves = ((4 * value.numerator + value.denominator) // (2 * value.denominator) for value in values)
    return tuple(Fraction(half, 2) for half in halves)


def _in_unit(values: Sequence[Fraction], unit: str, places: int) -> tuple[str, ...]:
    factor = _factor(unit)
    return tuple(decimal(value / factor, places) for value in values)


def _to_tenth(value: Fraction) -> Fraction:
    return Fraction(nearest(value, 10) * (-1 if value.numerator < 0 else 1), 10)


def _inches(values: Sequence[Fraction]) -> tuple[str, ...]:
    return tuple(map(vulgar, _to_quarter_inches(values)))


def _to_quarter_inches(values: Sequence[Fraction]) -> tuple[Fraction, ...]:
    up, down = _factor("in").as_integer_ratio()
    return tuple(to_quarters(Fraction(value.numerator * down, value.denominator * up)) for value in values)


def _long_length(values: Sequence[Fraction]) -> tuple[Series, ...]:
    """Yarn and other long lengths: metres and yards, a cord of a few metres to the tenth."""
    places = 0 if all(abs(value.numerator) >= _VERY_LONG * value.denominator for value in values) else 1
    return _series(_in_unit(values, "m", places), "m") + _series(_in_unit(values, "yd", places), "yd")


def _length(values: Sequence[Fraction]) -> tuple[Series, ...]:
    if max(abs(value) for value in values) >= _LONG:
        return _long_length(values)
    return _series(_centimetres(values), "cm") + _series(_inches(values), "in")


def _grams(values: Sequence[Fraction]) -> tuple[str, ...]:
    """To one decimal where every size is exact so or less than 10 g, else whole, as labels give them.

    Source: 16 CFR 500.19(b): metric quantities in three figures at most, in two under 100 g.
    """
    exact = all(10 % value.denominator == 0 for value in values)
    small = all(abs(value.numerator) < 10 * value.denominator for value in values)
    return tuple(decimal(value, 1 if exact or small else 0) for value in values)


def _mass(values: Sequence[Fraction]) -> tuple[Series, ...]:
    return _series(_grams(values), "g") + _series(_in_unit(values, "oz", 2), "oz")


def _gauge(word: str) -> "Printer":
    """Counts over 10 cm and over 4 in, which are not the same: 4 in are 10.16 cm."""

    def printed_gauge(values: Sequence[Fraction]) -> tuple[Series, ...]:
        over_10_cm, over_4_in = zip(*(gauge_counts(value, 4 * _factor("in")) for value in values), strict=True)
        return _series(over_10_cm, f"{word} in 10 cm") + _series(over_4_in, f"{word} in 4 in")

    return printed_gauge


def _series(values: tuple[str, ...], unit: str = "") -> tuple[Series, ...]:
    return (Series(values[:1] if len(set(values)) == 1 else values, unit),)


def _each(text: Callable[[Fraction, str], str]) -> "Printer":
    return lambda values: _series(tuple(text(value, decimal(value)) for value in values))


def _often(values: Sequence[Fraction]) -> tuple[Series, ...]:
    """How often, "times" once behind the counts of all sizes, as the trade has it: "4 (4, 3) times".

    Not so where a size has one time to do, which has a word of its own.
    """
    if max(values) > 2 and 1 not in values and len(set(values)) > 1:
        return _series(tuple(map(decimal, values)), "times")
    return _each(times)(values)


Printer = Callable[[Sequence[Fraction]], tuple[Series, ...]]

# How a quantity is printed where no style is asked for, by what it measures.
_PLAIN_STYLE: Mapping[Dimension, Printer] = MappingProxyType(
    {LENGTH: _length, MASS: _mass, STITCH_GAUGE: _gauge("sts"), ROW_GAUGE: _gauge("rows")}
)

# The styles a designer may ask for behind a colon, and what each may be used for.
STYLES: Mapping[str, tuple[Printer, tuple[Dimension, ...]]] = MappingProxyType(
    {
        "times": (_often, (PLAIN, *COUNTS)),
        "ordinal": (_each(ordinal), (PLAIN, *COUNTS)),
        "words": (_each(in_words), (PLAIN, *COUNTS)),
        "cm": (lambda values: _series(_centimetres(values), "cm"), (LENGTH,)),
        "mm": (lambda values: _series(_in_unit(values, "mm", 1), "mm"), (LENGTH,)),
        "in": (lambda values: _series(_inches(values), "in"), (LENGTH,)),
        "long": (_long_length, (LENGTH,)),
        "g": (lambda values: _series(_grams(values), "g"), (MASS,)),
        "oz": (lambda values: _series(_in_unit(values, "oz", 2), "oz"), (MASS,)),
        "percent": (lambda values: _series(tuple(f"{decimal(value * 100, 1)} %" for value in values)), (PLAIN,)),
    }
)


# These styles say how often or which: only a whole number can be printed so.
WHOLE_STYLES = ("times", "ordinal", "words")


def amount(value: Fraction, dimension: Dimension, style: str | None = None) -> str:
    """One value with its unit, for a sentence: "74 sts", "32.5 cm / 12¾ in"."""
    number = 1 if value == 1 else 2  # of a part of a stitch there are "0.5 sts"
    if dimension == STITCHES:
        return tr_many("{n} st", "{n} sts", number, n=decimal(value))
    if dimension == ROWS:
        return tr_many("{n} row", "{n} rows", number, n=decimal(value))
    return as_text(printed((value,), dimension, style))


def needle_size(mm: Fraction) -> tuple[str, ...]:
    """A needle in mm, and the US and UK labels it is sold under: ("4 mm", "US 6", "UK 8")."""
    known = NEEDLE_SIZES.get(mm)
    labels = ((system, known.label(system)) for system in SYSTEMS) if known else ()
    return (with_unit(decimal(mm), "mm"), *(f"{system} {label}" for system, label in labels if label))


# Yarn is bought by its length or its mass: the units, and the decimals of each.
_BOUGHT: Mapping[Dimension, tuple[tuple[str, int], ...]] = MappingProxyType(
    {LENGTH: (("m", 0), ("yd", 0)), MASS: (("g", 0), ("oz", 1))}
)


def bought(values: Sequence[Fraction], dimension: Dimension, *, metric_first: bool = True) -> tuple[Series, ...]:
    """Yarn to buy, a length or a mass, rounded up: never less in print than is needed."""
    series = tuple(_rounded_up(values, *unit)[0] for unit in _BOUGHT[dimension])
    return series if metric_first else series[::-1]


def _rounded_up(values: Sequence[Fraction], unit: str, places: int) -> tuple[Series, ...]:
    step = _factor(unit) / 10**places
    return _series(tuple(decimal(Fraction(ceil(value / step), 10**places), places) for value in values), unit)


def printed(
    values: Sequence[Fraction], dimension: Dimension, style: str | None = None, *, metric_first: bool = True
) -> tuple[Series, ...]:
    """The values in print. `style` is one of `STYLES`; a length without one is given in both unit systems."""
    if style is not None:
        return STYLES[style][0](values)
    printer = _PLAIN_STYLE.get(dimension)
    if printer is not None:
        series = printer(values)
        return series if metric_first else series[::-1]
    unit = base_unit(dimension)
    shown = "" if unit in ("st", "row") else unit
    return (Series(_series(tuple(decimal(value) for value in values))[0].values, shown),)


def printed_ease(
    finished: Sequence[Fraction], body: Sequence[Fraction], *, metric_first: bool = True
) -> tuple[Series, ...]:
    """Lengths of the garment less those of the body, each unit system by its own printed numbers: 13.5 − 15 is −1.5.

    So a table of the three never contradicts itself; only beyond what is printed in cm and in is the exact one rounded.
    """
    if max(abs(value) for value in (*finished, *body)) >= _LONG:
        return printed(_less(finished, body), LENGTH, metric_first=metric_first)
    centimetres = tuple(decimal(value, 1) for value in _less(*map(_to_half_centimetres, (finished, body))))
    inches = tuple(map(vulgar, _less(*map(_to_quarter_inches, (finished, body)))))
    series = _series(centimetres, "cm") + _series(inches, "in")
    return series if metric_first else series[::-1]


def _less(left: Sequence[Fraction], right: Sequence[Fraction]) -> tuple[Fraction, ...]:
    return tuple(one - other for one, other in zip(left, right, strict=True))
