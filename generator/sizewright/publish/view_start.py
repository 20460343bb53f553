"""In: the pieces of a body. Out: where its instructions begin, and the body without a title that the page has."""

from collections.abc import Sequence
from dataclasses import replace

from sizewright.base.place import Span
from sizewright.read.notation.direction_tree import CastOn
from sizewright.read.pattern import GradeBlock, Heading, Markup, Piece, WorkBlock

START = "part--start"  # the fragment of the first instructions
_TITLE = "instructions"


def start_of(pieces: Sequence[Piece]) -> Span | None:
    """The first block of instructions that casts on, else the first one; None where there is none."""
    blocks = [piece for piece in pieces if isinstance(piece, WorkBlock)]
    cast_on = (block for block in blocks if any(isinstance(one, CastOn) for one in block.directions))
    first = next(cast_on, blocks[0] if blocks else None)
    return first.span if first is not None else None


def untitled(pieces: tuple[Piece, ...]) -> tuple[str, tuple[Piece, ...]]:
    """The fragment of a first heading that says "Instructions" and no more, and the body without it; "" without one."""
    at = next((place for place, piece in enumerate(pieces) if _seen(piece)), len(pieces))
    heading = pieces[at] if at < len(pieces) else None
    if not isinstance(heading, Heading) or heading.text.casefold() != _TITLE:
        return "", pieces
    closing = f"</h{heading.level}>"
    for end, piece in enumerate(pieces[at:], start=at):
        if isinstance(piece, Markup) and closing in piece.html:
            rest = replace(piece, html=piece.html.partition(closing)[2])
            return heading.anchor, (*pieces[:at], rest, *pieces[end + 1 :])
    return "", pieces


def _seen(piece: Piece) -> bool:
    return bool(piece.html.strip()) if isinstance(piece, Markup) else not isinstance(piece, GradeBlock)
