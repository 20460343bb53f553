"""The stitches of the trade, one table: their spellings, how many stitches each takes and leaves, and its look.

A look is one letter a stitch left on the needle, as seen from the right side when worked on the right side. Sources:
abbreviations and effects that three and more published lists define alike; skp, sk2p and s2kp as dummies.com has them.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from sizewright.read.term import Term


@dataclass(frozen=True, slots=True)
class Stitch:
    """One stitch: what it takes from the left needle, and the look of what it leaves on the right one.

    `counted` says whether a number behind it repeats it ("k3"); in "k2tog" the number is part of the name.
    """

    term: str
    uses: int
    looks: str
    spellings: tuple[str, ...]
    counted: bool = False

    @property
    def numbered(self) -> bool:
        """Whether the trade writes a number even behind one of it ("k1", "sl 1", but "yo")."""
        return self.term in _NUMBERED

    @property
    def makes(self) -> int:
        """The stitches it leaves."""
        return len(self.looks)

    @property
    def worked(self) -> int:
        """Those of them that take yarn; a slipped stitch takes none."""
        return 0 if self.looks == "s" else len(self.looks)


_NUMBERED = ("k", "p", "k tbl", "p tbl", "sl", "inc", "dec")


def _s(term: str, uses: int, looks: str, *spellings: str, counted: bool = False) -> Stitch:
    return Stitch(term, uses, looks, (term, *spellings), counted)


# Looks: k knit, p purl, K and P the same twisted, o yarn over, / \ ^ decreases leaning right, left and centred (with a
# knit face), d D v the same with a purl face, i an increase, I one with a purl face, s slipped, S slipped with a purl
# face, c part of a cable.
STITCHES = (
    _s("k", 1, "k", "knit", "plain", counted=True),
    _s("p", 1, "p", "purl", "pearl", counted=True),
    _s("k tbl", 1, "K", "ktbl", "k1tbl", "k1b", "twisted knit", counted=True),
    _s("p tbl", 1, "P", "ptbl", "p1tbl", "twisted purl", counted=True),
    _s("sl", 1, "s", "slip", counted=True),
    _s(
        "yo",
        0,
        "o",
        "yfwd",
        "yrn",
        "yon",
        "yfrn",
        "yarn over",
        "over",
        "yf",
        "yfd",
        "yarn forward",
        "yarn round needle",
        "wool forward",
        "bring the thread forward",
        "bring the silk forward",
        counted=True,
    ),
    _s("k2tog", 2, "/", "k2 tog", "knit 2 together", "k2-tog", "narrow"),
    _s("k2tog tbl", 2, "\\", "k2togtbl"),
    _s("p2tog", 2, "d", "p2 tog", "purl 2 together"),
    _s("p2tog tbl", 2, "D", "p2togtbl"),
    _s("k3tog", 3, "/", "k3 tog", "knit 3 together"),
    _s("k3tog tbl", 3, "\\", "k3togtbl"),
    _s("p3tog", 3, "d", "p3 tog", "purl 3 together"),
    _s("k4tog", 4, "/", "k4 tog"),
    _s("p4tog", 4, "d", "p4 tog"),
    _s("k5tog", 5, "/", "k5 tog"),
    _s("p5tog", 5, "d", "p5 tog"),
    _s("ssk", 2, "\\"),
    _s("ssp", 2, "D"),
    _s("sssk", 3, "\\"),
    _s("sssp", 3, "D"),
    _s("skp", 2, "\\", "skpo", "sl1-k1-psso"),
    _s("sk2p", 3, "\\", "sk2po", "sl1-k2tog-psso"),
    _s("s2kp", 3, "^", "s2kpo", "cdd", "sl2-k1-p2sso", "s2kp2", "s2k1p2"),
    _s("m1", 0, "i", "m1k", "make 1", "make one", counted=True),
    _s("m1l", 0, "i", "m1-l", counted=True),
    _s("m1r", 0, "i", "m1-r", counted=True),
    _s("m1p", 0, "I", "m1-p", counted=True),
    _s("m1lp", 0, "I", "m1l-p", "m1pl", counted=True),
    _s("m1rp", 0, "I", "m1r-p", "m1pr", counted=True),
    _s("kfb", 1, "ki", "kf&b", "k1fb", "k1f&b", counted=True),
    _s("pfb", 1, "pI", "pf&b", "p1fb", counted=True),
    _s("kfbf", 1, "kii"),
    _s("inc", 1, "ki", "increase", counted=True),
    _s("dec", 2, "/", "decrease", counted=True),
    _s("RT", 2, "cc", "right twist"),
    _s("LT", 2, "cc", "left twist"),
    _s(
        "make double st",
        1,
        "s",
        "mds",
        "m-ds",
        "make ds",
        "make double stitch",
        "make a double stitch",
        "ds",
        "make a double st",
    ),
    _s("mb", 1, "k", "make bobble", "bobble"),
)

# The ways into and out of these are words of their own in a row.
PASS_OVER = {"psso": 1, "p2sso": 2}


class Vocabulary:
    """The stitches a source may use, by every spelling, the studio's own among them, told as terms or as stitches."""

    def __init__(self, terms: Iterable[Term] = (), own: Iterable[Stitch] = ()) -> None:
        told = tuple(
            Stitch(term.term, term.uses, "k" * term.makes, term.spellings)
            for term in terms
            if term.uses is not None and term.makes is not None
        )
        known = {spelling.casefold(): stitch for stitch in (*own, *STITCHES, *told) for spelling in stitch.spellings}
        self.by_spelling: Mapping[str, Stitch] = MappingProxyType(known)
        self.longest = max(len(spelling.split()) for spelling in known)
        counted = sorted({word for word, stitch in known.items() if stitch.counted and " " not in word}, key=len)
        self._glued = re.compile(
            rf"(?P<word>{'|'.join(map(re.escape, reversed(counted)))})(?P<count>\d{{1,5}})(?P<tbl>tbl)?"
        )

    def glued(self, word: str) -> tuple[Stitch, int] | None:
        """The stitch and the count of a word such as "k12" or "sl1"; None where it is none."""
        found = self._glued.fullmatch(word.casefold())
        stitch = self.by_spelling.get(found["word"] + (found["tbl"] or "")) if found else None
        return (stitch, int(found["count"])) if found and stitch else None
