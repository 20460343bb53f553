"""In: the tokens of a row. Out: shaping told by its place: "dec 1 st at each end", "inc 6 sts evenly across"."""

from dataclasses import replace

from sizewright.read.notation.cursor import ROW_WORDS
from sizewright.read.notation.manner_parser import MannerParser
from sizewright.read.notation.place_parser import BEGINNING_WORDS
from sizewright.read.notation.stitches import Stitch
from sizewright.read.notation.tree import Action, AtEdges, Count, Evenly, Follow, Landmark, Manner, Place, Work

_VERBS = {
    **dict.fromkeys(("inc", "increase", "increasing"), "inc"),
    **dict.fromkeys(("dec", "decrease", "decreasing"), "dec"),
}
_EDGES = ("neck", "armhole", "front", "side", "raglan", "sleeve", "outer", "inner", "shaped")


class EdgeWords(MannerParser):
    """Reads shaping whose stitches are not spelled out."""

    def shaping_words(self) -> tuple[Action, ...]:
        """The actions of a whole row; none where something else stands."""
        start = self.position
        plain = None
        if self.at("knit", "purl", "k", "p") and self.peek(1) == "," and self.peek(2) in _VERBS:
            plain = self.words.by_spelling[self.step().text]  # "Knit, decreasing 4 sts evenly"
            self.step()
        if self.at(*_VERBS) and self.peek(1) == "#":
            stitch = self.words.by_spelling[_VERBS[self.step().text]]
            count = self.count()
            self.stitch_words()
            if self.at("evenly", "spaced"):
                return (self._evenly(start, stitch, count, plain),)
            actions = () if plain is not None else self._at_edges(start, stitch, count)
            if actions:
                return actions
        self.position = start
        return ()

    def _evenly(self, start: int, stitch: Stitch, count: Count, plain: Stitch | None) -> Action:
        self.skip("evenly", "spaced", "across", "around", "over", "this", "the", *ROW_WORDS)
        return Evenly(self.since(start), stitch, count, self.place(), plain)

    def _at_edges(self, start: int, stitch: Stitch, count: Count) -> tuple[Action, ...]:
        """At one end of the row or at both; where an edge is named, which end it is changes no count."""
        self.skip("at", "the")
        both = self.at("each", "both") and self.peek(1) in ("end", "ends", "side", "sides", "edge", "edges")
        edge = self.at(*_EDGES) and self.peek(1) == "edge"
        if both or edge:
            name = "each end" if both else f"{self.token.text} edge"
            self.position += 2
        elif self.at("end", *BEGINNING_WORDS):
            edge = self.step().text == "end"
            name = "end" if edge else "beginning"
        else:
            return ()
        if self.at("of") and self.peek(1) in ("row", "rnd", "round"):
            self.position += 2
        span = self.since(start)
        shaped = Work(span, stitch, count)
        rest = self._before(count, stitch.uses) if both or edge else None
        middle = Follow(span, Manner.ANY, None, Place(Landmark.END, rest))
        actions = (shaped, middle, shaped) if both else (middle, shaped) if edge else (shaped, middle)
        return (AtEdges(span, stitch, count, name, actions),)

    def _before(self, count: Count, uses: int) -> Count:
        """The stitches that the shaping at the end of the row takes."""
        if uses == 1:
            return count
        if not isinstance(count.value, int):
            raise self.fault("Say a number that is the same in every size, or write the row out.")
        return replace(count, value=count.value * uses)
