"""In: the tokens of a row. Out: stitches and yarn overs that are dropped, and what is said of how they fall."""

from sizewright.read.notation.short_row_words import ShortRowWords
from sizewright.read.notation.tree import Action, Drop

_YARN_OVERS = ("yo", "yos", "yarnover", "yarnovers", "yo's")
_FALLS = ("unravel", "ravel", "run", "fall")
_LONGEST = 8  # words that say how far a dropped stitch falls


class DropWords(ShortRowWords):
    """Reads what is said of dropping."""

    def _dropped(self) -> Action | None:
        """ "drop next st and let it unravel", "drop 2 sts off needle", "drop yo"."""
        start = self.position
        if not self.at("drop"):
            return None
        self.step()
        self.skip("next", "the", "both")
        count = self.count() if self.number_ahead() else self.one()
        self.skip("next")
        yarn_over = self.at(*_YARN_OVERS)
        if yarn_over:
            self.step()
        elif not self.at("st", "sts", "stitch", "stitches"):
            self.position = start
            self.step()
            raise self.fault("Say what is dropped: “drop 1 st”, “drop yo”.")
        self.stitch_words()
        self._off_needle()
        self._falling()
        return Drop(self.since(start), count, yarn_over=yarn_over)

    def _off_needle(self) -> None:
        if self.at("off", "from") and ({"needle", "needles", "row", "rnd", "round"} & set(self.texts(5))):
            while not self.at("needle", "needles", "row", "rnd", "round"):
                self.step()
            self.step()

    def _falling(self) -> None:
        """ "and unravel", "and let it unravel to the cast-on edge"."""
        start = self.position
        self.skip("and")
        let = self.at("let", "allow")
        self.skip("let", "it", "them", "allow", "to")
        if not (self.at(*_FALLS) or (let and self.at("drop"))):
            self.position = start
            return
        for _ in range(_LONGEST):
            if self.done or self.at(",", ";", "(", "[", ")", "]", "*", "**", "and", "then"):
                break
            self.step()
