"""In: a pattern. Out: its `{...}`, the names that it goes by, and what of its measurements a reader is shown."""

from collections.abc import Iterator, Mapping

from sizewright.base.place import Span
from sizewright.read.formula import Comparison, Definition, Fit, Formula, Statement, names_in
from sizewright.read.pattern import GradeBlock, Insert, Pattern, SchematicBlock, StitchBlock, WorkBlock


def inserts_of(pattern: Pattern) -> Iterator[Insert]:
    """Every `{...}` of a pattern, in reading order."""
    for piece in pattern.body:
        if isinstance(piece, Insert):
            yield piece
        elif isinstance(piece, WorkBlock | StitchBlock):
            for line in piece.lines:
                yield from (one for one in line.pieces if isinstance(one, Insert))
                yield from (clause.number for clause in line.clauses)


def names_used(pattern: Pattern) -> Iterator[str]:
    """Every name that a formula, a promise or a finished measurement of a pattern uses."""
    for piece in pattern.body:
        if isinstance(piece, GradeBlock | SchematicBlock):
            for statement in piece.statements if isinstance(piece, GradeBlock) else piece.pieces:
                yield from _names_used(statement)
    for insert in inserts_of(pattern):
        yield from _names_of(insert.formula)
    for finished in pattern.header.finished:
        yield from _names_of(finished.formula)
        if finished.body is not None:
            yield finished.body.text


def _names_used(statement: Statement) -> Iterator[str]:
    match statement:
        case Definition():
            yield from _names_of(statement.formula)
        case Comparison():
            yield from _names_of(statement.left)
            yield from _names_of(statement.right)
        case Fit():
            yield from _names_of(statement.left)
            yield from (name.name for name in names_in(statement.multiple))


def _names_of(formula: Formula) -> Iterator[str]:
    yield from (name.name for name in names_in(formula.tree))
    yield from (name.name for name in names_in(formula.rounding))


def measured_names(pattern: Pattern) -> Mapping[str, Span]:
    """What the sizes measure; of a shared table, which may hold far more, only what this pattern goes by."""
    used = set(names_used(pattern))
    found: dict[str, Span] = {}
    for size in pattern.header.sizes:
        for name, measure in size.measurements.items():
            if name in used or measure.span.source == pattern.source:
                found.setdefault(name, measure.span)
    return found
