"""In: a schematic with its exact outlines. Out: it as a drawing: pieces to one scale, in all sizes, labelled.

Where every size is shown the outlines lie one in another, and the lines are those of the largest. Its labels tell the
values of every size where there is room for them, else a letter that the table of measurements repeats. Beside that,
the lines and labels of each size by itself. All in px; y grows downwards, and 0, 0 is the middle of the lower edge.
"""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from itertools import count
from string import ascii_uppercase

from sizewright.draw.dimension_lines import Label
from sizewright.draw.schematic_piece import Figure, Lettered, Piece, made_ready
from sizewright.grade.graded import Schematic

WIDE, HIGH = 284.0, 400.0  # px; what a piece with its labels may take: it stands on a phone 320 px wide unshrunk
_NEAR = 0.5  # px that may be wanting
_ROUNDS = 8  # the labels' room changes a little with the scale, and the scale with it
_ENOUGH = 0.85  # of the scale that letters alone would allow


@dataclass(frozen=True, slots=True)
class Drawing:
    """All pieces of a schematic. `scale` is px for a cm; `folded` is whether any lies folded in half."""

    figures: tuple[Figure, ...]
    scale: float
    legend: tuple[Lettered, ...]
    folded: bool


def drawing_of(
    schematic: Schematic, *, metric_first: bool, only: int | None = None, sizes: Collection[str] = ()
) -> Drawing | None:
    """The drawing, of one size `only` where that is given; None where no piece of it can be drawn.

    A measurement has the same letter and is printed alike in both, and never that of one of the `sizes`: an M beside
    a line would be taken for a medium.
    """
    letters = (letter for letter in _letters() if letter not in sizes)
    drawn = [piece for piece in schematic.pieces if piece.outlines]
    legends = [
        [Lettered(next(letters), piece.name, edge, tuple(piece.outlines)) for edge in piece.edges] for piece in drawn
    ]
    pairs = zip(drawn, legends, strict=True)
    ready = (made_ready(piece, legend, metric_first=metric_first) for piece, legend in pairs)
    pieces = [one for piece in ready for one in ((piece,) if only is None else piece.of_size(only))]
    if not pieces:
        return None
    told, scale = _told(pieces)
    lines = (line for piece in pieces for line in piece.sizes[0].outline.dimensions)
    folded = any(line.share != 1 for line in lines)
    figures = tuple(piece.figure(scale, told=told) for piece in pieces)
    return Drawing(figures, scale, tuple(one for legend in legends for one in legend), folded)


def _letters() -> Iterator[str]:
    """A, B, … Z, A2, B2 …"""
    return (f"{letter}{'' if turn == 1 else turn}" for turn in count(1) for letter in ascii_uppercase)


def _told(pieces: Sequence[Piece]) -> tuple[bool, float]:
    """Whether the labels tell every size's values, and the scale."""
    if all(len(piece.sizes) == 1 for piece in pieces):
        return True, _scale(pieces, told=True)
    by_letter = _scale(pieces, told=False)
    longest = max(Label("A", series).width for piece in pieces for series in piece.words.values())
    if longest > WIDE:
        return False, by_letter
    by_value = _scale(pieces, told=True)
    boxes = (piece.labelled(by_value, told=True)[0] for piece in pieces)
    fits = all(box.right - box.left <= WIDE + _NEAR for box in boxes)
    return (True, by_value) if fits and by_value >= by_letter * _ENOUGH else (False, by_letter)


def _scale(pieces: Sequence[Piece], *, told: bool) -> float:
    """The largest scale at which every piece has room, found in steps: what labels take is known once they stand."""
    wide, high = max(piece.box.width for piece in pieces), max(piece.box.height for piece in pieces)
    scale = min(WIDE / wide, HIGH / high)
    for _ in range(_ROUNDS):
        parts = [part for piece in pieces for part in _parts(piece, scale, told=told)]
        if min(parts) >= 1:
            break
        scale *= min(parts)
    return scale


def _parts(piece: Piece, scale: float, *, told: bool) -> tuple[float, float]:
    """How much smaller a piece must be drawn to have room in width and in height; 1 where it has."""
    box = piece.labelled(scale, told=told)[0]
    return _part(WIDE, box.width, piece.box.width * scale), _part(HIGH, box.height, piece.box.height * scale)


def _part(room: float, taken: float, drawn: float) -> float:
    """Labels keep their size, so only what is drawn can give way; never to less than a third at once."""
    return 1.0 if taken <= room + _NEAR else max((room - (taken - drawn)) / drawn, 0.33)
