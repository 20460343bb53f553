"""Trees of instructions as they could be built by hand, drawn at random: every kind of direction.

Counts, places and the actions of rows come from `notation_actions`.
"""

from hypothesis import strategies as st
from tests.read.notation_actions import (
    AT_EDGES,
    COUNTS,
    HERE,
    OPTIONAL_COUNTS,
    ROW_ACTIONS,
    SHAPED,
    SIZED,
    TIMES,
    WORKS,
    typed_number,
)

from sizewright.read.inserts import joined
from sizewright.read.notation.direction_tree import (
    Apart,
    BindOffAll,
    CastOn,
    Declared,
    Direction,
    Even,
    Extent,
    Gather,
    Join,
    Meanwhile,
    Numbers,
    Promise,
    RepeatRows,
    Row,
    SameAgain,
    Spaced,
    Spacing,
    TakeUp,
    TakeYarn,
    Unread,
)
from sizewright.read.notation.kinds import Marking, Promised, Side
from sizewright.read.notation.tree import Action, Add, Count, Evenly, Mark

# Rows

LISTED = st.lists(st.integers(1, 20), min_size=1, max_size=6, unique=True).map(lambda rows: tuple(sorted(rows)))
NUMBERS = (
    st.builds(Numbers, LISTED)
    | st.builds(Numbers, LISTED, st.just(0), st.none(), st.sampled_from(["WS", "RS", "even", "other"]))
    | st.builds(Numbers, st.just(()), st.just(0), st.none(), st.sampled_from(["WS", "RS", "even", "odd"]))
    | st.builds(Numbers, st.just(()), st.integers(1, 9), SIZED)
    | st.builds(Numbers, LISTED, st.integers(21, 29), SIZED)
)
PROMISES = (
    st.none()
    | st.builds(Promise, st.just(HERE), st.sampled_from(Promised), COUNTS, st.sampled_from(["", "", "on each needle"]))
    | st.builds(
        lambda fewer, left: Promise(HERE, Promised.FEWER, fewer, also=Promise(HERE, Promised.TOTAL, left)),
        COUNTS,
        COUNTS,
    )
)


def _row(numbers: Numbers, heading: str, side: Side | None, rounds: bool, actions: tuple[Action, ...]) -> Row:  # noqa: FBT001
    return Row(HERE, "", numbers, side, rounds, actions, heading=heading)


SIDES = st.none() | st.sampled_from(Side)
HEADINGS = st.sampled_from(["Next", "Dec", "Set-up"])
UNUSUAL = st.sampled_from(["Divide for fronts:", "Next Row (Dec Row):", "Divide for thumb (RS):"])
LABELLED = st.builds(_row, NUMBERS, st.just(""), SIDES, st.booleans(), ROW_ACTIONS) | st.builds(
    _row, st.just(Numbers()), HEADINGS, SIDES, st.booleans(), ROW_ACTIONS
)
WHOLE = st.builds(
    lambda heading, actions: _row(Numbers(), heading, Side.RIGHT if "RS" in heading else None, False, actions),  # noqa: FBT003
    UNUSUAL,
    ROW_ACTIONS,
)
ONE = st.integers(1, 30).map(lambda row: Numbers((row,)))
LIKE = st.builds(
    lambda numbers, like: Row(HERE, "", numbers, None, False, (), None, like),  # noqa: FBT003
    NUMBERS,
    ONE,
) | LISTED.map(lambda rows: Row(HERE, "", Numbers(rows), None, False, (), None, Numbers(rows)))  # noqa: FBT003
BARE = st.builds(
    lambda first, rest: _row(Numbers(), "", None, False, (first, *rest)),  # noqa: FBT003
    WORKS,
    ROW_ACTIONS,
)
ROWS = LABELLED | WHOLE | LIKE | BARE

# Other directions

LENGTHS = st.sampled_from(
    [("10 cm", None), ("4 1/2 in", None), ("", typed_number("{a}")), ("cm", typed_number("8 (9, 10)"))]
)
SINCE = st.sampled_from([("", ""), ("here", ""), ("cast-on edge", ""), ("thumb", "thumb"), ("end of cuff", "hand")])
EXTENTS = (
    st.builds(Extent, TIMES)
    | st.builds(Extent, st.none(), COUNTS)
    | st.builds(
        lambda length, since: Extent(length=length[1], typed_length=length[0], since=since[0], part=since[1]),
        LENGTHS,
        SINCE,
    )
    | st.builds(
        lambda length, ends, told: Extent(length=length[1], typed_length=length[0], ends=ends, told=told),
        LENGTHS,
        st.sampled_from(Side),
        st.sampled_from([(), ("[5 cm]",)]),
    )
    | st.builds(lambda rows, ends: Extent(rows=rows, ends=ends), COUNTS, st.sampled_from(Side))
    | st.builds(lambda left, ends: Extent(left=left, ends=ends), COUNTS, SIDES)
)
FABRICS = st.sampled_from(["knit", "purl", "pattern", "garter stitch", "k2, p2 rib", "Old shale", "as established"])
COUNTED_ROWS = st.builds(Numbers, LISTED) | st.builds(Numbers, st.just(()), st.integers(1, 9), SIZED)
REPEATS = (
    st.builds(RepeatRows, st.just(HERE), COUNTED_ROWS, st.just(0), st.sampled_from(["", "Old shale"]), EXTENTS)
    | st.builds(RepeatRows, st.just(HERE), COUNTED_ROWS, st.just(0), st.just(""), st.just(Extent()))
    | st.builds(RepeatRows, st.just(HERE), st.none(), st.integers(1, 9), st.just(""), EXTENTS)
    | st.builds(
        lambda name, extent: RepeatRows(HERE, None, 0, "", extent, name=name),
        st.sampled_from(["dec row", "set-up row"]),
        EXTENTS | st.just(Extent()),
    )
)
EVENS = st.builds(Even, st.just(HERE), FABRICS, EXTENTS) | st.builds(
    Even, st.just(HERE), st.sampled_from(["garter stitch", "Old shale"]), st.just(Extent())
)
ORDINALS = st.integers(1, 30).map(lambda value: Count(HERE, value)) | st.just(Count(HERE, typed_number("{n:ordinal}")))
SPACINGS = (
    st.builds(Spacing, ORDINALS, SIDES, TIMES)
    | st.builds(Spacing, ORDINALS, SIDES, st.none(), COUNTS)
    | st.builds(Spacing, st.none(), st.sampled_from(Side), TIMES)
)
FIRST = st.builds(lambda every: (Spacing(every, None, Count(HERE, 1), None, here=True),), ORDINALS) | st.just(())
SPACED = st.builds(
    lambda called, first, rest, fabric: Spaced(HERE, called[0], called[1], (*first, *rest), fabric, ""),
    st.sampled_from(["dec row", "last row"]).map(lambda name: (name, ()))
    | (AT_EDGES | st.builds(Evenly, st.just(HERE), st.sampled_from(SHAPED), COUNTS)).map(lambda one: ("", (one,))),
    FIRST,
    st.lists(SPACINGS, min_size=1, max_size=3),
    st.sampled_from(["", "garter stitch"]),
)


MEANWHILE = st.builds(Meanwhile, st.just(HERE), (REPEATS | EVENS).filter(lambda rows: rows.extent.ends is None), SPACED)


def _set_phrases(count: Count | None, words: bool) -> st.SearchStrategy[Direction]:  # noqa: FBT001
    """Directions that are sentences of their own, plain or with more words than that."""
    some = count or Count(HERE, 4)
    number = str(some.value) if isinstance(some.value, int) else some.value
    return st.sampled_from(
        [
            CastOn(HERE, some, joined(("Using larger needles, cast on ", number, " sts loosely")) if words else ()),
            Join(HERE, words, ("Place marker and join, being careful not to twist",) if words else ()),
            CastOn(HERE, some, behind=(Mark(HERE, Marking.PLACE), Add(HERE, Count(HERE, 8)))),
            TakeUp(HERE, some, name="sleeve"),
            TakeUp(HERE, count, rejoined=True),
            Join(HERE, marked=False),
            Apart(HERE),
            Join(HERE, marked=True),
            TakeUp(HERE, some, joined(("Return the ", number, " held sts to the needles")) if words else ()),
            TakeUp(HERE, None),
            BindOffAll(HERE, ("Bind off all sts loosely in pattern",) if words else ()),
            BindOffAll(HERE, count=some),
            Gather(HERE, count),
            Gather(HERE, None, ("Graft the toe",)),
            TakeYarn(HERE, "CC"),
            TakeYarn(HERE, "B", ("Change to B",)),
            SameAgain(HERE, "sleeve", Count(HERE, 2), total=True),
            SameAgain(HERE, "sleeve", Count(HERE, 3), total=False),
            Declared(HERE, some, count, ("Work the panel as drawn.",)),
        ]
    )


PHRASES = st.tuples(OPTIONAL_COUNTS, st.booleans()).flatmap(lambda drawn: _set_phrases(*drawn))
Promising = Row | Join | Apart | RepeatRows | Even | Spaced | Meanwhile | Unread
PROMISED: st.SearchStrategy[Promising] = (
    ROWS
    | REPEATS
    | EVENS
    | SPACED
    | MEANWHILE
    | st.just(Join(HERE, marked=True))
    | st.just(Apart(HERE))
    | st.just(Unread(HERE, None, ("Frobnicate the whole of it",)))
)
DIRECTIONS: st.SearchStrategy[Direction] = PROMISED | PHRASES
