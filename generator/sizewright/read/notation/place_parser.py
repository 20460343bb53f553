"""In: the tokens of a row. Out: how often and how far: "3 times", "to end", "to last 3 sts", "to marker"."""

from dataclasses import replace

from sizewright.read.notation.cursor import ROW_WORDS, Cursor
from sizewright.read.notation.tree import Count, Landmark, Place
from sizewright.read.notation.words import Kind

_TIMES = {"once": 1, "twice": 2, "thrice": 3}
_MARKERS = ("m", "marker", "markers")
BOR = "bor"  # the marker at the beginning of the round, whatever it is called
BEGINNING_WORDS = ("beg", "beginning", "start")
BEGINNINGS = (
    *("bor", "eor", "beginning", "round", "rnd", "beginning round"),
    *(f"{where} of {what}" for where in ("beginning", "beg", "start", "end") for what in ("round", "rnd")),
)
_TOTAL_OF = (("for", "a", "total", "of"), ("a", "total", "of"), ("total", "of"))
_IN_ALL = (("in", "all"), ("in", "total"), ("total",), ("altogether",))
_BEHIND_BIND_OFF = tuple(
    (after, *the, *off)
    for after in ("after", "following", "from")
    for the in (("the",), ())
    for off in (("bind", "off"), ("bind-off",), ("bind", "-", "off"), ("binding", "off"), ("bo",), ("cast", "off"))
)
_LONGEST_NAME = 6
_SILENT = ("next", "the", "a", "first")
_ENDS = (",", ";", ")", "]", ".", "and", "then", "(")
_NO_NAME = ("#", "(", "[", ",", ";", ")", "]", "before", "past", "st", "sts", "*", "**", "then", "and", "to", "-")
_KINDS_OF_GAP = (
    (Landmark.TURN, ("turn", "gap", "turning gap", "turning point", "turned st")),
    (Landmark.WRAPPED, ("wrapped st", "wrapped stitch", "wrap", "w&t")),
    (Landmark.DOUBLE, ("double st", "double stitch", "ds", "dst", "mds", "doubled st", "doubled stitch")),
)
# "last turn", "the previous wrapped st", "ds": every wording, the longest first.
_GAPS = {
    tuple(f"{before} {words}".split()): landmark
    for before in ("the last", "the previous", "the", "last", "previous", "next", "your last", "")
    for landmark, spellings in _KINDS_OF_GAP
    for words in spellings
}


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
        in_all = self.phrase(_TOTAL_OF) is not None
        times = self.times()
        if times is not None:
            self.skip("more", "times", "time")
            in_all = self.phrase(_IN_ALL) is not None or in_all
            return times, more and not in_all, None
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
        self.skip("to", "until", "till", "up", "the", "but", "there", "you", "have", "are")
        found = self._landmark()
        if found is None:
            self.position = start
        return found

    def _landmark(self) -> Place | None:
        if self.at("end", "ends"):
            self.step()
            self._row_end()
            return Place(Landmark.END)
        named = self._named_place()
        if named is not None:
            return named
        if self.at("last"):
            self.step()
            before = self.count() if self.number_ahead() else self.one()
            self.stitch_words()
            return Place(Landmark.END, before)
        return self._before_landmark()

    def _named_place(self) -> Place | None:
        """ "marker A", "next raglan marker", "last turn", "the wrapped st", "gap"."""
        start = self.position
        found = self.phrase(_GAPS)
        if found is not None:
            self.stitch_words()
            return Place(_GAPS[found])
        name = self.marker_name()
        if name is None:
            self.position = start
            return None
        return Place(Landmark.MARKER, name=name)

    def marker_name(self) -> str | None:
        """The name of the marker that stands here, "" for one without; None where no marker is spoken of."""
        if self.at("bor", "eor") and self.peek(1) not in _MARKERS:
            self.step()
            return BOR
        ahead = self.texts(_LONGEST_NAME)
        place = next((place for place, text in enumerate(ahead) if text in _MARKERS), None)
        if place is None or not set(ahead[:place]).isdisjoint(_NO_NAME):
            return None
        words = [word for word in ahead[:place] if word not in _SILENT]
        self.position += place + 1
        if not words and self._name_behind():
            words = [self.step().typed.casefold()]
        elif not words and self.at("for") and self.peek(1) not in ("next", "each"):
            self.step()
            self.skip("the", "new")
            words = self._purpose()
        name = " ".join(words)
        return BOR if name in BEGINNINGS else name

    def _name_behind(self) -> bool:
        """ "marker A", "marker 2": one sign of its own, and then the end of the words."""
        letter = not self.done and len(self.token.text) == 1 and self.token.typed.isupper()
        return (letter or self.number_ahead()) and self.peek(1) in ("", *_ENDS)

    def _purpose(self) -> list[str]:
        """ "for raglan", "for beginning of round"."""
        words = []
        while not self.done and self.token.kind is Kind.WORD and not self.at("and", "then"):
            word = self.step().text
            if word not in ("the", "a"):
                words.append(word)
        return words

    def _before_landmark(self) -> Place | None:
        """ "3 sts before marker", "1 st remains"."""
        if not self.number_ahead():
            return None
        before = self.count()
        self.stitch_words()
        if self._on_right_needle():
            return Place(Landmark.WORKED, past=before)
        if self.at("before"):
            self.step()
            if self.at("end"):
                self.skip("next", "the", "end", "of", *ROW_WORDS)
                return Place(Landmark.END, before)
            named = self._named_place()
            if named is None:
                raise self.fault("Say before what: “to 2 sts before marker”, “to 3 sts before last turn”.")
            return replace(named, before=before)
        if self.at("past", "after", "beyond"):
            return self._past(before)
        left = self.at("remain", "remains", "rem", "left", "remaining")
        self.position += left
        return Place(Landmark.END, before) if left else None

    def _past(self, past: Count) -> Place:
        self.step()
        named = self._named_place()
        if named is None or named.landmark is Landmark.MARKER:
            raise self.fault("Say past what: “to 1 st past last wrapped st”.")
        return replace(named, past=past)

    def _on_right_needle(self) -> bool:
        start = self.position
        self.skip("are", "is", "remain", "remains", "rem")
        if self.at("on") and "needle" in self.texts(5):
            self.skip("on", "the", "your", "right", "rh", "right-hand", "hand")
            if self.at("needle"):
                self.step()
                self.phrase(_BEHIND_BIND_OFF)
                return True
        self.position = start
        return False

    def _row_end(self) -> None:
        if self.at("of") and (self.peek(1) in ROW_WORDS or self.peek(2) in ROW_WORDS):
            self.step()
            self.skip("the", *ROW_WORDS)
        self.skip(*ROW_WORDS)
