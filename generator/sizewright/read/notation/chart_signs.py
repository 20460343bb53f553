"""In: the key of a chart drawn in the source. Out: what each sign means when its row is worked on either side.

The knit sign is an upright stroke and the purl sign a level one, as the open standard for knitting symbols has them
(JIS L 0201; from memory). All other signs but those for a yarn over and the two commonest decreases are the designer's.
"""

import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from sizewright.base.place import Span
from sizewright.read.notation.cables import named_cable
from sizewright.read.notation.not_understood import NotUnderstood
from sizewright.read.notation.row_parser import RowParser
from sizewright.read.notation.stitches import STITCHES, Vocabulary
from sizewright.read.notation.tree import Action, IntoOne, Work
from sizewright.read.notation.words import tokens
from sizewright.read.pattern import InstructionLine

KEY_LINE = re.compile(r"(?P<sign>\S)\s*=\s*(?P<words>\S.*)")
NO_STITCH = "_"
FRAME = ("[", "]")
_SIDES = re.compile(r"(?P<right>.+?) on (?:the )?RS\s*[,;]\s*(?P<wrong>.+?) on (?:the )?WS\s*\.?", re.IGNORECASE)
_GIVEN = MappingProxyType({"|": "k", "-": "p", "o": "yo", "/": "k2tog", "\\": "ssk"})
# What is worked on the wrong side so that the right side shows the first of the two, and the other way round.
_FACES = (
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
    ("m1l", "m1lp"),
    ("m1r", "m1rp"),
    ("kfb", "pfb"),
    ("yo", "yo"),
    ("sl", "sl"),
)
_NUMBERED_ROW = re.compile(r"\d{1,4}\s+(?P<cells>\S.*)|(?P<right>\S.*?)\s+\d{1,4}")
_CROSSING = re.compile(r"(\d)/(\d)")
_FREE = "CXZVWQ"
_BY_TERM = {stitch.term: stitch for stitch in STITCHES}
_OTHER_FACE = MappingProxyType({**dict(_FACES), **{purl: knit for knit, purl in _FACES}})


@dataclass(frozen=True, slots=True)
class Sign:
    """What a cell stands for, by the side its row is worked on; None where nothing is said for that side."""

    right: Action | None
    wrong: Action | None
    width: int


@dataclass(frozen=True, slots=True)
class WordedCell:
    """A stitch typed where a cell should be: its words, the stitch they name, a sign that is free, and its cells."""

    words: str
    stitch: str
    sign: str
    width: int


def worded_cell(line: str, signs: Collection[str], vocabulary: Vocabulary) -> WordedCell | None:
    """The first stitch typed out in a row of cells; None where the line is no row of cells, or has none."""
    numbered = _NUMBERED_ROW.fullmatch(line.strip())
    if numbered is None:
        return None
    found: list[WordedCell] = []
    cells = re.split(r" (?!(?:LC|RC|LPC|RPC)\b)", " ".join((numbered["cells"] or numbered["right"]).split()))
    for cell in cells:
        stitch = _typed_stitch(cell, vocabulary)
        if stitch is not None:
            sign = next((one for one in _FREE if one not in signs), "C")
            found.append(WordedCell(cell, stitch[0], sign, stitch[1]))
        elif len(cell) != 1 and not (cell[0] in FRAME or cell[-1] in FRAME):
            return None
    return found[0] if found and any(len(cell) == 1 for cell in cells) else None


def _typed_stitch(cell: str, vocabulary: Vocabulary) -> tuple[str, int] | None:
    """What a cell of several signs names, and the stitches it leaves: "c6f", "3/3", "k2tog"."""
    crossing = _CROSSING.fullmatch(cell)
    if crossing is not None:
        return f"{cell} LC", sum(int(one) for one in crossing.groups())
    known = named_cable(cell.casefold()) or vocabulary.by_spelling.get(cell.casefold())
    return (cell, known.makes) if known is not None and known.makes and len(cell) > 1 else None


def given_signs(span: Span) -> Mapping[str, Sign]:
    """The signs every chart has; its key may give them another meaning."""
    return {sign: _sign(Work(span, _BY_TERM[term])) for sign, term in _GIVEN.items()}


def keyed_sign(line: InstructionLine, words: str, vocabulary: Vocabulary) -> Sign:
    """What the words behind a sign of the key mean. Raises `NotUnderstood`."""
    sides = _SIDES.fullmatch(words)
    if sides is None:
        return _sign(_stitch(line, words.rstrip("."), vocabulary))
    right, wrong = (_stitch(line, sides[side], vocabulary) for side in ("right", "wrong"))
    if width_of(right) != width_of(wrong):
        raise NotUnderstood(line.span, words, "Both sides must leave as many stitches.")
    return Sign(right, wrong, width_of(right))


def _sign(action: Action) -> Sign:
    return Sign(action, _seen_from_behind(action), width_of(action))


def _stitch(line: InstructionLine, words: str, vocabulary: Vocabulary) -> Action:
    """The one stitch, or the stitches into one, that the words name."""
    found = tuple(tokens(InstructionLine(line.span, (words,))))
    actions, promise = RowParser(found, vocabulary).row()
    action = actions[0] if len(actions) == 1 and promise is None else None
    if isinstance(action, Work):
        action = replace(action, place=None)  # a lone "k" would be a whole row
    if not isinstance(action, Work | IntoOne) or not width_of(action):
        raise NotUnderstood(line.span, words, "A sign stands for one stitch, such as “k2tog” or “yo”.")
    return action


def width_of(action: Action) -> int:
    """The cells a stitch takes in a chart: as many as the stitches it leaves."""
    match action:
        case Work(count=None):
            return action.stitch.makes
        case Work(count=count) if count is not None and isinstance(count.value, int):
            return action.stitch.makes * count.value
        case IntoOne():
            return sum(width_of(one) for one in action.actions)
    return 0


def _seen_from_behind(action: Action) -> Action | None:
    if not isinstance(action, Work):
        return None
    other = _OTHER_FACE.get(action.stitch.term)
    if other is None:
        return None
    return replace(action, stitch=_BY_TERM[other])
