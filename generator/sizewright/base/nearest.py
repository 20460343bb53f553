"""In: a word nobody knows and the words that are known. Out: the nearest known one, in a sentence."""

from collections.abc import Iterable
from difflib import get_close_matches
from itertools import islice

_LONGEST = 60  # signs; comparing is slow for long words, and nobody mistypes one of that length
_MOST = 400  # known words


def nearest(word: str, known: Iterable[str], likeness: float = 0.6) -> str | None:
    """The known word closest to `word`, or None where none is close; capitals do not count."""
    by_folded = {name.casefold(): name for name in islice(known, _MOST)}
    if len(word) > _LONGEST:
        return None
    found = get_close_matches(word.casefold(), by_folded, n=1, cutoff=likeness)
    return by_folded[found[0]] if found else None


def did_you_mean(word: str, known: Iterable[str], otherwise: str = "") -> str:
    """A question naming the nearest known word, or `otherwise`."""
    found = nearest(word, known)
    return f"Did you mean “{found}”?" if found else otherwise
