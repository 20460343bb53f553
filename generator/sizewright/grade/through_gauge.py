"""In: a graded pattern. Out: its finished measurements as small expressions in its gauges, to be worked out elsewhere.

An expression says what `at_gauge` works out: what is knitted as printed stands in it as a number, and what does not
change with any gauge is one number already.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.units import LENGTH
from sizewright.grade.as_knitted import AsKnitted, as_knitted
from sizewright.grade.evaluate import Evaluator
from sizewright.grade.graded import Graded, Measured
from sizewright.grade.moved import is_gauge
from sizewright.grade.worth import Worth
from sizewright.read.formula import Call, Formula, Multiple, Name, Negation, Operation, Tree, names_in

_MOST = 200  # parts of one expression; beyond it, it is no small one


@dataclass(frozen=True, slots=True)
class Fixed:
    """Exact numbers in base units, one for all sizes or one a size."""

    values: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class Free:
    """A gauge, by its name."""

    gauge: str


@dataclass(frozen=True, slots=True)
class Done:
    """What is done with parts: one of + - * /, a rounding ("nearest", "up to", "down to"), or a function by its name.

    A rounding has its step behind the value. `size` counts all parts, at any depth.
    """

    what: str
    parts: tuple["Expression", ...]
    size: int


Expression = Fixed | Free | Done

_NOTHING = Fixed((Fraction(0),))


def _done(what: str, *parts: Expression) -> Done:
    return Done(what, parts, 1 + sum(part.size if isinstance(part, Done) else 1 for part in parts))


@dataclass(frozen=True, slots=True)
class Shown:
    """A finished length: as it is printed, and the expression it comes to at another gauge.

    `read_back` is told instead wherever it comes to something else than at the pattern's own gauges.
    """

    measured: Measured
    own: Expression
    read_back: Expression | None = None


def through_gauge(graded: Graded) -> tuple[Shown, ...]:
    """The finished measurements that are lengths; one whose expression is not small is left out."""
    return tuple(_Through(graded).shown())


class _Through:
    def __init__(self, graded: Graded) -> None:
        self.graded = graded
        self.knitted: AsKnitted = as_knitted(graded)
        own = {name: Worth(named.result.dimension, named.result.values) for name, named in graded.quantities.items()}
        self.evaluator = Evaluator(graded.sizes, own, set(), {})
        self.moving: Mapping[str, Expression] = self._moving()

    def _moving(self) -> Mapping[str, Expression]:
        """What changes with a gauge, by its name; quantities stand behind those they rely on."""
        self.moving = found = dict[str, Expression]()
        for name, named in self.graded.quantities.items():
            if is_gauge(named):
                found[name] = Free(name)
            elif named.formula is not None and name not in self.knitted.kept and self._moves(named.formula):
                found[name] = self.formula(named.formula)
        return found

    def shown(self) -> Iterator[Shown]:
        for measured in self.graded.finished:
            if measured.finished.dimension != LENGTH:
                continue
            tree = self.knitted.read_back.get(measured.told.span)
            back = None if tree is None else self.tree(tree)
            own = self.formula(measured.told.formula)
            if all(not isinstance(one, Done) or one.size <= _MOST for one in (own, back)):
                yield Shown(measured, own, back)

    def _moves(self, formula: Formula) -> bool:
        names = (*names_in(formula.tree), *names_in(formula.rounding))
        return any(name.name in self.moving for name in names)

    def formula(self, formula: Formula) -> Expression:
        if not self._moves(formula):
            return Fixed(self.evaluator.formula(formula)[0].values)
        tree, rounding = self.tree(formula.tree), formula.rounding
        if rounding is None or isinstance(rounding.step, Multiple):  # only counts fit a multiple, and they do not move
            return tree
        return _done(str(rounding.direction), tree, self.tree(rounding.step))

    def tree(self, tree: Tree) -> Expression:
        if not any(name.name in self.moving for name in names_in(tree)):
            return Fixed(self.evaluator.tree(tree).values)
        match tree:
            case Name():
                return self.moving[tree.name]
            case Negation():
                return _done("-", _NOTHING, self.tree(tree.operand))
            case Operation():
                return _done(str(tree.operator), self.tree(tree.left), self.tree(tree.right))
            case Call():
                return _done(tree.function, *map(self.tree, tree.arguments))
        return Fixed(self.evaluator.tree(tree).values)  # a literal, which has no name in it
