"""In: a graded pattern. Out: what of its numbers is knitted as printed, whatever the gauge, and what follows from it.

Stitches and rows are knitted as they are printed, and so is a length that rows are worked to ("until piece measures
{depth}"). All else is worked out from them and from the gauge. A finished measurement that is only asked for, and from
which such a number was worked out, is read back from that number: of `foot_length`, with `to_toe = foot_length - toe`
knitted as printed, it is `to_toe + toe`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sizewright.base.place import Span
from sizewright.base.units import COUNTS, LENGTH, PLAIN, unit_named
from sizewright.grade.graded import Graded, Measured, Named
from sizewright.grade.moved import is_gauge
from sizewright.grade.shaping.table import PLANS
from sizewright.read.formula import Formula, Literal, Name, Operation, Operator, Tree, names_in
from sizewright.read.notation.direction_tree import Direction, Even, Extent, Meanwhile, RepeatRows
from sizewright.read.pattern import Insert, WorkBlock
from sizewright.read.plan_lines import plan_called


@dataclass(frozen=True, slots=True)
class AsKnitted:
    """`kept` are the names that keep their value, `read_back` the finished measurements told by another formula."""

    kept: frozenset[str]
    read_back: Mapping[Span, Tree]  # by the place of the measurement in the header


def as_knitted(graded: Graded) -> AsKnitted:
    """What is knitted as printed, and what follows from it."""
    held = {_alone(insert.formula) for insert in _lengths_worked_to(graded)}
    kept = frozenset(name for name, named in graded.quantities.items() if name in held or _is_kept(named))
    pairs = ((one.told.span, _read_back(graded, one, kept)) for one in graded.finished)
    return AsKnitted(kept, {span: tree for span, tree in pairs if tree is not None})


def _is_kept(named: Named) -> bool:
    """Whether a quantity is a count, a plain number, of the body, or a number of a plan."""
    if named.formula is None:
        return not is_gauge(named)
    return named.result.dimension in (*COUNTS, PLAIN) or plan_called(named.formula) in PLANS


def _lengths_worked_to(graded: Graded) -> Iterator[Insert]:
    for piece in graded.pattern.body:
        if isinstance(piece, WorkBlock):
            for direction in piece.directions:
                extent = _extent(direction)
                if extent is not None and isinstance(extent.length, Insert):
                    yield extent.length


def _extent(direction: Direction) -> Extent | None:
    if isinstance(direction, Meanwhile):
        direction = direction.rows
    return direction.extent if isinstance(direction, RepeatRows | Even) else None


def _alone(formula: Formula) -> str:
    """The one name a formula consists of, "" where it is more than that."""
    return formula.tree.name if isinstance(formula.tree, Name) and formula.rounding is None else ""


def _read_back(graded: Graded, measured: Measured, kept: frozenset[str]) -> Tree | None:
    """How a length that is asked for follows from what is knitted; None where it is not asked for, or not sure.

    A length worked to tells more than a count, which may be of a part of the piece only. Of two that tell, none does.
    """
    name = _alone(measured.told.formula)
    named = graded.quantities.get(name)
    if named is None or named.result.dimension != LENGTH or _moves(graded, named):
        return None
    worked_to = {_alone(insert.formula) or insert.formula.text: insert for insert in _lengths_worked_to(graded)}
    if name in worked_to:
        return None
    by_length = [tree for insert in worked_to.values() for tree in _from_length(graded, insert, name)]
    by_count = (tree for one in kept for tree in _from_count(graded, graded.quantities[one], name))
    found = by_length or [*by_count]
    return found[0] if len(found) == 1 else None


def _moves(graded: Graded, named: Named) -> bool:
    behind = () if named.formula is None else graded.behind(named.formula)
    return any(is_gauge(graded.quantities[name]) for name in behind)


def _from_length(graded: Graded, insert: Insert, name: str) -> Iterator[Tree]:
    """From a length that is worked to, where its formula only adds to the measurement or takes from it."""
    own, values = graded.quantities.get(_alone(insert.formula)), graded.inserts.get(insert.key)
    if own is not None and own.formula is not None:
        yield from _solved(graded, own.formula.tree, name, Name(own.span, own.name))
    elif own is None and values is not None:
        yield from _solved(graded, insert.formula.tree, name, Literal(insert.span, values.values, unit_named("cm")))


def _from_count(graded: Graded, named: Named, name: str) -> Iterator[Tree]:
    """From a count, where all of the measurement is turned into it by a gauge."""
    if named.formula is not None and named.result.dimension in COUNTS:
        yield from _solved(graded, named.formula.tree, name, Name(named.span, named.name))


def _solved(graded: Graded, tree: Tree, name: str, target: Tree) -> Iterator[Tree]:
    """What a name is, where a tree comes to a target; nothing where it is not met once, alone or by its gauge."""
    while isinstance(tree, Operation) and any(one.name == name for one in names_in(tree)):
        left, right = _relies(graded, tree.left, name), _relies(graded, tree.right, name)
        if left and right:
            return
        inner, other = (tree.left, tree.right) if left else (tree.right, tree.left)
        match tree.operator:
            case Operator.PLUS:
                target = Operation(tree.span, Operator.MINUS, target, other)
            case Operator.MINUS if left:
                target = Operation(tree.span, Operator.PLUS, target, other)
            case Operator.MINUS:
                target = Operation(tree.span, Operator.MINUS, other, target)
            case Operator.TIMES if isinstance(inner, Name) and _is_gauge_name(graded, other):
                target = Operation(tree.span, Operator.OVER, target, other)
            case _:
                return
        tree = inner
    if isinstance(tree, Name) and tree.name == name:
        yield target


def _is_gauge_name(graded: Graded, tree: Tree) -> bool:
    return isinstance(tree, Name) and tree.name in graded.quantities and is_gauge(graded.quantities[tree.name])


def _relies(graded: Graded, tree: Tree, name: str) -> bool:
    """Whether a tree goes back to a name, at any distance."""
    names = [one.name for one in names_in(tree)]
    formulas = (graded.quantities[one].formula for one in names if one in graded.quantities)
    return name in names or any(name in graded.behind(formula) for formula in formulas if formula is not None)
