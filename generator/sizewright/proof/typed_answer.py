"""In: what a test knitter typed into a box. Out: the number, exact, in the unit of its line, or why it is none."""

import re
import unicodedata
from fractions import Fraction

from sizewright.base.units import spoken, unit_named
from sizewright.proof.expected import Expected, Kind
from sizewright.read.typed_numbers import exact

_MOST = 60  # signs; a number and its unit are shorter
_TYPED = re.compile(
    r"(?P<number>\d+\s+\d+/\d+|\d+/\d+|\d+[.,]\d+|\d+\s*[¼½¾⅛⅜⅝⅞⅓⅔]|[¼½¾⅛⅜⅝⅞⅓⅔]|\d+)\s*(?P<unit>[^\d\s.,/-][^\d]*)?"
)
# "1,234" is one and a bit in one country, and a good thousand in another.
_EITHER = re.compile(r"[1-9]\d{0,2}[.,]\d{3}")


class NoNumber(ValueError):  # noqa: N818 (named for the fault, like a finding)
    """What was typed is no number of that unit; the text is a sentence for a person."""


def number_in(typed: str, line: Expected) -> Fraction:
    """The number in the unit of the line; another unit of the same kind is turned into it. Raises NoNumber.

    Nothing is guessed: "about 72" is no number, and neither is "1,234".
    """
    text = " ".join(unicodedata.normalize("NFC", typed).split()).replace("″", '"')
    bare = text[: -len(line.unit)] if text.casefold().endswith(line.unit) else text
    found = _TYPED.fullmatch(bare.strip()) if len(text) <= _MOST else None
    if found is None:
        shown = text if len(text) <= _MOST else f"{text[:_MOST]}…"
        raise NoNumber(f"“{shown}” is no number")
    if _EITHER.fullmatch(found["number"]):
        raise NoNumber(f"“{text}” may be {_plain(text)}, or a number with decimals")
    value = _value(found["number"], text) * _factor(found["unit"] or "", line, text)
    if line.kind in (Kind.COUNT, Kind.ROWS) and value.denominator != 1:
        raise NoNumber(f"“{text}” is no whole number of {line.unit}")
    return value


def _value(number: str, text: str) -> Fraction:
    try:
        return exact(number.replace(",", "."))
    except ZeroDivisionError:
        raise NoNumber(f"“{text}” is no number") from None


def _plain(text: str) -> str:
    return "".join(sign for sign in text if sign.isdecimal())


def _factor(word: str, line: Expected, text: str) -> Fraction:
    """What a number in the typed unit is multiplied by to be in that of the line."""
    counted = line.unit.split()[0]  # "sts in 10 cm" are counted in sts
    unit, own = unit_named(word.strip() or counted), unit_named(counted)
    if own is None:
        raise ValueError(line.unit)
    if unit is None or unit.dimension != own.dimension:
        raise NoNumber(f"“{text}” does not tell {spoken(own.dimension)} in {counted}")
    return unit.factor / own.factor
