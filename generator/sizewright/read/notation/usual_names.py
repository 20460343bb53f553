"""In: a name that instructions give: of a part, an edge, a marker, a fabric. Out: it in the spoken language.

Designers name what they knit freely; these are the usual names. In English a name stands as it is typed.
"""

from sizewright.base.language import ENGLISH, later_as, named, spoken, tr_as
from sizewright.read.inserts import Told
from sizewright.read.notation.fabric_names import rib_of, usual_fabric
from sizewright.read.notation.phrasing import NotTold, name_as, phrase

_MARKERS = frozenset(
    (
        later_as("name of a marker", "last"),
        later_as("name of a marker", "raglan"),
        later_as("name of a marker", "side"),
        later_as("name of a marker", "left side"),
        later_as("name of a marker", "right side"),
        later_as("name of a marker", "gusset"),
        later_as("name of a marker", "thumb"),
        later_as("name of a marker", "centre"),
        later_as("name of a marker", "center"),
        later_as("name of a marker", "seam"),
    )
)
# What stitches are held for, and what is made again.
_PARTS = frozenset(
    (
        later_as("name of a part", "sleeve"),
        later_as("name of a part", "left sleeve"),
        later_as("name of a part", "right sleeve"),
        later_as("name of a part", "first sleeve"),
        later_as("name of a part", "second sleeve"),
        later_as("name of a part", "underarm"),
        later_as("name of a part", "left underarm"),
        later_as("name of a part", "right underarm"),
        later_as("name of a part", "side"),
        later_as("name of a part", "left side"),
        later_as("name of a part", "right side"),
        later_as("name of a part", "front"),
        later_as("name of a part", "left front"),
        later_as("name of a part", "right front"),
        later_as("name of a part", "back"),
        later_as("name of a part", "body"),
        later_as("name of a part", "neck"),
        later_as("name of a part", "shoulder"),
        later_as("name of a part", "left shoulder"),
        later_as("name of a part", "right shoulder"),
        later_as("name of a part", "thumb"),
        later_as("name of a part", "thumb gusset"),
        later_as("name of a part", "hand"),
        later_as("name of a part", "heel"),
        later_as("name of a part", "heel flap"),
        later_as("name of a part", "instep"),
        later_as("name of a part", "sole"),
        later_as("name of a part", "toe"),
        later_as("name of a part", "sock"),
        later_as("name of a part", "mitten"),
        later_as("name of a part", "mitt"),
        later_as("name of a part", "glove"),
        later_as("name of a part", "cuff"),
        later_as("name of a part", "pocket"),
        later_as("name of a part", "armband"),
        later_as("name of a part", "square"),
    )
)
_MEASURED = frozenset(
    (
        later_as("what is measured", "piece"),
        later_as("what is measured", "thumb"),
        later_as("what is measured", "foot"),
        later_as("what is measured", "sock"),
        later_as("what is measured", "leg"),
        later_as("what is measured", "heel"),
        later_as("what is measured", "heel flap"),
        later_as("what is measured", "toe"),
        later_as("what is measured", "cuff"),
        later_as("what is measured", "brim"),
        later_as("what is measured", "crown"),
        later_as("what is measured", "ribbing"),
        later_as("what is measured", "rib"),
        later_as("what is measured", "edge"),
        later_as("what is measured", "edging"),
        later_as("what is measured", "border"),
        later_as("what is measured", "collar"),
        later_as("what is measured", "neckband"),
        later_as("what is measured", "armband"),
        later_as("what is measured", "sleeve"),
        later_as("what is measured", "armhole"),
        later_as("what is measured", "yoke"),
        later_as("what is measured", "hem"),
        later_as("what is measured", "mitten"),
        later_as("what is measured", "hand"),
        later_as("what is measured", "front"),
        later_as("what is measured", "back"),
        later_as("what is measured", "shawl"),
        later_as("what is measured", "blanket"),
    )
)
_SINCE = frozenset(
    (
        later_as("where a length is measured from", "cast-on edge"),
        later_as("where a length is measured from", "cast on edge"),
        later_as("where a length is measured from", "cast on"),
        later_as("where a length is measured from", "cast-on"),
        later_as("where a length is measured from", "beginning"),
        later_as("where a length is measured from", "end of cuff"),
        later_as("where a length is measured from", "end of ribbing"),
        later_as("where a length is measured from", "end of rib"),
        later_as("where a length is measured from", "end of brim"),
        later_as("where a length is measured from", "heel turn"),
        later_as("where a length is measured from", "back of heel"),
        later_as("where a length is measured from", "underarm"),
        later_as("where a length is measured from", "join"),
        later_as("where a length is measured from", "joining round"),
        later_as("where a length is measured from", "armhole"),
        later_as("where a length is measured from", "neck edge"),
        later_as("where a length is measured from", "marker"),
        later_as("where a length is measured from", "bind-off"),
    )
)
_EDGES = frozenset(
    (
        later_as("where stitches are worked", "each end"),
        later_as("where stitches are worked", "end"),
        later_as("where stitches are worked", "beginning"),
        later_as("where stitches are worked", "neck edge"),
        later_as("where stitches are worked", "armhole edge"),
        later_as("where stitches are worked", "front edge"),
        later_as("where stitches are worked", "side edge"),
        later_as("where stitches are worked", "raglan edge"),
        later_as("where stitches are worked", "sleeve edge"),
        later_as("where stitches are worked", "outer edge"),
        later_as("where stitches are worked", "inner edge"),
        later_as("where stitches are worked", "shaped edge"),
    )
)
# By the first name of each (read/notation/fabric_names.py); "knit" and "purl" are told as rows.
_FABRICS = frozenset(
    (
        later_as("work in this", "stockinette"),
        later_as("work in this", "reverse stockinette"),
        later_as("work in this", "garter"),
        later_as("work in this", "pattern"),
        later_as("work in this", "rib"),
        later_as("work in this", "as established"),
        later_as("work in this", "as set"),
        later_as("work in this", "even"),
        later_as("work in this", "moss"),
        later_as("work in this", "seed"),
        later_as("work in this", "double moss"),
    )
)
_MANNERS = frozenset(
    (
        later_as("how it is worked", "purlwise"),
        later_as("how it is worked", "knitwise"),
        later_as("how it is worked", "wyif"),
        later_as("how it is worked", "wyib"),
        later_as("how it is worked", "purlwise wyif"),
        later_as("how it is worked", "purlwise wyib"),
        later_as("how it is worked", "knitwise wyif"),
        later_as("how it is worked", "knitwise wyib"),
    )
)
_BOUND = frozenset(
    (
        later_as("how stitches are bound off", "loosely"),
        later_as("how stitches are bound off", "in pattern"),
        later_as("how stitches are bound off", "loosely in pattern"),
        later_as("how stitches are bound off", "in rib"),
        later_as("how stitches are bound off", "loosely in rib"),
        later_as("how stitches are bound off", "loosely knitwise"),
        later_as("how stitches are bound off", "loosely purlwise"),
        later_as("how stitches are bound off", "knitwise"),
        later_as("how stitches are bound off", "purlwise"),
        later_as("how stitches are bound off", "at beginning of row"),
    )
)
_YARNS = frozenset(
    (
        later_as("name of a yarn", "main"),
        later_as("name of a yarn", "main colour"),
        later_as("name of a yarn", "contrast"),
        later_as("name of a yarn", "contrast colour"),
        later_as("name of a yarn", "MC"),
        later_as("name of a yarn", "CC"),
        later_as("name of a yarn", "CC1"),
        later_as("name of a yarn", "CC2"),
        later_as("name of a yarn", "CC3"),
    )
)
_IN_FULL = {"MC": "main colour", "CC": "contrast colour"}
_PROMISED = frozenset((later_as("where so many stitches are", "on each needle"),))


def part_name(name: str) -> str:
    """A part of a piece: "left sleeve"."""
    return name_as("name of a part", name, _PARTS)


def yarn_name(name: str) -> str:
    """A yarn as the translation of its source names it, else by its usual name."""
    return tr_as("name of a yarn", name) if name in _YARNS and name not in spoken().names else named(name)


def yarn_in_full(name: str) -> str:
    """The same, an abbreviation of the trade in full: "main colour" for "MC"."""
    return yarn_name(_IN_FULL.get(name, name))


def marker_name(name: str) -> str:
    """What a marker is for: "raglan"."""
    return name_as("name of a marker", name, _MARKERS)


def measured_name(name: str) -> str:
    """What is measured: "piece", "thumb"."""
    return name_as("what is measured", name, _MEASURED)


def since_name(words: str) -> str:
    """Where a length is measured from: "cast-on edge"."""
    return name_as("where a length is measured from", words, _SINCE)


def edge_name(words: str) -> str:
    """Where shaping is: "each end", "neck edge"."""
    return name_as("where stitches are worked", words, _EDGES)


def fabric_name(name: str) -> Told:
    """A fabric: a usual one, a rib by its numbers, or a stitch pattern by its own name."""
    if spoken().code == ENGLISH:
        return (name,)
    if name in spoken().names:
        return phrase("the stitch pattern {name}", name=named(name))
    rib = rib_of(name)
    if rib is not None:
        return phrase("rib of k{knit}, p{purl}", knit=str(rib[0]), purl=str(rib[1]))
    usual = usual_fabric(name)
    if usual in _FABRICS:
        return (name_as("work in this", usual, _FABRICS),)
    if name[:1].isupper():
        return phrase("the stitch pattern {name}", name=name)
    raise NotTold(name)


def manner_name(manner: str) -> str:
    """How a stitch is worked: "purlwise wyif"."""
    return name_as("how it is worked", manner, _MANNERS)


def binding_name(manner: str) -> str:
    """How stitches are bound off: "loosely"."""
    usual = f"loosely {manner.removesuffix(' loosely')}" if manner.endswith(" loosely") else manner
    return manner if spoken().code == ENGLISH else name_as("how stitches are bound off", usual, _BOUND)


def promised_name(where: str) -> str:
    """Where the promised stitches are: "on each needle"."""
    return name_as("where so many stitches are", where, _PROMISED)
