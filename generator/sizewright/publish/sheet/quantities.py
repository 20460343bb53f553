"""In: a proofed pattern. Out: every quantity of it as its sheet shows it: formula, inputs, rounding, steps, users."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import groupby

from markupsafe import Markup

from sizewright.base.units import LENGTH, base_unit
from sizewright.draw.growth import growth_svg
from sizewright.grade.graded import Graded, Named
from sizewright.grade.growth import Course, Growth, growth
from sizewright.grade.moved import Moved, gauge_of, gauges_behind, is_gauge, moved
from sizewright.grade.reliance import Kind, Use, reliance
from sizewright.grade.tied import tie_told
from sizewright.publish.sheet.figures import NONE, exact, lines_text, percent, row, signed, unit_text
from sizewright.publish.sheet.found import Found
from sizewright.publish.sheet.view import Cell, FoundView, QuantityView, Ref, RowView


def quantity_views(graded: Graded, found: Found) -> Iterator[QuantityView]:
    """Every quantity, in the order of the source: the header's first, then as they are defined."""
    uses = reliance(graded)
    for named in sorted(graded.quantities.values(), key=lambda one: (one.span, one.name)):
        yield _view(graded, named, uses[named.name], found)


def anchor_of(name: str) -> str:
    """The place of a quantity in its sheet."""
    return f"q--{name}"


def refs(graded: Graded, names: Sequence[str]) -> tuple[Ref, ...]:
    """Names that lead to their quantities."""
    return tuple(Ref(name, anchor_of(name) if name in graded.quantities else "") for name in names)


def looks_at(graded: Graded, named: Named) -> tuple[str, ...]:
    """Why a quantity deserves a second look, whatever was found in it."""
    how, grown = moved(graded, named), growth(named.result.values)
    reasons = []
    if how is not None and how.far:
        told = _sizes(graded, how.far)
        reasons.append(f"rounding moved it by more than half of the step to the next size{told}")
    if grown.astray is not None:
        reasons.append(f"out of line{_sizes(graded, (grown.astray,))}")
    return tuple(reasons)


def changes_with(graded: Graded, named: Named) -> str:
    """What of the gauge a quantity changes with, as a sentence has it."""
    if is_gauge(named):
        return "This is the gauge"
    behind = [one.name for one in gauges_behind(graded, named)]
    return f"Changes with {' and '.join(behind)}" if behind else "Does not change with the gauge"


def _view(graded: Graded, named: Named, uses: Sequence[Use], found: Found) -> QuantityView:
    how, grown = moved(graded, named), growth(named.result.values)
    span = named.formula.span if named.formula is not None else named.span
    beside = found.at(named.span, span)
    return QuantityView(
        name=named.name,
        anchor=anchor_of(named.name),
        formula=" ".join(named.formula.text.split()) if named.formula else "",
        unit=unit_text(named.result.dimension),
        place=_place(graded, named),
        relies_on=refs(graded, named.relies_on),
        used_by=tuple(_used_by(graded, uses)),
        gauge=changes_with(graded, named),
        rounding=_rounding(graded, named, how),
        rows=tuple(_rows(named, how, grown)),
        plot=_plot(named, grown),
        found=beside,
        looks=(*_told(beside), *looks_at(graded, named)),
        moved=str(float(max(map(abs, (how.length or how.by) if how else (Fraction(0),))))),
        growing=str(float(max((abs(part) for part in grown.parts if part is not None), default=0))),
    )


def _told(found: Sequence[FoundView]) -> Iterator[str]:
    for one in found:
        yield f"{'accepted' if one.reason else one.level}: {one.rule}"


def _sizes(graded: Graded, places: Sequence[int]) -> str:
    return f" in {', '.join(graded.sizes[place] for place in places)}" if graded.sizes else ""


def _place(graded: Graded, named: Named) -> str:
    span = named.span.shown
    line = f"line {span.line}" if span.source == graded.pattern.source else f"{span.source}, line {span.line}"
    return f"given in the header, {line}" if named.formula is None else line


def _used_by(graded: Graded, uses: Sequence[Use]) -> Iterator[Ref]:
    for kind, group in groupby(sorted(uses, key=lambda use: list(Kind).index(use.kind)), lambda use: use.kind):
        together = list(group)
        if kind is Kind.QUANTITY:
            yield from refs(graded, [use.called for use in together])
        elif kind in (Kind.TEXT, Kind.PROMISE):
            words = "the text" if kind is Kind.TEXT else "a promise"
            yield Ref(f"{words} ({lines_text(use.span.shown.line for use in together)})")
        else:
            yield from (Ref(f"{kind} “{use.called}”") for use in together)


def _rounding(graded: Graded, named: Named, how: Moved | None) -> str:
    """How it was rounded, and through which gauge that is told in cm."""
    if named.formula is None:
        return "As typed"
    if how is None or named.formula.rounding is None:
        return "Not rounded"
    rounding = named.formula.rounding.span
    words = graded.pattern.lines.text_of(rounding) if rounding.source == graded.pattern.source else ""
    gauge = gauge_of(graded, named)
    through = f"; in cm through {gauge.name}" if gauge is not None and how.length is not None else ""
    lacking = "" if how.length is not None else "; not told in cm, as it goes back to no gauge or to several"
    between = tie_told(graded, named.formula, named.result)
    return f"Rounded “{' '.join(words.split())}”{through}{lacking}{f'; {between}' if between else ''}"


def _rows(named: Named, how: Moved | None, grown: Growth) -> Iterator[RowView]:
    values, unit = named.result.values, base_unit(named.result.dimension)
    behind = f", {unit}" if unit else ""
    marks = ["astray" if place == grown.astray else "" for place in range(len(values))]
    yield row(f"value{behind}", map(exact, values), main=True, marks=marks)
    if how is not None:
        far = ["far" if place in how.far else "" for place in range(len(values))]
        yield row(f"before rounding{behind}", map(exact, named.result.unrounded))
        yield row(f"moved{behind}", map(signed, how.by), marks=far)
        if how.length is not None and named.result.dimension != LENGTH:
            yield row("moved, cm", map(signed, how.length), marks=far)
    if grown.course is not Course.LEVEL:
        yield RowView(f"step{behind}", (Cell(NONE, "none"), *(Cell(signed(one)) for one in grown.steps)))
        yield RowView("step, %", (Cell(NONE, "none"), *(Cell(percent(one)) for one in grown.parts)))


def _plot(named: Named, grown: Growth) -> Markup:
    """The picture of its growth; none where all sizes agree."""
    values = named.result.values
    if grown.course is Course.LEVEL:
        return Markup()
    unit = base_unit(named.result.dimension)
    title = (
        f"{named.name} from size to size, {grown.course}: {exact(min(values))} to {exact(max(values))} {unit}".strip()
    )
    return Markup(growth_svg(values, title, astray=grown.astray))  # noqa: S704 (markup of the drawing stage)
