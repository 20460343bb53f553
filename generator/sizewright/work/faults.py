"""What can go wrong while a pattern is worked, as data: where, in which size, and by how much."""

from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.place import Span
from sizewright.base.units import Dimension
from sizewright.work.as_set import UnclearPattern


@dataclass(frozen=True, slots=True)
class BrokenRepeat:
    """A repeat does not come out: `available` stitches for repeats of `uses` each, `over` left; `total` on the needle.

    `fitting` are the counts on the needle next to `total` with which it would come out.
    """

    span: Span
    size: int
    label: str
    available: int
    uses: int
    over: int
    total: int
    fitting: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class TooFew:
    """An action needs more stitches than are left in the row."""

    span: Span
    size: int
    label: str
    needs: int
    left: int
    total: int


@dataclass(frozen=True, slots=True)
class LeftOver:
    """The row ends before all stitches are worked."""

    span: Span
    size: int
    label: str
    left: int
    total: int


@dataclass(frozen=True, slots=True)
class WrongCount:
    """The count promised behind a row is not reached; `what` is what was promised: "sts", "sts decreased"."""

    span: Span
    size: int
    label: str
    what: str
    promised: int
    found: int


@dataclass(frozen=True, slots=True)
class NoMarker:
    """The row speaks of a marker that is not there; `known` are the names of those that are, "" of nameless ones."""

    span: Span
    size: int
    label: str
    name: str = ""
    known: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class DoubledMarker:
    """A row that is worked again places a marker, `behind` so many stitches, where it has placed it before."""

    span: Span
    size: int
    label: str
    name: str
    behind: int


@dataclass(frozen=True, slots=True)
class NoTurn:
    """The row is worked to a turn, a wrapped or a double stitch, and none lies ahead."""

    span: Span
    size: int
    label: str
    what: str


@dataclass(frozen=True, slots=True)
class NoYarnOver:
    """A yarn over is dropped or worked into, a double one or a single, and none comes next."""

    span: Span
    size: int
    label: str
    double: bool


@dataclass(frozen=True, slots=True)
class NoRow:
    """Rows are to be repeated that are not written; `known` are the names of those that are."""

    span: Span
    size: int
    words: str
    known: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class NoStitches:
    """Something is to be worked before stitches are cast on, or so many held stitches that nobody put on hold.

    `name` is what they should be held for, `names` what is on hold, in words.
    """

    span: Span
    size: int
    wanted: int | None
    held: tuple[int, ...]
    name: str = ""
    names: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class NeverReached:
    """Rows repeated "until 8 sts remain" never leave that count; `found` is where they stand still or pass it."""

    span: Span
    size: int
    wanted: int
    found: int


@dataclass(frozen=True, slots=True)
class Unfinished:
    """Shaping is to be done while so many `rows` are worked, and they end when it was `done` so often."""

    span: Span
    size: int
    rows: int
    done: int


@dataclass(frozen=True, slots=True)
class NotTogether:
    """Stitches are to be lost or gained at the edges of a pattern that does not work each stitch for one."""

    span: Span
    size: int
    words: str


@dataclass(frozen=True, slots=True)
class UnknownFabric:
    """A stitch pattern is to be worked that nobody wrote."""

    span: Span
    size: int
    words: str


@dataclass(frozen=True, slots=True)
class WrongSide:
    """A row says it is on the one side, and the work shows the other."""

    span: Span
    size: int
    label: str
    said: str


@dataclass(frozen=True, slots=True)
class LengthPassed:
    """Rows are to be worked until a length that the piece has already; both in cm, measured from the same place."""

    span: Span
    size: int
    length: Fraction
    reached: Fraction


@dataclass(frozen=True, slots=True)
class NotJoined:
    """A round is worked on a piece that was not joined, or a row on one that was."""

    span: Span
    size: int
    label: str
    in_the_round: bool


@dataclass(frozen=True, slots=True)
class NoCount:
    """A number among the instructions is no count of stitches, rows or times, or `too_many` of them."""

    span: Span
    size: int
    words: str
    too_many: bool = False


@dataclass(frozen=True, slots=True)
class NoLength:
    """A piece is to measure so much, and the number has `dimension`, no length; `value` is in base units."""

    span: Span
    size: int
    words: str
    value: Fraction
    dimension: Dimension


@dataclass(frozen=True, slots=True)
class UnevenGraft:
    """Two sets of stitches that are grafted together are not as many."""

    span: Span
    size: int
    one: int
    other: int


@dataclass(frozen=True, slots=True)
class UnevenParts:
    """Stitches picked up with their halves or quarters marked cannot be parted so."""

    span: Span
    size: int
    count: int
    parts: int


@dataclass(frozen=True, slots=True)
class ChartDiffers:
    """A chart says otherwise than the rows written under the same name, which stand at `beside`.

    `row` is the row's label, "" for the whole; `stitch` its place in working order, from 1, or 0 for the whole row.
    """

    span: Span
    beside: Span
    row: str
    stitch: int
    chart: str
    words: str
    size: int = 0


Fault = (
    UnevenGraft
    | ChartDiffers
    | BrokenRepeat
    | TooFew
    | LeftOver
    | WrongCount
    | NoMarker
    | DoubledMarker
    | NoTurn
    | NoYarnOver
    | NoRow
    | NoStitches
    | NeverReached
    | Unfinished
    | NotTogether
    | UnknownFabric
    | UnclearPattern
    | WrongSide
    | NotJoined
    | LengthPassed
    | UnevenParts
    | NoCount
    | NoLength
)


@dataclass(frozen=True, slots=True)
class Forgotten:
    """Stitches are on a holder or on the needle at the end of the pattern; `words` are those that are held."""

    span: Span
    size: int
    count: int
    words: str


class Stopped(Exception):  # noqa: N818 -- carries a fault of the pattern to where its row is worked
    """The row cannot be worked on; `fault` is None where the reason is told elsewhere."""

    def __init__(self, fault: Fault | None) -> None:
        super().__init__(repr(fault))
        self.fault = fault
