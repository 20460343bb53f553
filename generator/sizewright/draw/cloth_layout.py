"""In: a cloth. Out: where each row of a picture stands: moved aside by shaping, and lifted where the cloth waves."""

from dataclasses import dataclass

from sizewright.work.cloth import Cloth

_STIFF = 0.6  # how far a row follows the lean of its stitches; 1 would be wool without any stiffness


@dataclass(frozen=True, slots=True)
class Layout:
    """Places in stitches and rows. `starts` is the left end of each row; `lifts` how far each column is let down.

    From `left` to `right` is shown; `goes_on` tells whether the cloth does beyond its left, right, lower and upper end.
    """

    starts: tuple[float, ...]
    lifts: tuple[float, ...]
    left: float
    right: float
    goes_on: tuple[bool, bool, bool, bool]


def laid_out(cloth: Cloth, widest: int, *, swatch: bool) -> Layout:
    """The places of all rows; of a cloth wider than `widest` stitches the right end is shown, of a tube the middle.

    A `swatch` is a part of a larger cloth, which goes on beyond all its edges.
    """
    starts = _starts(cloth)
    ends = [start + len(row.looks) for start, row in zip(starts, cloth.rows, strict=True)]
    left, right = (max(starts), min(ends)) if swatch else (min(starts), max(ends))
    narrow = right - left <= widest
    tube = swatch or cloth.in_the_round
    goes_on = (tube or not narrow, tube, swatch, swatch or not cloth.finished)
    over = max(0.0, right - left - widest)
    right -= over // 2 if tube else 0.0
    return Layout(starts, _lifts(cloth), max(left, right - widest), right, goes_on)


def _counts(cloth: Cloth) -> set[int]:
    return {cloth.cast_on, *(len(row.looks) for row in cloth.rows)}


def _starts(cloth: Cloth) -> tuple[float, ...]:
    """Each row lies so that its stitches stand, taken together, over those they were worked into."""
    if len(_counts(cloth)) == 1:
        return (0.0,) * len(cloth.rows)
    starts, start = [], 0.0
    for row in cloth.rows:
        if row.stands_on:
            drift = sum(below - place for place, below in enumerate(row.stands_on)) / len(row.stands_on)
            start += round(drift * 2) / 2
        starts.append(start)
    return tuple(starts)


def _lifts(cloth: Cloth) -> tuple[float, ...]:
    """How far each column is let down, in rows of a square stitch; none where the number of stitches changes.

    Stitches lean away from yarn overs and towards decreases, and a row lies across its stitches: so it rises where the
    cloth is widened and sinks where it is drawn together (geometry; common practice, no source).
    """
    counts = _counts(cloth)
    if len(counts) != 1:
        return ()
    width, level, levels = counts.pop(), 0.0, []
    for place in range(width):
        level += _STIFF * sum(place - row.stands_on[place] for row in cloth.rows) / len(cloth.rows)
        levels.append(level)
    middle = (max(levels) + min(levels)) / 2
    return tuple(level - middle for level in levels) if max(levels) - min(levels) > 0.1 else ()
