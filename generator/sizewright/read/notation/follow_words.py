"""In: the tokens of a row. Out: stitches told by those below them: as they appear, the opposite, in pattern."""

from sizewright.read.notation.edge_words import EdgeWords
from sizewright.read.notation.tree import Action, Count, Follow, Landmark, Manner, Place

_AS_THEY_APPEAR = (
    ("knit", "the", "knits", "and", "purl", "the", "purls"),
    ("k", "the", "k", "sts", "and", "p", "the", "p", "sts"),
    ("k", "the", "knits", "and", "p", "the", "purls"),
    ("work", "sts", "as", "they", "appear"),
    ("work", "stitches", "as", "they", "appear"),
    ("as", "they", "appear"),
    ("work", "all", "sts", "as", "they", "appear"),
)
_OPPOSITE = (
    ("purl", "the", "knits", "and", "knit", "the", "purls"),
    ("p", "the", "k", "sts", "and", "k", "the", "p", "sts"),
    ("knit", "the", "purls", "and", "purl", "the", "knits"),
)
RIBS = ("rib", "ribbing")
_FOLLOW = (
    ("work", "in", "pattern"),
    ("work", "in", "patt"),
    ("work", "as", "established"),
    ("work", "in", "patterns"),
    ("work", "in", "patts"),
    ("in", "pattern"),
    ("pattern",),
    ("patt",),
    *(("work", *lead, rib, "as", how) for lead in (("in",), ()) for rib in RIBS for how in ("set", "established")),
    ("work",),
)


class FollowWords(EdgeWords):
    """Reads stitches that are not spelled out."""

    def _follow(self) -> Action | None:
        """Stitches that are not spelled out: as they appear, the opposite, or in the pattern going on."""
        start = self.position
        for phrases, manner in ((_AS_THEY_APPEAR, Manner.AS_THEY_APPEAR), (_OPPOSITE, Manner.OPPOSITE)):
            if self.phrase(phrases) is not None:
                count = self._over_next()
                if count is not None:
                    return Follow(self.since(start), manner, count)
                _, _, place = self.extent(more=False)
                return Follow(self.since(start), manner, None, place or Place(Landmark.END))
        if self.phrase(_FOLLOW) is None:
            return None
        count = self.count() if self.number_ahead() else None
        self.stitch_words()
        self.skip("in", "pattern", "patt", "patterns", "patts", "as", "established", "est", "set", "even")
        if count is not None:
            return Follow(self.since(start), Manner.ANY, count)
        _, _, place = self.extent(more=False)
        return Follow(self.since(start), Manner.ANY, None, place or Place(Landmark.END))

    def _over_next(self) -> Count | None:
        """ "over the next 5 sts"."""
        if not self.at("over", "for"):
            return None
        self.step()
        self.skip("the", "next")
        count = self.count()
        self.stitch_words()
        return count
