"""In: figures and the unit behind them. Out: both as the spoken language writes them; also what was typed by hand."""

import re

from sizewright.base.language import later_as, spoken, tr_as

_UNIT = "unit"
_UNITS = frozenset(
    (
        later_as("unit", "cm"),
        later_as("unit", "mm"),
        later_as("unit", "m"),
        later_as("unit", "in"),
        later_as("unit", "yd"),
        later_as("unit", "g"),
        later_as("unit", "oz"),
        later_as("unit", "sts"),
        later_as("unit", "rows"),
        later_as("unit", "rnds"),
        later_as("unit", "times"),
        later_as("unit", "sts in 10 cm"),
        later_as("unit", "sts in 4 in"),
        later_as("unit", "rows in 10 cm"),
        later_as("unit", "rows in 4 in"),
    )
)
_POINT = re.compile(r"(?<=\d)\.(?=\d)")
_WORD = re.compile(r"[A-Za-z]+")


def spoken_unit(unit: str) -> str:
    """A unit by its name in English print."""
    return tr_as(_UNIT, unit) if unit in _UNITS else unit


def with_unit(figures: str, unit: str, space: str = " ") -> str:
    """Figures and the unit behind them, if any: "32 cm"."""
    return f"{figures}{space}{spoken_unit(unit)}" if unit else figures


def as_typed(typed: str) -> str:
    """A measure as it was typed, with the decimal sign and the unit of the spoken language: "6.5 in"."""
    return _WORD.sub(lambda word: spoken_unit(word[0]), figures_typed(typed))


def figures_typed(text: str) -> str:
    """Typed figures with the decimal sign of the spoken language."""
    return _POINT.sub(spoken().comma, text)
