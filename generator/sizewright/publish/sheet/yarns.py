"""In: a pattern carried out. Out: what each size takes of each yarn, as far as its swatch tells."""

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction

from sizewright.base.printing import decimal
from sizewright.publish.sheet.figures import NONE, row
from sizewright.publish.sheet.found import Found
from sizewright.publish.sheet.view import GroupView, RowView
from sizewright.work.worked import Worked
from sizewright.work.yarn_need import Amount, YarnNeed

_METRES = Fraction(1, 100)  # lengths are in cm


def yarn_groups(worked: Worked, found: Found) -> Iterator[GroupView]:
    """Each yarn: stitches worked in it, length and mass, and the whole balls with the reserve."""
    sizes = worked.graded.sizes
    for need in worked.yarns:
        yarn = need.yarn
        facts = [f"line {yarn.span.shown.line}"]
        if yarn.reserve is not None:
            facts.append(f"reserve: {decimal(need.reserve * 100)} %")
        if not need.worked:
            facts.append("no swatch that was counted and weighed, so no amounts")
        lacking = [size for size, lacks in zip(sizes, need.incomplete, strict=False) if lacks]
        if any(need.incomplete):
            facts.append(f"takes more than this, as some rows cannot be counted: {', '.join(lacking) or 'this size'}")
        beside = found.at(yarn.span)
        yield GroupView(yarn.name, tuple(facts), tuple(_rows(need)), beside)


def _rows(need: YarnNeed) -> Iterator[RowView]:
    yield row("stitches worked", map(str, need.stitches), main=True)
    for words, amounts in (("", need.worked), (" with the reserve", need.reserved)):
        if not amounts or (words and not need.reserve):
            continue
        yield from _told(amounts, f"length{words}, m", lambda one: one.length and one.length * _METRES)
        yield from _told(amounts, f"mass{words}, g", lambda one: one.mass)
        yield from _told(amounts, f"balls{words}", lambda one: None if one.balls is None else Fraction(one.balls))


def _told(amounts: Sequence[Amount], label: str, value: Callable[[Amount], Fraction | None]) -> Iterator[RowView]:
    values = [value(one) for one in amounts]
    if any(one is not None for one in values):
        yield row(label, (NONE if one is None else decimal(one, 1) for one in values))
