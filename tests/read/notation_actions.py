"""The actions of rows as they could be built by hand, drawn at random, every kind of them.

They keep to the one form that reading gives: "k" always has a number, "yo" has one from 2 on, and nothing comes behind
the ending of a repeat in its row or bracket.
"""

from hypothesis import strategies as st
from tests.read.notation_again import source

from sizewright.base.place import Span
from sizewright.read.inserts import Insert, TypedList
from sizewright.read.notation.cables import Spelled, named_cable, spelled_cable
from sizewright.read.notation.kinds import Adding, Landmark, Manner, Marking, Turning
from sizewright.read.notation.short_row_words import DOUBLE_AS_ONE, WITH_WRAP
from sizewright.read.notation.stitches import STITCHES, Stitch
from sizewright.read.notation.tree import (
    Across,
    Action,
    Add,
    Aside,
    AtEdges,
    BindOff,
    Colour,
    Count,
    Drop,
    Evenly,
    Follow,
    Hold,
    IntoOne,
    Mark,
    Panel,
    PassOver,
    Place,
    Repeat,
    Turn,
    Work,
)
from sizewright.read.pattern import WorkBlock

HERE = Span("a.md", 1, 1, 1, 1)


def typed_number(words: str) -> Insert | TypedList:
    """A number as it is typed in a source of three sizes."""
    block = source(f"K{words}.").patterns[0].body[-1]
    assert isinstance(block, WorkBlock)
    (number,) = (piece for piece in block.lines[0].pieces if not isinstance(piece, str))
    assert isinstance(number, Insert | TypedList)
    return number


def _optional(drawn: st.SearchStrategy[Count]) -> st.SearchStrategy[Count | None]:
    return st.none() | drawn


PLAIN = st.integers(0, 40).map(lambda value: Count(HERE, value))
SIZED = st.sampled_from([Count(HERE, typed_number(words)) for words in ("{a}", "{b - 2 st}", "8 (9, 10)", "3 (-, 5)")])
COUNTS = PLAIN | SIZED
OPTIONAL_COUNTS = _optional(COUNTS)
TIMES = COUNTS | st.just(Count(HERE, typed_number("{n:times}")))
END = Place(Landmark.END)
TURNS = st.sampled_from([Landmark.TURN, Landmark.WRAPPED, Landmark.DOUBLE])
PLACES = (
    st.builds(Place, st.just(Landmark.END) | TURNS, _optional(COUNTS))
    | st.builds(Place, TURNS | st.just(Landmark.WORKED), st.none(), COUNTS)
    | st.builds(
        lambda before, name: Place(Landmark.MARKER, before, name=name),
        _optional(COUNTS),
        st.sampled_from(["", "b", "1", "bor", "raglan"]),
    )
)
SHAPED = [stitch for stitch in STITCHES if stitch.term in ("inc", "dec")]

# Stitches

_CABLES = ("C4F", "C6B", "2/2 LC", "2/1 LPC", "2/1/2 RPC", "T3B", "C5F")
NAMED = (*STITCHES, *(cable for word in _CABLES if (cable := named_cable(word)) is not None))
SPELLED = (spelled_cable(Spelled("front", "pp", "pp")), spelled_cable(Spelled("back", "k", "kpk")))
COLOURS = st.sampled_from(["", "", "A", "MC", "CC1"])
MANNERS = st.sampled_from(["", "", "wyif", "purlwise", "knitwise wyib"])


def _extents(stitch: Stitch) -> st.SearchStrategy[tuple[Count | None, Place | None]]:
    """How many, or how far."""
    several = TIMES.filter(lambda count: count.value != 1)
    counted = COUNTS if stitch.numbered else _optional(several)
    return st.tuples(counted, st.none()) | st.tuples(st.none(), PLACES)


def _work(stitch: Stitch) -> st.SearchStrategy[Work]:
    bare = stitch in SPELLED
    return st.builds(
        lambda extent, colour, manner: Work(HERE, stitch, extent[0], extent[1], colour, manner),
        _extents(stitch),
        st.just("") if bare else COLOURS,
        st.just("") if bare else MANNERS,
    )


WORKS = st.sampled_from((*NAMED, *SPELLED)).flatmap(_work)

# What is no plain stitch


def _at_edges(stitch: Stitch, count: int, edge: str) -> AtEdges:
    shaped = Work(HERE, stitch, Count(HERE, count))
    rest = Count(HERE, count * stitch.uses) if edge != "beginning" else None
    middle = Follow(HERE, Manner.ANY, None, Place(Landmark.END, rest))
    ends = {"each end": (shaped, middle, shaped), "beginning": (shaped, middle)}
    return AtEdges(HERE, stitch, Count(HERE, count), edge, ends.get(edge, (middle, shaped)))


AT_EDGES = st.builds(
    _at_edges,
    st.sampled_from(SHAPED),
    st.integers(1, 9),
    st.sampled_from(["each end", "end", "beginning", "neck edge"]),
)
EVENLY = st.builds(
    Evenly,
    st.just(HERE),
    st.sampled_from(SHAPED),
    COUNTS,
    st.none() | PLACES,
    st.none() | st.sampled_from(STITCHES[:2]),
)
WHERE = st.sampled_from(
    [(), ("across the gap",), (", skip 1 row",), ("along ", typed_number("{a}"), " rows of the edge")]
)
NAMES = st.sampled_from(["", "", "a", "2", "bor", "raglan", "left side", "last"])
MARKS = st.builds(Mark, st.just(HERE), st.sampled_from([Marking.PLACE, Marking.SLIP, Marking.REMOVE]), NAMES) | st.just(
    Mark(HERE, Marking.CLEAR)
)
HELD_NAMES = st.sampled_from(["", "sleeve", "left front"])
WORKED_OFF = st.builds(
    Across, st.just(HERE), st.sampled_from(STITCHES[:2]), COUNTS, HELD_NAMES, st.booleans()
) | st.builds(Across, st.just(HERE), st.sampled_from(STITCHES[:2]), st.none(), HELD_NAMES, st.just(True))  # noqa: FBT003
RESOLVED = st.builds(
    lambda stitch, manner: Work(HERE, stitch, Count(HERE, 1), manner=manner),
    st.sampled_from(STITCHES[:2]),
    st.sampled_from([WITH_WRAP, DOUBLE_AS_ONE]),
)
FOLLOWS = st.builds(Follow, st.just(HERE), st.sampled_from(Manner), COUNTS, st.none()) | st.builds(
    Follow, st.just(HERE), st.sampled_from(Manner), st.none(), PLACES
)
PANEL_NAMES = st.sampled_from(["Old shale", "Mistle Cable", "rib", "k2, p2 rib"])
PANELS = (
    st.builds(Panel, st.just(HERE), PANEL_NAMES, st.none(), COUNTS)
    | st.builds(
        lambda name, row, rounds, count: Panel(HERE, name, row, count, rounds=rounds),
        PANEL_NAMES,
        COUNTS,
        st.booleans(),
        COUNTS,
    )
    | st.builds(Panel, st.just(HERE), PANEL_NAMES, _optional(COUNTS), st.none(), PLACES)
    | st.builds(
        Panel,
        st.just(HERE),
        PANEL_NAMES,
        _optional(COUNTS),
        st.none(),
        st.just(Place(Landmark.MARKER)),
        st.just(True),  # noqa: FBT003
    )
)
SIMPLE: st.SearchStrategy[Action] = st.one_of(
    WORKS,
    WORKS,
    MARKS,
    FOLLOWS,
    PANELS,
    AT_EDGES,
    EVENLY,
    st.builds(PassOver, st.just(HERE), st.sampled_from([1, 2])),
    st.builds(BindOff, st.just(HERE), COUNTS, st.sampled_from(["", "loosely", "in pattern", "knitwise"])),
    st.builds(Add, st.just(HERE), COUNTS, st.sampled_from(Adding), WHERE, st.sampled_from([1, 2, 4])),
    st.builds(
        Hold, st.just(HERE), _optional(COUNTS), st.sampled_from([("on hold",), ("onto waste yarn",)]), HELD_NAMES
    ),
    WORKED_OFF,
    RESOLVED,
    st.builds(Drop, st.just(HERE), COUNTS),
    st.builds(Colour, st.just(HERE), st.sampled_from(["B", "CC"])),
    st.builds(Turn, st.just(HERE), st.sampled_from(Turning)),
)

# Repeats


def _several(
    inner: st.SearchStrategy[Action], last: st.SearchStrategy[Action]
) -> st.SearchStrategy[tuple[Action, ...]]:
    """Some actions; one with an ending may only be the last."""
    return st.builds(
        lambda first, end: (*first, *end), st.lists(inner, min_size=1, max_size=3), st.lists(last, max_size=1)
    )


def _nested(inner: st.SearchStrategy[Action]) -> st.SearchStrategy[Action]:
    bodies = _several(inner, inner)
    fixed = st.builds(Repeat, st.just(HERE), bodies, TIMES, st.none(), st.booleans())
    far = st.builds(Repeat, st.just(HERE), bodies, st.none(), PLACES)
    return fixed | far | st.builds(IntoOne, st.just(HERE), bodies)


def _ended(inner: st.SearchStrategy[Action]) -> st.SearchStrategy[Action]:
    bodies = _several(inner, inner)
    fixed = st.builds(Repeat, st.just(HERE), bodies, TIMES, st.none(), st.booleans(), bodies, st.booleans())
    far = st.builds(Repeat, st.just(HERE), bodies, st.none(), PLACES, st.just(False), bodies, st.booleans())  # noqa: FBT003
    return fixed | far


ACTIONS = st.recursive(SIMPLE, _nested, max_leaves=6)
PICKING = st.just(Aside(HERE, ("picking up wraps as you come to them",)))
ROW_ACTIONS = _several(ACTIONS, _ended(ACTIONS) | PICKING)
