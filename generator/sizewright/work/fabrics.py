"""In: a fabric by its name. Out: the rows it is worked in: stockinette, garter, ribbing, as the stitches appear."""

import re
from collections.abc import Mapping
from types import MappingProxyType

from sizewright.base.place import Span
from sizewright.read.notation.fabric_names import meant_fabric, plain_words, rib_of
from sizewright.read.notation.stitches import STITCHES
from sizewright.read.notation.tree import Action, Count, Follow, Landmark, Manner, Place, Repeat, Work
from sizewright.read.trade_words import Country

_BY_TERM = {stitch.term: stitch for stitch in STITCHES}
_END = Place(Landmark.END)
_AS_BELOW = ("pattern", "rib", "as established", "as set", "even")
_MEANING = re.compile(r"(?P<name>.+?) \((?:knit|k) every (?P<of>rnd|round|row)\)")

# The rows of a fabric by its first name, right side first; in the round both are worked from the right side.
_FLAT: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "stockinette": ("k", "p"),
        "reverse stockinette": ("p", "k"),
        "garter": ("k",),
        "knit": ("k",),
        "purl": ("p",),
    }
)
_ROUND: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {**_FLAT, "stockinette": ("k",), "reverse stockinette": ("p",), "garter": ("k", "p")}
)


def fabric_rows(
    name: str, span: Span, *, in_the_round: bool, country: Country | None = None
) -> tuple[tuple[Action, ...], ...] | None:
    """The rows of a fabric by its name, to be worked again and again; None where the name is none of these.

    `country` is that whose terms the text is in: moss stitch is not the same in the US.
    """
    meaning = _MEANING.fullmatch(plain_words(name))
    if meaning is not None:
        meant = fabric_rows(meaning["name"], span, in_the_round=in_the_round)
        plain = fabric_rows("knit", span, in_the_round=in_the_round)
        return meant if meant == plain and in_the_round == (meaning["of"] != "row") else None
    word = meant_fabric(name, country)
    if word in _AS_BELOW:
        return ((Follow(span, Manner.ANY, None, _END),),)
    if word == "double moss":
        return tuple((Follow(span, manner, None, _END),) for manner in (Manner.OPPOSITE, Manner.AS_THEY_APPEAR))
    if word in ("moss", "seed"):
        return ((Follow(span, Manner.OPPOSITE, None, _END),),)
    rib = rib_of(name)
    if rib is not None:
        knit, purl = rib
        actions = (Work(span, _BY_TERM["k"], Count(span, knit)), Work(span, _BY_TERM["p"], Count(span, purl)))
        return ((Repeat(span, actions, None, _END),),)
    rows = (_ROUND if in_the_round else _FLAT).get(word)
    return None if rows is None else tuple((Work(span, _BY_TERM[term], None, _END),) for term in rows)
