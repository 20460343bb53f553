"""In: a text. Out: the measures typed in it twice, in metric and imperial, value by value.

"10 cm / 4 in", "4 in (10 cm)", "4 (4½, 5) in / 10 (11.5, 12.5) cm", "100 g (3.5 oz)", "112 m / 122 yd".
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.units import Unit, unit_named
from sizewright.read.typed_numbers import exact

_NUMBER = r"(?:\d+\s\d+/[1-9]\d*|\d+(?:\.\d+)?\s?[¼½¾⅓⅔⅛⅜⅝⅞]|[¼½¾⅓⅔⅛⅜⅝⅞]|\d+/[1-9]\d*|\d+(?:\.\d+)?)"
_LIST = rf"{_NUMBER}(?:\s?\(\s*{_NUMBER}(?:\s*[,:;]\s*{_NUMBER})*\s*\))?"
_METRIC = r"mm|cm|centimet(?:re|er)s?|m|met(?:re|er)s?|g|grams?"
_IMPERIAL = r"in|inch(?:es)?|[\"”″]|yds?|yards?|oz|ounces?"
_JOINT = r"\s*(?:[/=]|[(\[]|or\b)\s*(?:=|about\b|approx(?:imately)?\b\.?|ca\.|or\b|/)?\s*"
_SIGNS = frozenset('"”″')
_VALUES = re.compile(_NUMBER)


def _pair(one: str, two: str) -> re.Pattern[str]:
    measure = r"({})[\s-]?({})(?![\w²])\.?"
    return re.compile(rf"(?<![\w.,/–-]){measure.format(_LIST, one)}{_JOINT}{measure.format(_LIST, two)}")


_METRIC_FIRST, _IMPERIAL_FIRST = _pair(_METRIC, _IMPERIAL), _pair(_IMPERIAL, _METRIC)


@dataclass(frozen=True, slots=True)
class Typed:
    """One or more values, one a size, in the unit they were typed in."""

    values: tuple[Fraction, ...]
    unit: Unit


@dataclass(frozen=True, slots=True)
class Pair:
    """One measure in both systems; `start` and `end` are its offsets in the text."""

    start: int
    end: int
    metric: Typed
    imperial: Typed


def pairs(text: str) -> Iterator[Pair]:
    """Every measure that is typed in both systems, with as many values in the one as in the other."""
    end = 0
    for found in sorted((*_METRIC_FIRST.finditer(text), *_IMPERIAL_FIRST.finditer(text)), key=re.Match.start):
        one, two = _typed(found[1], found[2]), _typed(found[3], found[4])
        metric, imperial = (one, two) if found.re is _METRIC_FIRST else (two, one)
        if metric is not None and imperial is not None and _alike(metric, imperial) and found.start() >= end:
            bracket = text[found.end() : found.end() + 1] in (")", "]")
            end = found.end() + (bracket and "(" in text[found.end(2) : found.start(3)])
            yield Pair(found.start(), end, metric, imperial)


def _typed(values: str, unit: str) -> Typed | None:
    known = unit_named("in" if unit in _SIGNS else unit)
    return Typed(tuple(exact(" ".join(value.split())) for value in _VALUES.findall(values)), known) if known else None


def _alike(metric: Typed, imperial: Typed) -> bool:
    return metric.unit.dimension == imperial.unit.dimension and len(metric.values) == len(imperial.values)
