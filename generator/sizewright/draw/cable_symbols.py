"""In: a crossing as the right side shows it. Out: its sign in a chart: crossed bands, those in front unbroken."""

from collections.abc import Iterator
from math import hypot

from sizewright.draw.symbols import CELL, Symbol, dot
from sizewright.read.notation.cables import Crossing

_LOW, _HIGH = 18.5, 1.5  # where a line begins below and ends above
_INSET = 4  # units from the edge of a band's cells to its lines
_GAP = 3.6  # units between a single line in front and what passes behind it
_SEEN = 0.13  # a shorter part of a line is left out

_Edge = tuple[float, float]  # where a line begins below and where it ends above


def cable_symbol(crossing: Crossing, term: str, *, wrong_side: bool) -> Symbol:
    """The sign of a cable over its stitches; a dot marks what is purled, as the right side shows it.

    What lies behind runs up to the band in front on one side and comes out on the other.
    """
    front, middle, back = crossing.front, crossing.middle, crossing.back
    left = crossing.to_left
    over = (front, len(back + middle) if left else 0, 0 if left else len(back + middle))
    under = (
        # what is worked, where its cells begin below, where above
        (back, 0 if left else len(front + middle), len(front + middle) if left else 0),
        (middle, len(back if left else front), len(front if left else back)),
    )
    in_front = _edges(*over)
    lines = "".join(_stretch(edge, 0, 1) for edge in in_front)
    lines += "".join(part for band in under for edge in _edges(*band) for part in _behind(edge, in_front))
    dots = "".join(
        dot((end + place + 0.5) * CELL, 10, 2.4)
        for way, _, end in (over, *under)
        for place, kind in enumerate(way)
        if kind == "p"
    )
    right, wrong = ((), (term,)) if wrong_side else ((term,), ())
    name = f"crossing to the {'left' if left else 'right'}"
    return Symbol(name, right, wrong, lines, dots, crossing.over)


def _edges(way: str, start: int, end: int) -> tuple[_Edge, ...]:
    """The lines of a band of stitches: one for a single stitch, else one at either edge."""
    if not way:
        return ()
    across = (0.5 * CELL,) if len(way) == 1 else (_INSET, len(way) * CELL - _INSET)
    return tuple((start * CELL + edge, end * CELL + edge) for edge in across)


def _behind(edge: _Edge, in_front: tuple[_Edge, ...]) -> Iterator[str]:
    """The parts of a line that the band in front does not hide."""
    low, high = edge
    met = []
    for begin, end in in_front:
        closing = (high - low) - (end - begin)
        gap = _GAP * hypot(end - begin, _LOW - _HIGH) / (_LOW - _HIGH) if len(in_front) == 1 else 0
        met += [(begin - low - gap) / closing, (begin - low + gap) / closing]
    for first, last in ((0, min(met)), (max(met), 1)):
        if last - first > _SEEN:
            yield _stretch(edge, first, last)


def _stretch(edge: _Edge, first: float, last: float) -> str:
    """A line from one share of its length to another."""
    low, high = edge
    wide, tall = high - low, _HIGH - _LOW
    part = last - first
    return f"M{low + wide * first:.4g} {_LOW + tall * first:.4g}l{wide * part:.4g} {tall * part:.4g}"
