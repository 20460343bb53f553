"""In: a graded pattern. Out: its sizes and the table of body measurements, finished measurements and ease."""

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from markupsafe import Markup

from sizewright.base.language import named, tr
from sizewright.base.printing import Series, printed, printed_ease
from sizewright.base.quantity import Quantity
from sizewright.base.units import LENGTH, Dimension
from sizewright.grade.graded import Graded, Measured, Values
from sizewright.publish.usual_names import name_within, spoken_name
from sizewright.publish.view_numbers import cell_html, size_class
from sizewright.publish.view_table import Column, ColumnGroup, Row, SizeChoice, SizeTable
from sizewright.read.names_used import measured_names
from sizewright.read.pattern import Size

_NOTHING = Markup("–")


def one_size() -> SizeChoice:
    """What stands for the sizes of a pattern without any."""
    return SizeChoice("z0", "", tr("One size"), "")


def size_choices(sizes: Sequence[Size]) -> tuple[SizeChoice, ...]:
    """The sizes a reader can choose from; two that would share a word in an address get a number."""
    choices: list[SizeChoice] = []
    taken = {"", "all"}
    for index, size in enumerate(sizes):
        key = slug(size.name)
        key = f"{key}-{index + 1}".lstrip("-") if key in taken else key
        taken.add(key)
        remark = "; ".join(named(words.text) for words in size.remarks.values())
        choices.append(SizeChoice(size_class(index), key, named(size.name), remark))
    return tuple(choices)


def slug(text: str) -> str:
    """A name as one word of an address: "Adult M" is "adult-m"."""
    return "-".join(re.findall(r"\w+", text.casefold()))


def size_table(graded: Graded, choices: tuple[SizeChoice, ...], *, metric_first: bool) -> SizeTable | None:
    """The table, None where nothing is measured."""
    groups = tuple(_Groups(graded, metric_first).groups())
    if not groups:
        return None
    columns = [column for group in groups for column in group.columns]
    rows = tuple(
        Row(size, tuple(column.cells[index] for column in columns))
        for index, size in enumerate(choices or (one_size(),))
    )
    return SizeTable(groups, rows, any(measured.ease is not None for measured in graded.finished))


def body_names(graded: Graded) -> tuple[str, ...]:
    """What the sizes measure; of a shared table, which may hold far more, only what this pattern goes by."""
    return tuple(measured_names(graded.pattern))


class _Groups:
    def __init__(self, graded: Graded, metric_first: bool) -> None:  # noqa: FBT001 (the class is this module's own)
        self.graded = graded
        self.metric_first = metric_first
        self.count = max(1, len(graded.sizes))

    def groups(self) -> Iterator[ColumnGroup]:
        """The finished measurements come first, then those of the body that none is compared with or named like."""
        for measured in self.graded.finished:
            yield ColumnGroup(named(measured.label), tuple(self.columns(measured)))
        told = {measured.body.name for measured in self.graded.finished if measured.body}
        told |= {measured.label.casefold() for measured in self.graded.finished}
        for name in body_names(self.graded):
            if name not in told and name.replace("_", " ").casefold() not in told:
                yield ColumnGroup(spoken_name(name), (Column(tr("To fit"), self.body_cells(name)),))

    def columns(self, measured: Measured) -> Iterator[Column]:
        if measured.body:
            yield self.column(tr("To fit {body}", body=name_within(measured.body.name)), measured.body.result)
        yield self.column(tr("Finished"), measured.finished)
        if measured.body and measured.ease is not None:
            yield Column(tr("Ease"), self.ease_cells(measured.finished, measured.body.result, measured.ease))

    def column(self, label: str, values: Values) -> Column:
        return Column(label, self.cells(values.values, values.dimension))

    def cells(self, values: Sequence[Fraction], dimension: Dimension) -> tuple[Markup, ...]:
        return self.texts(printed(values, dimension, metric_first=self.metric_first))

    def ease_cells(self, finished: Values, body: Values, ease: Sequence[Fraction]) -> tuple[Markup, ...]:
        """The ease as the difference of the numbers beside it."""
        if finished.dimension != LENGTH:
            return self.cells(ease, finished.dimension)
        return self.texts(printed_ease(finished.values, body.values, metric_first=self.metric_first))

    def texts(self, series: Sequence[Series]) -> tuple[Markup, ...]:
        return tuple(cell_html(series, index) for index in range(self.count))

    def body_cells(self, name: str) -> tuple[Markup, ...]:
        named = self.graded.quantities.get(name)
        if named is not None:
            return self.cells(named.result.values, named.result.dimension)
        measures = (size.measurements.get(name) for size in self.graded.pattern.header.sizes)
        return tuple(self.cell(measure.quantity) if measure else _NOTHING for measure in measures)

    def cell(self, quantity: Quantity) -> Markup:
        return cell_html(printed((quantity.value,), quantity.dimension, metric_first=self.metric_first), 0)
