"""In: a meaning in words. Out: the stitches it says to take and to be left with, as far as it says so in figures.

"knit 3 together", "(1 st decreased)", "2 stitches fewer", "a cable over 6 stitches", "double decrease".
"""

import re
from dataclasses import dataclass

_NUMBERS = {"a": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "single": 1, "double": 2}
_N = rf"(\d{{1,2}}|{'|'.join(_NUMBERS)})"
_STS = r"(?:sts?|stitch(?:es)?)"
_CHANGE = re.compile(
    rf"\b{_N}[ -]{_STS} (fewer|less|decreased|dec(?:rease)?'?d?|more|increased|inc(?:rease)?'?d?)\b", re.I
)
_KIND = re.compile(r"\b(single|double) (decrease|increase)\b", re.I)
_TOGETHER = re.compile(rf"^(?:knit|purl|k|p) ?(?:the )?(?:next )?{_N} (?:{_STS} )?tog(?:ether)?\b", re.I)
_OVER = re.compile(rf"\b(?:cable|cross\w*|twist)\b[^.;]*?\bover {_N} {_STS}", re.I)


@dataclass(frozen=True, slots=True)
class Meant:
    """What a meaning says: stitches taken from the needle, and how many more or fewer there are then; None unsaid."""

    uses: int | None
    change: int | None


def meant(meaning: str) -> Meant:
    """What a meaning says in figures."""
    together, over = _TOGETHER.search(meaning.strip()), _OVER.search(meaning)
    uses = _number(together[1]) if together else _number(over[1]) if over else None
    changes = {_signed(found[1], found[2]) for form in (_CHANGE, _KIND) for found in form.finditer(meaning)}
    if together and uses is not None:
        changes.add(1 - uses)
    return Meant(uses, changes.pop() if len(changes) == 1 else None)


def _signed(number: str, word: str) -> int:
    return _number(number) * (1 if word.casefold().startswith(("more", "inc")) else -1)


def _number(word: str) -> int:
    return int(word) if word.isdigit() else _NUMBERS[word.casefold()]
