"""In: the tokens of a row. Out: stitches put on holders, and worked off them: "knit across 40 sleeve sts"."""

from collections.abc import Iterable
from itertools import takewhile

from sizewright.read.notation.cursor import STITCH_WORDS
from sizewright.read.notation.drop_words import DropWords
from sizewright.read.notation.stitches import Stitch
from sizewright.read.notation.tree import Across, Action, Count, Hold
from sizewright.read.notation.words import Kind

_HOLDERS = ("hold", "holder", "holders", "yarn", "thread", "pin", "needle")
_PUT = ("place", "slip", "sl", "put", "leave", "set", "transfer")
_ALL = ("rem", "remaining", "all", "rest")
_SILENT = ("the", "next", "these", "following", "of", "held", "live", *STITCH_WORDS)
_WORKED = {"these", "just", "worked", "knit", "knitted"}
_PLACES = {"first", "last"}  # no name of their own, but part of one: "first sleeve"
_ENDS = (",", ";", ")", "]")
_LONGEST = 14
_LONGEST_NAME = 4


class HolderWords(DropWords):
    """Reads what is said of holders."""

    def _held(self) -> Action | None:
        """ "place next 40 sts on hold for left sleeve", "slip remaining sts onto waste yarn"."""
        start = self.position
        ahead = tuple(takewhile(lambda word: word not in _ENDS, self.texts(_LONGEST)))
        held = next((place for place, word in enumerate(ahead) if word in _HOLDERS), 0)
        onto = {"on", "onto", "to"} & set(ahead[:held])  # "sl 1 with yarn in front" holds nothing
        counted = "#" in ahead[:held] or set(_ALL) & set(ahead[:held]) or "sts" in ahead[:held]
        if not (self.at(*_PUT) and onto and counted) or (ahead[held] == "needle" and "spare" not in ahead[:held]):
            return None
        self.step()
        count: Count | None = None
        name: list[str] = []
        while not self.at("on", "onto", "to"):
            if self.number_ahead():
                count = self.count()
            else:
                name.append(self.step().text)
        where = self.position
        worked = not _WORKED.isdisjoint(name)
        while self.position <= start + held:
            self.step()
        told = self.told_since(where)
        if self.at("for", "as"):
            self.step()
            name = self._purpose()
        return Hold(self.since(start), count, told, _name_of(word for word in name if word not in _WORKED), worked)

    def _across(self) -> Action | None:
        """ "knit across 40 sleeve sts from holder", "work across held sts of second sleeve"."""
        start = self.position
        if not (self.at("knit", "purl", "k", "p", "work") and self.peek(1) == "across"):
            return None
        stitch = self.words.by_spelling["p" if self.step().text in ("purl", "p") else "k"]
        self.step()
        found = self.off_holder(start, stitch, None)
        if found is None:
            self.position = start
        return found

    def off_holder(self, start: int, stitch: Stitch, count: Count | None) -> Action | None:
        """What stands behind "k40" or "knit across": a name and where the stitches come from; None where it is none."""
        if self.number_ahead() and count is None:
            count = self.count()
        held = "held" in self.texts(_LONGEST_NAME)
        name = self._name_of_held()
        ended = self.at(*STITCH_WORDS)
        self.stitch_words()
        if self.at("of", "for") and ended:
            self.step()
            name = self._purpose()
        if self.at("from") and set(self.texts(5)) & set(_HOLDERS):
            held = ended = True
            while not self.at(*_HOLDERS):
                self.step()
            self.step()
            if self.at("for", "of"):
                self.step()
                name = self._purpose()
        if not ended or not (name or held or count):
            return None
        return Across(self.since(start), stitch, count, _name_of(name), held)

    def _name_of_held(self) -> list[str]:
        """The words before "sts" that say which."""
        name: list[str] = []
        while len(name) < _LONGEST_NAME and not self.done and not self.at("from", *STITCH_WORDS):
            if self.token.kind is not Kind.WORD or self.token.text in self.words.by_spelling:
                break
            name.append(self.step().text)
        return name


def _name_of(words: Iterable[str]) -> str:
    """What stitches are held for, without the words that name nothing."""
    name = [word for word in words if word not in (*_SILENT, *_ALL)]
    return "" if set(name) <= _PLACES else " ".join(name)
