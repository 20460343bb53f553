"""In: a pattern carried out. Out: the numbers of its header as lines: gauges, needles, yarns, measurements."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from sizewright.base.place import Span
from sizewright.base.printing import bought, exact_text
from sizewright.base.units import LENGTH, MASS, ROW_GAUGE, STITCH_GAUGE
from sizewright.grade.graded import Graded, Values
from sizewright.proof.line import Kind, Line
from sizewright.proof.said_in_size import numbers_of, series_in, value_in
from sizewright.read.materials import Gauge, Measure, Yarn
from sizewright.read.needles import Needle
from sizewright.work.worked import Worked
from sizewright.work.yarn_need import Amount, YarnNeed


def header_lines(worked: Worked) -> tuple[Line, ...]:
    """All that a reader reads above the instructions and that has a number in it."""
    return tuple(_lines(worked, max(1, len(worked.graded.sizes))))


def _lines(worked: Worked, sizes: int) -> Iterator[Line]:
    header = worked.graded.pattern.header
    for gauge in header.gauges:
        yield from _gauge(gauge, sizes)
    for number, needle in enumerate(header.needles, start=1):
        yield _needle(f"needle {number}" if len(header.needles) > 1 else "needle", needle, sizes)
    for yarn in header.yarns:
        yield from _yarn(yarn, sizes)
    for need in worked.yarns:
        yield from _to_buy(need)
    yield from _measurements(worked.graded, sizes)


def _gauge(gauge: Gauge, sizes: int) -> Iterator[Line]:
    name = f"gauge of {gauge.name}" if gauge.name else "gauge"
    for what, measure in (("", gauge.stitches), (" in rows", gauge.rows)):
        if measure is not None:
            yield _measured(f"{name}{what}", measure, sizes)
    if gauge.needle is not None:
        yield _needle(f"needle of the {name}", gauge.needle, sizes)


def _needle(name: str, needle: Needle, sizes: int) -> Line:
    """One size named in several systems is one size, so only a needle that is not sure counts by its figures."""
    sure = needle.sure
    if sure is None:
        return _same(name, needle.span, needle.text, numbers_of(needle.text), sizes)
    (size,) = needle.sizes
    rest = needle.text[: size.start] + needle.text[size.end :]
    return _same(name, needle.span, needle.text, f"{exact_text(sure)} mm {numbers_of(rest)}".strip(), sizes)


def _yarn(yarn: Yarn, sizes: int) -> Iterator[Line]:
    name = f"yarn {yarn.name}"
    if yarn.weight is not None:
        yield _same(f"weight of {name}", yarn.weight.span, yarn.weight.text, yarn.weight.text.casefold(), sizes)
    if yarn.fibre is not None:
        yield _same(f"fibre of {name}", yarn.fibre.span, yarn.fibre.text, numbers_of(yarn.fibre.text), sizes)
    for what, measure in (("length", yarn.length), ("mass", yarn.mass)):
        if measure is not None:
            yield _same(f"{what} of a ball of {name}", measure.span, measure.typed, _exact(measure), sizes)


def _to_buy(need: YarnNeed) -> Iterator[Line]:
    """The yarn to buy, as the page rounds it."""
    name, span = f"yarn {need.yarn.name} to buy", need.yarn.span
    for what, values, dimension in (
        (" by length", [amount.length for amount in need.reserved], LENGTH),
        (" by mass", [amount.mass for amount in need.reserved], MASS),
    ):
        known = [value for value in values if value is not None]
        if known and len(known) == len(values):
            series = bought(known, dimension)
            yield _by_size(name + what, span, [series_in(series, size) for size in range(len(known))])
    if need.reserved and all(amount.balls is not None for amount in need.reserved):
        yield _by_size(name, span, [_balls(amount) for amount in need.reserved])


def _balls(amount: Amount) -> str:
    return f"{amount.balls} ball{'' if amount.balls == 1 else 's'}"


def _measurements(graded: Graded, sizes: int) -> Iterator[Line]:
    for named in graded.quantities.values():
        if named.formula is None and named.result.dimension not in (STITCH_GAUGE, ROW_GAUGE):
            yield _valued(f"body measurement “{named.name.replace('_', ' ')}”", named.span, named.result, sizes)
    for measured in graded.finished:
        yield _valued(f"finished measurement “{measured.label}”", measured.told.span, measured.finished, sizes)
    for schematic in graded.schematics:
        for piece in schematic.pieces:
            for edge in piece.edges:
                name = f"schematic of {piece.name}, {edge.edge.label}"
                yield replace(_valued(name, edge.span, edge.values, sizes), kind=Kind.DRAWN)


def _valued(name: str, span: Span, values: Values, sizes: int) -> Line:
    """A quantity; it counts as it is printed, since nobody reads more of it."""
    return _by_size(name, span, [value_in(values, size) for size in range(sizes)])


def _measured(name: str, measure: Measure, sizes: int) -> Line:
    quantity = measure.quantity
    values = Values(quantity.dimension, (quantity.value,), (quantity.value,))
    return _same(name, measure.span, value_in(values, 0), _exact(measure), sizes)


def _exact(measure: Measure) -> str:
    value: Fraction = measure.quantity.value
    return exact_text(value)


def _same(name: str, span: Span, said: str, counts: str, sizes: int) -> Line:
    return Line(Kind.FACT, "", name, span, (said,) * sizes, (counts,) * sizes)


def _by_size(name: str, span: Span, said: Sequence[str]) -> Line:
    return Line(Kind.FACT, "", name, span, tuple(said), tuple(said))
