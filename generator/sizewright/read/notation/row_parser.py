"""In: the tokens of one row. Out: its actions, and the promise behind it; `NotUnderstood` says what is neither."""

from collections.abc import Callable

from sizewright.read.notation.direction_tree import Promise
from sizewright.read.notation.rib_words import is_rib
from sizewright.read.notation.special_words import JOINTS, STARS
from sizewright.read.notation.stitch_words import StitchWords
from sizewright.read.notation.stitches import Stitch
from sizewright.read.notation.tree import Action, Colour, Count, IntoOne, Landmark, Place, Repeat, Work


class RowParser(StitchWords):
    """Reads the actions of one row; what comes before and behind them is read by those who call it."""

    def row(self) -> tuple[tuple[Action, ...], Promise | None]:
        """All actions up to the end, and the promise that closes them."""
        start = self.position
        actions = self._actions(())
        if actions and (self.at("rep", "repeat") or (self.at("until", "till") and self.peek(-1) == ",")):
            actions = self._unstarred(start, actions)
        elif self.at(*_TO, "across", "around") and actions:
            actions = self._unbracketed(start, actions)
        promise = self.promise()
        if not self.done:
            raise self.fault()
        return actions, promise

    def _unbracketed(self, start: int, actions: tuple[Action, ...]) -> tuple[Action, ...]:
        """ "k1, p1 to end": a rib alone can only be meant as a whole."""
        here = self.position
        if self.place() is None:
            raise self.fault("Say how far: “to end”, “to last 3 sts”, “to marker”.")
        self.position = here
        if not is_rib(actions):
            raise self.fault("Put what is repeated in brackets: “[k1, p1] to end”.")
        return self._unstarred(start, actions)

    def _unstarred(self, start: int, actions: tuple[Action, ...]) -> tuple[Action, ...]:
        """ "k5, p5; repeat across, ending with k5", "k2, p2, until 1 st remains, k1", "k3, yo.--Repeat": all so far."""
        if self.at("rep", "repeat"):
            self.step()
            if not (self.done or self.at("to", "across", "around", "until", ",", "(", "[")):
                raise self.fault("Say from where: “rep from *”, with the star before the repeat.")
        place = self.place() or Place(Landmark.END)
        repeat = Repeat(self.since(start), actions, None, place, False, *self._behind_repeat())  # noqa: FBT003 -- no count
        return (repeat, *self._actions(()))

    def _actions(self, closing: tuple[str, ...]) -> tuple[Action, ...]:
        """Actions up to a closing sign, the words of a repeat, or the promise behind the row."""
        found: list[Action] = []
        start, clause = self.position, 0 if ";" in self.texts(_ROW_LONG) else None
        while not self.done:
            if self.at(*JOINTS):
                clause = len(found) if clause is not None and self.at(";") else clause
                times = self._clause_times() if clause is not None and found[clause:] else None
                if times is None:
                    self.step()
                else:
                    found[clause:] = [Repeat(self.since(start), tuple(found[clause:]), times)]
            elif (
                self._closes(closing) or self.at(*_TO, "across", "around") or self._rep_ahead() or self.promise_ahead()
            ):
                break
            else:
                found.extend(self._action(first=not found))
                aside = self.resolving()
                found.extend((aside,) if aside is not None else ())
        return tuple(found)

    def _clause_times(self) -> Count | None:
        """ ", four times;" says how often all is worked since the semicolon before it."""
        start = self.position
        if self.at(","):
            self.step()
            times = self.times()
            if times is not None and (self.done or self.at(";")):
                return times
        self.position = start
        return None

    def _closes(self, closing: tuple[str, ...]) -> bool:
        return self.at(*closing) and not ("*" in closing and self._opens())

    def _opens(self) -> bool:
        """Whether "**" begins a repeat inside the one with "*": it is named again, and not as its end alone."""
        ahead = self.texts(_ROW_LONG)
        again = (place for place, text in enumerate(ahead) if place and text == "**")
        return self.at("**") and any(ahead[place - 1] != "to" for place in again)

    def _rep_ahead(self) -> bool:
        return self.at("rep", "repeat", "reps") or (self.at("ending", "end") and self.peek(1) in _ENDINGS)

    def _action(self, *, first: bool) -> tuple[Action, ...]:
        """One action, or the few that some words stand for."""
        self.deeper()
        start = self.position
        try:
            if self.at(*STARS):
                return (self._starred(),)
            if self.at("[", "("):
                return (self._grouped(),)
            shaping = self.shaping_words()
            if shaping:
                return shaping
            for reader in self._readers():
                action = reader()
                if action is not None:
                    return (action,)
                self.position = start
            colour = self._colour()
            if colour:
                return (Colour(self.since(start), colour),)
            return self._stitch(first=first)
        finally:
            self.shallower()

    def _readers(self) -> tuple[Callable[[], Action | None], ...]:
        """Those that read what is no plain stitch, in the order they are asked."""
        told = (self._facing, self._new_beginning, self._marking)
        first = (*told, self._pass_over, self._cn, self._counted_words, self._dropped, self._held)
        return (*first, self._turn, self._resolved, self._across, self._panel, self._follow)

    # Repeats

    def _starred(self) -> Action:
        """ "*...; rep from * to end" and "*...* to end", with what the last repeat ends with."""
        start = self.position
        star = self.step().text
        body = self._actions((star, *(STARS if star == "*" else ())))
        closed = self.at(star)
        if closed:
            self.step()
        while self.at(*JOINTS):
            self.step()
        named = self.at("rep", "repeat", "reps")
        if named:
            self.step()
            if self.at("from"):
                self.step()
            if self.at(*STARS, "[", "("):
                self.step()
            if self.at("to") and self.peek(1) in STARS:
                self.position += 2
            self.skip("across", "around")
        elif not closed and not self.done and not self.at(*_TO, "]", ")"):
            raise self.fault("A “*” begins a repeat: close it with “rep from * to end”.")
        times, more, place = self.extent(more=named)
        ending, replaces = self._behind_repeat()
        if times is None and place is None:
            place = Place(Landmark.END)
        return Repeat(self.since(start), body, times, place, more, ending, replaces)

    def _ending(self) -> tuple[tuple[Action, ...], bool]:
        """ "end p3" and "ending with k5" stand behind the repeats; "ending last rep k1" changes the last of them."""
        if not self.at("ending", "end", "finishing"):
            return (), False
        self.step()
        self.skip("the", "last")
        replaces = self.at("rep", "repeat")
        self.skip("rep", "repeat", "with")
        return self._actions(("]", ")")), replaces

    def _grouped(self) -> Action:
        """ "[k2tog, yo] 3 times", "(k1, p1) to end", "(k1, p1, k1) in next st"."""
        start = self.position
        close = "]" if self.step().text == "[" else ")"
        body = self._actions((close,))
        if not self.at(close):
            raise self.fault(f"The bracket is not closed: write “{close}”.")
        self.step()
        if self.at("in", "into") and self.phrase(_DOUBLE_YO) is not None:
            return IntoOne(self.since(start), body, double=True)
        if self.at("in", "into") and self.peek(1) in ("next", "one", "same", "the", "each", "#"):
            while not self.done and self.at("in", "into", "next", "one", "same", "the", "st", "stitch", "#"):
                self.step()
            return IntoOne(self.since(start), body)
        self.skip("rep", "repeat")
        times, more, place = self._bracket_extent()
        if times is None and place is None:
            raise self.fault("Say how often the bracket is worked: “[…] 3 times”, “[…] to end”.")
        return Repeat(self.since(start), body, times, place, more, *self._behind_repeat())

    def _bracket_extent(self) -> tuple[Count | None, bool, Place | None]:
        """How far a bracket goes; "once, then 6 more times" are those on top of the first."""
        times, _, place = self.extent(more=False)
        start = self.position
        if times is not None and times.value == 1:
            self.skip(",", "then", "and")
            further = self.times()
            if further is not None and (self.at("more") or self.peek(-1) == "more"):
                self.skip("more", "times", "time")
                return further, True, None
            self.position = start
        return times, False, place

    def _behind_repeat(self) -> tuple[tuple[Action, ...], bool]:
        while self.at(",", ";") and self.peek(1) in ("ending", "end", "finishing"):
            self.step()
        return self._ending()

    # Stitches

    def _stitch(self, *, first: bool) -> tuple[Action, ...]:
        """One stitch word with its number, its manner, its yarn and where it ends."""
        start = self.position
        if self.number_ahead() and self.colour_word(1):
            of_yarn = self.count()
            return (Work(self.since(start), self.words.by_spelling["k"], of_yarn, None, self._colour()),)
        typed = self.token.text
        stitch, count = self._stitch_word()
        if count is None and stitch.counted and self.number_ahead() and self.peek(1) not in ("times", "x"):
            count = self.count()
        if count is None and self.at("that"):  # "until one stitch remains, and knit that"
            self.step()
            count = self.one()
        self.stitch_words()
        count = self._into(stitch, count)
        off_holder = self._off_holder(start, stitch, count)
        if off_holder is not None:
            return (off_holder,)
        stitch, manner = self._with_manner(stitch)
        colour = self._colour()
        times, _, place = self.extent(more=False) if count is None else (self.times(), False, None)
        if times is not None and count is not None:
            body = Work(self.since(start), stitch, count, None, colour, manner)
            return (Repeat(self.since(start), (body,), times),)
        count = count if count is not None else times
        if count is None and place is None and stitch.term in ("k", "p"):
            if first and (self.done or self.promise_ahead() or self.resolving_ahead()):
                place = Place(Landmark.END)
            elif typed in ("knit", "purl"):
                raise self.fault(f"Say how many stitches to {typed}, or “{typed} to end”.")
        if place is None:
            count = self._in_one_form(stitch, count)
        return (Work(self.since(start), stitch, count, place, colour, manner),)

    def _off_holder(self, start: int, stitch: Stitch, count: Count | None) -> Action | None:
        """ "k40 sleeve sts", "k40 from holder"."""
        if count is None or stitch.term not in ("k", "p"):
            return None
        before = self.position
        found = self.off_holder(start, stitch, count)
        if found is None:
            self.position = before
        return found


_DOUBLE_YO = tuple(
    (into, *words, *yo)
    for into in ("in", "into")
    for words in ((), ("the",), ("next",))
    for yo in (("double", "yo"), ("double", "yarn", "over"), ("yo", "twice"))
)
_ROW_LONG = 400  # words
_TO = ("to", "until", "till")
_ENDINGS = ("last", "with", "k", "p", "knit", "purl", "the")
