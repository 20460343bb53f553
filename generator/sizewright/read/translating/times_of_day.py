"""In: some words and their language. Out: each time of day in them in one spelling, however the language tells it.

"7 pm", "7:30 p.m.", "19 Uhr", "19.30 Uhr", "7 Uhr abends" and "19:30" are known (common practice, no source).
"""

import re
from collections.abc import Mapping
from types import MappingProxyType

from sizewright.base.language import as_known

_HOUR, _MINUTES = r"(?P<hour>\d{1,2})", r"(?:[:.](?P<minutes>[0-5]\d))?"
_ENGLISH = re.compile(rf"\b{_HOUR}{_MINUTES}[\s\u00a0\u202f]?(?P<half>[ap])(?:\.m\.|m\b)", re.IGNORECASE)
_GERMAN = re.compile(
    rf"\b{_HOUR}{_MINUTES}[\s\u00a0\u202f]?Uhr\b(?:\s(?P<half>morgens|früh|vormittags|mittags|nachmittags|abends|nachts)\b)?"
)
_PLAIN = re.compile(r"(?<![\d.,:])(?P<hour>[01]?\d|2[0-4]):(?P<minutes>[0-5]\d)(?![\d:])(?P<half>)")
_OF_LANGUAGE: Mapping[str, re.Pattern[str]] = MappingProxyType({"en": _ENGLISH, "de": _GERMAN})


def times_alike(words: str, code: str) -> str:
    """The words with every time of day as "19:30"; German has "am" for something else than the morning."""
    own = _OF_LANGUAGE.get(as_known(code)[0])
    for known in (own, _PLAIN) if own else (_PLAIN,):
        words = known.sub(_told, words)
    return words


def _told(found: re.Match[str]) -> str:
    hour, half = int(found["hour"]), (found["half"] or "").casefold()
    if hour > 24 or (half in ("a", "p") and not 1 <= hour <= 12):
        return found.group()
    return f"{_of_day(hour, half):02}:{found['minutes'] or '00'}"


def _of_day(hour: int, half: str) -> int:
    """The hour from 0 to 23."""
    match half:
        case "a":
            return hour % 12
        case "p" | "nachmittags" | "abends":
            return hour % 12 + 12 if hour <= 12 else hour
        case "mittags":
            return hour + 12 if hour < 4 else hour
        case "nachts":
            return hour % 12 + 12 if 8 < hour < 12 else hour % 12 if hour == 12 else hour % 24
        case _:
            return hour % 24
