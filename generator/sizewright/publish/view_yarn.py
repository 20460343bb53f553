"""In: the yarn every size needs. Out: its table and what has to be said of it."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from markupsafe import Markup

from sizewright.base.language import named, tr
from sizewright.base.printing import as_text, bought, decimal, printed
from sizewright.base.spoken_units import as_typed, with_unit
from sizewright.base.units import LENGTH, MASS, PLAIN
from sizewright.publish.message_html import message_html
from sizewright.publish.usual_names import name_within, spoken_name
from sizewright.publish.view_facts import text_of
from sizewright.publish.view_numbers import cell_html, measure_html
from sizewright.publish.view_sizes import one_size
from sizewright.publish.view_table import Column, ColumnGroup, Row, SizeChoice, SizeTable
from sizewright.publish.yarn_range import known, measured
from sizewright.read.pattern import Swatch
from sizewright.work.worked import Worked
from sizewright.work.yarn_need import YarnNeed

_STYLES = {LENGTH: "long", MASS: "g"}


def amount_table(worked: Worked, choices: Sequence[SizeChoice], *, metric_first: bool) -> SizeTable | None:
    """Length, mass and balls of each yarn, by size, with the reserve; None where no swatch tells."""
    groups = tuple(
        ColumnGroup(_heading(need, alone=len(worked.yarns) == 1), tuple(_columns(need, metric_first=metric_first)))
        for need in known(worked)
    )
    if not groups:
        return None
    columns = [column for group in groups for column in group.columns]
    rows = (
        Row(size, tuple(column.cells[index] for column in columns))
        for index, size in enumerate(choices or (one_size(),))
    )
    return SizeTable(groups, tuple(rows), has_ease=False)


def _heading(need: YarnNeed, *, alone: bool) -> str:
    """ "Contrast: Oat, pale"; a yarn that is alone is just the yarn."""
    colour = named(text_of(need.yarn.colour))
    name = tr("Yarn") if alone else spoken_name(need.yarn.name)
    return f"{name}: {colour}" if colour else name


def _columns(need: YarnNeed, *, metric_first: bool) -> Iterator[Column]:
    for label, dimension in ((tr("Length"), LENGTH), (tr("Mass"), MASS)):
        values = [measured(amount, dimension) for amount in need.reserved]
        told = [value for value in values if value is not None]
        if len(told) == len(values):
            series = bought(told, dimension, metric_first=metric_first)
            cells = (cell_html(series, size) for size in range(len(told)))
            yield Column(label, tuple(_least(cell, need.incomplete[size]) for size, cell in enumerate(cells)))
    if all(amount.balls is not None for amount in need.reserved):
        yield Column(_balls(need), tuple(_ball_cell(need, size) for size in range(len(need.reserved))))


def _least(cell: Markup, incomplete: bool) -> Markup:  # noqa: FBT001 (a cell and what is to be said of it)
    return message_html(tr("at least {amount}"), amount=cell) if incomplete else cell


def _balls(need: YarnNeed) -> str:
    """ "Balls of 50 g", or of so many metres where their mass is not told."""
    ball = need.yarn.mass or need.yarn.length
    return tr("Balls of {ball}", ball=as_typed(ball.typed)) if ball else tr("Balls")


def _ball_cell(need: YarnNeed, size: int) -> Markup:
    """ "3", with what would do where only the reserve takes the last one."""
    balls = Markup(f"{need.reserved[size].balls}")  # noqa: S704 (a number)
    if need.over(size) is not None:
        without = tr("{balls} without the reserve", balls=need.worked[size].balls)
        balls = Markup('{} <span class="remark">{}</span>').format(balls, without)
    return _least(balls, need.incomplete[size])


def amount_notes(worked: Worked, *, metric_first: bool, only: int | None = None) -> tuple[str | Markup, ...]:
    """Where the amounts come from, what is kept in reserve, and what they are not; for one size `only`, or all."""
    places = range(max(1, len(worked.graded.sizes))) if only is None else (only,)
    return tuple(_notes(worked, places, metric_first=metric_first))


def _notes(worked: Worked, places: Sequence[int], *, metric_first: bool) -> Iterator[str | Markup]:
    needs = known(worked)
    if not needs:
        return
    swatches = dict.fromkeys(_swatch_words(need, metric_first=metric_first) for need in needs)
    counted = tr("Counted from every stitch of the instructions, edges included, by a swatch {swatch}.")
    yield message_html(counted, swatch=Markup("; ").join(swatches))
    yield _reserve_words(needs)
    if any(need.incomplete[place] for need in needs for place in places):
        yield tr("“At least” says that a part of the instructions is told in words and could not be counted.")
    gauges = worked.graded.pattern.header.gauges
    if len(gauges) > 1:
        yield tr("Other fabrics than that of the swatch take a little more or less for each stitch.")
    if any(need.over(place) is not None for need in needs for place in places):
        yield tr("Where fewer balls would do without the reserve, their number stands beside.")


def _swatch_words(need: YarnNeed, *, metric_first: bool) -> Markup:
    """ "of 2400 sts that took 12 g", "of 20 cm × 22 cm that took 14 g"."""
    swatch = need.yarn.swatch
    if swatch is None:
        return Markup()
    took = _swatch_yarn(swatch, metric_first=metric_first)
    return message_html(tr("of {size} that took {yarn}"), size=_swatch_size(swatch), yarn=took)


def _swatch_size(swatch: Swatch) -> str:
    if swatch.stitches is not None:
        return with_unit(decimal(swatch.stitches.quantity.value), "sts")
    return " × ".join(as_typed(side.typed) for side in (swatch.width, swatch.height) if side is not None)


def _swatch_yarn(swatch: Swatch, *, metric_first: bool) -> Markup:
    measure, dimension = (swatch.mass, MASS) if swatch.mass is not None else (swatch.length, LENGTH)
    if measure is None:
        return Markup()
    return measure_html(printed((measure.quantity.value,), dimension, _STYLES[dimension], metric_first=metric_first))


def _reserve_words(needs: Sequence[YarnNeed]) -> str:
    shares = {need.reserve for need in needs}
    if shares == {0}:
        return tr("Nothing is added in reserve: for the swatch and for long tails have some more at hand.")
    if len(shares) == 1:
        told = _percent(shares.pop())
    else:
        told = ", ".join(
            tr("{share} of {yarn}", share=_percent(need.reserve), yarn=name_within(need.yarn.name)) for need in needs
        )
    return tr("{reserve} is added in reserve, for the swatch, tails and joins.", reserve=told)


def _percent(share: Fraction) -> str:
    return as_text(printed((share,), PLAIN, "percent"))
