"""In: a name that a formula or a header uses. Out: it as words for readers, in the spoken language where it is usual.

A translation may tell any name in its own way (`named`); what it does not tell and what is not in this table stays.
"""

from collections.abc import Mapping
from types import MappingProxyType

from sizewright.base.language import in_english, later_as, named, tr_as
from sizewright.read.measure_names import NAME, USUAL_NAMES, name_words

# The kinds of patterns that are usual; a studio may have others.
_KINDS = frozenset(
    (
        later_as("kind", "baby blanket"),
        later_as("kind", "bag"),
        later_as("kind", "beret"),
        later_as("kind", "blanket"),
        later_as("kind", "bonnet"),
        later_as("kind", "bootees"),
        later_as("kind", "cap"),
        later_as("kind", "cardigan"),
        later_as("kind", "cloth"),
        later_as("kind", "coat"),
        later_as("kind", "cowl"),
        later_as("kind", "cushion"),
        later_as("kind", "dishcloth"),
        later_as("kind", "dress"),
        later_as("kind", "gloves"),
        later_as("kind", "hat"),
        later_as("kind", "headband"),
        later_as("kind", "jacket"),
        later_as("kind", "jumper"),
        later_as("kind", "leg warmers"),
        later_as("kind", "mittens"),
        later_as("kind", "pullover"),
        later_as("kind", "scarf"),
        later_as("kind", "shawl"),
        later_as("kind", "skirt"),
        later_as("kind", "slipover"),
        later_as("kind", "slippers"),
        later_as("kind", "socks"),
        later_as("kind", "stockings"),
        later_as("kind", "sweater"),
        later_as("kind", "top"),
        later_as("kind", "toy"),
        later_as("kind", "tunic"),
        later_as("kind", "vest"),
        later_as("kind", "washcloth"),
        later_as("kind", "wristlets"),
    )
)

# Levels and weights, as the standards of the Craft Yarn Council have them.
_SKILLS = frozenset(
    (
        later_as("skill", "basic"),
        later_as("skill", "easy"),
        later_as("skill", "intermediate"),
        later_as("skill", "complex"),
    )
)
_WEIGHTS = frozenset(
    (
        later_as("yarn weight", "lace"),
        later_as("yarn weight", "super fine"),
        later_as("yarn weight", "fine"),
        later_as("yarn weight", "light"),
        later_as("yarn weight", "medium"),
        later_as("yarn weight", "bulky"),
        later_as("yarn weight", "super bulky"),
        later_as("yarn weight", "jumbo"),
    )
)
_TABLES: Mapping[str, frozenset[str]] = MappingProxyType(
    {NAME: USUAL_NAMES, "kind": _KINDS, "skill": _SKILLS, "yarn weight": _WEIGHTS}
)


def spoken_name(name: str) -> str:
    """A name of the formulas as words of a heading: "upper_arm" is "Upper arm"."""
    words = as_words(name)
    return words[:1].upper() + words[1:]


def name_within(name: str) -> str:
    """The same within a sentence, where English writes no capitals."""
    words = as_words(name)
    return words.lower() if in_english() else words


def spoken_kind(kind: str) -> str:
    """The kind of a pattern."""
    return _usual("kind", kind)


def spoken_skill(skill: str) -> str:
    """A level of skill."""
    return _usual("skill", skill)


def spoken_weight(weight: str) -> str:
    """A weight of yarn; names of the shops, such as "DK", stay."""
    return _usual("yarn weight", weight)


def as_words(name: str) -> str:
    """The words of a name, with the capitals it has."""
    told = named(name)
    return told if told != name else _usual(NAME, name_words(name))


def _usual(context: str, words: str) -> str:
    """Words of a table as the spoken language has them; others as they are."""
    told = named(words)
    known = words.casefold()
    if told != words or known not in _TABLES[context]:
        return told
    other = tr_as(context, known)
    return words if other == known else other
