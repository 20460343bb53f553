"""In: the tokens of one row. Out: what is no plain stitch: markers, binding off, holding, turning."""

import re

from sizewright.read.notation.cable_parser import CableParser
from sizewright.read.notation.cursor import ROW_WORDS, STITCH_WORDS
from sizewright.read.notation.place_parser import BEGINNING_WORDS, BEGINNINGS, BOR
from sizewright.read.notation.stitches import PASS_OVER
from sizewright.read.notation.tree import Action, Add, Adding, Aside, BindOff, Mark, Marking, PassOver
from sizewright.read.notation.words import Kind

JOINTS = (",", ";", "and", "then", "-", ":")
STARS = ("*", "**")
_PLACE = ("place", "replace", "put", "set", "insert")
_MARKINGS = {"slip": Marking.SLIP, "sl": Marking.SLIP, "remove": Marking.REMOVE} | dict.fromkeys(_PLACE, Marking.PLACE)
_SHORT_MARKINGS = {"pm": Marking.PLACE, "sm": Marking.SLIP, "slm": Marking.SLIP, "rm": Marking.REMOVE}
_PASSED = ("pass", "slipped", "stitch", "st", "sts", "stitches", "slip-stitch", "the", "over", "it", "them")
BIND = (("bind", "off"), ("cast", "off"), ("bo",))
_BOUND_IN = {"pattern": "pattern", "patt": "pattern", "rib": "rib", "ribbing": "rib"}
_ADD = {
    ("cast", "on"): Adding.CAST_ON,
    ("co",): Adding.CAST_ON,
    ("pick", "up", "and", "knit"): Adding.PICK_UP_KNIT,
    ("pick", "up", "and", "purl"): Adding.PICK_UP_PURL,
    ("pick", "up"): Adding.PICK_UP_KNIT,
    ("pu",): Adding.PICK_UP_KNIT,
}

# Where markers part what is picked up, in so many equal parts.
_PARTS = {"halves": 2, "half": 2, "halfway": 2, "middle": 2, "quarters": 4}
_JOINING = ("join", "joining", "attach")
# What pieces are worked with, and where that begins: "and smaller needles", ", starting at centre of underarm".
_SIZE = "smaller|larger|spare|circular|straight|double-pointed|set of"
_TOOL = rf"(?:the |an? |your )?(?:(?:{_SIZE}) )*(?:needles?|dpns?)(?= |$)"
_NEEDLES = re.compile(rf"(?:using|with) {_TOOL}")
_AND = "(?:, and |, |and )"
_FROM_WHERE = rf"{_AND}(?:starting|beginning) (?:at|from)(?: [a-z][a-z-]*){{1,6}}(?= ,)"
_HELD_SO = re.compile(rf"{_AND}(?:(?:using|with) )?{_TOOL}(?: {_FROM_WHERE})?|{_FROM_WHERE}")
_LONGEST_ASIDE = 18
_SIDES = ("right", "wrong", "rs", "ws")
# What leads to the place of further stitches picked up: "and 18 sts along the right edge".
_ALONG = ("along", "across", "around", "down", "up", "over", "in", "at")


class SpecialWords(CableParser):
    """Reads the actions that are words of their own; None where something else stands."""

    _removed = ""  # the name of the marker removed last in this row
    _picked: tuple[int, Adding] | None = None  # where the words of the stitches picked up last end, and how they were

    def _marking(self) -> Action | None:
        """ "pm", "place raglan marker", "slip marker B", "remove BOR marker"; "replace marker" is the same again."""
        start = self.position
        if self.at("removing") and self.peek(1) in ("marker", "markers"):
            self.position += 2
            return Mark(self.since(start), Marking.CLEAR)
        if self.at(*_SHORT_MARKINGS):
            what = _SHORT_MARKINGS[self.step().text]
            name = self._name_of_short() or self._replaced(again=False, what=what)
        elif self.at(*_MARKINGS):
            again = self.at("replace")
            what = _MARKINGS[self.step().text]
            found = self.marker_name()
            if found is None:
                return None
            name = found or self._replaced(again=again, what=what)
        else:
            return None
        if what is Marking.REMOVE:
            self._removed = name or (BOR if start == 0 else "")
        return Mark(self.since(start), what, name)

    def _new_beginning(self) -> Action | None:
        """ "The round now begins here", "the beginning of the rnd is now at this corner": its marker lies here."""
        start = self.position
        self.skip("the")
        if self.at(*BEGINNING_WORDS):
            self.step()
            self.skip("of", "the")
        if self.at("rnd", "round"):
            self.step()
            self.skip("is", "now", "begins", "at")
            words = self.texts(2)
            if words[:1] == ("here",) or words == ("this", "corner"):
                self.skip("here", "this", "corner")
                return Mark(self.since(start), Marking.PLACE, BOR)
        self.position = start
        return None

    def _replaced(self, *, again: bool, what: Marking) -> str:
        """The name of the marker that was removed before in this row, where it is placed again."""
        name = self._removed if again or self._removed == BOR else ""
        return name if what is Marking.PLACE else ""

    def _name_of_short(self) -> str:
        """What stands behind "pm": "A", "for BOR"."""
        if self._name_behind():
            return self.step().typed.casefold()
        if not self.at("for"):
            return ""
        self.step()
        self.skip("the", "new")
        name = " ".join(self._purpose())
        return BOR if name in BEGINNINGS else name

    def _pass_over(self) -> Action | None:
        start = self.position
        if self.at(*PASS_OVER):
            return PassOver(self.since(start), PASS_OVER[self.step().text])
        if not self.at("pass"):
            return None
        self.skip(*_PASSED)
        return PassOver(self.since(start), 1)

    def _counted_words(self) -> Action | None:
        """Binding off, casting on and picking up so many stitches."""
        start = self.position
        if self.phrase(BIND) is not None:
            self.skip("next", "first", "following", "center", "centre", "middle", "the")
            if not self.number_ahead():
                raise self.fault("Say how many: “bind off 4 sts”, or “Bind off all sts” as a sentence of its own.")
            count = self.count()
            self.stitch_words()
            manner = self.binding_manner()
            words = (manner, self._at_beginning())
            return BindOff(self.since(start), count, " ".join(filter(None, words)))
        adding = self.phrase(_ADD)
        how = self._picked_again() if adding is None else _ADD[adding]
        return None if how is None else self._added(start, how)

    def _added(self, start: int, how: Adding) -> Add:
        """So many stitches, where they come from, and the markers between them."""
        count = self.count()
        self.stitch_words()
        where = self.position
        self._loose_words()
        self._skipped()
        told = self.told_since(where)
        added = Add(self.since(start), count, how, told, self._marked_parts())
        self._picked = (self.position, how) if how is not Adding.CAST_ON else None
        return added

    def _picked_again(self) -> Adding | None:
        """How stitches are picked up whose verb stands before those of another edge: "and 18 sts along the neck"."""
        if self._picked is None or not self.number_ahead():
            return None
        end, how = self._picked
        joined = all(token.text in JOINTS for token in self.read_since(end))
        return how if joined and self.peek(1) in STITCH_WORDS and self.peek(2) in _ALONG else None

    def _at_beginning(self) -> str:
        """ "at beg of row" behind what is bound off says nothing new."""
        start = self.position
        if self.at("at"):
            self.skip("at", "the", *BEGINNING_WORDS)
            if self.at("of") and (self.peek(1) in ROW_WORDS or self.peek(2) in ROW_WORDS):
                self.skip("of", "the", "this", *ROW_WORDS)
                return "at beginning of row"
        self.position = start
        return ""

    def binding_manner(self) -> str:
        """How stitches are bound off, which changes no count: "loosely in rib", "purlwise"."""
        found: list[str] = []
        while self.at("loosely", "knitwise", "purlwise") or (self.at("in") and self.peek(1) in _BOUND_IN):
            if self.at("in"):
                self.step()
                found.append(f"in {_BOUND_IN[self.step().text]}")
            else:
                found.append(self.step().text)
        if self.at("in") and self.peek(1) not in ("the", "next", "every", "each"):
            raise self.fault("Say it as “in rib” or as “in pattern”.")
        return " ".join(found)

    def _loose_words(self) -> None:
        """What says where stitches come from changes no count: "across the gap", "along the edge"."""
        worded = not self.done and self.token.kind is Kind.WORD
        while (
            worded and not self.done and not self.at(*JOINTS, "]", ")", "(", "[", *STARS) and not self.promise_ahead()
        ):
            self.step()

    def _marked_parts(self) -> int:
        """ ", marking halves", ", placing a marker at the halfway point": in how many parts stitches are marked."""
        start = self.position
        self.skip(",", "and")
        if self.at("marking", "mark", "placing", "place"):
            self.step()
            self.skip("a", "the", "marker", "at", "in")
            parts = 0 if self.done else _PARTS.get(self.step().text, 0)
            if parts:
                self.skip("point")
                return parts
        self.position = start
        return 1

    def _facing(self) -> Action | None:
        """ "With right side facing": how the piece is held changes no stitch."""
        start = self.position
        if self.at(*_JOINING) and {"ball", "skein"} & {*self.texts(4)}:
            self.skip(*_JOINING, "a", "the", "second", "new", "another", "ball", "skein", "of", "yarn")
            return Aside(self.since(start), self.told_since(start))
        if self.at("with") and {*_SIDES} & {*self.texts(3)} and "facing" in self.texts(6):
            while self.step().text != "facing":
                pass
            self.skip("you")
            self._words_of(_HELD_SO)
            return Aside(self.since(start), self.told_since(start))
        if self.at("using", "with") and self._words_of(_NEEDLES):
            return Aside(self.since(start), self.told_since(start))
        return None

    def _words_of(self, pattern: re.Pattern[str]) -> bool:
        """Takes the words ahead that a pattern matches."""
        found = pattern.match(" ".join(self.texts(_LONGEST_ASIDE)))
        for _ in range(found.group().count(" ") + 1 if found else 0):
            self.step()
        return found is not None

    def _skipped(self) -> None:
        """Rows or stitches of the edge that are left out between two of those picked up: ", skip 1 row"."""
        if self.at(",") and self.peek(1) == "skip":
            self.step()
            self.step()
            self.count()
            self.skip(*STITCH_WORDS, *ROW_WORDS)
