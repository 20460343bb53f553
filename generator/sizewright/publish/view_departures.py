"""In: an adaptation carried out. Out: its departures as a reader is told of them, with what they change by size."""

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from functools import partial

from markupsafe import Markup, escape

from sizewright.base.language import later, named, tr
from sizewright.base.printing import bought, decimal
from sizewright.base.units import LENGTH, MASS, Dimension
from sizewright.grade.graded import Values
from sizewright.proof.departed import Before, Comparison, Departed, Effect, Quantity, compared
from sizewright.publish.departed_names import spoken_label, spoken_quantity
from sizewright.publish.departure_marks import Marks, anchor_of, called, marked, sentence, told_at
from sizewright.publish.links import Links
from sizewright.publish.message_html import message_html
from sizewright.publish.usual_names import as_words, spoken_name
from sizewright.publish.view_departed import DeparturesView, DepartureView
from sizewright.publish.view_numbers import cell_html, graded_html, insert_html
from sizewright.publish.view_sizes import one_size
from sizewright.publish.view_table import Column, ColumnGroup, Row, SizeChoice, SizeTable
from sizewright.read.departure import Verb
from sizewright.read.pattern import Finished
from sizewright.read.project import Project
from sizewright.work.worked import Worked

_TOGETHER = later("It cannot be worked without the others; what they change together stands below.")
_NOTHING = later("Changes no count, no row and no yarn.")
_EVENED = later("Over the whole pattern, counts, rows and yarn are as in the base.")


def departures_view(
    worked: Worked, project: Project, links: Links, choices: Sequence[SizeChoice], *, metric_first: bool
) -> DeparturesView | None:
    """The departures of an adaptation; None for a pattern that is none."""
    found = compared(worked)
    if found is None:
        return None
    base, told = found.adapts.base, found.adapts.based_on
    known = any(pattern.name == base.name for pattern in project.patterns)
    marks, finished = marked(worked.graded.pattern), [one.told for one in worked.graded.finished]
    return DeparturesView(
        named(base.header.title),
        base.header.designer.text if base.header.designer else "",
        links.to(f"patterns/{base.name}.html") if known else "",
        named(told.permission.text) if told.permission else "",
        named(told.credit.text) if told.credit else "",
        base.header.licence.text if base.header.licence else "",
        tuple(_view(one, marks, finished, metric_first=metric_first) for one in found.departed),
        _totals(found, choices, metric_first=metric_first),
    )


def _view(one: Departed, marks: Marks, finished: Sequence[Finished], *, metric_first: bool) -> DepartureView:
    number = one.departure.number
    section = marks.sections.get(number, "")
    met = number in marks.opened or any(number in found for found in (*marks.lines.values(), *marks.inserts.values()))
    return DepartureView(
        number,
        called(one.departure.called),
        sentence(named(one.departure.called.because.text)),
        told_at(number),
        anchor_of(number) if met or section else "",
        section,
        _where(one),
        tuple(_told(one, finished, metric_first=metric_first)),
    )


def _told(one: Departed, finished: Sequence[Finished], *, metric_first: bool) -> Iterator[Markup]:
    """What it changes in its own lines, and in the whole; where these rows are saved elsewhere, it says so."""
    own = tuple(_own(one))
    yield from own
    if one.alone is None:
        yield escape(tr(_TOGETHER))
        return
    if one.alone.idle:
        yield escape(tr(_EVENED if own else _NOTHING))
    yield from _changes(one.alone, finished, metric_first=metric_first)


def _where(one: Departed) -> Markup:
    """ "From row 17 (20, 20) of Brim on"."""
    if one.first is None:
        return Markup()
    rows = graded_html([str(row) for row in one.rows], range(len(one.rows)))
    word = one.first.label.split()[0].casefold()
    in_rounds = word.startswith(("rnd", "round")) or "rnd" in one.first.label.casefold()
    begun = tr("From round {rows} of {piece} on") if in_rounds else tr("From row {rows} of {piece} on")
    label, section = spoken_label(one.first.label), named(one.section or one.first.piece)
    place = message_html(begun, rows=Markup(rows), piece=section)  # noqa: S704 (markup of that module)
    return Markup("{}: {}.").format(place, label) if label else Markup("{}.").format(place)


def _changes(effect: Effect, finished: Sequence[Finished], *, metric_first: bool) -> Iterator[Markup]:
    """What an effect comes to, in words with numbers by size."""
    if effect.rows.differs:
        yield _more(effect.rows, tr("{more} rows or rounds"))
    if effect.stitches.differs:
        yield _more(effect.stitches, tr("{more} stitches worked"))
    for one in effect.masses:
        if one.differs:
            yield _more(one, tr("{more} g of {yarn} yarn"), places=1)
    for one in effect.lengths:
        if one.differs:
            yield _more(_in_unit(one, Fraction(1, 100)), tr("{more} m of {yarn} yarn"), places=1)
    for one in effect.counts:
        yield _from_to(one)
    for quantity in effect.quantities:
        yield _valued(quantity, finished, metric_first=metric_first)


def _own(one: Departed) -> Iterator[Markup]:
    """ "15 (18) rows or rounds are worked here, in the base 7 (9)"."""
    if one.own.differs and one.departure.called.verb is not Verb.INSIDE_OUT:
        after, before = (_by_size(values) for values in (one.own.after, one.own.before))
        message = tr("{after} rows or rounds are worked here, in the base {before}.")
        yield message_html(message, after=after, before=before)


def _valued(quantity: Quantity, finished: Sequence[Finished], *, metric_first: bool) -> Markup:
    """ "To crown: 13 (14) cm, was 11 (12) cm"."""
    name, found = spoken_quantity(quantity.values.name, finished), []
    for values in (quantity.values.after, quantity.values.before):
        known = tuple(value for value in values if value is not None)
        shown = Values(quantity.dimension, known, known)
        found.append(insert_html(shown, None, range(len(known)), metric_first=metric_first) if known else Markup())
    after, before = found
    if not before:
        return message_html(tr("{name}: {after}, new"), name=name, after=after)
    if not after:
        return message_html(tr("{name}: none, was {before}"), name=name, before=before)
    return message_html(tr("{name}: {after}, was {before}"), name=name, after=after, before=before)


def _by_size(values: Sequence[Fraction | None]) -> Markup:
    texts = ["–" if value is None else decimal(value) for value in values]
    return Markup(graded_html(texts, range(len(values))))  # noqa: S704 (markup of that module)


def _in_unit(one: Before, factor: Fraction) -> Before:
    """The same in another unit."""
    before, after = (
        tuple(None if value is None else value * factor for value in values) for values in (one.before, one.after)
    )
    return Before(one.name, before, after)


def _more(one: Before, message: str, places: int = 0) -> Markup:
    """ "+8 (+10, +10) rows or rounds"."""
    texts = [_signed(value, places) for value in one.moved]
    more = Markup(graded_html(texts, range(len(texts))))  # noqa: S704 (markup of that module)
    return message_html(message, more=more, yarn=as_words(one.name))


def _signed(value: Fraction, places: int) -> str:
    text = decimal(value, places)
    return f"+{text}" if value > 0 and text != "0" else text


def _from_to(one: Before) -> Markup:
    """ "Rnd 1 (Crown): 64 (72) sts, was 60 (72)"."""
    after, before = (_by_size(values) for values in (one.after, one.before))
    section = named(one.section)
    name = f"{spoken_label(one.name)} ({section})" if spoken_label(one.name) else section
    return message_html(tr("{name}: {after} sts, was {before}"), name=name, after=after, before=before)


def _totals(found: Comparison, choices: Sequence[SizeChoice], *, metric_first: bool) -> SizeTable:
    """Rows, stitches and yarn of the base and of the adaptation, by size."""
    whole = found.whole
    yarns = [(one, MASS) for one in whole.masses] + [(one, LENGTH) for one in whole.lengths]
    groups = [
        _group(tr("Rows and rounds"), whole.rows, _counted),
        _group(tr("Stitches worked"), whole.stitches, _counted),
    ]
    for one, dimension in yarns:
        alone = len(yarns) == 1
        name = tr("Yarn, without reserve") if alone else tr("{yarn} yarn, without reserve", yarn=spoken_name(one.name))
        groups.append(_group(name, one, partial(_measured, dimension=dimension, metric_first=metric_first)))
    columns = [column for group in groups for column in group.columns]
    sizes = enumerate(choices or (one_size(),))
    rows = tuple(Row(size, tuple(column.cells[at] for column in columns)) for at, size in sizes)
    return SizeTable(tuple(groups), rows, has_ease=False)


def _group(label: str, one: Before, cell: Callable[[Fraction], Markup]) -> ColumnGroup:
    pairs = ((tr("Base"), one.before), (tr("Here"), one.after))
    return ColumnGroup(
        label, tuple(Column(name, tuple(cell(value or Fraction(0)) for value in values)) for name, values in pairs)
    )


def _counted(value: Fraction) -> Markup:
    return Markup(decimal(value))  # noqa: S704 (a number)


def _measured(value: Fraction, *, dimension: Dimension, metric_first: bool) -> Markup:
    return cell_html(bought((value,), dimension, metric_first=metric_first), 0)
