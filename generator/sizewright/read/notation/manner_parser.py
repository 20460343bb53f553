"""In: the tokens behind a stitch. Out: the manner it is worked in: purlwise or knitwise, where the yarn is held."""

from sizewright.read.notation.holder_words import HolderWords
from sizewright.read.notation.stitches import Stitch

PURLWISE, KNITWISE, IN_FRONT, BEHIND = "purlwise", "knitwise", "wyif", "wyib"
_MANNERS = {"wyif": IN_FRONT, "wyf": IN_FRONT, "wyib": BEHIND, "wyb": BEHIND}
_MANNERS |= {"pw": PURLWISE, "kw": KNITWISE, "pwise": PURLWISE, "purlwise": PURLWISE, "p-wise": PURLWISE}
_MANNERS |= {"kwise": KNITWISE, "knitwise": KNITWISE, "k-wise": KNITWISE}
_TOWARDS = {"knit": KNITWISE, "k": KNITWISE, "purl": PURLWISE, "p": PURLWISE}
_SIDES = {"front": IN_FRONT, "back": BEHIND, "behind": BEHIND}


class MannerParser(HolderWords):
    """Reads what is said of how a stitch is worked, which changes no count."""

    def _with_manner(self, stitch: Stitch) -> tuple[Stitch, str]:
        """The stitch, twisted where it is worked through the back loop, and its manner in one spelling."""
        found: set[str] = set()
        while True:
            if self.at("tbl") or self.texts(4) == ("through", "the", "back", "loop"):
                self.position += 1 if self.at("tbl") else 4
                stitch = self.words.by_spelling.get(f"{stitch.term} tbl", stitch)
            elif self.at(*_MANNERS):
                found.add(_MANNERS[self.step().text])
            elif self.texts(3) == ("as", "if", "to") and self.peek(3) in _TOWARDS:
                found.add(_TOWARDS[self.peek(3)])
                self.position += 4
            elif self.texts(2) == ("with", "yarn"):
                found.add(self._yarn_held())
            else:
                return stitch, " ".join(way for way in (PURLWISE, KNITWISE, IN_FRONT, BEHIND) if way in found)

    def _yarn_held(self) -> str:
        """ "with yarn in front", "with yarn held in back"."""
        self.position += 2
        self.skip("held", "in", "at", "to", "the")
        if not self.at(*_SIDES):
            raise self.fault("Say where the yarn is held: “with yarn in front”, “with yarn in back”.")
        return _SIDES[self.step().text]
