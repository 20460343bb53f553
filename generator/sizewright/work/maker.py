"""In: a graded pattern and one size. Out: it worked from the first stitch to the last, as that size reads it."""

from collections import Counter
from collections.abc import Mapping
from typing import assert_never

from sizewright.base.place import Span
from sizewright.grade.graded import Graded
from sizewright.read.notation.direction_tree import (
    Apart,
    BindOffAll,
    CastOn,
    Declared,
    Direction,
    Even,
    Gather,
    Join,
    Meanwhile,
    Promise,
    RepeatRows,
    Row,
    SameAgain,
    Spaced,
    TakeUp,
    TakeYarn,
    Unread,
)
from sizewright.read.notation.tree import Add, Mark, Promised
from sizewright.read.pattern import Heading, WorkBlock
from sizewright.work.arrange import arranged
from sizewright.work.blocks import half_read
from sizewright.work.counts import Counts
from sizewright.work.course import Leg, is_idle
from sizewright.work.faults import NoMarker, NoStitches, NoTurn, NoYarnOver, Stopped, UnevenGraft, WrongCount
from sizewright.work.holders import forgotten, held_as, names_of, off_holders, plain_name
from sizewright.work.made import Made, Step, goes_to_length, label_of
from sizewright.work.needle import Held, Lies, Needle, Pin
from sizewright.work.needle_work import BOR
from sizewright.work.patterns import Patterns
from sizewright.work.row_book import RowBook
from sizewright.work.row_maker import RowMaker
from sizewright.work.sections import Sections
from sizewright.work.tally import Tally


class Maker:
    """Works a pattern in one size (its place in every tuple of values)."""

    def __init__(self, graded: Graded, size: int, blocks: Mapping[str, tuple[Row, ...]]) -> None:
        self.graded = graded
        self.size = size
        self.made = Made()
        self.counts = Counts(graded, size, Patterns(blocks, half_read(graded)))
        self.book = RowBook(graded.pattern, self.counts.patterns, size)
        self.sections = Sections()
        self.tally = Tally(graded.pattern.header, self.made.course)
        self.taken = ""  # the yarn that was taken in the words before these
        self.rows = RowMaker(graded, self.counts, self.book, self.made, self.sections)
        self.needle: Needle | None = None
        self.lost = False  # the count is unknown until stitches are cast on or a promise tells it
        self.unmarked = False  # a faulty row lost the markers: that they are missing is told by it already
        self.piece = self.name = ""
        self.block = -1  # which block of instructions it is, from 0
        self.place: Span | None = None  # of the direction worked last
        self.now: Span | None = None  # of the direction that is worked
        self.begun: Span | None = None  # where the part begins

    def make(self) -> Made:
        """Works the whole pattern."""
        name = self.graded.sizes[self.size] if self.graded.sizes else None
        for piece in self.graded.pattern.body:
            rows = self.needle.rows if self.needle is not None else 0
            if isinstance(piece, Heading):
                self.sections.enter(piece.text, rows)
                self.count_worked()
                self.tally.enter(piece.text, piece.level)
            elif isinstance(piece, WorkBlock):
                self.block += 1
                if piece.sizes is None or name in piece.sizes:
                    self.sections.enter_block(rows)
                    for direction in arranged(piece.directions):
                        self.direction(direction)
        self.count_worked()
        self.close_part()
        self.tally.close()
        self.made.worked.update(self.tally.stitches)
        if self.needle is not None and not self.lost:
            self.made.forgotten.extend(forgotten(self.needle, self.place, self.size))
        return self.made

    def close_part(self) -> None:
        """Notes the rows of the part that ends, and their length."""
        needle, begun = self.needle, self.begun
        if needle is None or begun is None or not needle.rows:
            return
        rows = None if self.lost else needle.rows
        self.made.parts.append(self.rows.part(self.piece, begun, rows))

    def count_worked(self) -> None:
        """Adds the stitches that were worked since."""
        if self.needle is not None:
            self.tally.add(self.needle.worked)
            self.needle.worked = Counter()

    def known_total(self) -> int | None:
        """The stitches on the needles, where they are known."""
        return self.needle.total if self.needle is not None and not self.lost else None

    def direction(self, direction: Direction) -> None:
        """Works one direction; what cannot be worked is a fault, and work goes on behind the next known count."""
        self.now = direction.span
        before, needle = self.known_total(), self.needle
        rows = needle.rows if needle is not None else 0
        try:
            self.one(direction)
        except Stopped as stopped:
            told_already = self.unmarked and isinstance(stopped.fault, NoMarker | NoTurn | NoYarnOver)
            if stopped.fault is not None and not told_already:
                self.made.faults.append(stopped.fault)
            self.lost = True
            if not before and before is not None:
                self.sections.pick_up(rows)
            if self.needle is not None:
                self.needle.lose_track()
            self.made.uncounted.append(direction.span)
            self.resume(direction)
        self.taken = direction.name if isinstance(direction, TakeYarn) else ""
        self.place = direction.span
        worked = self.needle.rows - rows if self.needle is not None and self.needle is needle else 0
        if not isinstance(direction, SameAgain):
            self.go(direction, before, worked)
        label = label_of(direction)
        if label:
            declared = isinstance(direction, Declared)
            after, far, used = self.known_total(), goes_to_length(direction), self.tally.so_far(self.needle)
            self.made.steps.append(Step(self.piece, label, direction.span, before, after, worked, declared, far, used))

    def go(self, direction: Direction, before: int | None, rows: int) -> None:
        """Adds a direction to the course of this size."""
        after, spells = self.known_total(), self.rows.rowing.taken()
        leg = Leg(direction, self.sections.heading, self.block, before, after, rows, spells)
        if not is_idle(leg, untold=direction.span in self.made.uncounted):
            self.made.course.append(leg)

    def resume(self, direction: Direction) -> None:
        """A total promised behind a faulty row tells with how many stitches work goes on."""
        promise: Promise | None = getattr(direction, "promise", None)
        if promise is not None and promise.also is not None and promise.what is not Promised.TOTAL:
            promise = promise.also
        if promise is None or promise.what is not Promised.TOTAL or self.needle is None:
            return
        try:
            self.lay(self.needle, self.counts(promise.count))
        except Stopped:
            return
        self.lost, self.unmarked = False, True
        if isinstance(direction, Join):
            self.needle.join()

    @staticmethod
    def lay(needle: Needle, count: int) -> None:
        """So many plain stitches on the needle, nothing else."""
        needle.left, needle.behind = b"k" * count, b""
        needle.pins = [pin for pin in needle.pins if pin.kind is Lies.BEGINNING and not pin.place]

    def one(self, direction: Direction) -> None:  # noqa: C901 -- one arm a kind of direction
        """Works one direction. Raises `Stopped`."""
        match direction:
            case CastOn():
                self.cast_on(direction)
            case TakeUp():
                self.take_up(direction)
            case Declared():
                self.declare(direction)
            case Unread():
                self.book.gap = True
                raise Stopped(None)
            case Join():
                self.join(self.live(direction), direction)
            case Apart():
                self.rows.apart(self.live(direction), direction)
            case Row() | RepeatRows() | Even() | Spaced() | Meanwhile():
                self.rows.work(self.live(direction), direction)
            case BindOffAll() | Gather():
                self.end(self.live(direction), direction)
            case TakeYarn():
                if self.needle is not None:
                    self.needle.colour = direction.name
            case SameAgain():
                self.same_again(direction)
            case _:
                assert_never(direction)

    def live(self, direction: Direction) -> Needle:
        """The needles with a count that is known. Raises `Stopped`."""
        if self.lost:
            raise Stopped(None)
        if self.needle is None:
            raise Stopped(NoStitches(direction.span, self.size, None, ()))
        return self.needle

    # Beginnings and ends

    def begin(self, looks: bytes, held: list[Held], *, in_the_round: bool | None) -> Needle:
        """A new part, with these stitches on the needle."""
        self.count_worked()
        self.close_part()
        self.begun = self.now
        self.needle = Needle(looks, held=held, in_the_round=in_the_round, colour=self.taken)
        self.name = self.sections.heading
        self.piece = self.sections.heading or self.graded.pattern.header.title
        self.book.turn_page()
        self.sections.begin()
        self.lost = self.unmarked = False
        return self.needle

    def set_aside(self) -> list[Held]:
        """What is on holders when a new part begins; live stitches wait under the name of their part."""
        needle = self.needle
        if needle is None:
            return []
        if not needle.total or self.lost:
            return needle.held
        looks = needle.behind + needle.left
        looks = looks[::-1] if needle.wrong_side else looks
        return [*needle.held, Held(plain_name(self.name), looks, self.place, live=True)]

    def cast_on(self, direction: CastOn) -> None:
        """A new piece; it is worked back over what was cast on last, unless it is joined."""
        needle = self.begin(b"k" * self.counts(direction.count), self.set_aside(), in_the_round=False)
        for action in direction.behind:
            match action:
                case Add():
                    needle.left += b"k" * self.counts(action.count)
                case Mark():
                    needle.pins.append(Pin(needle.total, Lies.MARKER, action.name))
                case _:
                    raise Stopped(None)
        self.tally.begin(cast_on=True)
        self.tally.edge(needle.colour, needle.total)
        needle.reverse()
        self.rows.rowing.judge_promise(needle, direction.promise, "the cast-on", 0)

    def join(self, needle: Needle, direction: Join) -> None:
        """The piece is joined in the round."""
        needle.join()
        if direction.marked:
            needle.pins.append(Pin(needle.total, Lies.MARKER, BOR))
        self.rows.rowing.judge_promise(needle, direction.promise, "the join", needle.total)

    def take_up(self, direction: TakeUp) -> None:
        """Held stitches come back: those of the name and the count that are said, else those held last."""
        held = self.set_aside()
        wanted = self.counts(direction.count) if direction.count is not None else None
        waiting = list(self.needle.held) if self.needle is not None else []
        found = held_as(waiting, direction.name, wanted, nameless=not direction.rejoined)
        if found is None and direction.rejoined and self.needle is not None and self.needle.total:
            return
        if found is None:
            if self.lost:
                raise Stopped(None)
            counts = tuple(len(one.looks) for one in waiting)
            raise Stopped(NoStitches(direction.span, self.size, wanted, counts, direction.name, names_of(waiting)))
        held.remove(found)
        self.begin(found.looks, held, in_the_round=None).taken_up = True
        self.tally.begin(cast_on=False)

    def declare(self, direction: Declared) -> None:
        """What the designer declares is believed, and the ledger says so."""
        if self.needle is None:
            self.begin(b"", [], in_the_round=None)
        if self.needle is not None:
            self.lay(self.needle, self.counts(direction.count))
            rows = self.counts(direction.rows) if direction.rows is not None else None
            self.needle.rows += rows or 0
            self.lost = False
            if rows != 0:
                self.made.uncounted.append(direction.span)

    def end(self, needle: Needle, direction: BindOffAll | Gather) -> None:
        """All stitches leave the needle; two counted sets of them are grafted one to one."""
        sides = direction.sides if isinstance(direction, Gather) else ()
        grafted = [(self.counts(count), words) for count, words in sides]
        said = off_holders(needle.held, grafted) if grafted else needle.total
        if direction.count is not None and needle.total:
            said = self.counts(direction.count)
        if said != needle.total:
            self.made.faults.append(WrongCount(direction.span, self.size, "the last row", "sts", said, needle.total))
        elif len({count for count, _ in grafted}) > 1:
            self.made.faults.append(UnevenGraft(direction.span, self.size, *(count for count, _ in grafted)))
        if isinstance(direction, BindOffAll):
            self.tally.edge(needle.colour, needle.total)
        self.lay(needle, 0)

    def same_again(self, direction: SameAgain) -> None:
        """A part is made again; its stitches and directions are counted again, and nothing else changes."""
        self.count_worked()
        self.go(direction, self.known_total(), 0)
        times = self.counts(direction.times) - (1 if direction.total else 0)
        self.tally.same(direction.part, max(0, times))
