"""In: a proofed pattern. Out: finished measurements by body and ease, at other gauges, and the rows of each piece."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from sizewright.base.printing import as_text, printed
from sizewright.base.units import LENGTH, ROW_GAUGE, STITCH_GAUGE, base_unit
from sizewright.grade.as_knitted import as_knitted
from sizewright.grade.at_gauge import Shifted, at_gauge, shifted
from sizewright.grade.graded import Graded, Measured
from sizewright.grade.growth import growth
from sizewright.grade.run import grade
from sizewright.grade.tied import tie_told
from sizewright.publish.sheet.figures import NONE, exact, percent, row, signed
from sizewright.publish.sheet.found import Found
from sizewright.publish.sheet.quantities import refs
from sizewright.publish.sheet.regraded import SHIFTS
from sizewright.publish.sheet.view import GroupView, RowView
from sizewright.read.formula import names_in
from sizewright.work.at_row_gauge import tall
from sizewright.work.worked import Part, Worked


def finished_groups(graded: Graded, found: Found, *, metric_first: bool) -> Iterator[GroupView]:
    """Each finished measurement beside the body, with its ease, and what it would be if no formula rounded."""
    meant = {one.told: one for one in grade(graded.pattern, rounded=False).finished}
    for measured in graded.finished:
        beside = found.at(measured.told.span)
        formula = measured.told.formula
        names = dict.fromkeys(name.name for name in (*names_in(formula.tree), *names_in(formula.rounding)))
        yield GroupView(
            measured.label,
            tuple(_told(graded, measured)),
            tuple(_finished_rows(measured, meant.get(measured.told), metric_first=metric_first)),
            beside,
            tuple(f"{'accepted' if one.reason else one.level}: {one.rule}" for one in beside),
            code=" ".join(formula.text.split()),
            relies_on=refs(graded, tuple(names)),
        )


def _told(graded: Graded, measured: Measured) -> Iterator[str]:
    yield f"line {measured.told.span.shown.line}"
    if between := tie_told(graded, measured.told.formula, measured.finished):
        yield between
    if measured.body is not None:
        yield f"body: {measured.body.name}"
    if measured.told.ease is not None:
        yield f"meant ease: {measured.told.ease.typed}"
    if measured.told.tolerance is not None:
        yield f"tolerance: {measured.told.tolerance.typed}"


def _finished_rows(measured: Measured, meant: Measured | None, *, metric_first: bool) -> Iterator[RowView]:
    values, unit = measured.finished.values, base_unit(measured.finished.dimension)
    astray = growth(values).astray
    marks = ["astray" if place == astray else "" for place in range(len(values))]
    yield from _in_print(measured, metric_first=metric_first)
    yield row(f"exact, {unit}", map(exact, values), marks=marks)
    if meant is not None and meant.finished.values != values:
        yield row(f"without any rounding, {unit}", map(exact, meant.finished.values))
        both = zip(values, meant.finished.values, strict=True)
        yield row(f"moved by all rounding, {unit}", (signed(after - before) for after, before in both))
    if measured.body is not None and measured.ease is not None:
        bodies = measured.body.result.values
        yield row(f"body, {unit}", map(exact, bodies))
        yield row(f"ease, {unit}", map(signed, measured.ease))
        parts = zip(measured.ease, bodies, strict=True)
        yield row("ease, % of the body", (percent(ease / body if body else None) for ease, body in parts))


def _in_print(measured: Measured, *, metric_first: bool) -> Iterator[RowView]:
    """As the page of the pattern has it, a row for each unit."""
    values = measured.finished.values
    for one in printed(values, measured.finished.dimension, metric_first=metric_first):
        yield row(f"printed, {one.unit}", one.values * (len(values) // len(one.values)), main=True)


def shifted_groups(graded: Graded) -> Iterator[GroupView]:
    """The finished measurements where the gauge comes out otherwise and the printed counts are knitted."""
    read_back = as_knitted(graded).read_back
    others = [(words, _by_label(at_gauge(graded, shifted(graded, kind, by)))) for kind, by, words in SHIFTS]
    for measured in graded.finished:
        if measured.finished.dimension != LENGTH:
            continue
        changed = [
            (words, values[measured.told.span, measured.label])
            for words, values in others
            if values.get((measured.told.span, measured.label), measured.finished.values) != measured.finished.values
        ]
        facts = (_READ_BACK,) if measured.told.span in read_back else () if changed else (_STAYS,)
        yield GroupView(measured.label, facts, tuple(_shifted(measured.finished.values, changed)))


def _by_label(shifted: Sequence[Shifted]) -> dict[object, tuple[Fraction, ...]]:
    return {(one.measured.told.span, one.measured.label): one.values for one in shifted}


_STAYS = "does not change: its formula asks for a length; where rows are counted for it, see “Rows and lengths”"
_READ_BACK = "asked for, and rounded in rows or stitches: at another gauge it is read back from what is knitted for it"


def _shifted(values: Sequence[Fraction], changed: Sequence[tuple[str, tuple[Fraction, ...]]]) -> Iterator[RowView]:
    yield row("as graded, cm", map(exact, values), main=True)
    for words, others in changed:
        yield row(f"{words}, cm", map(exact, others))
        yield row("difference, cm", (signed(other - value) for other, value in zip(others, values, strict=True)))


def part_groups(worked: Worked) -> Iterator[GroupView]:
    """Each part of a piece: the rows that were worked, their length, and that length at another row gauge."""
    for part in worked.parts:
        rows = [row("rows worked", (NONE if count is None else str(count) for count in part.rows), main=True)]
        if any(length is not None for length in part.lengths):
            rows.append(row("length, cm", (NONE if length is None else exact(length) for length in part.lengths)))
            for by, words in ((by, words) for kind, by, words in SHIFTS if kind == ROW_GAUGE):
                rows.append(row(f"{words}, cm", _at_row_gauge(part, by)))
        yield GroupView(part.piece or "Piece", (f"from line {part.span.shown.line}",), tuple(rows))


def _at_row_gauge(part: Part, by: Fraction) -> Iterator[str]:
    """The same part where so many more rows come to the cm: rows worked to a length are more or fewer and end there."""
    for count, length, stretches in zip(part.rows, part.lengths, part.stretches, strict=True):
        if not count or not length or count / length + by <= 0:
            yield NONE
        else:
            yield exact(tall(count, stretches, count / length + by).length)


def gauge_texts(graded: Graded) -> Iterator[str]:
    """Every gauge of the header by its name in formulas, exact."""
    for named in graded.quantities.values():
        if named.formula is None and named.result.dimension in (STITCH_GAUGE, ROW_GAUGE):
            text = as_text(printed(named.result.values[:1], named.result.dimension))
            yield f"{named.name}: {text}, line {named.span.shown.line}"
