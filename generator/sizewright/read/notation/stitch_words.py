"""In: the tokens of a row. Out: the word of a stitch and the number in it, its yarn, and into how many it is worked."""

from sizewright.read.notation.cables import named_cable
from sizewright.read.notation.cursor import STITCH_WORDS
from sizewright.read.notation.panel_words import PanelWords
from sizewright.read.notation.stitches import Stitch
from sizewright.read.notation.tree import Count
from sizewright.read.notation.words import Token

_EACH = tuple(("in", "each", "of", *the, "next") for the in (("the",), ()))


class StitchWords(PanelWords):
    """Reads the words of one stitch."""

    def _stitch_word(self) -> tuple[Stitch, Count | None]:
        ahead = [self._spelled(token) for token in self.coming(self.words.longest)]
        for length in range(len(ahead), 0, -1):
            spelling = " ".join(ahead[:length])
            stitch = self.words.by_spelling.get(spelling)
            if stitch is not None:
                self.position += length
                return stitch, None
        if self.texts(2) == ("double", "yo"):
            self.position += 2
            return self.words.by_spelling["yo"], Count(self.since(self.position - 2), 2)
        token = self.token
        glued = self.words.glued(token.text)
        if glued is not None:
            self.step()
            return glued[0], Count(token.span, glued[1])
        cable = named_cable(token.text)
        if cable is not None:
            self.step()
            return cable, None
        raise self.fault()

    @staticmethod
    def _spelled(token: Token) -> str:
        fixed = token.count is not None and isinstance(token.count.value, int)
        return str(token.count.value) if fixed and token.count is not None else token.text

    def _into(self, stitch: Stitch, count: Count | None) -> Count | None:
        """ "kfb in next st", "inc in each of next 2 sts": how many stitches are worked so."""
        start = self.position
        if stitch.uses != 1 or count is not None or self.phrase((("in", "next"), ("into", "next"), *_EACH)) is None:
            return count
        into = self.count() if self.number_ahead() else self.one()
        if not self.at(*STITCH_WORDS):
            self.position = start
            return count
        self.stitch_words()
        return into

    def _in_one_form(self, stitch: Stitch, count: Count | None) -> Count | None:
        """ "k" is "k1", and "yo 1" is "yo"."""
        if stitch.numbered:
            return count or self.one()
        return None if count is not None and count.value == 1 else count

    def _colour(self) -> str:
        """ "MC", "with A", "in CC": the yarn from here on."""
        step = 1 if self.at("with", "in") else 0
        if not self.colour_word(step):
            return ""
        self.position += step
        return self.step().typed
