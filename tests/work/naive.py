"""In: a piece as the tests' own structures, and a size. Out: it knitted by hand, one stitch after the other.

Written from what the words mean, not from the engine: there are no runs, no multiplied counts and no sums of stitches
here, only loops that are picked up from the left needle and put on the right one.
"""

from collections import Counter
from dataclasses import dataclass, field
from itertools import pairwise

from tests.work.naive_needles import FLIPPED, Loop, Marker, Needles, Unclear, Unworkable
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


@dataclass(slots=True)
class Knitted:
    """What came of a piece: the stitches before and after each line that was worked, and what stopped the work."""

    counts: list[tuple[int, int]] = field(default_factory=list)
    needles: list[tuple[str, list[int]]] = field(default_factory=list)  # the faces behind it, and where the markers are
    stopped: Unworkable | None = None
    unclear: bool = False
    broken: list[int] = field(default_factory=list)  # the lines whose promise was not kept; the cast-on is line 0
    at: int = 0  # the line whose words are worked


class Hands(Needles):
    """A knitter who reads the rows of a piece in one size."""

    def __init__(self, piece: Written, size: int) -> None:
        super().__init__()
        self.size = size
        self.in_the_round = piece.in_the_round
        self.rows = 0
        self.left += [Loop("k") for _ in range(number(piece.cast_on, size))]
        if self.in_the_round:
            self.left.append(Marker())
            self.rings = 1

    # Places

    def goal(self, place: Place) -> int:
        """The loops that are still on the left needle when the place is reached."""
        waiting, before = self.waiting, number(place.before, self.size)
        behind = waiting - self.up_to_marker() if place.marker else 0
        if waiting < behind + before:
            raise Unworkable("few")
        return behind + before

    def up_to_marker(self) -> int:
        """The loops up to the next marker."""
        for place, thing in enumerate(self.left):
            if isinstance(thing, Marker):
                if not place:
                    raise Unclear  # one stands here already
                return place
        raise Unworkable("marker")

    def passed(self, goal: int, before: int) -> bool:
        """Whether the place is reached to the stitch; `before` were waiting when the last stretch to it began."""
        now = self.waiting
        if now < goal or (now == before and now != goal):
            raise Unworkable("repeat", before - goal)
        return now == goal

    # Parts

    def part(self, part: Part) -> None:  # noqa: C901, PLR0912 -- one arm a kind of part
        """Works one part of a row."""
        match part:
            case Some(name, count, yarn):
                for _ in range(number(count, self.size)):
                    self.stitch(name, yarn)
            case Upto(name, place):
                goal = self.goal(place)
                while self.waiting != goal:
                    self.stretch((Some(name),), goal)
            case Again():
                self.again(part)
            case Marking(word):
                self.marking(word)
            case Yarn(name):
                self.yarn = name
            case Off(count):
                self.bind_off(number(count, self.size))
            case On(count):
                for _ in range(number(count, self.size)):
                    self.put("?", self.yarn)
            case Over(slipped):
                for _ in range(slipped):
                    self.move("<", "")
            case Below(opposite):
                while self.waiting:
                    self.as_below(opposite=opposite)

    def as_below(self, *, opposite: bool) -> None:
        """One stitch worked as the one below tells."""
        face = self.pick().face
        self.right.append(Loop(FLIPPED.get(face, face) if opposite else face))
        self.worked[self.yarn] += 1

    def marking(self, word: str) -> None:
        """A marker is placed, slipped or removed."""
        if word == "pm":
            self.right.append(Marker())
            return
        if not self.left or isinstance(self.left[0], Loop):
            raise Unworkable("marker")
        marker = self.left.pop(0)
        self.rings -= 1
        if word == "sm":
            self.right.append(marker)

    def bind_off(self, how_many: int) -> None:
        """So many are worked off; the one that stays on the needle behind them is the first of those told next."""
        for _ in range(how_many):
            self.pick()
            self.worked[self.yarn] += 1

    # Repeats

    def stretch(self, parts: tuple[Part, ...], goal: int) -> bool:
        """A stretch of a repeat up to a place; whether the place is reached now."""
        before = self.waiting
        try:
            for part in parts:
                self.part(part)
        except Unworkable as fault:
            raise (fault if fault.why == "marker" else Unworkable("repeat", before - goal)) from None
        return self.passed(goal, before)

    def again(self, part: Again) -> None:
        """A stretch so many times, or up to a place."""
        if part.times is not None:
            for _ in range(number(part.times, self.size)):
                for one in part.body:
                    self.part(one)
            return
        goal = self.goal(part.place)
        said = part.place != Place()
        if part.ending and not said:
            self.to_ending(part, goal)
            return
        while not self.stretch(part.body, goal):
            pass
        for one in part.ending:  # "rep from * to last 3 sts, end k3": these are the three
            self.part(one)

    def to_ending(self, part: Again, goal: int) -> None:
        """Repeats until what stands behind them, or in place of the end of the last, comes to the place."""
        ending = (*part.body[: -len(part.ending)], *part.ending) if part.instead else part.ending
        done = part.instead
        try:
            while not (done and self.tried(ending, goal)):
                self.stretch(part.body, goal)
                done = True
        except Unworkable as fault:
            raise Unworkable(fault.why) from None  # how many are over depends on what the ending takes

    def tried(self, parts: tuple[Part, ...], goal: int) -> bool:
        """Whether these parts come to the place to the stitch; else nothing has been done."""
        left, right, worked, rings = list(self.left), list(self.right), Counter(self.worked), self.rings
        try:
            for part in parts:
                self.part(part)
        except Unworkable:
            pass
        else:
            if self.waiting == goal:
                return True
        self.left, self.right, self.worked, self.rings = left, right, worked, rings
        return False

    # Rows

    def lying(self) -> tuple[str, list[int]]:
        """The faces of the stitches, the next one first, and the places of the markers."""
        faces, places = "", []
        for thing in self.left:
            if isinstance(thing, Loop):
                faces += thing.face
            else:
                places.append(len(faces))
        return faces, places

    def look_at_side(self, said: str) -> None:
        """What a row says of its side must be so; before the first, it tells how the work is held."""
        wrong = said == "WS"
        if said and not self.rows:
            self.wrong_side = wrong
        elif said and wrong != self.wrong_side:
            raise Unworkable("side")

    def row(self, row: WrittenRow) -> None:
        """One row from its first stitch to its last; then the work is turned, or goes on in the round."""
        for part in row.parts:
            self.part(part)
        if self.waiting:
            raise Unworkable("left", self.waiting)
        self.rings += sum(isinstance(thing, Marker) for thing in self.right)
        self.rows += 1
        self.right += self.left
        if any(isinstance(one, Marker) and isinstance(two, Marker) for one, two in pairwise(self.right)):
            raise Unclear  # two markers side by side: nobody keeps them so
        self.left, self.right = (self.right if self.in_the_round else self.right[::-1]), []
        if not self.in_the_round:
            self.wrong_side = not self.wrong_side


def rows_of(piece: Written, size: int) -> list[tuple[int, list[WrittenRow]]]:
    """The rows to be worked for each line behind the cast-on, with the number of that line."""
    written: list[WrittenRow] = []
    lines: list[tuple[int, list[WrittenRow]]] = []
    for line, row in enumerate(piece.rows, start=1):
        if isinstance(row, WrittenAgain):
            lines.append((line, written[-row.back :] * number(row.times, size)))
        else:
            written += [row] * number(row.times, size)
            lines.append((line, [row] * number(row.times, size)))
    return lines


def knitted(piece: Written, size: int) -> tuple[Hands, Knitted]:
    """The piece worked in one size: the needles as they are at the end, and what came of each line."""
    hands, made = Hands(piece, size), Knitted()
    for line, rows in rows_of(piece, size):
        before, written = hands.waiting, piece.rows[line - 1]
        made.at = line
        try:
            hands.look_at_side(written.side if isinstance(written, WrittenRow) else "")
            for row in rows:
                made.at = piece.rows.index(row) + 1
                hands.row(row)
        except Unclear:
            made.unclear = True
            return hands, made
        except Unworkable as fault:
            made.stopped = fault
            return hands, made
        after = hands.waiting
        made.counts.append((before, after))
        made.needles.append(hands.lying())
        if isinstance(written, WrittenRow) and written.promise and not kept(written.promise, before, after, size):
            made.broken.append(line)
    return hands, made


def kept(promise: tuple[str, Count], before: int, after: int, size: int) -> bool:
    """Whether the count behind a row comes true."""
    kind, count = promise
    said = number(count, size)
    return {"total": after == said, "fewer": before - after == said, "more": after - before == said}[kind]
