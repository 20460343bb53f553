"""In: the tokens of one row. Out: what is no plain stitch: markers, binding off, holding, turning."""

from sizewright.read.notation.cable_parser import CableParser
from sizewright.read.notation.cursor import ROW_WORDS, STITCH_WORDS
from sizewright.read.notation.stitches import PASS_OVER
from sizewright.read.notation.tree import Action, Add, Adding, BindOff, Drop, Hold, Mark, Marking, PassOver, Turn
from sizewright.read.notation.words import Kind

JOINTS = (",", ";", "and", "then", "-", ":")
STARS = ("*", "**")
_MARKINGS = {
    ("pm",): Marking.PLACE,
    ("place", "marker"): Marking.PLACE,
    ("place", "a", "marker"): Marking.PLACE,
    ("place", "m"): Marking.PLACE,
    ("sm",): Marking.SLIP,
    ("slip", "marker"): Marking.SLIP,
    ("slip", "m"): Marking.SLIP,
    ("sl", "m"): Marking.SLIP,
    ("rm",): Marking.REMOVE,
    ("remove", "marker"): Marking.REMOVE,
    ("remove", "m"): Marking.REMOVE,
}
_PASSED = ("pass", "slipped", "stitch", "st", "sts", "stitches", "slip-stitch", "the", "over", "it", "them")
_BIND = (("bind", "off"), ("cast", "off"), ("bo",))
_ADD = {
    ("cast", "on"): Adding.CAST_ON,
    ("co",): Adding.CAST_ON,
    ("pick", "up", "and", "knit"): Adding.PICK_UP_KNIT,
    ("pick", "up", "and", "purl"): Adding.PICK_UP_PURL,
    ("pick", "up"): Adding.PICK_UP_KNIT,
    ("pu",): Adding.PICK_UP_KNIT,
}
_HOLDERS = ("hold", "holder", "holders", "yarn", "thread", "pin")


class SpecialWords(CableParser):
    """Reads the actions that are words of their own; None where something else stands."""

    def _marking(self) -> Action | None:
        start = self.position
        found = self.phrase(_MARKINGS)
        if found is None:
            return None
        behind = self.position
        self.skip("for", "beginning", "of", "the", "rnd", "round", "row") if self.at("for") else None
        return Mark(self.since(start), _MARKINGS[found], self.told_since(behind))

    def _pass_over(self) -> Action | None:
        start = self.position
        if self.at(*PASS_OVER):
            return PassOver(self.since(start), PASS_OVER[self.step().text])
        if not self.at("pass"):
            return None
        self.skip(*_PASSED)
        return PassOver(self.since(start), 1)

    def _counted_words(self) -> Action | None:
        """Binding off, casting on, picking up, holding and dropping so many stitches."""
        start = self.position
        if self.phrase(_BIND) is not None:
            self.skip("next", "first", "the")
            count = self.count()
            self.stitch_words()
            manner = self.position
            self.skip("at", "beginning", "of", "row", "in", "pattern", "loosely", "knitwise", "purlwise")
            return BindOff(self.since(start), count, " ".join(token.text for token in self.read_since(manner)))
        adding = self.phrase(_ADD)
        if adding is not None:
            count = self.count()
            self.stitch_words()
            where = self.position
            self._loose_words()
            self._skipped()
            return Add(self.since(start), count, _ADD[adding], self.told_since(where))
        if self.at("drop"):
            self.step()
            self.skip("next", "the")
            count = self.count() if self.number_ahead() else self.one()
            self.stitch_words()
            return Drop(self.since(start), count)
        return self._hold(start)

    def _hold(self, start: int) -> Action | None:
        """ "place next 12 sts on hold", "slip 12 sts onto waste yarn"."""
        ahead = [token.text for token in self.coming(12)]
        held = next((place for place, word in enumerate(ahead) if word in _HOLDERS), 0)
        if not self.at("place", "slip", "sl", "put", "leave", "set") or not held or "#" not in ahead[:held]:
            return None
        if not {"on", "onto", "to"} & set(ahead[:held]):  # "sl 1 with yarn in front" holds nothing
            return None
        self.step()
        self.skip("the", "next", "first", "last", "these", "following")
        count = self.count()
        self.stitch_words()
        where = self.position
        while self.position <= start + held:
            self.step()
        return Hold(self.since(start), count, self.told_since(where))

    def _loose_words(self) -> None:
        """What says where stitches come from changes no count: "across the gap", "along the edge"."""
        worded = not self.done and self.token.kind is Kind.WORD
        while (
            worded and not self.done and not self.at(*JOINTS, "]", ")", "(", "[", *STARS) and not self.promise_ahead()
        ):
            self.step()

    def _skipped(self) -> None:
        """Rows or stitches of the edge that are left out between two of those picked up: ", skip 1 row"."""
        if self.at(",") and self.peek(1) == "skip":
            self.step()
            self.step()
            self.count()
            self.skip(*STITCH_WORDS, *ROW_WORDS)

    def _turn(self) -> Action | None:
        start = self.position
        if self.at("turn"):
            self.step()
            return Turn(self.since(start))
        if self.at("w&t") or (self.at("wrap") and "turn" in [token.text for token in self.coming(6)]):
            while not self.at("turn", "w&t"):
                self.step()
            self.step()
            return Turn(self.since(start))
        return None
