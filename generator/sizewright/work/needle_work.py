"""In: the needles before a row. Out: stitches taken and given, places and markers found, the work turned."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from typing import TypeVar

from sizewright.base.place import Span
from sizewright.read.notation.tree import Landmark, Mark, Marking, Place, Turning
from sizewright.work.counts import MOST, Counts
from sizewright.work.faults import (
    BrokenRepeat,
    DoubledMarker,
    Fault,
    NoCount,
    NoMarker,
    NoTurn,
    Stopped,
    TooFew,
    WrongCount,
)
from sizewright.work.needle import FLIP, GAPS, Lies, Needle, Pin, reversed_pins

_LAST = "last"
BOR = "bor"  # the marker at the beginning of the round
_TURNS = {Turning.PLAIN: Lies.TURN, Turning.WRAP: Lies.WRAPPED, Turning.DOUBLE: Lies.DOUBLE}
_LANDMARKS = {Landmark.TURN: GAPS, Landmark.WRAPPED: (Lies.WRAPPED,), Landmark.DOUBLE: (Lies.DOUBLE,)}

_Item = TypeVar("_Item", bytes, list[str])


class NeedleWork:
    """The needles while one row is worked in one size. `label` names the row in faults.

    `ahead` are the pins not reached yet, `passed` those that lie behind; places count from the first stitch that lies
    behind the needle's tip, before the row in `ahead` and as it will be in `passed`.
    """

    def __init__(self, needle: Needle, counts: Counts, label: str, span: Span) -> None:
        self.beside = not label  # words without a label may pick up stitches beside live ones, which stay as they are
        self.needle = needle
        self.counts = counts
        self.label = label or "this row"
        self.span = span
        self.before = needle.total
        self.at = 0
        self.right = bytearray()
        self.lot = 0  # where on the right needle it begins what was worked since the last binding off
        self.start = len(needle.behind)
        self.passed = [pin for pin in needle.pins if self._lies_behind(pin)]
        self.ahead = [pin for pin in needle.pins if not self._lies_behind(pin)]
        self.told: list[Fault] = []  # what is wrong and does not keep the row from being worked
        self.turned: Turning | None = None
        self.shifted = False  # the round begins somewhere else from here on
        self.idle = True  # nothing is worked: stitches are put on a holder, markers placed
        self.worked: Counter[str] = Counter()
        self.colour = needle.colour
        self.limit: int | None = None  # where a panel ends, which is as far as its row reaches
        self.inside: tuple[str, ...] = ()  # the stitch patterns whose panels the work is in
        self.panels: dict[str, int] = {}  # the rows of panels that come next, after this row

    def _lies_behind(self, pin: Pin) -> bool:
        return pin.place < self.start or (pin.place == self.start and pin.kind is not Lies.MARKER)

    @property
    def here(self) -> int:
        """The place the work has come to, as places ahead are counted."""
        return self.start + self.at

    @property
    def done(self) -> int:
        """The place the work has come to, as places passed are counted."""
        return self.start + len(self.right)

    @property
    def end(self) -> int:
        """The place where the row ends if it is not turned before: the edge, or the beginning of the round."""
        if self.limit is not None:
            return self.limit
        beginning = next((pin.place for pin in self.ahead if pin.kind is Lies.BEGINNING), None)
        return self.start + len(self.needle.left) if beginning is None else beginning

    @property
    def remaining(self) -> int:
        """The stitches not worked yet."""
        return self.end - self.here

    # The end of the row

    def finish(self) -> None:
        """Turns the work, or goes on in the round."""
        needle, made = self.needle, len(self.right)
        rest = needle.left[self.at :]
        ahead = [replace(pin, place=pin.place - self.at + made) for pin in self.ahead]
        if self.idle and not self.shifted and self.turned is None:
            needle.left, needle.pins = rest, _sorted([*self.passed, *ahead])
            return
        parted = needle.in_the_round and self.turned is not None and not rest and not needle.turned_back
        if needle.in_the_round and needle.wrong_side and self.turned is None:
            self.turned = Turning.PLAIN  # a round worked back ends where it began, and is turned there
        elif self.turned is not None:
            self.passed.append(Pin(self.done, _TURNS[self.turned], beyond=self.turned is Turning.WRAP))
        pins, total = [*self.passed, *ahead], self.start + made + len(rest)
        if self.turned is not None or not needle.in_the_round:
            pins = reversed_pins(pins, total)
        if needle.in_the_round:
            pins = _rotated(pins, made if self.turned is None else len(rest), total)
        needle.left, needle.behind = self.arranged(needle.behind, bytes(self.right), rest)
        needle.pins = _sorted(pins)
        self._count(needle)
        if self.turned is Turning.DOUBLE:
            self._double(needle)
        if parted:
            needle.part()

    def lay_beside(self) -> None:
        """What was picked up lies beside the live stitches, where the last row or round ended; those are not worked."""
        needle, made = self.needle, len(self.right)
        new = [pin for pin in self.passed if pin not in needle.pins]
        if needle.in_the_round:
            needle.left += bytes(self.right)
            pins = [replace(pin, place=self.before + pin.place) for pin in new]
            needle.pins = _sorted([*needle.pins, *pins])
        else:
            needle.left = bytes(self.right)[::-1] + needle.left
            pins = [replace(pin, place=made - pin.place) for pin in new]
            needle.pins = _sorted([*pins, *(replace(pin, place=pin.place + made) for pin in needle.pins)])
        needle.colour = self.colour
        needle.worked.update(self.worked)

    def arranged(self, behind: _Item, made: _Item, rest: _Item) -> tuple[_Item, _Item]:
        """What is worked next and what lies behind, after this row: its stitches, or what stands for them."""
        if not self.needle.in_the_round:
            return (behind + made)[::-1], rest[::-1]
        if self.turned is None:
            return rest + made, rest[:0]
        return made[::-1] + rest[::-1], rest[:0]

    def _count(self, needle: Needle) -> None:
        if self.turned is not None or not needle.in_the_round:
            needle.wrong_side = not needle.wrong_side
        needle.rows += 0 if self.shifted else 1
        needle.colour = self.colour
        needle.worked.update(self.worked)
        needle.panels = {**needle.panels, **self.panels}

    @staticmethod
    def _double(needle: Needle) -> None:
        """The first stitch behind the turn is slipped and doubled."""
        if not needle.left:
            return
        if not needle.in_the_round:
            needle.behind, needle.left = needle.behind + needle.left[:1], needle.left[1:]
            return
        needle.left = needle.left[1:] + needle.left[:1]
        needle.pins = _sorted(_rotated(needle.pins, 1, needle.total))

    def take(self, span: Span, count: int, uses: int = 1, makes: int = 1) -> None:
        """Stitches leave the left needle; markers passed on the way are slipped, gaps closed.

        They are worked in lots of `uses`, each of which will be `makes` on the right needle, so that a marker keeps its
        place between two lots. One within a lot comes to lie before it.
        """
        past = self.needle.turned_back and self.limit is None
        if count > len(self.needle.left) - self.at or (count > self.remaining and not past):
            raise Stopped(TooFew(span, self.counts.size, self.label, count, self.remaining, self.before))
        end = self.here + count
        if count and self.ahead and self.ahead[0].place < end:
            for pin in [pin for pin in self.ahead if pin.place < end]:
                self.ahead.remove(pin)
                if pin.kind not in GAPS:
                    place = self.done + (pin.place - self.here) // uses * makes
                    self.passed.append(replace(pin, place=place))
        self.at += count

    def give(self, looks: bytes, times: int = 1) -> None:
        """Stitches come onto the right needle, looking so from the right side. Raises `Stopped` for too many."""
        total = len(self.right) + len(looks) * times
        if total > MOST:
            raise Stopped(NoCount(self.span, self.counts.size, f"{total} sts", too_many=True))
        self.right += looks * times

    def worked_looks(self, looks: bytes) -> bytes:
        """The looks of stitches worked now, as seen from the right side."""
        return looks.translate(FLIP) if self.needle.wrong_side else looks

    # Places and markers

    def distance(self, place: Place, span: Span, reserve: int = 0) -> int:
        """The stitches from here to a place."""
        before = reserve + (self.counts(place.before) if place.before is not None else 0)
        match place.landmark:
            case Landmark.END:
                reach = self.remaining
            case Landmark.MARKER:
                reach = self._to_marker(place.name, span)
            case Landmark.TURN | Landmark.WRAPPED | Landmark.DOUBLE:
                reach = self._to_gap(place, span)
            case Landmark.WORKED:
                reach = self._to_worked(place, span)
        if reach < before:
            raise Stopped(TooFew(span, self.counts.size, self.label, before, reach, self.before))
        return reach - before

    def _to_marker(self, name: str, span: Span) -> int:
        markers = [pin for pin in self.ahead if pin.kind is Lies.MARKER]
        coming = [pin for pin in markers if pin.place > self.here]
        found = next((pin for pin in coming if name in ("", pin.name)), None) or _last(coming, name)
        if found is None:
            raise Stopped(NoMarker(span, self.counts.size, self.label, name, tuple(pin.name for pin in markers)))
        return found.place - self.here

    def _to_worked(self, place: Place, span: Span) -> int:
        """Until so many stitches lie on the right needle, the one left by binding off among them."""
        wanted = self.counts(place.past) if place.past is not None else 0
        if wanted < self.done:
            raise Stopped(WrongCount(span, self.counts.size, self.label, "sts", wanted, self.done))
        return wanted - self.done

    def _to_gap(self, place: Place, span: Span) -> int:
        """To the nearest turn ahead, or to the stitch beside it that was wrapped or doubled, or past it."""
        kinds = _LANDMARKS[place.landmark]
        found = next((pin for pin in self.ahead if pin.kind in kinds and pin.place > self.here), None)
        if found is None:
            raise Stopped(NoTurn(span, self.counts.size, self.label, place.landmark.value))
        reach = found.place - self.here
        stitch = place.landmark is not Landmark.TURN
        if stitch and not found.beyond:
            reach -= 1
        if place.past is not None:
            reach += self.counts(place.past) + (1 if stitch else 0)
        return reach

    def mark(self, action: Mark) -> None:
        """A marker is placed, slipped or removed."""
        if action.what is Marking.PLACE:
            self._place(action)
            return
        if action.what is Marking.CLEAR:
            self._clear(action)
            return
        here = [pin for pin in self.ahead if pin.kind is Lies.MARKER and self._is_here(pin)]
        found = next((pin for pin in here if action.name in ("", pin.name)), None) or _last(here, action.name)
        if found is None:
            known = tuple(pin.name for pin in self.needle.pins if pin.kind is Lies.MARKER)
            raise Stopped(NoMarker(action.span, self.counts.size, self.label, action.name, known))
        self.ahead.remove(found)
        if action.what is Marking.SLIP:
            self.passed.append(replace(found, place=self.done))

    def _clear(self, action: Mark) -> None:
        """All markers that were passed in this row are gone, but the one at the beginning of the round."""
        passed = [pin for pin in self.passed if pin.kind is Lies.MARKER and pin.name != BOR and pin.place >= self.start]
        if not passed:
            raise Stopped(NoMarker(action.span, self.counts.size, self.label))
        self.passed = [pin for pin in self.passed if pin not in passed]

    def _is_here(self, pin: Pin) -> bool:
        """In the round the marker at the beginning is met before the first stitch and behind the last."""
        around = self.needle.in_the_round and not self.at and pin.place == self.start + len(self.needle.left)
        return pin.place == self.here or bool(around)

    def _place(self, action: Mark) -> None:
        again = (pin for pin in self.ahead if pin.said == action.span and self._is_here(pin))
        if action.name != BOR and any(pin.kind is Lies.MARKER for pin in again):
            fault = DoubledMarker(action.span, self.counts.size, self.label, action.name, self.done)
            self.told.append(fault)
        self.passed.append(Pin(self.done, Lies.MARKER, action.name, said=action.span))
        if action.name == BOR and self.needle.in_the_round:
            self.passed = [pin for pin in self.passed if pin.kind is not Lies.BEGINNING]
            self.ahead = [pin for pin in self.ahead if pin.kind is not Lies.BEGINNING]
            self.passed.append(Pin(self.done, Lies.BEGINNING))
            self.shifted = self.at < len(self.needle.left)

    def broken(self, span: Span, available: int, uses: int, over: int) -> BrokenRepeat:
        """The fault of a repeat that does not come out, with the counts next to this one with which it would."""
        least = self.before - available + uses
        near = (self.before - over, self.before - over + uses) if uses else ()
        fitting = tuple(dict.fromkeys(max(count, least) for count in near))
        return BrokenRepeat(span, self.counts.size, self.label, available, uses, over, self.before, fitting)


def _last(pins: Sequence[Pin], name: str) -> Pin | None:
    """The last of some markers, beside the one at the beginning of the round, where it is called so."""
    return next((pin for pin in reversed(pins) if pin.name != BOR), None) if name == _LAST else None


def _sorted(pins: Sequence[Pin]) -> list[Pin]:
    return sorted(set(pins), key=lambda pin: (pin.place, pin.kind.value, pin.name))


def _rotated(pins: Sequence[Pin], by: int, total: int) -> list[Pin]:
    """The places of a round seen from so many stitches further on.

    Its first place is its last one too: a marker that comes to lie there is met at the end of the round.
    """
    if by % max(total, 1) == 0:
        return [replace(pin, place=0) if pin.kind is Lies.BEGINNING else pin for pin in pins]
    places = [(pin, (pin.place - by) % total if total else 0) for pin in pins]
    return [replace(pin, place=total if not place and pin.kind is Lies.MARKER else place) for pin, place in places]
