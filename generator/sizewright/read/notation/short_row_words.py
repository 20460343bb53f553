"""In: the tokens of a row. Out: turns in mid row, and what is done with wrapped and double stitches later."""

from sizewright.read.notation.special_words import JOINTS, STARS, SpecialWords
from sizewright.read.notation.tree import Action, Aside, Count, Mark, Marking, Turn, Turning, Work
from sizewright.read.notation.words import Kind

# How a stitch of a turn is worked, as it stands behind "knit" and "purl".
WITH_WRAP, DOUBLE_AS_ONE = "wrapped st together with its wrap", "double st as one"
_WRAPPED = {"wrap", "wraps", "wrapped"}
_DOUBLE = {"double", "doubled", "ds", "dst", "mds"}
_GAP = {"gap", "gaps"}
# What is said of longer loops, and a word it needs; each is one stitch all the same.
_LOOPS = {
    "wrapping": {"yarn"},
    "dropping": {"loop", "loops", "wrap", "wraps"},
    "letting": {"loop", "loops", "wrap", "wraps"},
    "elongated": set[str](),
}
_LONGEST = 14  # words that say what is done with a wrap
_TURN_WITH = {
    ("wrap", "and", "turn"): Turning.WRAP,
    ("wrap", "next", "st", "and", "turn"): Turning.WRAP,
    ("wrap", "next", "stitch", "and", "turn"): Turning.WRAP,
    ("wrap", "the", "next", "st", "and", "turn"): Turning.WRAP,
    ("wrap", "&", "turn"): Turning.WRAP,
    ("w&t",): Turning.WRAP,
    ("wt",): Turning.WRAP,
    ("gsr",): Turning.DOUBLE,
    ("german", "short", "row"): Turning.DOUBLE,
    ("turn", "work"): Turning.PLAIN,
    ("turn", "the", "work"): Turning.PLAIN,
    ("turn",): Turning.PLAIN,
}
_MARKERS = {"marker", "markers", "m"}
_CLOSING = ("picking", "pick", "knitting", "purling", "working", "lifting", "hiding", "closing", "resolving")


class ShortRowWords(SpecialWords):
    """Reads the words of short rows."""

    def _turn(self) -> Action | None:
        start = self.position
        found = self.phrase(_TURN_WITH)
        return None if found is None else Turn(self.since(start), _TURN_WITH[found])

    def _resolved(self) -> Action | None:
        """ "knit wrap together with wrapped st", "k double st as one": one stitch is worked."""
        start = self.position
        if self.at("pick") and "wrap" in self.texts(4) and {"knit", "purl", "k", "p"} & set(self.texts(8)):
            while not self.at("knit", "purl", "k", "p"):
                self.step()
        if not self.at("knit", "purl", "k", "p"):
            return None
        stitch = self.words.by_spelling[self.step().text]
        words = self._clause()
        resolves = words & (_WRAPPED | _DOUBLE) and words & {"as", "with", "tog", "together"}
        if not resolves:
            self.position = start
            return None
        count = Count(self.since(start), 1)
        manner = DOUBLE_AS_ONE if words & _DOUBLE else WITH_WRAP
        return Work(self.since(start), stitch, count, manner=manner)

    def resolving(self) -> Aside | Mark | None:
        """ "k to end, picking up wraps as you come to them": how wraps are worked changes no count.

        Markers are slipped without being told to; those that are removed are gone.
        """
        start = self.position
        while self.at(",", "and"):
            self.step()
        said, closing = self.position, self.at("closing")
        if self.at(*_LOOPS):
            keys = _LOOPS[self.token.text]
            if not keys or self._clause() & keys:
                self.skip("elongated")
                return Aside(self.since(said), self.told_since(said))
        elif self.at("slipping", "removing"):
            removed = self.step().text == "removing"
            said_of = self._clause()
            if said_of & _MARKERS and not said_of & {"except", "but"}:
                return (
                    Mark(self.since(said), Marking.CLEAR) if removed else Aside(self.since(said), self.told_since(said))
                )
        elif self.at(*_CLOSING) and self._clause() & (_WRAPPED | _DOUBLE | (_GAP if closing else set())):
            return Aside(self.since(said), self.told_since(said))
        self.position = start
        return None

    def resolving_ahead(self) -> bool:
        """Whether what is next says how wraps are worked."""
        start = self.position
        found = self.resolving()
        self.position = start
        return found is not None

    def _clause(self) -> set[str]:
        """The words up to the next joint; "and" joins words inside."""
        words: set[str] = set()
        for _ in range(_LONGEST):
            if self.done or self.at(",", ";", ")", "]", "(", "[", *STARS):
                break
            joint = self.at(*JOINTS) and not (
                self.at("and") and self.peek(1) in ("knit", "purl", "knitting", "purling")
            )
            if joint or (self.token.kind is Kind.NUMBER and not self.at("#")):
                break
            words.add(self.step().text)
        return words
