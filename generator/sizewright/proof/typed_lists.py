"""In: a graded pattern. Out: the bracket lists typed in its text, with what they measure, beside the computed numbers.

Only lists that are surely a count or a length are looked at, with one value a size, of which two differ and none is
small: "2 (3, 4)" may be anything.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.place import Span
from sizewright.base.units import COUNTS, LENGTH, unit_named
from sizewright.grade.graded import Graded, Named, Values
from sizewright.proof.wording import Wording
from sizewright.read.instructions import TYPED_LIST
from sizewright.read.typed_numbers import exact

_UNIT = re.compile(r"[ \t-]?(sts|st|stitches|rows?|rnds?|rounds?|cm|inches|in)\b")
_VALUE = re.compile(r"\d+ \d+/\d+|(?:\d+ ?)?[¼½¾⅓⅔⅛⅜⅝⅞]|\d+\.\d+|\d+")
_SMALL = 8  # stitches or rows; a list of fewer is like another by chance


@dataclass(frozen=True, slots=True)
class MeasuredList:
    """A typed list that is surely a count or a length: its values, one a size, in base units."""

    span: Span
    text: str
    values: Values


@dataclass(frozen=True, slots=True)
class TypedNumbers:
    """A typed list, and the quantities of the same kind with the sizes, by place, in which each differs from it."""

    span: Span
    text: str
    beside: tuple[tuple[Named, tuple[int, ...]], ...]


def typed_lists(graded: Graded) -> Iterator[TypedNumbers]:
    """The lists typed in the text and the instructions of a pattern that works out numbers."""
    named = [one for one in graded.quantities.values() if one.formula is not None]
    for typed in measured_lists(graded) if named else ():
        alike = (one for one in named if one.result.dimension == typed.values.dimension)
        beside = tuple((one, _differing(one, typed.values.values)) for one in alike)
        yield TypedNumbers(typed.span, typed.text, beside)


def measured_lists(graded: Graded) -> Iterator[MeasuredList]:
    """The lists typed in the text and the instructions of a pattern of several sizes."""
    if len(graded.sizes) < 2:
        return
    wording = Wording.of(graded.pattern)
    for found in TYPED_LIST.finditer(wording.body):
        unit = _UNIT.match(wording.body, found.end())
        known = unit_named(unit[1]) if unit else None
        values = tuple(exact(value) for value in _VALUE.findall(found.group()))
        if known is None or len(values) != len(graded.sizes) or len(set(values)) < 2:
            continue
        if known.dimension not in (*COUNTS, LENGTH) or (known.dimension != LENGTH and min(values) < _SMALL):
            continue
        own = tuple(value * known.factor for value in values)
        yield MeasuredList(wording.span(found), found.group(), Values(known.dimension, own, own))


def _differing(named: Named, values: tuple[Fraction, ...]) -> tuple[int, ...]:
    return tuple(at for at, (one, two) in enumerate(zip(named.result.values, values, strict=True)) if one != two)
