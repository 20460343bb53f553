"""In: an adaptation carried out. Out: what its departures change in counts, rows and yarn, each alone and all together.

Nothing is told by hand: base, base with one departure, and adaptation are worked, and their ledgers compared.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from sizewright.base.units import Dimension
from sizewright.grade.graded import Named
from sizewright.grade.run import grade
from sizewright.read.departure import Departure, Part
from sizewright.read.pattern import Adaptation, Heading, Pattern
from sizewright.work.run import work
from sizewright.work.worked import Entry, Worked
from sizewright.work.yarn_need import Amount

Key = tuple[str, str, int]


@dataclass(frozen=True, slots=True)
class Before:
    """A number by size in the base and here, None where there is none; `section` is that of a count of a direction."""

    name: str
    before: tuple[Fraction | None, ...]
    after: tuple[Fraction | None, ...]
    section: str = ""

    @property
    def moved(self) -> tuple[Fraction, ...]:
        """How much more it is here, by size; what only one of the two has counts from nothing."""
        return tuple(
            (new or Fraction(0)) - (old or Fraction(0)) for old, new in zip(self.before, self.after, strict=True)
        )

    @property
    def differs(self) -> bool:
        """Whether it is another in any size."""
        return self.before != self.after


@dataclass(frozen=True, slots=True)
class Quantity:
    """A quantity of the grade blocks that has other values, or that only one of the two has."""

    dimension: Dimension
    values: Before


@dataclass(frozen=True, slots=True)
class Effect:
    """What differs between two patterns: the rows worked, the stitches worked, each yarn in g or else in cm.

    `counts` are the stitches behind directions that both have. Without their reserve, yarns are what the stitches take.
    """

    rows: Before
    stitches: Before
    masses: tuple[Before, ...]
    lengths: tuple[Before, ...]
    counts: tuple[Before, ...]
    quantities: tuple[Quantity, ...]

    @property
    def idle(self) -> bool:
        """Whether no row, stitch or yarn is another."""
        return not any(one.differs for one in (self.rows, self.stitches, *self.masses, *self.lengths, *self.counts))


@dataclass(frozen=True, slots=True)
class Departed:
    """A departure, what it changes alone (None where it does not stand alone), and where it is met first.

    `first` is the direction it begins at, None where none is touched; `section` is the heading above it, "" where there
    is none, and `rows` by size the row from 1 that it begins with, counted in its piece from that heading on.
    `own` are the rows worked in its own lines, beside those worked in the lines of the base that they stand for.
    """

    departure: Departure
    alone: Effect | None
    first: Entry | None
    section: str
    rows: tuple[int, ...]
    own: Before


@dataclass(frozen=True, slots=True)
class Comparison:
    """An adaptation beside its base."""

    adapts: Adaptation
    whole: Effect
    departed: tuple[Departed, ...]


@lru_cache(maxsize=8)
def compared(worked: Worked) -> Comparison | None:
    """What an adaptation changes; None for a pattern that is none. Kept for the next page that asks."""
    adapts = worked.graded.pattern.adapts
    if adapts is None:
        return None
    base = work(grade(adapts.base))
    whole = _effect(base, worked)
    departed = tuple(
        _departed(one, _alone(adapts, place, worked, base), worked, base) for place, one in enumerate(adapts.departures)
    )
    return Comparison(adapts, whole, departed)


def _alone(adapts: Adaptation, place: int, worked: Worked, base: Worked) -> Worked | None:
    """The base with one departure, worked; None where that can be worked only with the others."""
    pattern: Pattern | None = adapts.alone[place] if adapts.alone else None
    if len(adapts.departures) == 1 or pattern is None or pattern is adapts.base:
        return worked if len(adapts.departures) == 1 else base if pattern is not None else None
    graded = grade(pattern)
    if graded.findings:
        return None
    found = work(graded)
    return None if len(found.faults) > len(base.faults) else found


def _departed(departure: Departure, alone: Worked | None, worked: Worked, base: Worked) -> Departed:
    first = next((one for one in worked.entries if departure.first <= one.span.line < departure.end), None)
    if first is None and departure.called.part in (Part.QUANTITY, Part.KEY) and alone is not None:
        first = _first_other(alone, worked, base)
    effect = _effect(base, alone) if alone is not None else None
    own = Before("rows", _rows_at(base, *_replaced(departure)), _rows_at(worked, departure.first, departure.end))
    if first is None:
        return Departed(departure, effect, None, "", (), own)
    heading = _heading(worked, first)
    before = [
        one
        for one in worked.entries[: worked.entries.index(first)]
        if one.piece == first.piece and _heading(worked, one) == heading
    ]
    rows = tuple(1 + sum(one.rows[size] for one in before) for size in range(len(first.rows)))
    return Departed(departure, effect, first, heading.text if heading else "", rows, own)


def _heading(worked: Worked, entry: Entry) -> Heading | None:
    """The heading above a direction; its piece is named by that above its cast-on, which may be another."""
    headings = (piece for piece in worked.graded.pattern.body if isinstance(piece, Heading))
    above = [heading for heading in headings if heading.span.line < entry.span.line]
    return above[-1] if above else None


def _first_other(alone: Worked, worked: Worked, base: Worked) -> Entry | None:
    """The first direction of the adaptation that a departure alone makes another, in its rows or its stitches."""
    there, here = dict(_keyed(base.entries)), dict(_keyed(worked.entries))
    for key, entry in _keyed(alone.entries):
        other = there.get(key)
        if key in here and (other is None or (other.before, other.after, other.rows) != _counted(entry)):
            return here[key]
    return None


def _counted(entry: Entry) -> tuple[tuple[int | None, ...], tuple[int | None, ...], tuple[int, ...]]:
    return entry.before, entry.after, entry.rows


def _replaced(departure: Departure) -> tuple[int, int]:
    """The lines of the base that a departure stands for, end exclusive."""
    first = departure.place.line if departure.place else 0
    return first, first + (departure.stood.count("\n") + 1 if departure.stood else 0)


def _rows_at(worked: Worked, first: int, end: int) -> tuple[Fraction, ...]:
    within = [one for one in worked.entries if first <= one.span.line < end]
    return tuple(Fraction(sum(one.rows[size] for one in within)) for size in range(max(1, len(worked.graded.sizes))))


def _effect(base: Worked, here: Worked) -> Effect:
    sizes = range(max(1, len(base.graded.sizes)))
    masses = tuple(_yarns(base, here, lambda amount: amount.mass))
    known = {one.name for one in masses}
    return Effect(
        Before("rows", _rows(base, sizes), _rows(here, sizes)),
        Before("stitches", _stitches(base, sizes), _stitches(here, sizes)),
        masses,
        tuple(one for one in _yarns(base, here, lambda amount: amount.length) if one.name not in known),
        tuple(_counts(base, here)),
        tuple(_quantities(base, here)),
    )


def _rows(worked: Worked, sizes: Sequence[int]) -> tuple[Fraction, ...]:
    return tuple(Fraction(sum(one.rows[size] for one in worked.entries)) for size in sizes)


def _stitches(worked: Worked, sizes: Sequence[int]) -> tuple[Fraction, ...]:
    return tuple(Fraction(sum(counts[size] for counts in worked.stitches.values())) for size in sizes)


def _yarns(base: Worked, here: Worked, measure: Callable[[Amount], Fraction | None]) -> Iterator[Before]:
    """Each yarn by its name, where all sizes of both tell what they take of it; one that only one has is none there."""
    old, new = ({need.yarn.name: need for need in one.yarns} for one in (base, here))
    nothing = (Fraction(0),) * max(1, len(base.graded.sizes))
    for name in dict.fromkeys((*old, *new)):
        before, after = (tuple(map(measure, one[name].worked)) if name in one else nothing for one in (old, new))
        if before and after and None not in (*before, *after):
            yield Before(name, before, after)


def _counts(base: Worked, here: Worked) -> Iterator[Before]:
    there = dict(_keyed(base.entries))
    for key, entry in _keyed(here.entries):
        other = there.get(key)
        if other is not None and other.after != entry.after:
            before, after = (tuple(None if one is None else Fraction(one) for one in e.after) for e in (other, entry))
            heading = _heading(here, entry)
            yield Before(entry.label, before, after, heading.text if heading else entry.piece)


def _keyed(entries: Sequence[Entry]) -> Iterator[tuple[Key, Entry]]:
    """Directions by where they really stand, those of one sentence by their order."""
    times = Counter[tuple[str, str]]()
    for entry in entries:
        place = (str(entry.span.shown), entry.label)
        yield (*place, times[place]), entry
        times[place] += 1


def _quantities(base: Worked, here: Worked) -> Iterator[Quantity]:
    """Those of the grade blocks that differ, in the order the adaptation works them out."""
    old, new = _defined(base), _defined(here)
    nothing = (None,) * max(1, len(base.graded.sizes))
    for name in dict.fromkeys((*new, *old)):
        before, after = (one[name].result.values if name in one else nothing for one in (old, new))
        if before != after:
            yield Quantity((new.get(name) or old[name]).result.dimension, Before(name, before, after))


def _defined(worked: Worked) -> Mapping[str, Named]:
    return {name: named for name, named in worked.graded.quantities.items() if named.formula is not None}
