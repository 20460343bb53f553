"""In: words, days and labels. Out: them told together as the spoken language does: lists, ranges, dates."""

from collections.abc import Sequence
from datetime import date

from babel.dates import format_date

from sizewright.base.language import in_english, spoken, tr, tr_as


def listed(words: Sequence[str]) -> str:
    """ "Baby, Toddler and Child"; "" for none."""
    if len(words) < 2:
        return "".join(words)
    return tr("{first} and {last}", first=", ".join(words[:-1]), last=words[-1])


def ranged(first: str, last: str) -> str:
    """ "S to XL", "46 to 112"."""
    return tr("{first} to {last}", first=first, last=last)


def day_text(day: date) -> str:
    """ "12 October 2026"."""
    return format_date(day, tr_as("pattern of a date", "d MMMM y"), spoken().locale)


def within_sentence(label: str) -> str:
    """A label behind other words: English begins it small, other languages keep the capitals they gave it."""
    return label[:1].lower() + label[1:] if in_english() else label
