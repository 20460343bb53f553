"""In: one exact value. Out: the figures it is printed with: decimals, quarters of an inch, counts of a gauge."""

from fractions import Fraction

from sizewright.base.language import spoken

_EIGHTHS = {2: "¼", 4: "½", 6: "¾", 1: "⅛"}


def decimal(value: Fraction, places: int = 2) -> str:
    """A plain number: whole, or to so many places without idle zeros; a tie goes away from zero."""
    figures = with_point(value, places)
    return figures.replace(".", spoken().comma) if value.denominator != 1 else figures


def with_point(value: Fraction, places: int = 2) -> str:
    """The same with a decimal point in every language, as it is typed in a source."""
    if value.denominator == 1:
        return f"{value.numerator}".replace("-", "−")
    scaled = nearest(value, 10**places)
    whole, part = divmod(scaled, 10**places)
    digits = f"{whole}.{part:0{places}}".rstrip("0") if part else f"{whole}"
    return f"−{digits}" if value.numerator < 0 and scaled else digits


def quarters(value: Fraction) -> str:
    """Inches to the nearest quarter: "22¼"; what would vanish is given in eighths, then in hundredths."""
    return vulgar(to_quarters(value))


def to_quarters(value: Fraction) -> Fraction:
    """The nearest quarter; of what would vanish the nearest eighth, then hundredth."""
    for parts in (4, 8, 100):
        rounded = nearest(value, parts)
        if rounded or not value.numerator:
            break
    return Fraction(-rounded if value.numerator < 0 else rounded, parts)


def vulgar(value: Fraction) -> str:
    """A number of quarters as a tape says it, and any other as a decimal."""
    whole, part = divmod(abs(value.numerator), value.denominator)
    eighths = part * 8 // value.denominator if 8 % value.denominator == 0 else None
    if not part:
        text = str(whole)
    elif eighths in _EIGHTHS:
        text = f"{whole or ''}{_EIGHTHS[eighths]}"
    else:
        return decimal(value)
    return f"−{text}" if value.numerator < 0 else text


def nearest(value: Fraction, parts: int) -> int:
    """The size of a value in halves, quarters, hundredths, to the nearest one; a tie goes away from zero.

    On whole numbers: a page prints hundreds of values, and sums of fractions would be most of its cost.
    """
    return (2 * abs(value.numerator) * parts + value.denominator) // (2 * value.denominator)


def gauge_counts(value: Fraction, four_inches: Fraction) -> tuple[str, str]:
    """A gauge over 10 cm and over 4 in, exact as it is stated in one of them, else as it can be counted: "≈ 22¼"."""
    over_10_cm, over_4_in = value * 10, value * four_inches
    stated = _is_countable(over_10_cm) or 10 % over_10_cm.denominator == 0
    text = decimal(over_10_cm) if stated else _about(over_10_cm)
    if _is_countable(over_4_in):
        return text, quarters(over_4_in)
    tenths = not stated and 10 % over_4_in.denominator == 0
    return text, decimal(over_4_in) if tenths else _about(over_4_in)


def _is_countable(count: Fraction) -> bool:
    """Whether a count comes out in quarters of a stitch, the least that can be counted (common practice, no source)."""
    return 4 % count.denominator == 0


def _about(count: Fraction) -> str:
    return f"≈ {quarters(count)}"


def counted(count: Fraction) -> tuple[str, bool]:
    """Stitches or rows to the nearest quarter, as they can be counted in a swatch, and whether that is rounded."""
    return quarters(count), not _is_countable(count)
