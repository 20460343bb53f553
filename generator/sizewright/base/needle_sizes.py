"""The published needle sizes, one table: a needle in mm, and the US and UK labels it is sold under.

Sources, which agree on what stands here: knitproblog.blogspot.com (2024), sarahmaker.com, pattern-duchess.com and, for
the UK, soozintheshed.blogspot.com (2015). Millimetres are the only safe key: US 1 and 2 are not the same needle with
every maker (lindysknitslaces.com, 2009), and the sources differ on US 17 (12, 12.5 or 12.75 mm), so those three needles
have no label here.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class NeedleSize:
    """One needle: its thickness in mm, and its US and UK labels, "" where it has none."""

    mm: Fraction
    us: str
    uk: str

    def label(self, system: str) -> str:
        """Its label in the "US" or "UK" system, "" where it has none there."""
        return self.us if system == "US" else self.uk


SYSTEMS = ("US", "UK")

_TABLE = (
    ("2", "0", "14"),
    ("2.25", "1", "13"),
    ("2.5", "1.5", ""),
    ("2.75", "2", "12"),
    ("3", "2.5", "11"),
    ("3.25", "3", "10"),
    ("3.5", "4", ""),
    ("3.75", "5", "9"),
    ("4", "6", "8"),
    ("4.5", "7", "7"),
    ("5", "8", "6"),
    ("5.5", "9", "5"),
    ("6", "10", "4"),
    ("6.5", "10.5", "3"),
    ("7", "", "2"),
    ("7.5", "", "1"),
    ("8", "11", "0"),
    ("9", "13", "00"),
    ("10", "15", "000"),
    ("12", "", ""),
    ("12.5", "", ""),
    ("12.75", "", ""),
    ("15", "19", ""),
    ("19", "35", ""),
    ("20", "36", ""),
    ("25", "50", ""),
)

NEEDLE_SIZES: Mapping[Fraction, NeedleSize] = MappingProxyType(
    {Fraction(mm): NeedleSize(Fraction(mm), us, uk) for mm, us, uk in _TABLE}
)

# Labels that are not in the table. US 00 and 000 are thin needles, UK 00 and 000 thick ones: US 000 is the thin end of
# lace in the yarn standard (read/yarn_weights.py), US 00 is from memory. The others are each on several needles: this
# is published (above); which needles bear US 1 and 2 is from memory: their neighbours.
_BESIDE: Mapping[tuple[str, str], tuple[Fraction, ...]] = MappingProxyType(
    {
        ("US", "000"): (Fraction("1.5"),),
        ("US", "00"): (Fraction("1.75"),),
        ("US", "1"): (Fraction("2.25"), Fraction("2.5")),
        ("US", "2"): (Fraction("2.75"), Fraction(3)),
        ("US", "17"): (Fraction(12), Fraction("12.5"), Fraction("12.75")),
    }
)


def labelled(system: str, label: str) -> tuple[Fraction, ...]:
    """The needles, in mm, that bear a label of the "US" or "UK" system; none where no table has it."""
    beside = _BESIDE.get((system, label))
    if beside is not None:
        return beside
    return tuple(size.mm for size in NEEDLE_SIZES.values() if label and size.label(system) == label)
