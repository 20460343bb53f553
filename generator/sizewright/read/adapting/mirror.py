"""In: a direction. Out: the same with knit and purl exchanged, so that the faces of its fabric change places.

The sides of rows stay: what a reader of the base sees on the wrong side is then on the right side.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import assert_never

from sizewright.base.place import Span
from sizewright.read.notation.cables import crossing_of
from sizewright.read.notation.direction_tree import (
    Apart,
    BindOffAll,
    CastOn,
    Declared,
    Direction,
    Even,
    Gather,
    Join,
    Meanwhile,
    RepeatRows,
    Row,
    SameAgain,
    Spaced,
    TakeUp,
    TakeYarn,
    Unread,
)
from sizewright.read.notation.fabric_names import usual_fabric
from sizewright.read.notation.stitches import STITCHES, Stitch
from sizewright.read.notation.tree import (
    Across,
    Action,
    Add,
    Adding,
    Aside,
    AtEdges,
    BindOff,
    Colour,
    Drop,
    Evenly,
    Follow,
    Hold,
    IntoOne,
    Mark,
    Panel,
    PassOver,
    Repeat,
    Turn,
    Turning,
    Work,
)

_BY_TERM = {stitch.term: stitch for stitch in STITCHES}
# What shows on the other face as its counterpart does on this one: the same lean, knit for purl. What leans as its
# counterpart does not, or has none that the trade knows, is left out.
_PAIRS = (
    ("k", "p"),
    ("k tbl", "p tbl"),
    ("k2tog", "p2tog"),
    ("k2tog tbl", "p2tog tbl"),
    ("k3tog", "p3tog"),
    ("k4tog", "p4tog"),
    ("k5tog", "p5tog"),
    ("ssk", "ssp"),
    ("sssk", "sssp"),
    ("m1", "m1p"),
    ("m1l", "m1lp"),  # how two strands cross is the same from either side
    ("m1r", "m1rp"),
    ("kfb", "pfb"),
)
_SAME = ("yo", "sl")  # the same on both faces
STITCH_PAIRS: Mapping[str, str] = MappingProxyType(
    dict(_PAIRS) | {purl: knit for knit, purl in _PAIRS} | {term: term for term in _SAME}
)
# What leans as its counterpart does and is worked otherwise: turned back it is the ssk that it looks like.
ONE_WAY: Mapping[str, str] = MappingProxyType({"skp": "ssp"})
# What to write for those that are refused. From memory, no source.
_HINTS: Mapping[str, str] = MappingProxyType(
    {
        "sk2p": "On the other face sssp leans as sk2p does on this one.",
        "s2kp": "Centred on the other face is: sl 2 together as if to p2tog tbl, p1, pass the 2 slipped over.",
        "mb": "A bobble can be pushed through to the other face: say so in the text.",
        "k3tog tbl": "On the other face sssp leans as k3tog tbl does on this one.",
    }
)
_MANNERS = MappingProxyType({"wyif": "wyib", "wyib": "wyif"})
_EDGES = MappingProxyType({"knitwise": "purlwise", "purlwise": "knitwise"})
_FABRIC_PAIRS = (("knit", "purl"), ("stockinette", "reverse stockinette"))
_FABRICS: Mapping[str, str] = MappingProxyType(dict(_FABRIC_PAIRS) | {other: one for one, other in _FABRIC_PAIRS})
_SAME_FABRICS = ("as established", "as set", "even", "pattern", "rib")  # as the stitches of either face appear
_PICKED = MappingProxyType(
    {
        Adding.PICK_UP_KNIT: Adding.PICK_UP_PURL,
        Adding.PICK_UP_PURL: Adding.PICK_UP_KNIT,
        Adding.CAST_ON: Adding.CAST_ON,
    }
)


@dataclass(frozen=True, slots=True)
class Unmirrored(Exception):  # noqa: N818 -- carries what has no counterpart to where it is told
    """Something that has no counterpart: its place, its term, what to do, and what may be written instead."""

    span: Span
    term: str
    mend: str = ""
    hint: str = ""


class Mirror:
    """Exchanges knit and purl; `own` are the stitch patterns that are turned too, by names in small letters."""

    def __init__(self, own: frozenset[str]) -> None:
        self._own = own

    def direction(self, one: Direction) -> Direction:  # noqa: C901, PLR0911 -- one arm a kind of direction
        """The direction with its stitches exchanged. Raises `Unmirrored`."""
        match one:
            case Row():
                return replace(one, actions=self.actions(one.actions))
            case Spaced():
                fabric = self.fabric(one.fabric, one.span) if one.fabric else ""
                return replace(one, actions=self.actions(one.actions), fabric=fabric)
            case Even():
                return replace(one, fabric=self.fabric(one.fabric, one.span))
            case RepeatRows():
                if one.of:
                    self.named(one.of, one.span)
                return one
            case Meanwhile():
                rows, shaping = self.direction(one.rows), self.direction(one.shaping)
                if isinstance(rows, RepeatRows | Even) and isinstance(shaping, Spaced):
                    return replace(one, rows=rows, shaping=shaping)
                return one
            case CastOn():
                return replace(one, behind=self.actions(one.behind))
            case Declared():
                raise Unmirrored(one.span, "what is only declared")
            case Join() | Apart() | TakeUp() | BindOffAll() | Gather() | TakeYarn() | SameAgain() | Unread():
                return one
        assert_never(one)

    def fabric(self, name: str, span: Span) -> str:
        """The fabric by its name whose faces are the other way round. Raises `Unmirrored`."""
        usual = usual_fabric(name)
        if usual in _FABRICS:
            return _FABRICS[usual]
        if usual in _SAME_FABRICS and not name[:1].isupper():  # "Rib Pattern" is a stitch pattern by its own name
            return name
        self.named(name, span)
        return name

    def named(self, name: str, span: Span) -> None:
        """A stitch pattern by its name, which must be turned as well."""
        if name.casefold() not in self._own:
            mend = f"Turn the section in which “{name}” is written, or write these rows out."
            raise Unmirrored(span, f"“{name}”, which stands outside of this section,", mend)

    def actions(self, actions: tuple[Action, ...]) -> tuple[Action, ...]:
        """Actions with their stitches exchanged. Raises `Unmirrored`."""
        return tuple(map(self.action, actions))

    def action(self, one: Action) -> Action:  # noqa: C901, PLR0911 -- one arm a kind of action
        """The action with its stitches exchanged. Raises `Unmirrored`."""
        match one:
            case Work():
                return replace(one, stitch=_stitch(one.stitch, one.span), manner=_manner(one.manner))
            case Across():
                return replace(one, stitch=_stitch(one.stitch, one.span))
            case Repeat():
                return replace(one, actions=self.actions(one.actions), ending=self.actions(one.ending))
            case IntoOne():
                return replace(one, actions=self.actions(one.actions))
            case BindOff():
                return replace(one, manner=" ".join(_EDGES.get(word, word) for word in one.manner.split()))
            case Add():
                return replace(one, how=_PICKED[one.how])
            case Turn(manner=Turning.DOUBLE):
                raise Unmirrored(one.span, "a double stitch")
            case Panel():
                return replace(one, name=self.fabric(one.name, one.span))
            case PassOver():
                raise Unmirrored(one.span, "psso")
            case AtEdges() | Evenly():
                raise Unmirrored(one.span, one.stitch.term)
            case Mark() | Hold() | Drop() | Turn() | Follow() | Colour() | Aside():
                return one
        assert_never(one)


def _stitch(stitch: Stitch, span: Span) -> Stitch:
    other = STITCH_PAIRS.get(stitch.term) or ONE_WAY.get(stitch.term)
    if other is None:
        raise Unmirrored(span, stitch.term, hint=_HINTS.get(stitch.term) or _crossed(stitch.term))
    return _BY_TERM[other] if other != stitch.term else stitch


def _crossed(term: str) -> str:
    """What a cable of two knit halves is on the other face, "" for any other stitch: it crosses the same way there."""
    crossing = crossing_of(term)
    if crossing is None or crossing.middle or crossing.front != crossing.back or "p" in crossing.front:
        return ""
    half, where = len(crossing.front), "front" if crossing.to_left else "back"
    return f"On the other face the same crossing is: sl {half} to cn, hold in {where}, p{half}, p{half} from cn."


def _manner(manner: str) -> str:
    return " ".join(_MANNERS.get(word, word) for word in manner.split())
