"""In: a line of text. Out: how much room it takes, never less than it really does, so that nothing runs into it.

The widths are those of Atkinson Hyperlegible Bold, the wider of the two that the themes print with, rounded up.
"""

from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType

# In em: from the foot of a "g" to above an "É", as the typeface has it (hhea: 0.95 above the base line, 0.29 below).
ABOVE, UNDER = 0.95, 0.29
HEIGHT = ABOVE + UNDER

_WIDTHS: Mapping[str, float] = MappingProxyType(
    {
        **dict.fromkeys("0123456789", 0.66),
        **dict.fromkeys(".,'", 0.25),
        **dict.fromkeys("()", 0.37),
        **dict.fromkeys(" \u00a0il", 0.33),
        **dict.fromkeys("cdny", 0.6),
        "/": 0.45,
        "−": 0.62,
    }
)
_WIDEST = 0.97  # a fraction such as ¾, a capital or an "m" is narrower


@lru_cache(maxsize=4096)
def text_width(text: str, size: float) -> float:
    """The width of a line set in a size, in the unit of the size."""
    return size * sum(_WIDTHS.get(sign, _WIDEST) for sign in text)
