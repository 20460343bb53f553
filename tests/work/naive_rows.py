"""In: nothing. Out: pieces for hypothesis: rows that fit what lies on the needle.

The rows are made for the needle of the naive knitter, who works each as soon as it is made.
"""

from collections.abc import Callable
from dataclasses import replace

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn
from tests.work.naive import Hands
from tests.work.naive_needles import MOVEMENTS, Loop, Marker, Unclear, Unworkable
from tests.work.naive_words import (
    Again,
    Below,
    Count,
    Marking,
    Off,
    On,
    Over,
    Part,
    Place,
    Some,
    Upto,
    Written,
    WrittenAgain,
    WrittenRow,
    Yarn,
    number,
)

PLAIN = ("k", "p", "k", "p", "k tbl", "p tbl", "sl")
SHAPING = ("yo", "k2tog", "ssk", "p2tog", "ssp", "skp", "sk2p", "s2kp", "k3tog", "sssk", "m1", "m1l", "m1r", "m1p")
GROWING = ("kfb", "pfb", "(k1, p1, k1)")
CROSSED = ("C4F", "C6B", "2/2 LC", "RT", "LT")


def takes(parts: tuple[Part, ...]) -> int:
    """The stitches that parts of fixed counts take."""
    found = 0
    for part in parts:
        match part:
            case Some(name, count, _):
                each = sum(1 if one == "s" else int(one[1:]) for one in MOVEMENTS[name].split() if one[0] in "kpsx")
                found += each * count[0]
            case Again(body, times) if times is not None:
                found += takes(body) * times[0]
    return found


class Rows:
    """Makes rows for the needles of all sizes."""

    def __init__(self, draw: DrawFn, hands: list[Hands]) -> None:
        self.draw = draw
        self.hands = hands

    @property
    def counts(self) -> Count:
        """The stitches on the needle, by size."""
        return tuple(hands.waiting for hands in self.hands)

    def among(self, *choices: str) -> str:
        """One of some words."""
        return self.draw(st.sampled_from(choices))

    def upto(self, most: int, least: int = 0) -> int:
        """A small number."""
        return self.draw(st.integers(least, max(least, most)))

    def some(self) -> tuple[Part, ...]:
        """A stitch, or the few that belong together."""
        kind = self.upto(11)
        if kind < 6:
            return (Some(self.among(*PLAIN), (self.upto(4, 1),)),)
        if kind < 9:
            return (Some(self.among(*SHAPING), (1,)),)
        if kind == 9:
            return (Some(self.among(*GROWING)),)
        if kind == 10 and not self.hands[0].wrong_side:
            return (Some(self.among(*CROSSED)),)
        passed = self.upto(2, 1)
        worked = self.among("k", "p", "k2tog") if passed == 1 else "k"
        return (Some("sl", (passed,)), Some(worked), Over(passed))

    def stretch(self, most: int = 3) -> tuple[Part, ...]:
        """A few fixed stitches, now and then with a bracket among them."""
        first, *others = [self.some() for _ in range(self.upto(most, 1))]
        parts = tuple(part for some in others for part in some)
        if self.upto(5) == 5:
            return (*first, Again(parts or self.some(), (self.upto(3, 1),), spelling=1), *self.some())
        return (*first, *parts)

    # Kinds of rows

    def repeated(self) -> tuple[Part, ...]:
        """Edge stitches, a repeat that comes out in every size, edge stitches."""
        edge = self.stretch(2) if self.upto(1) else ()
        body = self.stretch()
        left, unit = takes(edge), takes(body)
        if not unit or min(self.counts) < left + unit:
            return self.plain()
        rest = tuple((count - left) % unit for count in self.counts)
        times = tuple((count - left) // unit for count in self.counts)
        return (*edge, *self.closed(body, unit, times, rest))

    def closed(self, body: tuple[Part, ...], unit: int, times: Count, rest: Count) -> tuple[Part, ...]:
        """A repeat and what stands behind it, in one of the ways of the trade."""
        spelling = self.upto(7)
        filler = (Some(self.among("k", "p"), rest),) if any(rest) else ()
        way = self.upto(5)
        if way == 0 and min(times) > 1:
            return (Again(body, times, spelling=spelling), *filler)
        if way == 1 and filler and min(rest):
            return (Again(body, ending=filler, spelling=spelling),)
        if way == 2 and isinstance(body[-1], Some) and takes(body[-1:]):
            more = tuple((one - takes(body[-1:]) + 1) % unit for one in rest)
            before = (Some("p", more),) if any(more) else ()
            return (*before, Again(body, ending=(Some("k"),), instead=True))
        if way == 4 and filler and min(rest):
            return (Again(body, None, Place(rest), ending=filler, spelling=spelling),)
        if any(rest) or way == 3:
            return (Again(body, None, Place(rest), spelling=spelling), *filler)
        return (Again(body, spelling=spelling),)

    def plain(self) -> tuple[Part, ...]:
        """ "K to last 3 sts, p3"."""
        edge = self.stretch(2) if min(self.counts) > 12 else ()
        rest = min(self.counts) - takes(edge)
        behind = min(self.upto(4), max(0, rest - 1))
        filler = (Some(self.among("k", "p"), (behind,)),) if behind else ()
        if len(set(self.counts)) > 1 and self.upto(1):
            all_others = tuple(count - takes(edge) - behind for count in self.counts)
            return (*edge, Some(self.among("k", "p"), all_others), *filler)
        even = all((count - takes(edge) - behind) % 2 == 0 for count in self.counts)
        name = self.among("k", "p", "sl", *(("k2tog", "ssp") if even else ()))
        return (*edge, Upto(name, Place((behind,))), *filler)

    def edged(self) -> tuple[Part, ...]:
        """Stitches bound off, cast on or picked up at an edge; rows as they appear; yarns."""
        way, few = self.upto(4), self.upto(8, 1)
        if way == 0 and min(self.counts) > few + 1:
            return (Off((few,)), Upto("k", Place()))
        if way == 1 and not self.hands[0].in_the_round:
            return (Upto(self.among("k", "p"), Place()), On((few,), self.among("cast on", "pick up and knit")))
        if way == 2:
            return (Below(opposite=bool(self.upto(1))),)
        return self.coloured()

    def coloured(self) -> tuple[Part, ...]:
        """Two yarns in a repeat."""
        first, second = self.upto(3, 1), self.upto(3, 1)
        unit = first + second
        rest = tuple(count % unit for count in self.counts)
        if min(self.counts) < unit:
            return (Yarn("A"), Upto("k", Place()))
        body: tuple[Part, ...] = (Some("k", (first,), "MC"), Some("p", (second,), "CC"))
        if self.upto(1):
            body = (Yarn("B"), Some("k", (first,)), Yarn("A"), Some("k", (second,)))
        behind = (Some("k", rest),) if any(rest) else ()
        return (Again(body, None, Place(rest), spelling=self.upto(7)), *behind)

    def marked(self) -> tuple[Part, ...]:
        """Markers placed, worked to, slipped and removed."""
        ahead = [self.ahead(hands) for hands in self.hands]
        if min(ahead) < 4:
            few = self.upto(min(self.counts), 1)
            return (Some(self.among("k", "p"), (few,)), Marking("pm"), Upto("k", Place()))
        way = self.upto(3)
        if way == 0 and self.hands[0].in_the_round and all(self.closing(hands) for hands in self.hands):
            body = (Some("k"), Some("ssk"), Upto("k", Place((3,), marker=True)), Some("k2tog"), Some("k"))
            return (Again((*body, Marking("sm"))),)
        before = self.upto(3)
        filler = (Some(self.among("k", "p"), (before,)),) if before else ()
        shaped: tuple[Part, ...] = (Some(self.among("m1l", "m1r", "m1p")),) if way == 1 else ()
        word = Marking(self.among("sm", "sm", "rm"))
        to = Upto(self.among("k", "p"), Place((before,), marker=True))
        behind = (Upto("k", Place()),) if all(self.follows(hands) for hands in self.hands) else ()
        return (to, *filler, *shaped, word, *behind)

    @staticmethod
    def ahead(hands: Hands) -> int:
        """The stitches up to the next marker; none where there is none, or where one stands here."""
        return next((at for at, thing in enumerate(hands.left) if isinstance(thing, Marker)), 0)

    @staticmethod
    def follows(hands: Hands) -> bool:
        """Whether stitches lie behind the first marker."""
        return isinstance(hands.left[-1], Loop)

    @staticmethod
    def closing(hands: Hands) -> bool:
        """Whether a marker closes the round and at least six stitches lie before each."""
        lengths, length = [], 0
        for thing in hands.left:
            length += isinstance(thing, Loop)
            if isinstance(thing, Marker):
                lengths.append(length)
                length = 0
        return length == 0 and min(lengths) >= 6

    def parts(self) -> tuple[Part, ...]:
        """The parts of one row."""
        kinds: tuple[Callable[[], tuple[Part, ...]], ...] = (
            *(self.repeated, self.repeated, self.repeated, self.repeated),
            *(self.plain, self.edged, self.marked, self.marked),
        )
        return kinds[self.upto(len(kinds) - 1)]()

    def next_row(self, first: int, before: int) -> WrittenRow | WrittenAgain:
        """One more row, or the last ones again where `before` are written."""
        if before and self.upto(7) == 7:
            return WrittenAgain(min(before, self.upto(2, 1)), (self.upto(3, 1),), self.upto(2))
        row = WrittenRow(first, self.parts(), self.times() if self.upto(7) == 7 else (1,))
        sides = {hands.wrong_side for hands in self.hands}
        if not self.hands[0].in_the_round and row.times == (1,) and len(sides) == 1 and self.upto(1):
            row = replace(row, side="WS" if sides.pop() else "RS")
        return row

    def times(self) -> Count:
        """How many rows alike, in each size or in all."""
        return (self.upto(4, 2),) if self.upto(1) else tuple(self.upto(4, 2) for _ in self.hands)

    def promise(self, before: Count, kind: int) -> tuple[str, Count] | None:
        """The count behind a row."""
        changes = tuple(now - then for now, then in zip(self.counts, before, strict=True))
        if kind < 2:
            return "total", self.counts
        if kind == 2 and min(changes) > 0:
            return "more", changes
        if kind == 2 and max(changes) < 0:
            return "fewer", tuple(-change for change in changes)
        return None


@st.composite
def pieces(draw: DrawFn) -> Written:
    """A piece of a few rows; most of them fit."""
    sizes = draw(st.integers(1, 3))
    most = draw(st.sampled_from((12, 40, 40, 90)))
    cast_on = tuple(draw(st.integers(2, most)) for _ in range(sizes))
    piece = Written(cast_on, draw(st.booleans()), ())
    rows = Rows(draw, [Hands(piece, size) for size in range(sizes)])
    written: list[WrittenRow | WrittenAgain] = []
    first = 1
    for _ in range(draw(st.integers(3, 9))):
        before = rows.counts
        row = rows.next_row(first, sum(isinstance(one, WrittenRow) for one in written))
        fits = all(worked(hands, written, row) for hands in rows.hands)
        if isinstance(row, WrittenRow):
            first += max(row.times)
            row = replace(row, promise=rows.promise(before, rows.upto(5)) if fits and row.times == (1,) else None)
        written.append(row)
        if not fits or not min(rows.counts) or max(rows.counts) > 200:
            break
    return replace(piece, rows=tuple(written))


def worked(hands: Hands, written: list[WrittenRow | WrittenAgain], row: WrittenRow | WrittenAgain) -> bool:
    """Whether a row, or the last ones once more, can be worked; the needles are as they are behind it."""
    rows = [row] * number(row.times, hands.size) if isinstance(row, WrittenRow) else []
    if isinstance(row, WrittenAgain):
        before = [one for one in written if isinstance(one, WrittenRow) for _ in range(number(one.times, hands.size))]
        rows = before[-row.back :] * number(row.times, hands.size)
    try:
        for one in rows:
            hands.row(one)
    except (Unworkable, Unclear):
        return False
    return True
