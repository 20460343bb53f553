"""In: a size. Out: whether it is meant for a baby or a small child.

"Small child" is used up to and with twelve years here, the ages that the cited rules on cords speak of (to 2T-12 in the
US, to 14 years in the EU); the wording of an age is the trade's (common practice, no source).
"""

import re

from sizewright.read.pattern import Size

_WORDS = re.compile(
    r"\b(preemie|premature|newborn|new-born|infant|baby|babies|toddler|child|children|kid|kids|months?|mos?|mths?)\b",
    re.I,
)
_YEARS = re.compile(r"(\d+)\s*(?:(?:to|-|–)\s*(\d+)\s*)?(?:years?|yrs?|y)\b", re.I)
_OLDEST = 12


def for_a_child(size: Size) -> bool:
    """Whether the name or the age of a size is a child's."""
    age = size.remarks.get("age")
    texts = (size.name, age.text if age else "")
    return any(_WORDS.search(text) or _young(text) for text in texts)


def _young(text: str) -> bool:
    found = _YEARS.search(text)
    return found is not None and int(found[1]) <= _OLDEST
