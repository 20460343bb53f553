"""In: a crossing as the right side shows it. Out: its sign in a chart: crossed bands, those in front unbroken."""

from collections.abc import Iterator

from sizewright.draw.symbols import CELL, Symbol, dot
from sizewright.read.notation.cables import Crossing

_LOW, _HIGH = 17, 3  # where a line begins below and ends above
_SHOWN = 0.3  # how much of a band behind is seen at either end
_INSET = 5  # units from the edge of a band's cells to its lines


def cable_symbol(crossing: Crossing, term: str, *, wrong_side: bool) -> Symbol:
    """The sign of a cable over its stitches; a dot marks what is purled, as the right side shows it."""
    front, middle, back = crossing.front, crossing.middle, crossing.back
    left = crossing.to_left
    bands = (
        # what is worked, where its cells begin below, where above, whether it lies in front
        (front, len(back + middle) if left else 0, 0 if left else len(back + middle), True),
        (back, 0 if left else len(front + middle), len(front + middle) if left else 0, False),
        (middle, len(back if left else front), len(front if left else back), False),
    )
    lines = "".join(line for way, start, end, over in bands for line in _band(len(way), start, end, in_front=over))
    dots = "".join(
        dot((end + place + 0.5) * CELL, 10, 2.4)
        for way, _, end, _ in bands
        for place, kind in enumerate(way)
        if kind == "p"
    )
    right, wrong = ((), (term,)) if wrong_side else ((term,), ())
    return Symbol(term, right, wrong, lines, dots, crossing.over)


def _band(stitches: int, start: int, end: int, *, in_front: bool) -> Iterator[str]:
    """The lines of a band of stitches: one for a single stitch, else one at either edge."""
    edges = (0.5 * CELL,) if stitches == 1 else (_INSET, stitches * CELL - _INSET)
    for edge in edges if stitches else ():
        low, high = start * CELL + edge, end * CELL + edge
        if in_front:
            yield f"M{low:g} {_LOW}l{high - low:g} {_HIGH - _LOW}"
        else:
            width, height = (high - low) * _SHOWN, (_LOW - _HIGH) * _SHOWN
            yield f"M{low:g} {_LOW}l{width:g} {-height:g}M{high:g} {_HIGH}l{-width:g} {height:g}"
