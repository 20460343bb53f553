"""In: a graded pattern. Out: for each quantity who relies on it: quantities, lines of the text, promises, drawings."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from sizewright.base.place import Span
from sizewright.grade.graded import Graded
from sizewright.read.formula import Comparison, Fit, Formula, names_in
from sizewright.read.names_used import inserts_of
from sizewright.read.pattern import GradeBlock, SchematicBlock


class Kind(StrEnum):
    """What may rely on a quantity."""

    QUANTITY = "quantity"
    TEXT = "text"
    PROMISE = "promise"
    FINISHED = "finished measurement"
    DRAWING = "schematic"


@dataclass(frozen=True, slots=True)
class Use:
    """One place that names a quantity in its formula; `called` is the name of a quantity, measurement or piece."""

    kind: Kind
    span: Span
    called: str = ""


def reliance(graded: Graded) -> Mapping[str, tuple[Use, ...]]:
    """Who names each quantity itself, in the order of the lists: quantities first, then the text as it is read."""
    found: dict[str, list[Use]] = {name: [] for name in graded.quantities}
    for name, use in _uses(graded):
        if name in found and use not in found[name]:
            found[name].append(use)
    return {name: tuple(uses) for name, uses in found.items()}


def _uses(graded: Graded) -> Iterator[tuple[str, Use]]:
    for named in graded.quantities.values():
        for name in named.relies_on:
            yield name, Use(Kind.QUANTITY, named.span, named.name)
    for insert in inserts_of(graded.pattern):
        yield from _each(insert.formula, Use(Kind.TEXT, insert.span))
    yield from _blocks(graded)
    for finished in graded.pattern.header.finished:
        use = Use(Kind.FINISHED, finished.span, finished.label)
        yield from _each(finished.formula, use)
        if finished.body is not None:
            yield finished.body.text, use


def _blocks(graded: Graded) -> Iterator[tuple[str, Use]]:
    for piece in graded.pattern.body:
        if isinstance(piece, GradeBlock):
            for statement in piece.statements:
                if isinstance(statement, (Comparison, Fit)):
                    yield from _promised(statement)
        elif isinstance(piece, SchematicBlock):
            for drawn in piece.pieces:
                yield from _each(drawn.formula, Use(Kind.DRAWING, drawn.span, drawn.name.name))


def _promised(statement: Comparison | Fit) -> Iterator[tuple[str, Use]]:
    use = Use(Kind.PROMISE, statement.span)
    yield from _each(statement.left, use)
    if isinstance(statement, Comparison):
        yield from _each(statement.right, use)
    else:
        yield from ((name.name, use) for name in names_in(statement.multiple))


def _each(formula: Formula, use: Use) -> Iterator[tuple[str, Use]]:
    for name in (*names_in(formula.tree), *names_in(formula.rounding)):
        yield name.name, use
