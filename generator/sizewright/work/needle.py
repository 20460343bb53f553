"""The stitches on the needles while a row is worked: one letter a stitch for how it looks from the right side.

A row is worked on whole runs: `bytes` are joined and multiplied, so the cost of a row grows with what is written, not
with the number of stitches.
"""

from collections import Counter
from dataclasses import dataclass, field

# The same stitch worked on the wrong side shows its other face.
FLIP = bytes.maketrans(b"kpKPiI/d\\D^v", b"pkPKIid/D\\v^")
# What a stitch of the row below is worked as when it is worked "as it appears": knit or purl.
_KNIT, _PURL = b"kKoi/\\^sc", b"pPIdDvS"
PLAIN = bytes.maketrans(_KNIT + _PURL, b"k" * len(_KNIT) + b"p" * len(_PURL))
OPPOSITE = bytes.maketrans(_KNIT + _PURL, b"p" * len(_KNIT) + b"k" * len(_PURL))
# A slipped stitch keeps the face it has; one that others are passed over has become a decrease.
SLIPPED = bytes.maketrans(_KNIT + _PURL, b"s" * len(_KNIT) + b"S" * len(_PURL))
PASSED_OVER = bytes.maketrans(_KNIT + _PURL, b"\\" * len(_KNIT) + b"D" * len(_PURL))


@dataclass(slots=True)
class Needle:
    """The needles between two rows.

    `left` are the stitches to be worked, the next one first; `behind` those that lie behind, the nearest last, after a
    turn in mid row. `markers` are places in `left`, from 0 to its length. `rows` counts the rows of this part,
    `worked` the stitches by yarn. `gaps` are the stitches behind the last turn in mid row, by the side it was made on
    (True for the wrong side); a row worked to its end closes the gap of its side.
    """

    left: bytes = b""
    behind: bytes = b""
    markers: list[int] = field(default_factory=list)
    in_the_round: bool | None = None
    wrong_side: bool = False
    rows: int = 0
    colour: str = ""
    worked: Counter[str] = field(default_factory=Counter)
    held: list[bytes] = field(default_factory=list)
    gaps: dict[bool, int] = field(default_factory=dict)

    @property
    def total(self) -> int:
        """All stitches on the needles."""
        return len(self.left) + len(self.behind)

    def turn(self, right: bytes, markers: list[int]) -> None:
        """The work is turned: what lies on the right needle is worked next, in the other direction."""
        rest = self.left
        self.left = right[::-1]
        self.behind = rest[::-1]
        self.markers = sorted(len(right) - place for place in markers)
        self.wrong_side = not self.wrong_side
