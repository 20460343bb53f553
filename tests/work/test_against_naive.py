"""In: generated pieces, some with a fault planted. Out: the engine and the naive knitter agree on every one of them.

They share nothing but the words: the engine reads the text, the knitter works the structure the text was printed from.
"""

from collections import Counter

from hypothesis import HealthCheck, example, given, settings
from tests.work.naive import Knitted, knitted
from tests.work.naive_faults import faulty
from tests.work.naive_rows import pieces
from tests.work.naive_words import Again, Marking, Off, Part, Place, Some, Upto, Written, WrittenAgain, WrittenRow

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.read.notation.direction_tree import Direction
from sizewright.work.faults import BrokenRepeat, Fault, LeftOver, NoMarker, TooFew, WrongCount, WrongSide
from sizewright.work.maker import Maker

EXAMPLES = 320  # of each kind; together over three thousand rows, in up to three sizes
PROFILE = settings(derandomize=True, max_examples=EXAMPLES, deadline=None, suppress_health_check=list(HealthCheck))
FIRST = 6  # the line of the cast-on in the source
KINDS: dict[str, tuple[type[Fault], ...]] = {
    "few": (TooFew, BrokenRepeat),
    "repeat": (BrokenRepeat, TooFew),
    "left": (LeftOver,),
    "marker": (NoMarker,),
    "side": (WrongSide,),
}
KNIT_FACES = b"kKi/\\^cs"
PURL_FACES = b"pPIdDvS"


class Watched(Maker):
    """The engine, with what lies on the needle behind each line."""

    needles: dict[int, tuple[bytes, list[int]]]

    def direction(self, direction: Direction) -> None:
        super().direction(direction)
        assert self.needle is not None
        self.needles[direction.span.line - FIRST] = self.needle.left, list(self.needle.markers)


def makers(piece: Written) -> list[Watched]:
    """The engine's account of a piece, in every size."""
    sizes = ", ".join(f"S{size}: {{}}" for size in range(len(piece.cast_on)))
    lines = "\n".join(piece.lines)
    head = f"---\ntitle: A\nsizes: {{{sizes}}}\n---\n"
    project = read_text(f"{head}```work\n{lines}\n```\n", "a.md")
    assert project.findings == (), lines
    graded = grade(project.patterns[0])
    made = [Watched(graded, size, {}) for size in range(len(piece.cast_on))]
    for maker in made:
        maker.needles = {}
        maker.make()
    return made


def face(look: int) -> str:
    """The face of a stitch of the engine, as the naive knitter names it."""
    return "k" if look in KNIT_FACES else "p" if look in PURL_FACES else "?"


def same(piece: Written) -> None:
    """Both accounts of a piece agree, in every size."""
    for size, maker in enumerate(makers(piece)):
        hands, made = knitted(piece, size)
        said = "\n".join((*piece.lines, f"size {size}", str(maker.made.faults)))
        same_counts(maker, made, said)
        same_needles(maker, made, said)
        if made.unclear:
            continue
        promised = [fault for fault in maker.made.faults if isinstance(fault, WrongCount)]
        stopped = [fault for fault in maker.made.faults if not isinstance(fault, WrongCount)]
        lines = [fault.span.line - FIRST for fault in promised if fault.span.line - FIRST <= len(made.counts)]
        assert lines == made.broken, said
        assert bool(stopped) == (made.stopped is not None), said
        if made.stopped is not None:
            same_fault(stopped[0], made, said)
        else:
            worked = Counter({"": piece.cast_on[size]})  # the naive knitter begins behind the cast-on
            worked.update(hands.worked)
            assert +maker.made.worked == +worked, f"{said}\n{maker.made.worked} {worked}"


def same_counts(maker: Watched, made: Knitted, said: str) -> None:
    """The stitches before and after each line that could be worked."""
    by_line: dict[int, list[tuple[int | None, int | None]]] = {}
    for step in maker.made.steps:
        by_line.setdefault(step.span.line - FIRST, []).append((step.before, step.after))
    for line, counts in enumerate(made.counts, start=1):
        assert (by_line[line][0][0], by_line[line][-1][1]) == counts, said


def same_fault(fault: Fault, made: Knitted, said: str) -> None:
    """The line that stopped the work, what is wrong with it, and by how many stitches."""
    assert made.stopped is not None
    assert fault.span.line - FIRST == made.at, said
    assert isinstance(fault, KINDS[made.stopped.why]), f"{said}\n{made.stopped.why}"
    match fault:
        case LeftOver():
            assert fault.left == made.stopped.over, said
        case BrokenRepeat() if made.stopped.over is not None and fault.available >= fault.uses > 0:
            assert fault.over == made.stopped.over, f"{said}\n{made.stopped.over}"


def same_needles(maker: Watched, made: Knitted, said: str) -> None:
    """How every stitch looks from the right side behind each line, and where the markers are."""
    for line, (faces, places) in enumerate(made.needles, start=1):
        left, markers = maker.needles[line]
        assert len(left) == len(faces), said
        for look, seen in zip(left, faces, strict=True):
            assert face(look) == seen or "?" in (face(look), seen), f"{said}\n{line} {left!r}\n{faces}"
        assert markers == places, f"{said}\n{line} {markers} {places}"


def rounds(cast_on: int, *rows: tuple[Part, ...]) -> Written:
    """A piece of these rounds, one size."""
    written = tuple(WrittenRow(number, parts) for number, parts in enumerate(rows, start=1))
    return Written((cast_on,), in_the_round=True, rows=written)


TO_END = Upto("k", Place())
ALIKE = Written(
    cast_on=(12, 12),
    in_the_round=False,
    rows=(
        WrittenRow(1, (Some("k2tog"), TO_END)),
        WrittenRow(2, (TO_END,), times=(2, 3)),
        WrittenAgain(2, (1,)),
    ),
)
MARKED = (Some("k", (4,)), Marking("pm"), TO_END)


# What is met too seldom by chance: a marker among decreases and among stitches bound off, the last of many rows alike.
@PROFILE
@example(piece=rounds(12, MARKED, (Upto("k2tog", Place()),)))
@example(piece=rounds(12, MARKED, (Off((6,)), TO_END)))
@example(piece=ALIKE)
@given(piece=pieces())
def test_rows_that_fit(piece: Written) -> None:
    same(piece)


# A repeat that is worked not once.
@PROFILE
@example(piece=rounds(4, (Again((Some("k", (2,)), Some("p", (2,))), None, Place((4,))), Some("k", (4,)))))
@given(piece=faulty())
def test_rows_with_a_fault_planted(piece: Written) -> None:
    same(piece)
