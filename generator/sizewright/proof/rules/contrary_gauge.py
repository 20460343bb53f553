"""A gauge told in the text that is none of the gauges of the header.

**Why it matters.** All numbers are worked out from the header. A reader who swatches to the other gauge, which was
that of an earlier version, knits another size.

**Example.** `stitches: 22 st / 10 cm` in the header, and in the text “24 sts and 30 rows in 10 cm”

**Instead.** `{stitch_gauge}`, which prints the one of the header.
"""

import re
from collections.abc import Iterator
from fractions import Fraction

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.units import unit_named
from sizewright.proof.wording import Wording
from sizewright.read.pattern import Gauge
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("contrary-gauge", Level.WARNING, __doc__)

_NUMBER = r"(\d+(?:\.\d+)?)"
_GAUGE = re.compile(
    rf"{_NUMBER}\s(?:sts|stitches)(?:\s(?:and|x|×|by|,)\s{_NUMBER}\s(?:rows|rnds|rounds))?"
    rf"\s*(?:=|/|to|per|in|over|is|are)\s*(?:the\s|each\s|every\s)?{_NUMBER}\s?(cm|in|inches|\")(?!\w)",
    re.I,
)
_TRADE_PAIR = {Fraction(4): Fraction(10), Fraction(2): Fraction(5), Fraction(1): Fraction("2.5")}  # inches, cm


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each told gauge that is not one of the header."""
    gauges = worked.graded.pattern.header.gauges
    wording = Wording.of(worked.graded.pattern)
    for found in _GAUGE.finditer(wording.prose) if gauges else ():
        if not any(_same(found, gauge) for gauge in gauges):
            message = f"“{' '.join(found.group().split())}” is told here, and is no gauge of the header."
            yield RULE.at(
                wording.span(found), message, "Mend the one or the other; “{stitch_gauge}” prints the header's."
            )


def _same(found: re.Match[str], gauge: Gauge) -> bool:
    counts = ((found[1], gauge.stitches), (found[2], gauge.rows))
    return all(
        measure is not None and any(Fraction(count) / length == measure.quantity.value for length in _lengths(found))
        for count, measure in counts
        if count is not None
    )


def _lengths(found: re.Match[str]) -> Iterator[Fraction]:
    """The length in cm, and the one the trade takes for the same: 10 cm for 4 in."""
    unit = unit_named(found[4])
    value = Fraction(found[3])
    if unit is not None:
        yield value * unit.factor
        if unit.name == "inch" and value in _TRADE_PAIR:
            yield _TRADE_PAIR[value]
        if unit.name == "centimetre":
            yield from (inches * Fraction("2.54") for inches, cm in _TRADE_PAIR.items() if cm == value)
