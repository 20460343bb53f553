"""In: the tokens of a row. Out: the count promised behind it: "(88 sts)", "(8 sts decreased)"."""

from sizewright.read.notation.cursor import STITCH_WORDS
from sizewright.read.notation.direction_tree import Promise
from sizewright.read.notation.place_parser import PlaceParser
from sizewright.read.notation.tree import Promised

_FEWER = ("decreased", "dec'd", "decd", "dec", "lost", "fewer", "less")
_MORE = ("increased", "inc'd", "incd", "inc", "gained", "more")
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
        """ "(88 sts)", "[88 sts]", "- 88 sts", "(8 sts decreased)", "88 sts"."""
        start = self.position
        self.skip("-", ",", ":", "=", ";")
        close = {"(": ")", "[": "]"}.get(self.token.text) if not self.done else None
        if close:
            self.step()
        self.skip("total", "of", "now")
        found = self._promised() if self.number_ahead() else None
        if found is not None and close:
            if self.at(close):
                self.step()
            else:
                found = None
        if found is None:
            self.position = start
        return found

    def _promised(self) -> Promise | None:
        start = self.position
        count = self.step().count
        worded = self.at(*STITCH_WORDS)
        self.stitch_words()
        self.skip("have", "has", "been", "were", "are", "is")
        what = Promised.TOTAL
        if self.at(*_FEWER, *_MORE):
            what = Promised.FEWER if self.token.text in _FEWER else Promised.MORE
            self.step()
        elif not worded:
            return None
        behind = self.position
        self.skip(*_REMAIN, *STITCH_WORDS)
        where = " ".join(token.text for token in self.read_since(behind) if token.text not in _SAYS_NOTHING)
        return None if count is None else Promise(self.since(start), what, count, where)
