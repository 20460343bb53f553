"""The yarn weight system, one table: the words a header may use for a yarn's weight, and what each knits to.

Source: Craft Yarn Council, Standard Yarn Weight System, as reprinted by 222handspun.com ("Standards") and sconch.com
("conversion charts"). Gauges are stockinette stitches over 4 in; needles in mm. Ranges touch and overlap, so one gauge
may belong to two weights.
"""

import re
from dataclasses import dataclass
from fractions import Fraction

SOURCE = "the Standard Yarn Weight System of the Craft Yarn Council"


@dataclass(frozen=True, slots=True)
class YarnWeight:
    """One class of yarn; the ranges are inclusive, None where the standard leaves the side open.

    `yarns` are the names such yarn is sold under. `guideline` is whether the standard gives the stitches as a
    guideline only, since such yarn is often knitted much looser.
    """

    number: int
    name: str
    yarns: tuple[str, ...]
    stitches: tuple[int | None, int]
    needle: tuple[Fraction, Fraction | None]
    guideline: bool


def _weight(number: int, name: str, yarns: str, stitches: tuple[int | None, int], *needle: str | None) -> YarnWeight:
    low, high = (Fraction(mm) if mm else None for mm in needle)
    return YarnWeight(
        number, name, tuple(yarns.split(", ")), stitches, (low or Fraction(0), high), guideline=name == "lace"
    )


YARN_WEIGHTS = (
    _weight(0, "lace", "fingering, 10-count crochet thread", (33, 40), "1.5", "2.25"),
    _weight(1, "super fine", "sock, fingering, baby", (27, 32), "2.25", "3.25"),
    _weight(2, "fine", "sport, baby", (23, 26), "3.25", "3.75"),
    _weight(3, "light", "DK, light worsted", (21, 24), "3.75", "4.5"),
    _weight(4, "medium", "worsted, afghan, aran", (16, 20), "4.5", "5.5"),
    _weight(5, "bulky", "chunky, craft, rug", (12, 15), "5.5", "8"),
    _weight(6, "super bulky", "super bulky, roving", (7, 11), "8", "12.75"),
    _weight(7, "jumbo", "jumbo, roving", (None, 6), "12.75", None),
)

# Names that are not in the standard's table, and which of its names they are (from memory: British and Australian).
_ALSO = {"double knitting": "dk", "double knit": "dk", "4 ply": "sock", "8 ply": "dk", "10 ply": "aran"}


def weight_named(text: str) -> YarnWeight | None:
    """The weight that a standard name ("light", "Super-Fine") or number ("3") means; None for every other word."""
    words = _folded(text)
    return next((weight for weight in YARN_WEIGHTS if words in (weight.name, str(weight.number))), None)


def weights_sold_as(text: str) -> tuple[YarnWeight, ...]:
    """The weights that a name of the shops ("worsted", "DK yarn") may stand for; some stand for two."""
    words = re.sub(r" (?:weight|yarn)$", "", _folded(text))
    words = _ALSO.get(words, words)
    return tuple(weight for weight in YARN_WEIGHTS if words == weight.name or words in map(_folded, weight.yarns))


def _folded(text: str) -> str:
    return " ".join(re.split(r"[\s_-]+", text.casefold().strip()))
