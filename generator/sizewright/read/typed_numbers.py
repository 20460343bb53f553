"""In: numbers as people type them, alone or a list for all sizes. Out: exact values, or what is wrong with the list."""

import unicodedata
from fractions import Fraction

from sizewright.base.finding import Finding
from sizewright.base.place import Span
from sizewright.read.rules import WRONG_LIST_LENGTH


def exact(text: str) -> Fraction:
    """The exact value of a typed number: "22 1/4", "0.4", "1½"."""
    glyph = text[-1]
    if not glyph.isdecimal():
        part = Fraction(unicodedata.normalize("NFKD", glyph).replace("⁄", "/"))
        return Fraction(text[:-1].strip() or 0) + part
    whole, _, part_text = text.rpartition(" ")
    return Fraction(whole or 0) + Fraction(part_text)


def wrong_list_length(span: Span, text: str, given: int, sizes: tuple[str, ...]) -> Finding:
    """The finding for a bracket list that does not answer to the sizes."""
    if len(sizes) < 2:
        mend = "Name the sizes in the header, or write one number."
        return WRONG_LIST_LENGTH.at(
            span, f"“{shortened(text)}” gives {given} values, but the pattern has one size.", mend
        )
    lacking = sizes[given:]
    much = f"{', '.join(lacking)} would have none" if lacking else f"{given - len(sizes)} too many"
    message = f"“{shortened(text)}” gives {given} values for {len(sizes)} sizes: {much}."
    return WRONG_LIST_LENGTH.at(span, message, f"Write one value each for {', '.join(sizes)}.", lacking)


def shortened(text: str) -> str:
    """Words of the source, short enough for a sentence."""
    folded = " ".join(text.split())
    return folded if len(folded) <= 60 else f"{folded[:57]}…"
