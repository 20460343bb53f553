"""In: nothing. Out: two needles with single loops on them, and what a pair of hands can do to them.

The table of stitches is the movements of the hands; skp, sk2p and s2kp as dummies.com has them, the others as three and
more published lists define them alike. Faces are common practice, without a source: a stitch knitted on the wrong side
shows its purl face on the right side, and a slipped stitch keeps the face it has.
"""

from collections import Counter
from dataclasses import dataclass

# What the hands do for a stitch: k and p work so many loops together, x knits so many in another order, s slips one, o
# lays the yarn over the needle, n makes a new loop out of what is there (np a purled one), < passes the loop before the
# last over it.
MOVEMENTS = {
    "k": "k1",
    "p": "p1",
    "k tbl": "k1",
    "p tbl": "p1",
    "sl": "s",
    "yo": "o",
    "k2tog": "k2",
    "p2tog": "p2",
    "k3tog": "k3",
    "p3tog": "p3",
    "ssk": "k2",
    "ssp": "p2",
    "sssk": "k3",
    "skp": "s k1 <",
    "sk2p": "s k2 <",
    "s2kp": "s s k1 < <",
    "m1": "n",
    "m1l": "n",
    "m1r": "n",
    "m1p": "np",
    "kfb": "k1 n",
    "pfb": "p1 np",
    "(k1, p1, k1)": "k1 np n",
    "C4F": "x4",
    "C6B": "x6",
    "2/2 LC": "x4",
    "RT": "x2",
    "LT": "x2",
}
FLIPPED = {"k": "p", "p": "k"}  # seen from behind; a yarn over, and a stitch cast on, look like neither


@dataclass(frozen=True, slots=True)
class Loop:
    """A stitch: "k" or "p" for the face it shows on the right side, "?" where it shows none."""

    face: str


class Marker:
    """A ring on the needle; each is its own."""


Thing = Loop | Marker


class Unworkable(Exception):  # noqa: N818 -- what a knitter says
    """The row cannot be worked: `why` is "few", "left", "repeat" or "marker", `over` the stitches that are too many."""

    def __init__(self, why: str, over: int | None = None) -> None:
        super().__init__(why)
        self.why = why
        self.over = over


class Unclear(Exception):  # noqa: N818 -- no fault of anybody's
    """The words leave open what becomes of a marker, so there is nothing to compare."""


class Needles:
    """Two needles and the yarn."""

    def __init__(self) -> None:
        self.left: list[Thing] = []  # the next one first
        self.rings = 0  # the markers among them
        self.right: list[Thing] = []
        self.wrong_side = False
        self.yarn = ""
        self.worked: Counter[str] = Counter()

    @property
    def waiting(self) -> int:
        """The loops on the left needle."""
        return len(self.left) - self.rings

    def pick(self) -> Loop:
        """The next loop, off the left needle; a marker before it is slipped."""
        if not self.waiting:
            raise Unworkable("few")
        while not isinstance(self.left[0], Loop):
            self.right.append(self.left.pop(0))
            self.rings -= 1
        loop = self.left.pop(0)
        assert isinstance(loop, Loop)
        return loop

    def together(self, how_many: int) -> None:
        """So many loops off the left needle at once; nobody knows where a marker between them goes."""
        if self.waiting < how_many:
            raise Unworkable("few")
        self.pick()
        for _ in range(how_many - 1):
            if not isinstance(self.left[0], Loop):
                raise Unclear
            self.pick()

    def put(self, face: str, yarn: str) -> None:
        """A loop of this yarn on the right needle, its face as the knitter sees it."""
        self.right.append(Loop(FLIPPED.get(face, face) if self.wrong_side else face))
        self.worked[yarn] += 1

    def move(self, movement: str, yarn: str) -> None:
        """One movement of the hands."""
        match movement[0]:
            case "k" | "p":
                self.together(int(movement[1:]))
                self.put(movement[0], yarn)
            case "x":
                self.together(int(movement[1:]))
                for _ in range(int(movement[1:])):
                    self.put("?" if self.wrong_side else "k", yarn)  # there it is called by its other face
            case "s":
                self.right.append(self.pick())
            case "o":
                self.put("?", yarn)
            case "n":
                self.put("p" if movement == "np" else "k", yarn)
            case "<":
                if len(self.right) < 2:
                    raise Unworkable("few")
                if not (isinstance(self.right[-2], Loop) and isinstance(self.right[-1], Loop)):
                    raise Unclear
                del self.right[-2]

    def stitch(self, name: str, yarn: str = "") -> None:
        """One stitch of the table."""
        for movement in MOVEMENTS[name].split():
            self.move(movement, yarn or self.yarn)
