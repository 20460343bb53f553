"""In: some words and their language. Out: the numbers from two to twelve that they tell in words.

"One" is not among them: in most languages it is an article or a pronoun too ("this one", "eine Masche").
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from types import MappingProxyType

from sizewright.base.language import ENGLISH, as_known, is_english, language, speaking
from sizewright.base.number_words import small_in_words

# Other words for a number, by language: common usage, no source. A word that begins like a number is found by that.
_OTHERWISE: Mapping[str, Mapping[int, str]] = MappingProxyType(
    {
        "en": {1: "one|once|single", 2: r"twice|both|pairs?|couple|doubled?|halves|half|either", 3: "thrice"},
        "de": {2: r"beid\w*|(?:ver)?doppel\w*|paar\w*|(?:\w+)?hälfte\w*|halb\w*", 1: r"ein\w*|jede\w*"},
    }
)
# And those that say how often, and are as sure as the numbers.
_OFTEN: Mapping[str, Mapping[str, int]] = MappingProxyType(
    {"en": {"twice": 2}, "de": {"zweimal": 2, "dreimal": 3, "viermal": 4, "fünfmal": 5, "sechsmal": 6}}
)


@dataclass(frozen=True, slots=True)
class InWords:
    """The words of a text that tell numbers; `sure` are those that tell nothing else, by their number."""

    words: str
    sure: Mapping[int, str]
    _known: "_Known" = field(repr=False)

    def may_tell(self, value: int) -> bool:
        """Whether one of the words may stand for a number: "beide" for two, "dreifach" for three."""
        pattern = self._known.perhaps.get(value)
        return pattern is not None and pattern.search(self.words) is not None


def in_words_of(words: str, code: str) -> InWords | None:
    """The numbers that a text of a language tells in words; None where the numbers of that language are not known."""
    known = _known(code)
    if known is None:
        return None
    found = (one.group() for one in known.sure.finditer(words))
    return InWords(words, {known.values[word.casefold()]: word for word in found}, known)


@dataclass(frozen=True, slots=True)
class _Known:
    sure: re.Pattern[str]
    values: Mapping[str, int]
    perhaps: Mapping[int, re.Pattern[str]]


@cache
def _known(code: str) -> _Known | None:
    words = _numbers(code)
    if not is_english(code) and words == _numbers(ENGLISH):
        return None
    wide = as_known(code)[0]
    values = {word: value for value, word in words.items() if value > 1}
    values.update(_OFTEN.get(wide, {}))
    perhaps = {value: rf"{word}\w*|{_OTHERWISE.get(wide, {}).get(value, word)}" for value, word in words.items()}
    sure = "|".join(sorted(values, key=len, reverse=True))
    # "twenty-four" is no four
    return _Known(_whole(rf"(?<!ty-)(?:{sure})"), values, {value: _whole(one) for value, one in perhaps.items()})


def _numbers(code: str) -> dict[int, str]:
    with speaking(language(code)):
        return {value: word for value, word in enumerate(small_in_words()) if value}


def _whole(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{pattern})\b", re.IGNORECASE)
