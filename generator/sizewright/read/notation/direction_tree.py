"""The nodes of whole directions: rows, repeats of rows, casting on, joining; what a row holds stands in `tree`."""

from dataclasses import dataclass, field

from sizewright.base.place import Span
from sizewright.read.inserts import Insert, Told, TypedList
from sizewright.read.notation.kinds import Promised, Side
from sizewright.read.notation.tree import Action, Count


@dataclass(frozen=True, slots=True)
class Promise:
    """The count behind a row, which must come true; `where`: "on each needle".

    `also` is a second one in the same brackets: "(8 sts decreased; 80 sts)".
    """

    span: Span
    what: Promised
    count: Count
    where: str = ""
    also: "Promise | None" = None


@dataclass(frozen=True, slots=True)
class Numbers:
    """Row numbers: single ones, or a range whose end may differ by size."""

    listed: tuple[int, ...] = ()
    first: int = 0
    last: Count | None = None
    every: str = ""  # "WS", "RS", "even", "odd" or "other" (alternate): all rows of that kind that are not written out


@dataclass(frozen=True, slots=True)
class Row:
    """One row or round as it is written, or several that are alike.

    `label` is as typed, and `name` what it may be called by, "dec row" for "Dec Rnd (RS)". `like` names another row
    whose words it takes. `heading` is what it says beside number and side, "Dec", "Next", or all of an unusual label
    with its colon.
    """

    span: Span
    label: str = field(compare=False)
    numbers: Numbers
    side: Side | None
    in_the_round: bool
    actions: tuple[Action, ...]
    promise: Promise | None = None
    like: Numbers | None = None
    name: str = field(default="", compare=False)
    heading: str = ""


@dataclass(frozen=True, slots=True)
class Extent:
    """How far rows go on: so many times or rows, until a length, or until so many stitches are left.

    `since` is what the length is measured from: "" the cast-on edge where nothing is said, "here" for rows to come,
    else words; `part` is what is measured, where it is not the whole piece. `told` is said behind it. `begins` and
    `ends` are the sides of the first and of the last row, where they are said.
    """

    times: Count | None = None
    rows: Count | None = None
    length: Insert | TypedList | None = None
    typed_length: str = ""
    since: str = ""
    left: Count | None = None
    part: str = ""
    told: Told = ()
    begins: Side | None = None
    ends: Side | None = None


@dataclass(frozen=True, slots=True)
class RepeatRows:
    """Rows above are worked again; `numbers` None means the last `back` written ones, `of` names a stitch pattern.

    `name` calls a row by its name. `words` are the rows as typed: "Rows 1-4".
    """

    span: Span
    numbers: Numbers | None
    back: int
    of: str
    extent: Extent
    promise: Promise | None = None
    name: str = ""
    words: str = field(default="", compare=False)
    in_the_round: bool = False


@dataclass(frozen=True, slots=True)
class Spacing:
    """How often a row comes: "every 4th row 10 times", "on every RS row until 20 sts remain".

    `every` rows lie from one to the next, or one on each `side`. `here` says that they are counted from this place,
    not from the last row of the kind. `times` None goes on until there are `until` stitches.
    """

    every: Count | None
    side: Side | None
    times: Count | None
    until: Count | None = None
    here: bool = False


@dataclass(frozen=True, slots=True)
class Spaced:
    """A row comes again and again, with rows worked even between: "Rep Inc Row every 4th row 10 times".

    The row is called by its `name`, or `actions` are what it does. The rows between are in `fabric`, "" as established.
    """

    span: Span
    name: str
    actions: tuple[Action, ...]
    spacings: tuple[Spacing, ...]
    fabric: str
    words: str = field(compare=False)
    promise: Promise | None = None
    in_the_round: bool = False


@dataclass(frozen=True, slots=True)
class Even:
    """Rows worked in a fabric known by name ("knit", "rib", a stitch block) for an extent."""

    span: Span
    fabric: str
    extent: Extent
    promise: Promise | None = None
    in_the_round: bool = False


@dataclass(frozen=True, slots=True)
class Meanwhile:
    """Rows, and shaping told to be done at the same time."""

    span: Span
    rows: RepeatRows | Even
    shaping: Spaced
    promise: Promise | None = None


@dataclass(frozen=True, slots=True)
class CastOn:
    """A new piece begins; `behind` are markers and more stitches in the same breath, "pm, cast on 8 sts".

    In this and the directions below `words` are the sentence where it tells more than that.
    """

    span: Span
    count: Count
    words: Told = ()
    behind: tuple[Action, ...] = ()
    promise: Promise | None = None


@dataclass(frozen=True, slots=True)
class Join:
    """The piece is joined in the round; `marked` where a marker stands at the beginning of the round."""

    span: Span
    marked: bool
    words: Told = ()
    promise: Promise | None = None


@dataclass(frozen=True, slots=True)
class Apart:
    """From here on a piece is worked back and forth in rows; `promise` says over how many stitches."""

    span: Span
    words: Told = ()
    promise: Promise | None = None


@dataclass(frozen=True, slots=True)
class TakeUp:
    """Held stitches come back onto the needles, and a new part begins with them.

    `name` is what they were held for. `rejoined` says that yarn is joined to them, which may find them on the needle.
    """

    span: Span
    count: Count | None
    words: Told = ()
    name: str = ""
    rejoined: bool = False


@dataclass(frozen=True, slots=True)
class BindOffAll:
    """All stitches are bound off; the piece ends. `count` is how many are said to be left."""

    span: Span
    words: Told = ()
    count: Count | None = None


@dataclass(frozen=True, slots=True)
class Gather:
    """All stitches leave the needle, threaded or grafted; `count` is how many are said to be left.

    `sides` are the two sets that are grafted together, where they are counted: how many, and what they are called.
    """

    span: Span
    count: Count | None
    words: Told = ()
    sides: tuple[tuple[Count, str], ...] = ()


@dataclass(frozen=True, slots=True)
class TakeYarn:
    """From here on this yarn is used: "With CC, ...", "Change to B."."""

    span: Span
    name: str
    words: Told = ()


@dataclass(frozen=True, slots=True)
class SameAgain:
    """A part is made again: "Make the second sleeve the same way"; `part` is "sleeve", "" where it has no name.

    It is made `times` more times, or, where `total` says so, so many times in all ("Make 2 alike").
    """

    span: Span
    part: str
    times: Count
    total: bool
    words: Told = ()


@dataclass(frozen=True, slots=True)
class Declared:
    """What the author declares of words that cannot be carried out: the count behind them, and the rows they take."""

    span: Span
    count: Count
    rows: Count | None
    words: Told = ()


@dataclass(frozen=True, slots=True)
class Unread:
    """A direction that was not understood; what is found says so. A promise behind it tells how work goes on."""

    span: Span
    promise: Promise | None
    words: Told = ()


Direction = (
    Row
    | RepeatRows
    | Even
    | Spaced
    | Meanwhile
    | CastOn
    | Join
    | Apart
    | TakeUp
    | BindOffAll
    | Gather
    | TakeYarn
    | SameAgain
    | Declared
    | Unread
)
