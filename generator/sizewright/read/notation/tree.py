"""The nodes of instructions: what the words of a work or stitch block say, each with its place, nothing carried out."""

from dataclasses import dataclass

from sizewright.base.place import Span
from sizewright.read.inserts import Insert, Told, TypedList
from sizewright.read.notation.kinds import Adding as Adding  # noqa: PLC0414 -- words of these trees
from sizewright.read.notation.kinds import Landmark as Landmark  # noqa: PLC0414 -- words of these trees
from sizewright.read.notation.kinds import Manner as Manner  # noqa: PLC0414 -- words of these trees
from sizewright.read.notation.kinds import Marking as Marking  # noqa: PLC0414 -- words of these trees
from sizewright.read.notation.kinds import Promised as Promised  # noqa: PLC0414 -- words of these trees
from sizewright.read.notation.kinds import Side as Side  # noqa: PLC0414 -- words of these trees
from sizewright.read.notation.kinds import Turning as Turning  # noqa: PLC0414 -- words of these trees
from sizewright.read.notation.stitches import Stitch


@dataclass(frozen=True, slots=True)
class Count:
    """How many: a typed number, `{...}` or a typed list, and what is added to it ("once more" and the like)."""

    span: Span
    value: int | Insert | TypedList


@dataclass(frozen=True, slots=True)
class Place:
    """ "to end", "to last 3 sts" (3 before the end), "to 2 sts before marker A", "to 1 st past wrapped st".

    "until 10 sts are on right needle" is 10 past the beginning of what was worked.
    """

    landmark: Landmark
    before: Count | None = None
    past: Count | None = None
    name: str = ""


@dataclass(frozen=True, slots=True)
class Work:
    """A stitch, so many times, or up to a place ("k to end").

    `manner` says how, in one spelling: "purlwise" or "knitwise", then "wyif" or "wyib", or how a wrap or a double
    stitch is worked; "" where nothing is said.
    """

    span: Span
    stitch: Stitch
    count: Count | None = None
    place: Place | None = None
    colour: str = ""
    manner: str = ""


@dataclass(frozen=True, slots=True)
class Repeat:
    """A stretch worked again and again: so many times, or up to a place.

    `more` says that the times come on top of the first ("rep from * 6 more times"). `ending` is worked behind the
    repeats ("end p3"), or, where `replaces` says so, instead of the last part of the last one ("ending last rep k1");
    it goes on to the end of the row or bracket, so nothing comes after it there.
    """

    span: Span
    actions: tuple["Action", ...]
    times: Count | None = None
    place: Place | None = None
    more: bool = False
    ending: tuple["Action", ...] = ()
    replaces: bool = False


@dataclass(frozen=True, slots=True)
class IntoOne:
    """ "(k1, p1, k1) in next st": all worked into one stitch, or into a double yarn over, which is two."""

    span: Span
    actions: tuple["Action", ...]
    double: bool = False

    @property
    def uses(self) -> int:
        """The stitches they are worked into."""
        return 2 if self.double else 1


@dataclass(frozen=True, slots=True)
class Mark:
    """A marker is placed, slipped or removed; `name` "" is any marker, "bor" the one at the beginning of the round."""

    span: Span
    what: Marking
    name: str = ""


@dataclass(frozen=True, slots=True)
class PassOver:
    """ "psso": the slipped stitch is passed over what was worked after it."""

    span: Span
    slipped: int
    over: int = 1


@dataclass(frozen=True, slots=True)
class BindOff:
    """So many stitches are bound off, in a manner ("loosely"); the one left on the right needle counts as worked."""

    span: Span
    count: Count
    manner: str = ""


@dataclass(frozen=True, slots=True)
class Add:
    """Stitches come onto the needle: cast on at the edge or over a gap, or picked up; `where`: "across the gap".

    Between so many equal `parts` of them a marker is placed.
    """

    span: Span
    count: Count
    how: Adding = Adding.CAST_ON
    where: Told = ()
    parts: int = 1


@dataclass(frozen=True, slots=True)
class Hold:
    """Stitches go onto a holder, all up to the end of the row where no count is said; `where`: "on hold".

    `name` is what they are held for. `worked` says that they are "these", those worked last, where some were.
    """

    span: Span
    count: Count | None
    where: Told = ("on hold",)
    name: str = ""
    worked: bool = False


@dataclass(frozen=True, slots=True)
class Across:
    """ "knit across 40 sleeve sts": stitches of that name are worked off their holder, or off the needle.

    `held` says that they are on a holder: "k40 from holder".
    """

    span: Span
    stitch: Stitch
    count: Count | None
    name: str
    held: bool = False


@dataclass(frozen=True, slots=True)
class Drop:
    """Stitches are dropped, or yarn overs."""

    span: Span
    count: Count
    yarn_over: bool = False


@dataclass(frozen=True, slots=True)
class Turn:
    """The work is turned before the end of the row."""

    span: Span
    manner: Turning = Turning.PLAIN


@dataclass(frozen=True, slots=True)
class Follow:
    """Stitches are worked as the fabric below tells, one for one, up to a place or so many."""

    span: Span
    manner: Manner
    count: Count | None = None
    place: Place | None = None


@dataclass(frozen=True, slots=True)
class Panel:
    """A row of the stitch pattern `name` over so many stitches or up to a place; no `row`: the one that comes next.

    `between` says that it begins at a marker ("between markers"), `rounds` that the pattern's row is called a round.
    """

    span: Span
    name: str
    row: Count | None = None
    count: Count | None = None
    place: Place | None = None
    between: bool = False
    rounds: bool = False


@dataclass(frozen=True, slots=True)
class Colour:
    """From here on another yarn is used; with `yarn` False the words of a row's label that may look like one."""

    span: Span
    name: str
    yarn: bool = True


@dataclass(frozen=True, slots=True)
class Evenly:
    """So many increases or decreases spread over the stitches up to a place, to the end where none is said.

    The stitches between are all `plain`, "purl, inc 8 sts evenly", or as they appear.
    """

    span: Span
    stitch: Stitch
    count: Count
    place: Place | None = None
    plain: Stitch | None = None


@dataclass(frozen=True, slots=True)
class Aside:
    """Words in a row that tell how, and change no stitch: "picking up wraps as you come to them"."""

    span: Span
    words: Told


@dataclass(frozen=True, slots=True)
class AtEdges:
    """ "Dec 1 st at each end": shaping told by its place. `actions` are the stitches that this comes to."""

    span: Span
    stitch: Stitch
    count: Count
    edge: str
    actions: tuple["Action", ...]


Action = (
    Across
    | Add
    | Aside
    | AtEdges
    | BindOff
    | Colour
    | Drop
    | Evenly
    | Follow
    | Hold
    | IntoOne
    | Mark
    | Panel
    | PassOver
    | Repeat
    | Turn
    | Work
)
