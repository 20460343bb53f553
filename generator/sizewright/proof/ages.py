"""In: a size. Out: whether it is meant for a baby or a small child.

"Small child" is used up to and with twelve years here, the ages that the cited rules on cords speak of (to 2T-12 in the
US, to 14 years in the EU); the wording of an age is the trade's (common practice, no source).
"""

import re

from sizewright.read.pattern import Size

_WORDS = re.compile(
    r"\b(pree?mies?|premature|newborns?|new-born|infants?|baby|babies|toddlers?|child|children|kids?|months?|mos?|mths?)\b",
    re.I,
)
_YEARS = re.compile(r"(?<!\d)(\d{1,3})\s*(?:(?:to|-|–)\s*\d{1,3}\s*)?(?:years?|yrs?|y|T)\b", re.I)
_MONTHS = re.compile(r"\d\s*m\b")  # "3-6 m", said of an age; in the name of a size an M is a medium
_OLDEST = 12


def for_a_child(size: Size) -> bool:
    """Whether the name or the age of a size is a child's."""
    remark = size.remarks.get("age")
    age = remark.text if remark else ""
    return bool(_MONTHS.search(age)) or any(_WORDS.search(text) or _young(text) for text in (size.name, age))


def _young(text: str) -> bool:
    found = _YEARS.search(text)
    return found is not None and int(found[1]) <= _OLDEST
