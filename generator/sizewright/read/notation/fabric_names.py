"""In: a fabric as instructions name it: "St st", "rev stocking stitch", "2x2 rib". Out: which usual fabric it is."""

import re
from collections.abc import Mapping
from types import MappingProxyType

from sizewright.read.trade_words import Country

# A fabric by its first name and by the others it goes by, without a last "stitch", "st", "pattern" or "fabric".
# Common practice, no source. "Moss" is another fabric in the US than in the UK; the country decides (`meant_fabric`).
_NAMES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "stockinette": ("stocking", "st st", "st"),  # "in st st", where the last word is taken for "stitch"
        "reverse stockinette": (
            *(f"{turned} {name}" for turned in ("reverse", "rev") for name in ("stocking", "st st", "st")),
            "rev stockinette",
        ),
        "garter": (),
        "knit": ("k",),
        "purl": ("p",),
        "pattern": ("patt", "pat", "patterns", "patts"),
        "rib": ("ribbing",),
        "as established": ("established", "est", "as est"),
        "as set": (),
        "even": ("straight",),
        "moss": (),
        "seed": (),
        "double moss": ("irish moss",),  # US moss stitch by its names in the UK (read/trade_words.py)
    }
)
_USUAL = MappingProxyType({name: first for first, others in _NAMES.items() for name in (first, *others)})
_KIND = re.compile(
    r" (?:stitch|st|patterns?|fabric)$|^(?:patterns?|patts?|pats?|rib|ribbing) (?=as (?:set|established|est)$)"
)
_RIB = re.compile(
    r"(?:rib )?k ?(\d{1,3}),? ?p ?(\d{1,3})(?: rib| ribbing)?|(\d{1,3}) ?[x×] ?(\d{1,3})(?: rib| ribbing)?"
)

FABRICS = tuple(_USUAL)


def plain_words(name: str) -> str:
    """A name in small letters, without "in" or "the" before it."""
    return re.sub(r"^(?:in|of|the) ", "", " ".join(name.casefold().split()))


def usual_fabric(name: str) -> str:
    """The first name of a usual fabric by any of its names, "" for another: "stockinette" for "St st"."""
    word = plain_words(name)
    return _USUAL.get(word) or _USUAL.get(_KIND.sub("", word), "")


def meant_fabric(name: str, country: Country | None) -> str:
    """The first name of a usual fabric as a text in the terms of a country means it: US moss stitch is double moss."""
    usual = usual_fabric(name)
    return "double moss" if usual == "moss" and country is Country.US else usual


def rib_of(name: str) -> tuple[int, int] | None:
    """How many stitches of a rib are knitted and purled, by its name: 2 and 2 for "k2, p2 rib"."""
    found = _RIB.fullmatch(_KIND.sub("", plain_words(name)))
    if found is None:
        return None
    knit, purl = (int(part) for part in found.groups() if part)
    return knit, purl
