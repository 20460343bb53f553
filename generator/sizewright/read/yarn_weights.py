"""The yarn weight system, one table: the words a header may use for a yarn's weight, and what each knits to.

Source: Craft Yarn Council, Standard Yarn Weight System, as reprinted by 222handspun.com ("Standards") and sconch.com
("conversion charts"). Gauges are stockinette stitches over 4 in; needles in mm. Ranges touch and overlap, so one gauge
may belong to two weights.
"""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class YarnWeight:
    """One class of yarn; the ranges are inclusive, None where the standard leaves the side open."""

    number: int
    name: str
    yarns: str
    stitches: tuple[int | None, int]
    needle: tuple[Fraction, Fraction | None]


def _weight(number: int, name: str, yarns: str, stitches: tuple[int | None, int], *needle: str | None) -> YarnWeight:
    low, high = (Fraction(mm) if mm else None for mm in needle)
    return YarnWeight(number, name, yarns, stitches, (low or Fraction(0), high))


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
