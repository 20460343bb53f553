"""In: a graded pattern and other gauges. Out: it graded anew, as if its designer had stated those: every count anew."""

from dataclasses import replace

from sizewright.grade.at_gauge import Gauges
from sizewright.grade.graded import Graded
from sizewright.grade.run import grade
from sizewright.read.pattern import Gauge, Measure


def regraded(graded: Graded, gauges: Gauges) -> Graded:
    """Every formula worked out again, roundings and plans with it; why a number has no value then is a finding."""
    header = graded.pattern.header
    stated = tuple(_stated(gauge, gauges) for gauge in header.gauges)
    return grade(replace(graded.pattern, header=replace(header, gauges=stated)))


def _stated(gauge: Gauge, gauges: Gauges) -> Gauge:
    names = (f"{gauge.name}.stitches", f"{gauge.name}.rows") if gauge.name else ("stitch_gauge", "row_gauge")
    stitches, rows = (
        _measured(measure, name, gauges) for measure, name in zip((gauge.stitches, gauge.rows), names, strict=True)
    )
    return replace(gauge, stitches=stitches, rows=rows)


def _measured(measure: Measure | None, name: str, gauges: Gauges) -> Measure | None:
    if measure is None or name not in gauges:
        return measure
    return replace(measure, quantity=replace(measure.quantity, value=gauges[name]))
