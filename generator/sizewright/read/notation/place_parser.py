"""In: the tokens of a row. Out: how often and how far: "3 times", "to end", "to last 3 sts", "to marker"."""

from sizewright.read.notation.cursor import ROW_WORDS, Cursor
from sizewright.read.notation.tree import Count, Landmark, Place

_TIMES = {"once": 1, "twice": 2, "thrice": 3}
_MARKERS = ("m", "marker", "markers")
_GAPS = (("gap",), ("turning", "gap"), ("last", "gap"), ("last", "turn"), ("turning", "point"))


class PlaceParser(Cursor):
    """Reads extents and places."""

    def times(self) -> Count | None:
        """ "3 times", "twice", "3x", "x 3"."""
        start = self.position
        if self.at(*_TIMES):
            token = self.step()
            return Count(token.span, _TIMES[token.text])
        if self.number_ahead() and self.peek(1) in ("times", "time", "x", "×", "more"):
            count = self.count()
            self.skip("times", "time", "x", "×")
            return count
        if self.at("x", "×") and self.peek(1) == "#":
            self.step()
            return self.count()
        self.position = start
        return None

    def extent(self, *, more: bool) -> tuple[Count | None, bool, Place | None]:
        """How far a repeat goes: times, whether they come on top of the first, or a place.

        `more` says that "rep from * 3 times" means three more than the one before it, as the trade has it.
        """
        times = self.times()
        if times is not None:
            self.skip("more", "times", "time")
            return times, more, None
        return None, False, self.place()

    def place(self) -> Place | None:
        """ "to end", "around", "to last 3 sts", "to marker", "to gap", "until 1 st remains"."""
        start = self.position
        if self.at("around", "across"):
            self.step()
            self._row_end()
            return Place(Landmark.END)
        if not self.at("to", "until", "till", "up"):
            return None
        self.skip("to", "until", "till", "up", "the", "but")
        found = self._landmark()
        if found is None:
            self.position = start
        return found

    def _landmark(self) -> Place | None:
        if self.at("end", "ends"):
            self.step()
            self._row_end()
            return Place(Landmark.END)
        if self.phrase(_GAPS) is not None:
            return Place(Landmark.GAP)
        if self.at("last"):
            self.step()
            before = self.count() if self.number_ahead() else self.one()
            self.stitch_words()
            return Place(Landmark.END, before)
        if self.at("next") and self.peek(1) in _MARKERS:
            self.step()
        if self.at(*_MARKERS):
            self.step()
            return Place(Landmark.MARKER)
        return self._before_landmark()

    def _before_landmark(self) -> Place | None:
        """ "3 sts before marker", "1 st remains"."""
        if not self.number_ahead():
            return None
        before = self.count()
        self.stitch_words()
        if self.at("before"):
            self.step()
            self.skip("next", "the", "end", "of", *ROW_WORDS) if self.peek(0) == "end" else self.skip("next", "the")
            if self.at(*_MARKERS):
                self.step()
                return Place(Landmark.MARKER, before)
            if self.phrase(_GAPS) is not None:
                return Place(Landmark.GAP, before)
            return Place(Landmark.END, before)
        if self.at("remain", "remains", "rem", "left", "remaining"):
            self.step()
            return Place(Landmark.END, before)
        return None

    def _row_end(self) -> None:
        if self.at("of") and (self.peek(1) in ROW_WORDS or self.peek(2) in ROW_WORDS):
            self.step()
            self.skip("the", *ROW_WORDS)
        self.skip(*ROW_WORDS)
