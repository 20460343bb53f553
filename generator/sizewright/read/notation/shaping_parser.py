"""In: a sentence. Out: a row that comes every so often ("Rep Dec Row every 4th row 5 times"), where it tells of one."""

from dataclasses import replace

from sizewright.read.notation.cursor import ROW_WORDS
from sizewright.read.notation.direction_tree import Spaced, Spacing
from sizewright.read.notation.kinds import Side
from sizewright.read.notation.not_understood import NotUnderstood
from sizewright.read.notation.place_parser import BEGINNING_WORDS
from sizewright.read.notation.row_labels import row_name
from sizewright.read.notation.row_parser import RowParser
from sizewright.read.notation.special_words import BIND
from sizewright.read.notation.tree import Action, Add, BindOff, Count, Follow, Landmark, Manner, Place
from sizewright.read.notation.words import Kind, spanned, typed

_EVERY = ("every", "each", "alternate", "alt")
_SIDES = {"rs": Side.RIGHT, "ws": Side.WRONG}
_SECOND = ("other", "alternate", "alt")
_LEADS = ("work", "working", "continue", "continuing", "cont", "knit", "knitting", "keep", "keeping")
_CAST_ON = (("cast", "on"), ("co",))
_TOTAL = ("all", "total")
_BEHIND_THE_FIRST = "Say how often it is worked after the first time: “on next row and every foll 4th row 2 times”."
_CALLS = ("rep", "repeat", "repeating", "work", "working")


class ShapingParser(RowParser):
    """Reads one sentence of shaping."""

    def spaced(self) -> Spaced | None:
        """The direction; None where the sentence is none. Raises `NotUnderstood` behind "every"."""
        fabric = self._fabric_before()
        start = self.position
        name = self._called()
        actions = () if name else self.edge_shaping()
        if not (name or actions):
            return None
        row = self.position
        spacings = self._spacings(named=bool(name))
        if not spacings:
            return None
        words = typed(self.between(start, row)) + " " + typed(self.between(row, self.position))
        fabric = fabric or self._fabric_behind()
        promise = self.promise()
        if self.at(";"):
            return None
        if not self.done:
            raise self.fault()
        rounds = any(token.text in ("rnd", "rnds", "round", "rounds") for token in self.between(0, self.position))
        return Spaced(self.since(0), name, actions, spacings, fabric, _short(words), promise, rounds)

    def _fabric_before(self) -> str:
        """ "Working in stockinette, rep ..."."""
        start = self.position
        self.skip("and")
        if self.at(*_LEADS):
            self.step()
            self.skip("even")
            if self.at("in"):
                words = self._words_to(",", ";")
                if words and not self.done:
                    self.step()
                    self.skip("and", "then")
                    return words
        self.position = start
        return ""

    def _fabric_behind(self) -> str:
        """ ", working in stockinette between"; ", working new sts into pattern" changes nothing."""
        start = self.position
        self.skip(",", ";", "and")
        if not self.at("work", "working", "keeping", "keep"):
            self.position = start
            return ""
        self.step()
        if self.at("in") and "sts" not in self.texts(6):
            return self._words_to("between", "(", "[")
        self._words_to("(", "[")
        return ""

    def _words_to(self, *ends: str) -> str:
        """The words up to a sign, without "in" and the like."""
        self.skip("in", "even")
        start = self.position
        while not self.done and not self.at(*ends):
            self.step()
        words = typed(self.between(start, self.position)) if self.position > start else ""
        self.skip("between", "rows", "rnds", "rounds")
        return words

    def _called(self) -> str:
        """ "rep Dec Row", "work the decrease round", "rep last rnd": the name; "" where none is called."""
        start = self.position
        self.skip("and", "then")
        if self.at(*_CALLS):
            self.step()
            self.skip("the", "this")
            first = self.position
            while not self.done and self.token.kind is Kind.WORD and not self.at(*ROW_WORDS):
                self.step()
            if self.at(*ROW_WORDS) and self.position - first < 5:
                self.step()
                if self.number_ahead() and self.peek(1) not in ("times", "more", "time"):
                    self.step()
                name = row_name(typed(self.between(first, self.position)))
                return "last row" if name == "row" else name
        self.position = start
        return ""

    def edge_shaping(self) -> tuple[Action, ...]:
        """ "dec 1 st at each end of"; nothing where something else stands."""
        actions = self.shaping_words() or self._bound_off()
        self.skip("of", "on")
        return actions

    def _bound_off(self) -> tuple[Action, ...]:
        """ "bind off 5 sts at beginning of", "cast on 5 sts at ...", with the rest of the row worked."""
        start = self.position
        casts_on = self.phrase(_CAST_ON) is not None
        if (casts_on or self.phrase(BIND) is not None) and self.number_ahead():
            count = self.count()
            self.stitch_words()
            manner = self.binding_manner()
            span = self.since(start)
            self.skip("at", "the")
            if (
                self.at(*BEGINNING_WORDS)
                and self.peek(1) == "of"
                and {"next", "following", "every"} & set(self.texts(4))
            ):
                self.step()
                changed = Add(span, count) if casts_on else BindOff(span, count, manner)
                return changed, Follow(span, Manner.ANY, None, Place(Landmark.END))
        self.position = start
        return ()

    def _spacings(self, *, named: bool) -> tuple[Spacing, ...]:
        found: list[Spacing] = []
        while True:
            start = self.position
            self.skip(",", ";", "and", "then", "on", "in", "of", "at", "each", "end") if found else self.skip(
                "on", "in", "of", "at"
            )
            spacing = self._first() if not found else None
            spacing = spacing or self._spacing()
            if spacing is None:
                self.position = start
                break
            if found and self.between(start, self.position)[-1].text in _TOTAL:
                said = self.between(start, self.position)
                raise NotUnderstood(spanned(said), typed(said), _BEHIND_THE_FIRST)
            found.append(spacing)
        if named and len(found) == 1 and found[0].here and found[0].times is not None:
            return ()  # "work Dec Row on next row" is a plain call
        return tuple(found)

    def _first(self) -> Spacing | None:
        """ "next row", "9th row": counted from here."""
        start = self.position
        self.skip("the", "following", "foll")
        if self.at("next"):
            self.step()
            every = self.one()
            if self.number_ahead() and self.peek(1) in ROW_WORDS:
                times = self.count()
                self.step()
                return Spacing(every, None, times, None, here=True)
        elif self.number_ahead() and (self.token.ordinal or self.peek(1) in ("th", "st", "nd", "rd")):
            every = self.count()
            self.skip("th", "st", "nd", "rd")
        else:
            self.position = start
            return None
        side = self._side()
        self.skip(*ROW_WORDS)
        return Spacing(every, side if side else None, self.one(), None, here=True) if not side else None

    def _side(self) -> Side | None:
        if self.at(*_SIDES):
            return _SIDES[self.step().text]
        for side, word in ((Side.RIGHT, "right"), (Side.WRONG, "wrong")):
            if self.texts(2) == (word, "side"):
                self.position += 2
                return side
        return None

    def _spacing(self) -> Spacing | None:
        """ "every 4th row 10 times", "every RS row until 20 sts remain", "next and foll 4th row"."""
        if self.at("following", "foll") and self.peek(1) == "#":
            return self._following()
        if not self.at(*_EVERY):
            return None
        second = self.at(*_SECOND)
        self.step()
        every: Count | None = None
        self.skip("following", "foll")
        if self.number_ahead():
            every = self.count()
            self.skip("th", "st", "nd", "rd")
        elif self.at(*_SECOND) or second:
            self.skip(*_SECOND)
            every = replace(self.one(), value=2)
        self.skip("following", "foll")
        side = self._side()
        if not self.at(*ROW_WORDS):
            raise self.fault("Say which rows: “every 4th row 10 times”.")
        self.step()
        if every is None and side is None:
            every = self.one()
        return self._ended(every, side)

    def _following(self) -> Spacing | None:
        """ "foll 4th row", once if no more is said."""
        self.step()
        every = self.count()
        self.skip("th", "st", "nd", "rd")
        side = self._side()
        if not self.at(*ROW_WORDS):
            return None
        self.step()
        return Spacing(every, side, self.times() or self.one())

    def _ended(self, every: Count | None, side: Side | None) -> Spacing:
        times = self.times()
        if times is not None:
            self.skip("more", "times", "time", "in", "all", "total")
            return Spacing(every, side, times)
        if self.at("until", "till", "to"):
            self.step()
            self.skip("there", "are", "you", "have")
            until = self.count()
            self.stitch_words()
            self.skip("remain", "remains", "rem", "left", "are", "on", "needle", "needles")
            return Spacing(every, side, None, until)
        raise self.fault("Say how often: “every 4th row 10 times”.")


def _short(words: str) -> str:
    return words if len(words) <= 60 else f"{words[:59]}…"
