"""In: the lines of `care:`. Out: what a care label says by symbols, in words and in its order, and the designer's own.

Which symbols there are, what bars, dots and numbers mean, and their order on a label: ISO 3758:2012 (as told by
ozdenim.com, gestuz.com and doublered.eu; the order, the lines in the square and the heat of dryers from memory).
The words that name them are plain English and ours.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import IntEnum
from types import MappingProxyType

from sizewright.read.inserts import Words

_CROSS = "crossed out"


class Step(IntEnum):
    """What a symbol speaks of, in the order of a label; tumble and other drying are two squares side by side."""

    WASH = 0
    BLEACH = 1
    TUMBLE = 2
    DRY = 3
    IRON = 4
    PROFESSIONAL = 5


@dataclass(frozen=True, slots=True)
class CareWord:
    """A symbol: what it speaks of, what it says, and what it looks like."""

    step: Step
    text: str
    symbol: str

    @property
    def forbids(self) -> bool:
        """Whether it says what must not be done."""
        return self.symbol.endswith(_CROSS)

    @property
    def sentence(self) -> str:
        """The whole of it, for a reader."""
        return f"{self.text} (on a label: {self.symbol})."


def _tub(degrees: int, bars: int = 0) -> CareWord:
    action = ("normally", "mildly, on a programme for delicates", "very mildly, on a programme for wool")[bars]
    under = ("", ", one bar under it", ", two bars under it")[bars]
    return CareWord(Step.WASH, f"Wash {action}, at most {degrees} °C", f"a tub with {degrees} in it{under}")


def _iron(degrees: int, dots: str) -> CareWord:
    return CareWord(Step.IRON, f"Iron at most at {degrees} °C", f"an iron with {dots}")


CARE_WORDS: Mapping[str, CareWord] = MappingProxyType(
    {
        "wash 30": _tub(30),
        "wash 30 mild": _tub(30, 1),
        "wash 30 very mild": _tub(30, 2),
        "wash 40": _tub(40),
        "wash 40 mild": _tub(40, 1),
        "wash 40 very mild": _tub(40, 2),
        "wash 60": _tub(60),
        "wash 60 mild": _tub(60, 1),
        "wash 95": _tub(95),
        "wash by hand": CareWord(Step.WASH, "Wash by hand, at most 40 °C", "a tub with a hand in it"),
        "do not wash": CareWord(Step.WASH, "Do not wash", f"a tub, {_CROSS}"),
        "bleach": CareWord(Step.BLEACH, "Any bleach may be used", "an empty triangle"),
        "oxygen bleach only": CareWord(
            Step.BLEACH, "Bleach without chlorine only", "a triangle with two slanting lines"
        ),
        "do not bleach": CareWord(Step.BLEACH, "Do not bleach", f"a triangle, {_CROSS}"),
        "tumble dry": CareWord(Step.TUMBLE, "Tumble dry, at most 80 °C", "a circle with two dots in a square"),
        "tumble dry low": CareWord(Step.TUMBLE, "Tumble dry low, at most 60 °C", "a circle with one dot in a square"),
        "do not tumble dry": CareWord(Step.TUMBLE, "Do not tumble dry", f"a circle in a square, {_CROSS}"),
        "line dry": CareWord(Step.DRY, "Dry on a line", "a square with one upright line"),
        "drip line dry": CareWord(Step.DRY, "Dry on a line without wringing", "a square with two upright lines"),
        "dry flat": CareWord(Step.DRY, "Dry flat", "a square with one level line"),
        "drip dry flat": CareWord(Step.DRY, "Dry flat without wringing", "a square with two level lines"),
        "iron low": _iron(110, "one dot"),
        "iron medium": _iron(150, "two dots"),
        "iron high": _iron(200, "three dots"),
        "do not iron": CareWord(Step.IRON, "Do not iron", f"an iron, {_CROSS}"),
        "dry clean": CareWord(Step.PROFESSIONAL, "May be dry cleaned", "a circle with P in it"),
        "wet clean": CareWord(Step.PROFESSIONAL, "May be wet cleaned by a professional", "a circle with W in it"),
        "do not dry clean": CareWord(Step.PROFESSIONAL, "Do not dry clean", f"a circle, {_CROSS}"),
    }
)


def care_word(line: Words) -> CareWord | None:
    """The symbol that a line names, capitals and a full stop aside; None for a line in words of the designer's own."""
    return CARE_WORDS.get(re.sub(r"\s+", " ", line.text.casefold().strip(" .")))


def care_lines(lines: Iterable[Words]) -> tuple[str, ...]:
    """What a reader is told: symbols in the order of a label, then the designer's own words."""
    symbols, own = list[CareWord](), list[str]()
    for line in lines:
        word = care_word(line)
        if word is None:
            own.append(line.text)
        else:
            symbols.append(word)
    return (*(word.sentence for word in sorted(symbols, key=lambda word: word.step)), *own)
