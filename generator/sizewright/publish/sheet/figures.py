"""In: exact values. Out: the figures of a proof sheet: to the hundredth, with a sign where something was moved."""

from collections.abc import Iterable, Sequence
from fractions import Fraction

from sizewright.base.printing import decimal
from sizewright.base.units import Dimension, base_unit
from sizewright.publish.sheet.view import Cell, RowView

NONE = "–"


def unit_text(dimension: Dimension) -> str:
    """The unit of a quantity in words: "st", "cm", "number" where it has none."""
    return base_unit(dimension) or "number"


def exact(value: Fraction) -> str:
    """A value of three decimals at most, or to the hundredth behind a "≈"."""
    return decimal(value, 3) if 1000 % value.denominator == 0 else f"≈ {decimal(value)}"


def signed(value: Fraction, places: int = 2) -> str:
    """A movement or step with its sign; 0 where there is none."""
    text = decimal(value, places)
    return f"+{text}" if value > 0 and text != "0" else text


def percent(part: Fraction | None) -> str:
    """A part in percent, with its sign."""
    return NONE if part is None else f"{signed(part * 100, 1)} %"


def row(label: str, texts: Iterable[str], *, main: bool = False, marks: Sequence[str] = ()) -> RowView:
    """A row of texts, one a size; `marks` are their classes where there are any."""
    cells = tuple(Cell(text, marks[place] if marks else "") for place, text in enumerate(texts))
    return RowView(label, cells, main)


def lines_text(lines: Iterable[int]) -> str:
    """ "line 12", "lines 12, 45", "" for none."""
    numbers = sorted(set(lines))
    return f"line{'s' if len(numbers) > 1 else ''} {', '.join(map(str, numbers))}" if numbers else ""
