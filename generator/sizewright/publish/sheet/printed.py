"""In: a graded pattern. Out: every number its text prints, with the formula behind it and how print rounds it."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from sizewright.base.printing import decimal, printed
from sizewright.base.units import base_unit
from sizewright.grade.graded import Graded, Values
from sizewright.grade.tied import tie_told
from sizewright.publish.sheet.figures import NONE, exact, lines_text, row
from sizewright.publish.sheet.quantities import refs
from sizewright.publish.sheet.view import GroupView, RowView
from sizewright.read.formula import names_in
from sizewright.read.inserts import Insert, TypedList
from sizewright.read.names_used import inserts_of
from sizewright.read.pattern import InstructionLine, Pattern, StitchBlock, WorkBlock


def printed_groups(graded: Graded, *, metric_first: bool) -> Iterator[GroupView]:
    """Each number of the text once, in the order they are first read; those typed by hand come last."""
    found: dict[tuple[str, str], list[Insert]] = {}
    idle = {insert.key for line in _lines(graded.pattern) for insert in _of_clauses(line)}
    for insert in inserts_of(graded.pattern):
        style = insert.style.text if insert.style else ""
        found.setdefault((" ".join(insert.formula.text.split()), style), []).append(insert)
    for (text, style), inserts in found.items():
        values = next((graded.inserts[one.key] for one in inserts if one.key in graded.inserts), None)
        formula = inserts[0].formula
        names = dict.fromkeys(name.name for name in (*names_in(formula.tree), *names_in(formula.rounding)))
        facts = [lines_text(one.span.shown.line for one in inserts), *([f"printed as {style}"] if style else [])]
        if any(one.key in idle for one in inserts):
            facts.append("not printed for a size that has nothing to do there")
        if values is not None:
            facts.extend(filter(None, [tie_told(graded, formula, values)]))
        rows = tuple(_rows(values, style or None, metric_first=metric_first)) if values else ()
        yield GroupView(f"{{{text}}}", tuple(facts), rows, code=text, relies_on=refs(graded, tuple(names)))
    yield from _typed(graded.pattern)


def _rows(values: Values, style: str | None, *, metric_first: bool) -> Iterator[RowView]:
    texts = list(_texts(values, style, metric_first=metric_first))
    yield row("printed", texts, main=True)
    plain = [decimal(value) for value in values.values]
    if texts != plain:
        unit = base_unit(values.dimension)
        yield row(f"exact{f', {unit}' if unit else ''}", map(exact, values.values))


def _texts(values: Values, style: str | None, *, metric_first: bool) -> Iterator[str]:
    try:
        series = printed(values.values, values.dimension, style, metric_first=metric_first)
    except (KeyError, ValueError):  # a style that does not suit it, which is a finding: nothing is printed
        yield from [NONE] * len(values.values)
        return
    for place in range(len(values.values)):
        texts = (f"{one.values[place if len(one.values) > 1 else 0]} {one.unit}".strip() for one in series)
        yield " / ".join(texts)


def _typed(pattern: Pattern) -> Iterator[GroupView]:
    """Bracket lists of the instructions, which no formula is behind."""
    found: dict[tuple[str, tuple[Fraction | None, ...]], list[int]] = {}
    for line in _lines(pattern):
        for one in line.pieces:
            if isinstance(one, TypedList) and one.values:
                found.setdefault((one.text, one.values), []).append(line.span.shown.line)
    for (text, values), lines in found.items():
        rows = (row("typed", _values(values), main=True),)
        yield GroupView(text, (lines_text(lines), "typed by hand: no formula is behind it"), rows)


def _lines(pattern: Pattern) -> Iterator[InstructionLine]:
    for piece in pattern.body:
        if isinstance(piece, WorkBlock | StitchBlock):
            yield from piece.lines


def _of_clauses(line: InstructionLine) -> Iterator[Insert]:
    """The numbers of a line in clauses that a size may not have to read."""
    for clause in line.clauses:
        yield clause.number
        yield from (one for one in line.pieces[clause.first : clause.end] if isinstance(one, Insert))


def _values(values: Sequence[Fraction | None]) -> Iterator[str]:
    for value in values:
        yield NONE if value is None else exact(value)
