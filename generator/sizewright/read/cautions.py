"""The usual cautions, one table: a header names them in `cautions:`, page and PDF print them with their source."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

_LOCAL = "Rules differ from place to place: follow those of your own country."


@dataclass(frozen=True, slots=True)
class Caution:
    """What a reader is warned of, and who says so."""

    title: str
    text: str
    source: str


CAUTIONS: Mapping[str, Caution] = MappingProxyType(
    {
        "small-children": Caution(
            "For babies and small children",
            "No cords, ties or drawstrings at a hood or neck. Sew buttons, pompons and other small parts on firmly "
            "and check them before each wearing, or leave them off: what comes off can be swallowed. Take hats off "
            "for sleep and indoors, where a baby can overheat, and never leave a child asleep with loose knitting. "
            f"Weave ends in well, so that no loop can catch a finger or toe. {_LOCAL}",
            "US 16 CFR 1120 with ASTM F1816-97 and EU EN 14682 (cords and drawstrings on children's clothing); "
            "US 16 CFR 1501 (small parts, under 3 years); American Academy of Pediatrics 2022 (no hats indoors)",
        ),
        "hot-water": Caution(
            "Hot water",
            "Hot water scalds. Keep children and animals away, test the water before you put a hand in, wear gloves, "
            "and lift the wet knitting out with a spoon: it is heavy and holds the heat. Wool shrinks and felts in "
            f"hot water and with rubbing, and cannot be brought back. {_LOCAL}",
            "common practice, no source; care symbols: ISO 3758:2012",
        ),
        "dye": Caution(
            "Colours that bleed",
            "Strongly different colours can bleed into one another. Before you cast on, leave a length of each yarn "
            "in lukewarm water on a white cloth for half an hour; if the cloth takes colour, wash that yarn by itself "
            "first. If you dye yarn yourself, keep pots and spoons apart from those for food and follow the maker's "
            f"sheet. {_LOCAL}",
            "common practice, no source",
        ),
        "animal-fibre": Caution(
            "Wool and skin",
            "Wool and the hair of other animals make some people itch, and some are allergic to them. Ask before you "
            "knit a gift, and wear a piece of the yarn against the neck or the inside of the wrist for an hour first. "
            "For a baby choose a soft yarn, and take it off where the skin turns red.",
            "common practice, no source; a doctor knows better",
        ),
    }
)


_PARTS = "Sew buttons, pompons and other small parts on firmly and check them often, or leave them off: what comes off"
_ENDS = "Weave ends in well, so that no loop can catch a finger or toe."
_CORD_RULES = "US 16 CFR 1120 with ASTM F1816-97 and EU EN 14682 (cords and drawstrings on children's clothing)"
_SMALL_RULES = "US 16 CFR 1501 (small parts, under 3 years)"

# What a small child is to be kept from, by the kind of piece: the words of the kind, the warning, who says so.
_BY_KIND = (
    (
        r"pullovers?|sweaters?|jumpers?|cardigans?|jackets?|coats?|vests?|tops?|tunics?|dress(?:es)?|rompers?|hoodies?",
        f"No cords, ties or drawstrings at a hood or neck. {_PARTS} can be swallowed. {_ENDS}",
        f"{_CORD_RULES}; {_SMALL_RULES}",
    ),
    (
        r"hats?|caps?|beanies?|bonnets?|berets?|tams?",
        f"Take hats off for sleep and indoors, where a baby can overheat. No chin ties. {_PARTS} can be swallowed.",
        f"American Academy of Pediatrics 2022 (no hats indoors); {_CORD_RULES}; {_SMALL_RULES}",
    ),
    (
        r"mittens?|mitts?|gloves?|socks?|stockings?|bootees?|booties?|slippers?",
        f"{_ENDS} No cord from one mitten to the other: it can catch. {_PARTS} can be swallowed.",
        f"loose ends: common practice, no source; {_CORD_RULES}; {_SMALL_RULES}",
    ),
    (
        r"toys?|dolls?|cloths?|washcloths?|dishcloths?|blankets?",
        f"{_PARTS} can be swallowed. {_ENDS} Never leave a baby asleep with loose knitting.",
        _SMALL_RULES,
    ),
)


@dataclass(frozen=True, slots=True)
class StudioCaution:
    """A caution of the studio's own, from `site.yaml`; `where` says which patterns have it without naming it."""

    name: str
    caution: Caution
    where: Literal["named", "children", "everywhere"]


def caution(name: str, kind: str, own: Iterable[StudioCaution] = ()) -> Caution | None:
    """A caution by its name, that for small children in the words for the kind of piece; None where none has it.

    One of the studio's `own` stands for one of the tool's of the same name.
    """
    known = CAUTIONS.get(name)
    for one in own:
        if one.name == name:
            return one.caution
    for words, text, source in _BY_KIND if known is not None and name == "small-children" else ():
        if re.search(rf"\b(?:{words})\b", kind, re.IGNORECASE):
            return Caution(CAUTIONS[name].title, f"{text} {_LOCAL}", source)
    return known
