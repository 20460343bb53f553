"""In: "until piece measures ..." and the rows worked so far. Out: how many rows that are, by the row gauge."""

import re
from fractions import Fraction
from math import floor

from sizewright.base.units import LENGTH, ROW_GAUGE, unit_named
from sizewright.grade.graded import Graded, Values
from sizewright.read.inserts import Insert
from sizewright.read.notation.direction_tree import Extent
from sizewright.read.typed_numbers import exact
from sizewright.work.counts import Counts
from sizewright.work.faults import NoLength, Stopped

_TYPED = re.compile(r"(?P<number>.*?) ?(?P<unit>[a-z]+|″|\")?$", re.IGNORECASE)


class Lengths:
    """Turns lengths into rows, in one size. A pattern without a row gauge has no rows to a length."""

    def __init__(self, graded: Graded, counts: Counts) -> None:
        self._graded = graded
        self._counts = counts

    def rows(self, extent: Extent, part: str) -> tuple[int, Fraction] | None:
        """The rows that a length takes, to the nearest whole, and the length in cm; None where there is no row gauge.

        `part` are the words of the part that is worked; a gauge named in them is used where a pattern has several.
        """
        length = self._length(extent)
        gauge = self.gauge(part)[1]
        return None if length is None or gauge is None else (floor(length * gauge + Fraction(1, 2)), length)

    def measured(self, rows: int, part: str) -> Fraction | None:
        """The length of so many rows in cm; None where there is no row gauge."""
        gauge = self.gauge(part)[1]
        return None if not gauge else rows / gauge

    def gauge(self, part: str) -> tuple[str, Fraction | None]:
        """The row gauge of a part by its name in formulas, and in rows to the cm; "" and None where there is none."""
        gauges = {
            name: named.result.values[self._counts.size]
            for name, named in self._graded.quantities.items()
            if named.formula is None and named.result.dimension == ROW_GAUGE
        }
        meant = [name for name in gauges if name.split(".")[0].casefold() in part.casefold()]
        name = next(iter(meant or gauges), "")
        return name, gauges.get(name)

    def _no_length(self, insert: Insert, values: Values) -> NoLength:
        size = self._counts.size
        return NoLength(insert.span, size, insert.formula.text, values.values[size], values.dimension)

    def _length(self, extent: Extent) -> Fraction | None:
        if isinstance(extent.length, Insert):
            values = self._graded.inserts.get(extent.length.key)
            if values is None:
                return None
            if values.dimension != LENGTH:
                raise Stopped(self._no_length(extent.length, values))
            return values.values[self._counts.size]
        found = _TYPED.match(extent.typed_length)
        if found is None:
            return None
        unit = unit_named(found["unit"] or "cm")
        if unit is None or unit.dimension != LENGTH:
            return None
        if extent.length is not None:
            value = self._counts.exact(extent.length)
            return None if value is None else value * unit.factor
        return exact(found["number"].strip()) * unit.factor
