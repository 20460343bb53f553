"""The usual cautions, one table: a header names them in `cautions:`, page and PDF print them with their source."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from sizewright.base.language import later, named, tr

_LOCAL = later("Rules differ from place to place: follow those of your own country.")


@dataclass(frozen=True, slots=True)
class Caution:
    """What a reader is warned of, in sentences, and who says so, one source after the other."""

    title: str
    sentences: tuple[str, ...]
    sources: tuple[str, ...]

    @property
    def text(self) -> str:
        """The whole warning in the spoken language."""
        return " ".join(map(_told, self.sentences))

    @property
    def source(self) -> str:
        """Who says so."""
        return "; ".join(map(_told, self.sources))

    @property
    def heading(self) -> str:
        """What it is about."""
        return _told(self.title)


def _told(words: str) -> str:
    """Words of this table, or of the studio's own, in the spoken language."""
    told = named(words)
    return tr(words) if words and told == words else told


_PRACTICE = later("common practice, no source")
_CORD_RULES = later("US 16 CFR 1120 with ASTM F1816-97 and EU EN 14682 (cords and drawstrings on children's clothing)")
# The scope of EN 14682: tukes.fi; that of the US rule is upper outerwear (cpsc.gov).
_CORDS_ELSEWHERE = later(
    "cords: after the rules for children's clothing, US 16 CFR 1120 and EU EN 14682, which do not reach hats and gloves"
)
_SMALL_RULES = later("US 16 CFR 1501 (small parts, under 3 years)")
_END_RULES = later("loose ends: common practice, no source")
_INDOORS = later("American Academy of Pediatrics 2022 (no hats indoors)")

_CORDS = later("No cords, ties or drawstrings at a hood or neck.")
_PARTS = later(
    "Sew buttons, pompons and other small parts on firmly and check them often, or leave them off: what comes off can "
    "be swallowed."
)
_ENDS = later("Weave ends in well, so that no loop can catch a finger or toe.")

CAUTIONS: Mapping[str, Caution] = MappingProxyType(
    {
        "small-children": Caution(
            later("For babies and small children"),
            (
                _CORDS,
                later(
                    "Sew buttons, pompons and other small parts on firmly and check them before each wearing, or leave "
                    "them off: what comes off can be swallowed."
                ),
                later(
                    "Take hats off for sleep and indoors, where a baby can overheat, and never leave a child asleep "
                    "with loose knitting."
                ),
                _ENDS,
                _LOCAL,
            ),
            (_CORD_RULES, _SMALL_RULES, _INDOORS),
        ),
        "hot-water": Caution(
            later("Hot water"),
            (
                later(
                    "Hot water scalds. Keep children and animals away, test the water before you put a hand in, wear "
                    "gloves, and lift the wet knitting out with a spoon: it is heavy and holds the heat."
                ),
                later("Wool shrinks and felts in hot water and with rubbing, and cannot be brought back."),
                _LOCAL,
            ),
            (_PRACTICE, later("care symbols: ISO 3758:2012")),
        ),
        "dye": Caution(
            later("Colours that bleed"),
            (
                later(
                    "Strongly different colours can bleed into one another. Before you cast on, leave a length of each "
                    "yarn in lukewarm water on a white cloth for half an hour; if the cloth takes colour, wash that "
                    "yarn by itself first."
                ),
                later(
                    "If you dye yarn yourself, keep pots and spoons apart from those for food and follow the maker's "
                    "sheet."
                ),
                _LOCAL,
            ),
            (_PRACTICE,),
        ),
        "animal-fibre": Caution(
            later("Wool and skin"),
            (
                later(
                    "Wool and the hair of other animals make some people itch, and some are allergic to them. Ask "
                    "before you knit a gift, and wear a piece of the yarn against the neck or the inside of the wrist "
                    "for an hour first."
                ),
                later("For a baby choose a soft yarn, and take it off where the skin turns red."),
            ),
            (_PRACTICE, later("a doctor knows better")),
        ),
    }
)


# What a small child is to be kept from, by the kind of piece: the words of the kind, the warning, who says so.
_BY_KIND = (
    (
        r"pullovers?|sweaters?|jumpers?|cardigans?|jackets?|coats?|vests?|slipovers?|waistcoats?|tops?|tunics?|dress(?:es)?|rompers?|hoodies?",
        (_CORDS, _PARTS, _ENDS),
        (_CORD_RULES, _SMALL_RULES),
    ),
    (
        r"hats?|caps?|beanies?|bonnets?|berets?|tams?",
        (later("Take hats off for sleep and indoors, where a baby can overheat. No chin ties."), _PARTS),
        (_INDOORS, _CORDS_ELSEWHERE, _SMALL_RULES),
    ),
    (
        r"mittens?|mitts?|gloves?",
        (_ENDS, later("No cord from one mitten to the other: it can catch."), _PARTS),
        (_END_RULES, _CORDS_ELSEWHERE, _SMALL_RULES),
    ),
    (r"socks?|stockings?|bootees?|booties?|slippers?", (_ENDS, _PARTS), (_END_RULES, _SMALL_RULES)),
    (
        r"toys?|dolls?|cloths?|washcloths?|dishcloths?|blankets?",
        (_PARTS, _ENDS, later("Never leave a baby asleep with loose knitting.")),
        (_SMALL_RULES,),
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
    return _for_small_children(known, kind) if known is not None and name == "small-children" else known


def _for_small_children(usual: Caution, kind: str) -> Caution:
    """Of every kind that is named ("hat and mittens"), and what a hood needs; where none is known, all there is."""
    found = [one for one in _BY_KIND if re.search(rf"\b(?:{one[0]})\b", kind, re.IGNORECASE)]
    if not found:
        return usual
    sentences = [sentence for _, each, _ in found for sentence in each]
    sources = [source for _, _, each in found for source in each]
    if re.search(r"hood", kind, re.IGNORECASE):
        sentences, sources = [_CORDS, *sentences], [_CORD_RULES, *sources]
    return Caution(usual.title, (*dict.fromkeys(sentences), _LOCAL), tuple(dict.fromkeys(sources)))
