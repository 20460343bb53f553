"""The stitches on the needles while a row is worked: one letter a stitch for how it looks from the right side.

A row is worked on whole runs: `bytes` are joined and multiplied, so the cost of a row grows with what is written, not
with the number of stitches.
"""

from collections import Counter
from dataclasses import dataclass, field, replace
from enum import Enum, auto

from sizewright.base.place import Span

# The same stitch worked on the wrong side shows its other face.
FLIP = bytes.maketrans(b"kpKPiI/d\\D^v", b"pkPKIid/D\\v^")
# What a stitch of the row below is worked as when it is worked "as it appears": knit or purl.
_KNIT, _PURL = b"kKoi/\\^sc", b"pPIdDvS"
PLAIN = bytes.maketrans(_KNIT + _PURL, b"k" * len(_KNIT) + b"p" * len(_PURL))
OPPOSITE = bytes.maketrans(_KNIT + _PURL, b"p" * len(_KNIT) + b"k" * len(_PURL))
# A slipped stitch keeps the face it has; one that others are passed over has become a decrease.
SLIPPED = bytes.maketrans(_KNIT + _PURL, b"s" * len(_KNIT) + b"S" * len(_PURL))
PASSED_OVER = bytes.maketrans(_KNIT + _PURL, b"\\" * len(_KNIT) + b"D" * len(_PURL))


class Lies(Enum):
    """What lies at a place between two stitches."""

    MARKER = auto()
    BEGINNING = auto()  # of the round, marked or not
    TURN = auto()  # where the work was turned in mid row
    WRAPPED = auto()  # the same, and a stitch beside it is wrapped
    DOUBLE = auto()  # the same, and a stitch beside it is doubled


GAPS = (Lies.TURN, Lies.WRAPPED, Lies.DOUBLE)


@dataclass(frozen=True, slots=True)
class Pin:
    """What lies at a place: so many stitches before it in the direction of work, with those behind the needle's tip.

    `beyond` says for a gap on which side of it the wrapped or doubled stitch lies, seen in the direction of work;
    `said` for a marker where its placing is written.
    """

    place: int
    kind: Lies
    name: str = ""
    beyond: bool = False
    said: Span | None = field(default=None, compare=False)


@dataclass(frozen=True, slots=True)
class Held:
    """Stitches on a holder, as they lie seen from the right side; `name` is what they are held for."""

    name: str
    looks: bytes
    place: Span | None = None
    live: bool = False  # never put on hold: another piece was begun
    traced: bool = True  # all words since could be worked, so that it is known that they still wait


@dataclass(slots=True)
class Needle:
    """The needles between two rows.

    `left` are the stitches to be worked, the next one first; `behind` those that lie behind, the nearest last, after a
    turn in mid row. In the round `left` is the whole round from the needle's tip on, and nothing lies behind. `rows`
    counts the rows of this part, and `worked` the stitches by yarn.
    """

    left: bytes = b""
    behind: bytes = b""
    pins: list[Pin] = field(default_factory=list)
    in_the_round: bool | None = None
    wrong_side: bool = False
    side_known: bool = True  # False behind words that could not be worked
    rows: int = 0
    colour: str = ""
    worked: Counter[str] = field(default_factory=Counter)
    panels: dict[str, int] = field(default_factory=dict)  # the row that comes next, of each stitch pattern in a panel
    held: list[Held] = field(default_factory=list)
    opened: bool = False  # the round has a gap, or is said to be worked in rows: a row may begin at either side
    taken_up: bool = False  # from a holder, and not worked since: the stitches lie as seen from the right side

    @property
    def total(self) -> int:
        """All stitches on the needles."""
        return len(self.left) + len(self.behind)

    @property
    def markers(self) -> list[int]:
        """The places of the markers among the stitches to be worked."""
        return [pin.place - len(self.behind) for pin in self.pins if pin.kind is Lies.MARKER]

    @property
    def turned_back(self) -> bool:
        """Whether a round was turned before its end and is not back at its beginning."""
        if not self.in_the_round:
            return False
        return self.wrong_side or any(pin.kind is Lies.BEGINNING and pin.place for pin in self.pins)

    def join(self) -> None:
        """The ends are joined: from here on a round begins where the piece begins, the right side facing."""
        if not self.in_the_round:
            self._to_beginning()
        self.in_the_round, self.opened = True, False
        self.pins = [pin for pin in self.pins if pin.kind is Lies.MARKER]
        self.pins.append(Pin(0, Lies.BEGINNING))

    def _to_beginning(self) -> None:
        """From the ends of rows to where a round begins.

        A row begins with what was cast on last, a round with what was cast on first. Behind a row on the right side the
        work is not turned: the round begins where that row began.
        """
        self.left, self.behind = self.behind + self.left, b""
        if self.wrong_side or (not self.rows and self.in_the_round is False):
            self.reverse()
        self.wrong_side = False

    def part(self) -> None:
        """The work is turned behind all its stitches: whether rows or rounds follow is for their words to say."""
        self.in_the_round, self.opened = None, False
        self.pins = [pin for pin in self.pins if pin.kind is Lies.MARKER]

    def open(self) -> None:
        """A round is worked in rows from here on, from either of its ends."""
        if self.in_the_round:
            self.part()
            self.opened = True

    def lose_track(self) -> None:
        """Words that could not be worked may have turned the work or taken up what waits on holders."""
        self.side_known = False
        self.held = [replace(one, traced=False) for one in self.held]

    def reverse(self) -> None:
        """All stitches in the other direction."""
        total = self.total
        self.left, self.behind = self.left[::-1], self.behind[::-1]
        self.pins = reversed_pins(self.pins, total)


def reversed_pins(pins: list[Pin], total: int) -> list[Pin]:
    """The places seen in the other direction."""
    return [replace(pin, place=total - pin.place, beyond=not pin.beyond) for pin in reversed(pins)]
