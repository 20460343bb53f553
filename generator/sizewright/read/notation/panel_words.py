"""In: the tokens of a row. Out: a stitch pattern worked over a part of it: "work Row 1 of NAME over next 10 sts"."""

from sizewright.read.notation.cables import named_cable
from sizewright.read.notation.cursor import ROW_WORDS, STITCH_WORDS
from sizewright.read.notation.fabric_names import rib_of, usual_fabric
from sizewright.read.notation.follow_words import RIBS, FollowWords
from sizewright.read.notation.special_words import JOINTS, STARS
from sizewright.read.notation.tree import Action, Count, Landmark, Panel, Place
from sizewright.read.notation.words import Kind, typed

_ROUNDS = ("rnd", "rounds", "round", "rnds")
_OVER = ("over", "across", "between", "to", "until", "till")
_CLOSING = (*JOINTS, *STARS, "(", ")", "[", "]")
# What begins other words of the trade: "work in pattern to end", "work even", "work sts as they appear".
_NO_NAME = ("pattern", "patt", "patterns", "as", "even", "est", "established", "all", "first", "next", "each", "the")
_GOING_ON = ("as set", "as established")  # "work in rib as set to end"
_RIB_LONG = 4  # "k2", ",", "p2", "rib"
_MEND = "Say over which stitches: “over next 10 sts”, “to marker”, “between markers”."


def usual(name: str) -> bool:
    """Whether a fabric of this name is known without a stitch block."""
    return bool(usual_fabric(name) or rib_of(name))


class PanelWords(FollowWords):
    """Reads a stitch pattern over a part of a row."""

    def _panel(self) -> Action | None:
        """ "work Row 1 of NAME over next 10 sts", "work NAME to marker", "work 10 sts in NAME"."""
        start = self.position
        if self.at(*RIBS):
            return self._rib(start)
        if not self.at("work", "continue", "cont"):
            return None
        self.step()
        if self.at(*ROW_WORDS):
            return self._numbered_panel(start)
        if self.number_ahead():
            return self._counted_panel(start)
        self.skip("in")
        name = self._panel_name(_OVER)
        found = self._panel_extent() if name else None
        if found is None and name and usual(name) and self._ends_here():
            found = (None, Place(Landmark.END), False)
        return None if found is None else Panel(self.since(start), name, None, *found)

    def _rib(self, start: int) -> Action | None:
        """ "rib 10", "rib to last 2 sts", "rib"."""
        name = self.step().text
        if self.number_ahead():
            count = self.count()
            self.stitch_words()
            return Panel(self.since(start), name, None, count)
        found = self._panel_extent()
        if found is None and not self._ends_here():
            return None
        return Panel(self.since(start), name, None, *(found or (None, Place(Landmark.END), False)))

    def _ends_here(self) -> bool:
        return self.done or self.at(*_CLOSING) or self.promise_ahead()

    def _numbered_panel(self, start: int) -> Action | None:
        rounds = self.step().text in _ROUNDS
        if not self.number_ahead():
            return None
        row = self.count()
        if not self.at("of"):
            return None
        self.step()
        name = self._panel_name(_OVER)
        found = self._panel_extent() if name else None
        if found is None:
            raise self.fault(_MEND)
        return Panel(self.since(start), name, row, *found, rounds)

    def _counted_panel(self, start: int) -> Action | None:
        count = self.count()
        if not self.at(*STITCH_WORDS):
            return None
        self.stitch_words()
        if not self.at("in"):
            return None
        self.step()
        name = self._panel_name(())
        return Panel(self.since(start), name, None, count) if name else None

    def _panel_name(self, ends: tuple[str, ...]) -> str:
        """The name of a stitch pattern, up to what says how far it goes; "" where none stands here."""
        start = self.position
        if rib_of(typed(self.coming(_RIB_LONG))):  # "k2, p2 rib" holds a comma
            self.position += _RIB_LONG
        while not self.done and not self.at(*ends, *_CLOSING):
            self.step()
        words = self.read_since(start)
        first = words[0] if words else None
        if first is None or first.kind is not Kind.WORD or first.text in _NO_NAME:
            return ""
        name = typed(words)
        if first.text in STITCH_WORDS and not usual_fabric(name):
            return ""
        if usual_fabric(name) in _GOING_ON:
            return ""
        stitch = name.casefold() in self.words.by_spelling or named_cable(name.casefold()) is not None
        return "" if stitch else name

    def _panel_extent(self) -> tuple[Count | None, Place | None, bool] | None:
        """How many stitches, or up to where, and whether it is from a marker to the next."""
        if self.at("across") and not (self.peek(1) in ("the", "next") or self.peek(1) == "#"):
            place = self.place()
            return None if place is None else (None, place, False)
        if self.at("over", "across"):
            self.step()
            self.skip("the", "next", "following", "center", "centre")
            if self.number_ahead():
                count = self.count()
                self.stitch_words()
                return count, None, False
            self.stitch_words()
        if self.at("between"):
            self.step()
            self.skip("the", "two")
            if not self.at("markers", "m"):
                return None
            self.step()
            return None, Place(Landmark.MARKER), True
        place = self.place()
        return None if place is None else (None, place, False)
