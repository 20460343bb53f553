"""In: a graded pattern. Out: the faces of its fabric behind each direction, as every size works them.

A section that is turned inside out shows on its right side what its base shows on the wrong side. That is seen on the
stitches themselves, whatever the words were made of.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from sizewright.base.place import Span
from sizewright.grade.graded import Graded
from sizewright.read.notation.direction_tree import Direction
from sizewright.work.blocks import stitch_blocks
from sizewright.work.maker import Maker
from sizewright.work.needle import FLIP

_SLIPPED = b"sS"  # these belong to the rows below


@dataclass(frozen=True, slots=True)
class Faces:
    """The stitches on the needle behind a direction, one letter each as seen from the right side, by size."""

    span: Span
    looks: Mapping[int, bytes]

    def reverse(self, other: "Faces") -> tuple[int, ...]:
        """The sizes in which these are not the faces of the other seen from behind, or cannot be compared."""
        return tuple(
            size
            for size, looks in self.looks.items()
            if size in other.looks and not _reversed(looks, other.looks[size])
        )


def _reversed(looks: bytes, other: bytes) -> bool:
    if len(looks) != len(other):
        return False
    flipped = other.translate(FLIP)
    return all(one == two or one in _SLIPPED or two in _SLIPPED for one, two in zip(looks, flipped, strict=True))


class _Watched(Maker):
    """Works a pattern and notes what is on the needle behind each direction."""

    def __init__(self, graded: Graded, size: int) -> None:
        super().__init__(graded, size, stitch_blocks(graded))
        self.seen: list[tuple[Span, bytes]] = []

    def direction(self, direction: Direction) -> None:
        """Works one direction, and looks where it worked rows: what is only cast on shows no face yet."""
        before = self.needle.rows if self.needle is not None else 0
        super().direction(direction)
        if self.needle is not None and self.needle.rows > before and self.needle.total and not self.lost:
            looks = self.needle.behind[::-1] + self.needle.left
            self.seen.append((direction.span, looks))


def faces(graded: Graded) -> tuple[Faces, ...]:
    """The faces behind each direction, in the order the first size works them."""
    found: dict[tuple[Span, int], dict[int, bytes]] = {}
    for size in range(max(1, len(graded.sizes))):
        maker = _Watched(graded, size)
        maker.make()
        times: dict[Span, int] = {}
        for span, looks in maker.seen:
            found.setdefault((span, times.get(span, 0)), {})[size] = looks
            times[span] = times.get(span, 0) + 1
    return tuple(Faces(span, looks) for (span, _), looks in found.items())
