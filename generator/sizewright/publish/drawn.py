"""In: a pattern carried out. Out: its drawings, made once, and the pictures of cloth as files of the site."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from sizewright.base.language import spoken
from sizewright.base.place import Span
from sizewright.draw.drawings import Drawing, StitchDrawings, piece_drawing, stitch_drawings
from sizewright.publish.output import Output
from sizewright.work.worked import Worked

_FOLDER = "drawn"


@dataclass(frozen=True, slots=True)
class Drawn:
    """The drawings of a pattern: its piece, unless it has a picture of its own, and its stitch blocks by place."""

    piece: Drawing | None
    stitches: Mapping[Span, StitchDrawings]


def drawn(worked: Worked) -> Drawn:
    """The drawings of a pattern, made once for its page, its paper and its card in the spoken language."""
    told = spoken()
    return _drawn(worked, told.messages, frozenset(told.names.items()))


@lru_cache(maxsize=128)
def _drawn(worked: Worked, *_: object) -> Drawn:
    pictured = worked.graded.pattern.header.picture is not None
    return Drawn(None if pictured else piece_drawing(worked), stitch_drawings(worked))


def drawn_path(worked: Worked, number: int = 0) -> str:
    """Where the picture of the piece is in the site, or that of a stitch block, counted from 1."""
    ending = f"-{number}" if number else ""
    return f"{_FOLDER}/{worked.graded.pattern.name}{ending}.svg"


def drawn_files(worked: Worked) -> Iterator[Output]:
    """The pictures of cloth, as files of the site."""
    found = drawn(worked)
    cloths = (found.piece, *(drawings.cloth for drawings in found.stitches.values()))
    for number, drawing in enumerate(cloths):
        if drawing is not None:
            yield Output(drawn_path(worked, number), drawing.svg.encode())
