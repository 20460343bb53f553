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

from sizewright.base.language import later, tr
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
    degrees: int = 0

    @property
    def forbids(self) -> bool:
        """Whether it says what must not be done."""
        return self.symbol.endswith(_CROSS)

    @property
    def sentence(self) -> str:
        """The whole of it, for a reader."""
        action, symbol = (tr(part, degrees=self.degrees) for part in (self.text, self.symbol))
        return tr("{action} (on a label: {symbol}).", action=action, symbol=symbol)


_TUBS = (
    (later("Wash normally, at most {degrees} °C"), later("a tub with {degrees} in it")),
    (
        later("Wash mildly, on a programme for delicates, at most {degrees} °C"),
        later("a tub with {degrees} in it, one bar under it"),
    ),
    (
        later("Wash very mildly, on a programme for wool, at most {degrees} °C"),
        later("a tub with {degrees} in it, two bars under it"),
    ),
)


def _tub(degrees: int, bars: int = 0) -> CareWord:
    return CareWord(Step.WASH, _TUBS[bars][0], _TUBS[bars][1], degrees)


def _iron(degrees: int, symbol: str) -> CareWord:
    return CareWord(Step.IRON, later("Iron at most at {degrees} °C"), symbol, degrees)


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
        "wash by hand": CareWord(Step.WASH, later("Wash by hand, at most 40 °C"), later("a tub with a hand in it")),
        "do not wash": CareWord(Step.WASH, later("Do not wash"), later("a tub, crossed out")),
        "bleach": CareWord(Step.BLEACH, later("Any bleach may be used"), later("an empty triangle")),
        "oxygen bleach only": CareWord(
            Step.BLEACH, later("Bleach without chlorine only"), later("a triangle with two slanting lines")
        ),
        "do not bleach": CareWord(Step.BLEACH, later("Do not bleach"), later("a triangle, crossed out")),
        "tumble dry": CareWord(
            Step.TUMBLE, later("Tumble dry, at most 80 °C"), later("a circle with two dots in a square")
        ),
        "tumble dry low": CareWord(
            Step.TUMBLE, later("Tumble dry low, at most 60 °C"), later("a circle with one dot in a square")
        ),
        "do not tumble dry": CareWord(
            Step.TUMBLE, later("Do not tumble dry"), later("a circle in a square, crossed out")
        ),
        "line dry": CareWord(Step.DRY, later("Dry on a line"), later("a square with one upright line")),
        "drip line dry": CareWord(
            Step.DRY, later("Dry on a line without wringing"), later("a square with two upright lines")
        ),
        "dry flat": CareWord(Step.DRY, later("Dry flat"), later("a square with one level line")),
        "drip dry flat": CareWord(Step.DRY, later("Dry flat without wringing"), later("a square with two level lines")),
        "iron low": _iron(110, later("an iron with one dot")),
        "iron medium": _iron(150, later("an iron with two dots")),
        "iron high": _iron(200, later("an iron with three dots")),
        "do not iron": CareWord(Step.IRON, later("Do not iron"), later("an iron, crossed out")),
        "dry clean": CareWord(Step.PROFESSIONAL, later("May be dry cleaned"), later("a circle with P in it")),
        "wet clean": CareWord(
            Step.PROFESSIONAL, later("May be wet cleaned by a professional"), later("a circle with W in it")
        ),
        "do not dry clean": CareWord(Step.PROFESSIONAL, later("Do not dry clean"), later("a circle, crossed out")),
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
