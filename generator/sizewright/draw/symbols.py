"""In: a stitch as it was worked, and the side it was worked on. Out: its sign in a chart, as a path in a unit cell.

Where the Craft Yarn Council's published chart symbols have a sign (empty for knit on the right side, a dot for purl, a
ring for a yarn over, a slash that leans as the decrease does, a V for a slipped stitch, M for make one, a grey cell for
no stitch, crossed lines over the stitches of a cable), it is that one, as the published list has it, from memory; the
others are our own. A chart shows the right side: one sign stands for what is knitted on the right side and for what
looks the same worked on the wrong side.
"""

import re
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from types import MappingProxyType

from sizewright.base.language import in_english, later_as, tr_as
from sizewright.read.notation.phrasing import NotTold
from sizewright.read.notation.printed_stitches import term_name
from sizewright.read.notation.usual_names import manner_name

CELL = 20  # units a side; one stitch
_MOVE = re.compile(r"M(-?[\d.]+) (-?[\d.]+)")


@dataclass(frozen=True, slots=True)
class Symbol:
    """A sign: lines and filled shapes over `over` cells, and the terms it stands for on either side.

    In a path only `M` is absolute, so that it can be moved. A sign that leans or crosses says where to in its name.
    """

    name: str
    right: tuple[str, ...]
    wrong: tuple[str, ...]
    lines: str = ""
    filled: str = ""
    over: int = 1


def moved(path: str, x: float, y: float) -> str:
    """A path at another place."""
    return _MOVE.sub(lambda move: f"M{float(move[1]) + x:g} {float(move[2]) + y:g}", path)


def dot(x: float, y: float, radius: float) -> str:
    """A filled dot."""
    return f"M{x - radius:g} {y:g}a{radius} {radius} 0 1 0 {radius * 2:g} 0a{radius} {radius} 0 1 0 {-radius * 2:g} 0z"


_LOOP = "M5.5 15.5c3.5 -4 8.3 -6.3 8.3 -9a3.8 3.3 0 0 0 -7.6 0c0 2.7 4.8 5 8.3 9"
_RIGHT, _LEFT = "M4 16l12 -12", "M4 4l12 12"
_MADE_LEFT, _MADE_RIGHT = "M4 16.5h12M13 16.5l-7 -12.5", "M4 16.5h12M7 16.5l7 -12.5"
_FAN_RIGHT, _FAN_LEFT = "M16 4l-12 12M16 4l-6.5 12M16 4l-0.5 12", "M4 4l12 12M4 4l6.5 12M4 4l0.5 12"
_V = "M4.5 4l5.5 11.5l5.5 -11.5"
_M = "M4.5 15.5v-11l5.5 7l5.5 -7v11"

# The signs, one line each: name, terms on the right side, terms on the wrong side, lines, filled shapes, cells.
SYMBOLS = (
    Symbol("knit", ("k",), ("p",)),
    Symbol("purl", ("p",), ("k",), filled=dot(10, 10, 3)),
    Symbol("knit twisted", ("k tbl",), ("p tbl",), _LOOP),
    Symbol("purl twisted", ("p tbl",), ("k tbl",), f"{_LOOP}M5 18h10"),
    Symbol("slip", ("sl", "sl wyib"), ("sl", "sl wyif"), _V),
    Symbol("slip, yarn on the right side", ("sl wyif",), ("sl wyib",), f"{_V}M5 17.5h10"),
    Symbol("slip as if to knit", ("sl knitwise", "sl knitwise wyib"), (), f"{_V}M10 4v5"),
    Symbol("yarn over", ("yo",), ("yo",), "M4.5 10a5.5 5.5 0 1 0 11 0a5.5 5.5 0 1 0 -11 0z"),
    Symbol("decrease to the right", ("k2tog",), ("p2tog",), _RIGHT),
    Symbol("decrease to the left", ("ssk",), ("ssp",), _LEFT),
    Symbol("slipped decrease to the left", ("skp",), (), f"{_LEFT}M16 16h-7"),
    Symbol("twisted decrease to the left", ("k2tog tbl",), ("p2tog tbl",), f"{_LEFT}M4 10.5l6.5 -6.5"),
    Symbol("purled decrease to the right", ("p2tog",), ("k2tog",), _RIGHT, dot(14.5, 14, 2.2)),
    Symbol("purled decrease to the left", ("ssp",), ("ssk",), _LEFT, dot(5.5, 14, 2.2)),
    Symbol(
        "twisted purled decrease to the left",
        ("p2tog tbl",),
        ("k2tog tbl",),
        f"{_LEFT}M4 10.5l6.5 -6.5",
        dot(5.5, 15, 2.2),
    ),
    Symbol("double decrease to the right", ("k3tog",), ("p3tog",), _FAN_RIGHT),
    Symbol("double decrease to the left", ("sssk",), ("sssp",), _FAN_LEFT),
    Symbol("twisted double decrease to the left", ("k3tog tbl",), (), f"{_FAN_LEFT}M13 4h4"),
    Symbol("slipped double decrease to the left", ("sk2p",), (), "M5 4l10.5 12M10.3 10l-5.3 6"),
    Symbol("centred double decrease", ("s2kp",), (), "M4 16l6 -12l6 12M10 4v12"),
    Symbol("purled double decrease to the right", ("p3tog",), ("k3tog",), _FAN_RIGHT, dot(5.5, 5.5, 2.2)),
    Symbol("purled double decrease to the left", ("sssp",), ("sssk",), _FAN_LEFT, dot(14.5, 5.5, 2.2)),
    Symbol("make one", ("m1",), ("m1p",), _M),
    Symbol("make one purled", ("m1p",), ("m1",), "M4.5 12.5v-9l5.5 6l5.5 -6v9", dot(10, 16, 2.2)),
    Symbol("make one to the left", ("m1l",), ("m1lp",), _MADE_LEFT),
    Symbol("make one to the right", ("m1r",), ("m1rp",), _MADE_RIGHT),
    Symbol("make one purled to the left", ("m1lp",), ("m1l",), _MADE_LEFT, dot(14.5, 6.5, 2.2)),
    Symbol("make one purled to the right", ("m1rp",), ("m1r",), _MADE_RIGHT, dot(5.5, 6.5, 2.2)),
    Symbol("two from one", ("kfb",), (), "M20 17v-6l-9 -7M20 11l9 -7", over=2),
    Symbol("two from one purled", ("pfb",), (), "M20 17v-6l-9 -7M20 11l9 -7", dot(12, 14, 2.2), over=2),
    Symbol("increase", ("inc",), ("inc",), "M20 17v-13M11 4l9 7l9 -7", over=2),
    Symbol("decrease", ("dec",), ("dec",), "M4 4l6 7l6 -7M10 11v6"),
    Symbol("three from one", ("kfbf",), (), "M30 17v-6l-19 -7M30 11v-7M30 11l19 -7", over=3),
    Symbol("bobble", ("mb",), ("mb",), filled=dot(10, 10, 6)),
    Symbol("bind off", ("bind off",), ("bind off",), "M3.5 13.5a6.5 6 0 0 1 13 0"),
    Symbol("cast on", ("cast on",), ("cast on",), "M10 4.5v11M4.5 10h11"),
    Symbol("drop", ("drop",), ("drop",), "M10 3.5v13M5.5 12l4.5 4.5l4.5 -4.5"),
    Symbol("hold", ("hold",), ("hold",), "M4.5 6v8h11v-8"),
)

# Shapes for stitches that have no sign of their own, in the order they are given away.
SPARE = (
    "M10 3.5l6.5 12.5h-13z",
    "M10 3l7 7l-7 7l-7 -7z",
    "M4.5 4.5h11v11h-11z",
    "M3.5 4h13l-6.5 12.5z",
    "M10 2.5l2 5.5h5.5l-4.5 3.4l1.8 5.6l-4.8 -3.4l-4.8 3.4l1.8 -5.6l-4.5 -3.4h5.5z",
    "M7.5 3h5v4.5h4.5v5h-4.5v4.5h-5v-4.5h-4.5v-5h4.5z",
)

_SPOKEN: Mapping[str, str] = MappingProxyType(
    {
        "k": later_as("key of a chart", "knit"),
        "p": later_as("key of a chart", "purl"),
        "sl": later_as("key of a chart", "slip"),
        "yo": later_as("key of a chart", "yarn over"),
        "mb": later_as("key of a chart", "make bobble"),
        "inc": later_as("key of a chart", "increase"),
        "dec": later_as("key of a chart", "decrease"),
    }
)


def spoken(term: str) -> str:
    """A term as the key of a chart says it: in full where the table has it, else by its short name."""
    word, _, manner = term.partition(" ")
    if word in _SPOKEN and (in_english() or not manner):
        return " ".join(filter(None, (tr_as("key of a chart", _SPOKEN[word]), manner)))
    short = "".join(map(str, term_name(term)))
    if in_english() or not manner or short != term:
        return short
    with suppress(NotTold):
        manner = manner_name(manner)
    return f"{spoken(word)}, {manner}"


_RIGHT_SIDE = {term: symbol for symbol in SYMBOLS for term in symbol.right}
_WRONG_SIDE = {term: symbol for symbol in SYMBOLS for term in symbol.wrong}


def symbol_of(term: str, *, wrong_side: bool) -> Symbol | None:
    """The sign of a stitch worked on that side; None where the table has none."""
    return (_WRONG_SIDE if wrong_side else _RIGHT_SIDE).get(term)


def spare_symbol(term: str, place: int, over: int, *, wrong_side: bool) -> Symbol:
    """A sign for a stitch the table lacks, the next free shape: filled, then as an outline, then with a bar below."""
    shape = moved(SPARE[place % len(SPARE)], (over - 1) * CELL / 2, 0)
    turn = place // len(SPARE)
    right, wrong = ((), (term,)) if wrong_side else ((term,), ())
    lines = (shape if turn else "") + (f"M{4 + (over - 1) * CELL / 2:g} 18.5h12" * max(0, turn - 1))
    return Symbol(term, right, wrong, lines, "" if turn else shape, over)
