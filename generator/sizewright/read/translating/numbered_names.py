"""In: words and their translation. Out: both without stitches that are called by a number in one language alone.

German has "1 U" for "yo" and "2 M überz zus-str" for "ssk": these figures are a name, and no other number.
"""

import re
from functools import cache

from sizewright.read.term import Term
from sizewright.read.terms import terms_in


def without_names(words: str, told: str, into: str, listed: tuple[Term, ...] = ()) -> tuple[str, str]:
    """The words and their translation without each stitch that stands in both; one in one of them alone stays.

    `listed` are the terms that a studio adds to those of the language.
    """
    for name in _names(into, listed):
        times = min(len(name.findall(words)), len(name.findall(told)))
        if times:
            words, told = (name.sub(" ", side, count=times) for side in (words, told))
    return words, told


@cache
def _names(code: str, listed: tuple[Term, ...]) -> tuple[re.Pattern[str], ...]:
    """A stitch by all it is called, in the language and in that of the sources; the longer names first."""
    several = (
        sorted(term.spellings, key=len, reverse=True) for term in terms_in(code, listed) if len(term.spellings) > 1
    )
    return tuple(
        re.compile(rf"(?<![\w{{-])(?:1 )?(?:{'|'.join(map(re.escape, names))})(?![\w}}-])")
        for names in sorted(several, key=lambda names: max(map(len, names)), reverse=True)
    )
