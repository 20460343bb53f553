"""In: words that a source does not hold any more. Out: the words in it that they have most likely become."""

from collections.abc import Sequence
from difflib import SequenceMatcher

from sizewright.read.translating.pairs import Pair
from sizewright.read.translating.texts import Text

_LIKENESS = 0.6
_MOST_TEXTS, _LONGEST = 60, 1_000  # comparing long texts with many others is slow


def nearest_text(pair: Pair, texts: Sequence[Text]) -> Text | None:
    """The text most like the words of a pair; None where none is close."""
    matcher = SequenceMatcher(autojunk=False)
    matcher.set_seq2(pair.key[:_LONGEST])
    best: Text | None = None
    likeness = _LIKENESS
    for text in texts[:_MOST_TEXTS]:
        matcher.set_seq1(text.key[:_LONGEST])
        if matcher.real_quick_ratio() > likeness and matcher.quick_ratio() > likeness:
            ratio = matcher.ratio()
            if ratio > likeness:
                best, likeness = text, ratio
    return best
