"""A measure typed in both systems that is not the same in the one and in the other.

**Why it matters.** Half of the readers measure in inches. Where “10 cm (5 in)” stands, half of them knit another size.
Each side may be rounded, to 0.5 cm and to ¼ in, to whole metres and yards (and one in a hundred), to whole grams and
tenths of an ounce. So “10 cm / 4 in” passes, as the trade has it, and so do the lengths that circular needles are sold
under.

**Example.** `Work until piece measures 10 cm (5 in).`

**Instead.** `Work until piece measures 10 cm (4 in).`, or `{depth}`, which prints both.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from types import MappingProxyType

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.place import Span
from sizewright.base.printing import as_text, decimal, printed
from sizewright.base.units import LENGTH, MASS
from sizewright.proof.pairs import Pair, pairs
from sizewright.proof.telling import by_size
from sizewright.proof.wording import Wording, header_words
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("units-apart", Level.WARNING, __doc__)

# How far each side may have been rounded, in cm or g: half the step of the trade's printed numbers.
_HALF_STEP: Mapping[str, Fraction] = MappingProxyType(
    {
        "millimetre": Fraction(1, 20),
        "centimetre": Fraction(1, 4),
        "metre": Fraction(50),
        "inch": Fraction(1, 8) * Fraction("2.54"),
        "yard": Fraction(1, 2) * Fraction("91.44"),
        "gram": Fraction(1, 2),
        "ounce": Fraction(1, 20) * Fraction("28.3495"),
    }
)
_SHORT = {"inch": "in", "yard": "yd", "ounce": "oz"}
_LABELS = ("metre", "yard")  # of yarn: round numbers, so one in a hundred more
# The lengths circular needles are sold under, in cm and in (common practice, from memory).
_CABLES = tuple(
    (Fraction(cm), Fraction(inches))
    for cm, inches in ((40, 16), (50, 20), (60, 24), (80, 32), (100, 40), (120, 47), (120, 48), (150, 60))
)
_NEEDLE = re.compile(r"\b(?:circulars?|needles?|cables?|cords?)\b", re.I)
_NEAR = 60  # signs


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each pair that rounding does not explain."""
    pattern, sizes = worked.graded.pattern, worked.graded.sizes
    wording = Wording.of(pattern)
    for pair in pairs(wording.body):
        yield from _judged(wording.body, pair, wording.lines.span(pair.start, pair.end), sizes)
    for words in header_words(pattern.header):
        for pair in pairs(words.text):
            yield from _judged(words.text, pair, words.span, sizes)


def _judged(text: str, pair: Pair, span: Span, sizes: Sequence[str]) -> Iterator[Finding]:
    apart = [at for at in range(len(pair.metric.values)) if not _close(pair, at) and not _of_needle(text, pair, at)]
    if not apart:
        return
    named = len(pair.metric.values) == len(sizes)
    told = by_size((sizes[at] if named else "", _said(pair, at)) for at in apart)
    message = f"“{' '.join(text[pair.start : pair.end].split())}” is not the same in both systems: {told}."
    concerned = tuple(sizes[at] for at in apart) if named else ()
    yield RULE.at(span, message, "Mend the one or the other; a name in braces prints both by itself.", concerned)


def _close(pair: Pair, at: int) -> bool:
    names = (pair.metric.unit.name, pair.imperial.unit.name)
    metric = pair.metric.values[at] * pair.metric.unit.factor
    allowed = sum((_HALF_STEP[name] for name in names), Fraction(0))
    if any(name in _LABELS for name in names):
        allowed += metric / 100
    return abs(metric - pair.imperial.values[at] * pair.imperial.unit.factor) <= allowed


def _of_needle(text: str, pair: Pair, at: int) -> bool:
    """Whether these are the two names of one length of circular needle."""
    around = text[max(0, pair.start - _NEAR) : pair.end + _NEAR]
    lengths = (pair.metric.values[at], pair.imperial.values[at])
    return lengths in _CABLES and bool(_NEEDLE.search(around))


def _said(pair: Pair, at: int) -> str:
    """The imperial value, and what it is in metric: "5 in is 12.5 cm"."""
    value, dimension = pair.imperial.values[at] * pair.imperial.unit.factor, pair.metric.unit.dimension
    style = {LENGTH: "long" if pair.metric.unit.name in _LABELS else "cm", MASS: "g"}[dimension]
    metric = as_text(printed((value,), dimension, style)[:1])
    return f"{decimal(pair.imperial.values[at])} {_SHORT[pair.imperial.unit.name]} is {metric}"
