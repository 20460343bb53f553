"""In: the needles before a row. Out: stitches taken and given, places and markers found, the work turned."""

from collections import Counter

from sizewright.base.place import Span
from sizewright.read.notation.tree import Landmark, Mark, Marking, Place
from sizewright.work.counts import Counts
from sizewright.work.faults import BrokenRepeat, NoMarker, Stopped, TooFew
from sizewright.work.needle import FLIP, Needle


class NeedleWork:
    """The needles while one row is worked in one size. `label` names the row in faults."""

    def __init__(self, needle: Needle, counts: Counts, label: str, span: Span) -> None:
        self.needle = needle
        self.counts = counts
        self.label = label
        self.span = span
        self.before = needle.total
        self.at = 0
        self.right = bytearray()
        self.start = len(needle.behind)
        self.left_markers = list(needle.markers)
        self.right_markers: list[int] = []
        self.turned = False
        self.worked: Counter[str] = Counter()
        self.colour = needle.colour

    @property
    def remaining(self) -> int:
        """The stitches not worked yet."""
        return len(self.needle.left) - self.at

    def finish(self) -> None:
        """Turns the work, or goes on in the round."""
        needle = self.needle
        needle.gaps.pop(needle.wrong_side, None)
        if self.turned and self.remaining:
            needle.gaps[needle.wrong_side] = self.remaining
        markers = sorted({*self.right_markers, *(self._mapped(place) for place in self.left_markers)})
        if needle.in_the_round and not self.turned:
            needle.left = bytes(self.right)
            needle.markers = markers
        else:
            right = needle.behind + bytes(self.right)
            needle.left = needle.left[self.at :]
            needle.turn(right, [place + self.start for place in markers if place <= len(self.right)])
        needle.rows += 1
        needle.colour = self.colour
        needle.worked.update(self.worked)

    def _mapped(self, place: int) -> int:
        """Where a marker nobody touched lies on the right needle."""
        return len(self.right) + max(0, place - self.at)

    def take(self, span: Span, count: int, uses: int = 1, makes: int = 1) -> None:
        """Stitches leave the left needle; markers passed on the way are slipped.

        They are worked in lots of `uses`, each of which will be `makes` on the right needle, so that a marker keeps its
        place between two lots. One within a lot comes to lie before it.
        """
        if count > self.remaining:
            raise Stopped(TooFew(span, self.counts.size, self.label, count, self.remaining, self.before))
        end = self.at + count
        if count and self.left_markers and self.left_markers[0] < end:
            for place in [place for place in self.left_markers if place < end]:
                self.right_markers.append(len(self.right) + (place - self.at) // uses * makes)
                self.left_markers.remove(place)
        self.at = end

    def give(self, looks: bytes) -> None:
        """Stitches come onto the right needle, looking so from the right side."""
        self.right += looks

    def worked_looks(self, looks: bytes) -> bytes:
        """The looks of stitches worked now, as seen from the right side."""
        return looks.translate(FLIP) if self.needle.wrong_side else looks

    def distance(self, place: Place, span: Span, reserve: int = 0) -> int:
        """The stitches from here to a place."""
        before = reserve + (self.counts(place.before) if place.before is not None else 0)
        reach = self.remaining
        if place.landmark is Landmark.MARKER:
            ahead = next((marker for marker in self.left_markers if marker > self.at), None)
            if ahead is None:
                raise Stopped(NoMarker(span, self.counts.size, self.label))
            reach = ahead - self.at
        elif place.landmark is Landmark.GAP:
            behind = self.needle.gaps.get(self.needle.wrong_side)
            if behind is None or behind > reach:
                raise Stopped(NoMarker(span, self.counts.size, self.label, "gap"))
            reach -= behind
        if reach < before:
            raise Stopped(TooFew(span, self.counts.size, self.label, before, reach, self.before))
        return reach - before

    def mark(self, action: Mark) -> None:
        """A marker is placed, slipped or removed."""
        if action.what is Marking.PLACE:
            self.right_markers.append(len(self.right))
            return
        if self.at not in self.left_markers:
            raise Stopped(NoMarker(action.span, self.counts.size, self.label))
        self.left_markers.remove(self.at)
        if action.what is Marking.SLIP:
            self.right_markers.append(len(self.right))

    def broken(self, span: Span, available: int, uses: int, over: int) -> BrokenRepeat:
        """The fault of a repeat that does not come out, with the counts next to this one with which it would."""
        least = self.before - available + uses
        near = (self.before - over, self.before - over + uses) if uses else ()
        fitting = tuple(dict.fromkeys(max(count, least) for count in near))
        return BrokenRepeat(span, self.counts.size, self.label, available, uses, over, self.before, fitting)
