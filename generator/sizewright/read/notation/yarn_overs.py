"""In: directions. Out: what each yarn over in them is called in UK terms, by the stitches worked before and behind it.

yfwd between two knit stitches: a UK pattern scanned at zanotowane.pl; yfrn from knit to purl, yrn between two purl
stitches, yon from purl to knit: common practice, no source. A reader needs the one that is right wherever the row comes
by: where the stitch beside it may be of either kind, or is not told, it stays "yo". A slipped stitch leaves the yarn
where it was, save where it is told to hold it.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from types import MappingProxyType

from sizewright.base.place import Span
from sizewright.read.notation.direction_tree import Direction, Row, Spaced
from sizewright.read.notation.stitches import STITCHES, Stitch
from sizewright.read.notation.tree import Action, Aside, Colour, Mark, PassOver, Repeat, Work

_KNIT, _PURL, _EITHER = "k", "p", ""
_CALLED: Mapping[tuple[str, str], str] = MappingProxyType(
    {(_KNIT, _KNIT): "yfwd", (_KNIT, _PURL): "yfrn", (_PURL, _PURL): "yrn", (_PURL, _KNIT): "yon"}
)
_YO = "yo"
_VAGUE = ("inc", "dec", "mb", "yo")  # worked as the designer tells elsewhere, or no stitch at all
_TABLE = frozenset(STITCHES)
_Faces = frozenset[str]
_UNKNOWN: _Faces = frozenset((_EITHER,))


def yarn_overs(directions: Iterable[Direction]) -> Mapping[int, tuple[str, ...]]:
    """For each line with yarn overs the UK word of each in their order, "" for one that stays as it is."""
    found: dict[Span, str] = {}
    for one in directions:
        if isinstance(one, Row | Spaced):
            found |= _called(one.actions, _UNKNOWN, _UNKNOWN)
    lines: dict[int, tuple[str, ...]] = {}
    for span in sorted(found):
        lines[span.line] = (*lines.get(span.line, ()), found[span])
    return lines


def _called(actions: Sequence[Action], before: _Faces, behind: _Faces) -> dict[Span, str]:
    """The yarn overs among some actions; `before` and `behind` are the faces of what may stand around them."""
    found: dict[Span, str] = {}
    for at, one in enumerate(actions):
        here, there = _end(actions[:at][::-1], before, last=True), _end(actions[at + 1 :], behind, last=False)
        match one:
            case Work(stitch=Stitch(term=term)) if term == _YO:
                found[one.span] = _word(here, there) if one.count is None or one.count.value == 1 else ""
            case Repeat():
                again = (_end(one.actions[::-1], here, last=True), _end(one.actions, there, last=False))
                found |= _called(one.actions, here | again[0], there | again[1])
                if one.ending:
                    found |= _called(one.ending, _UNKNOWN, there)
            case _:
                found |= dict.fromkeys(_inside(one), "")
    return found


def _word(before: _Faces, behind: _Faces) -> str:
    if len(before) > 1 or len(behind) > 1:
        return ""
    return _CALLED.get((next(iter(before)), next(iter(behind))), "")


def _end(actions: Sequence[Action], beyond: _Faces, *, last: bool) -> _Faces:
    """The faces that the nearest of these stitches may have; `beyond` where there is none."""
    for one in actions:
        match one:
            case Mark() | Aside() | Colour():
                continue
            case PassOver() if last:  # the yarn is where the stitch left it that the slipped one passes over
                continue
            case Work(stitch=Stitch(term="sl"), manner=manner) if "wyi" not in manner:
                continue
            case Work():
                return frozenset((_face(one.stitch),))
            case Repeat() if not one.ending:
                return _end(one.actions[::-1] if last else one.actions, _UNKNOWN, last=last)
            case _:
                return _UNKNOWN
    return beyond


def _face(stitch: Stitch) -> str:
    """Whether a stitch is knitted or purled, so where the yarn is before and behind it."""
    if stitch not in _TABLE or stitch.term in _VAGUE:
        return _EITHER
    if set(stitch.looks) <= set("kK/\\^i"):
        return _KNIT
    return _PURL if set(stitch.looks) <= set("pPdDI") else _EITHER


def _inside(one: Action) -> Iterator[Span]:
    """Yarn overs within an action that is no repeat, such as several stitches worked into one."""
    for inner in getattr(one, "actions", ()):
        if isinstance(inner, Work) and inner.stitch.term == _YO:
            yield inner.span
        else:
            yield from _inside(inner)
