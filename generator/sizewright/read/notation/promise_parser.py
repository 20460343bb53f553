"""In: the tokens of a row. Out: the count promised behind it: "(88 sts)", "(8 sts decreased)"."""

from dataclasses import replace

from sizewright.read.notation.cursor import STITCH_WORDS
from sizewright.read.notation.direction_tree import Promise
from sizewright.read.notation.place_parser import PlaceParser
from sizewright.read.notation.tree import Promised

_FEWER = ("decreased", "dec'd", "decd", "dec", "lost", "fewer", "less")
_MORE = ("increased", "inc'd", "incd", "inc", "gained", "more")
_BRACKETS = {"(": ")", "[": "]", "<": ">"}
_REMAIN = ("remain", "remaining", "rem", "total", "left", "on", "needle", "needles", "each", "in", "all", "now", "the")
_SAYS_NOTHING = ("remain", "remaining", "rem", "total", "left", "all", "now", *STITCH_WORDS)


class PromiseParser(PlaceParser):
    """Reads the promise behind a row."""

    def promise_ahead(self) -> bool:
        """Whether what is next is the count behind the row."""
        start = self.position
        found = self.promise()
        ends = self.done
        self.position = start
        return found is not None and ends

    def last_promise(self) -> Promise | None:
        """The promise that closes the tokens, whatever stands before it."""
        for start in range(len(self._tokens) - 1, -1, -1):
            if self._tokens[start].text in ("(", "["):
                self.position = start
                found = self.promise()
                return found if self.done else None
        return None

    def promise(self) -> Promise | None:
        """ "(88 sts)", "[88 sts]", "- 88 sts", "(8 sts decreased; 80 sts)", "88 sts", "You now have 88 sts"."""
        start = self.position
        self.skip("-", ",", ":", "=", ";")
        close = _BRACKETS.get(self.token.text) if not self.done else None
        if close:
            self.step()
        counted = self._led_in()
        found = self._promised(counted=counted, signed=bool(close))
        if found is not None and close:
            found = self._closed(start, found, close)
        if found is None:
            self.position = start
        return found

    def _led_in(self) -> bool:
        """What says nothing before the count; whether it says that stitches are counted: "Stitch count: 88"."""
        if self.phrase((("stitch", "count"), ("st", "count"))) is not None:
            self.skip(":", "is", "now", "=")
            return True
        self.skip("you", "should", "will", "there", "now", "have", "are", "total", "of", ":")
        return False

    def _closed(self, start: int, found: Promise, close: str) -> Promise | None:
        """The promise with a second one in the same brackets; None where something else stands there."""
        if self.at(",", ";", "-") or (self.at("and") and self.peek(1) == "#"):
            self.skip(",", ";", "-", "and")
            also = self._promised(counted=False, signed=False)
            if also is None or also.what == found.what:
                return None
            found = replace(found, span=self.since(start), also=also)
        self.skip(".")
        if not self.at(close):
            return None
        self.step()
        return replace(found, span=self.since(start)) if found.also is not None else found

    def _promised(self, *, counted: bool, signed: bool) -> Promise | None:
        """ "88 sts remain", "8 sts decreased", in brackets also "+8 sts" and "dec 8 sts"."""
        start = self.position
        told = self._change() if signed and (self.at("+", "-", "dec", "inc") and self.peek(1) == "#") else None
        count = self.step().count if self.number_ahead() else None
        if count is None:
            return None
        worded = self.at(*STITCH_WORDS) or counted
        self.stitch_words()
        self.skip("have", "has", "been", "were", "are", "is")
        what = told or self._change() or Promised.TOTAL
        if what is Promised.TOTAL and not worded:
            return None
        behind = self.position
        self.skip(*_REMAIN, *STITCH_WORDS)
        where = " ".join(token.text for token in self.read_since(behind) if token.text not in _SAYS_NOTHING)
        return Promise(self.since(start), what, count, where)

    def _change(self) -> Promised | None:
        if not self.at(*_FEWER, *_MORE, "+", "-"):
            return None
        return Promised.FEWER if self.step().text in (*_FEWER, "-") else Promised.MORE
