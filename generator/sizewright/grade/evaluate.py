"""In: the tree of a formula and the values of its names. Out: its exact value for every size, units checked once."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from operator import add, mul, sub, truediv
from typing import assert_never

from sizewright.base.finding import Finding, Rule
from sizewright.base.nearest import did_you_mean
from sizewright.base.place import Span
from sizewright.base.printing import decimal
from sizewright.base.units import (
    COUNTS,
    LENGTH,
    MASS,
    PLAIN,
    ROW_GAUGE,
    STITCH_GAUGE,
    Dimension,
    per,
    spoken,
    times,
    unit_named,
)
from sizewright.grade.functions import FUNCTIONS, Unsuitable
from sizewright.grade.rules import BAD_STEP, DIVISION_BY_ZERO, UNKNOWN_FUNCTION, UNKNOWN_NAME, WRONG_UNITS
from sizewright.grade.schematic.table import SHAPES
from sizewright.grade.shaping.plan import Plan
from sizewright.grade.shaping.table import PLANS
from sizewright.grade.sums import terms_of, unlike
from sizewright.grade.worth import Fault, Worth, paired, where
from sizewright.read.formula import (
    Call,
    Direction,
    Formula,
    Literal,
    Multiple,
    Name,
    Negation,
    Operation,
    Operator,
    Rounding,
    Tree,
)

_SIGNS = {Operator.PLUS: add, Operator.MINUS: sub}


class Evaluator:
    """Works formulas out. `known` are the values so far, `failed` the names whose reason is told elsewhere.

    `plans` are names that stand for a plan: they have no value, but their numbers have.
    """

    def __init__(
        self, sizes: Sequence[str], known: Mapping[str, Worth], failed: set[str], plans: Mapping[str, Plan]
    ) -> None:
        self._sizes = sizes
        self._known = known
        self._failed = failed
        self._plans = plans

    def formula(self, formula: Formula) -> tuple[Worth, Worth]:
        """The value as the formula has it, and the same before its rounding. Raises `Fault`."""
        unrounded = self.tree(formula.tree)
        if formula.rounding is None:
            return unrounded, unrounded
        return self._rounded(unrounded, formula.rounding, formula.text), unrounded

    def tree(self, tree: Tree) -> Worth:
        """The value of a tree. Raises `Fault`."""
        match tree:
            case Literal():
                return _literal(tree)
            case Name():
                return self._name(tree)
            case Negation():
                inner = self.tree(tree.operand)
                return Worth(inner.dimension, tuple(-value for value in inner.values))
            case Operation():
                return self._operation(tree)
            case Call():
                return self._call(tree)
        assert_never(tree)

    def _name(self, tree: Name) -> Worth:
        worth = self._known.get(tree.name)
        if worth is not None:
            return worth
        raise Fault(None)  # those that nothing defines are told all at once: see `unknown`

    def unknown(self, names: Iterable[Name]) -> Iterator[Finding]:
        """A finding for each of some names that nothing defines."""
        for name in names:
            if name.name in self._plans:
                numbers = ", ".join(f"{name.name}.{member.name}" for member in self._plans[name.name].members)
                message = f"“{name.name}” is a plan and no number."
                yield UNKNOWN_NAME.at(
                    name.span, message, f"Its numbers are {numbers}; its words stand in a work block."
                )
            elif name.name not in self._known and name.name not in self._failed:
                message = f"Nothing defines “{name.name}”."
                yield UNKNOWN_NAME.at(name.span, message, self._name_mend(name.name))

    def _name_mend(self, name: str) -> str:
        """How to mend a name nothing defines; one that can only be a gauge is never taken for another quantity."""
        for word, key, dimension in _GAUGES:
            if name == word or name.endswith(f".{key}"):
                known = [f"“{other}”" for other, worth in self._known.items() if worth.dimension == dimension]
                there = f"Known are: {', '.join(known)}." if known else ""
                return f"{there} Give the gauge its “{key}” in the header, for this fabric.".strip()
        if unit_named(name) is not None:
            return f"“{name}” is a unit: write a number before it, such as “1 {name}”."
        hint = "Define it in a grade block, or give it to every size in the header."
        return did_you_mean(name, (*self._plans, *self._known, *self._failed), hint)

    def _operation(self, tree: Operation) -> Worth:
        if tree.operator in _SIGNS:
            return self._sum(tree)
        left, right = self.tree(tree.left), self.tree(tree.right)
        if tree.operator is Operator.TIMES:
            return Worth(times(left.dimension, right.dimension), paired(mul, left.values, right.values))
        self._refuse_zero(tree.right, [value == 0 for value in right.values])
        return Worth(per(left.dimension, right.dimension), paired(truediv, left.values, right.values))

    def _sum(self, tree: Operation) -> Worth:
        terms = terms_of(tree)
        worths = [self.tree(term) for _, term in terms]
        dimensions = [worth.dimension for worth in worths]
        if len(set(dimensions)) > 1:
            raise unlike(terms, dimensions, self._known)
        values = worths[0].values
        for (operator, _), worth in zip(terms[1:], worths[1:], strict=True):
            values = paired(_SIGNS[operator], values, worth.values)
        return Worth(dimensions[0], values)

    def _refuse_zero(self, divisor: Tree, broken: Sequence[bool]) -> None:
        """A fault where a divisor is nothing in some size, or has to be above zero and is not."""
        if any(broken):
            mend = "Mend the divisor; where it may come to nothing, write max(1, …) around it."
            raise _fault(DIVISION_BY_ZERO, divisor.span, "This divides by nothing.", mend, where(broken, self._sizes))

    def _call(self, tree: Call) -> Worth:
        function = FUNCTIONS.get(tree.function)
        if tree.function in PLANS:
            message = f"“{tree.function}” is a plan and no number."
            raise _fault(WRONG_UNITS, tree.span, message, f"Give it a name of its own: “shaping = {tree.function}(…)”.")
        if function is None:
            mend = did_you_mean(tree.function, (*FUNCTIONS, *PLANS), f"Known functions: {', '.join(FUNCTIONS)}.")
            if tree.function in SHAPES:
                mend = f"“{tree.function}” is a shape; its piece stands in a schematic."
            raise _fault(UNKNOWN_FUNCTION, tree.span, f"There is no function “{tree.function}”.", mend)
        arguments = tuple(self.tree(argument) for argument in tree.arguments)
        if any(tree.keys):
            named = next(key for key in tree.keys if key)
            raise _fault(
                UNKNOWN_FUNCTION, tree.span, f"“{function.name}” takes no value by name, “{named}”.", function.page
            )
        if len(arguments) < function.least or len(arguments) > (function.most or len(arguments)):
            takes = "1 value" if function.most == 1 else f"{function.least}{'' if function.most else ' or more'} values"
            message = f"“{function.name}” takes {takes} and is given {len(arguments)}."
            raise _fault(UNKNOWN_FUNCTION, tree.span, message, function.page)
        if function.divides:
            self._refuse_zero(tree.arguments[1], [value <= 0 for value in arguments[1].values])
        try:
            return function.apply(arguments)
        except Unsuitable as reason:
            raise _fault(WRONG_UNITS, tree.span, f"“{function.name}” {reason}.", function.page) from None

    def _rounded(self, worth: Worth, rounding: Rounding, text: str) -> Worth:
        of, plus = self.step(rounding, worth, text)
        round_one = _ROUNDINGS[rounding.direction]
        if not any(plus):
            return Worth(worth.dimension, paired(round_one, worth.values, of))
        shifted = paired(round_one, paired(sub, worth.values, plus), of)
        return Worth(worth.dimension, paired(add, shifted, plus))

    def step(self, rounding: Rounding, worth: Worth, text: str) -> tuple[tuple[Fraction, ...], tuple[Fraction, ...]]:
        """From what a rounding goes to the next, and what is added, of a value in a formula. Raises `Fault`."""
        if isinstance(rounding.step, Multiple):
            return self.multiple(rounding.step, worth.dimension, rounding.span)
        return self._length_step(rounding, rounding.step, worth, text), (Fraction(0),)

    def multiple(
        self, multiple: Multiple, counted: Dimension, span: Span
    ) -> tuple[tuple[Fraction, ...], tuple[Fraction, ...]]:
        """What is repeated and what is added, of a multiple that something counted must fit. Raises `Fault`."""
        if counted not in (*COUNTS, PLAIN):
            message = f"Only a count can fit a multiple; this is {spoken(counted)}."
            mend = "Multiply by a gauge first: chest * stitch_gauge"
            if counted == LENGTH:
                mend += ", or write a length as the step: nearest 0.5 cm."
            raise _fault(WRONG_UNITS, span, message, mend)
        of = self._part(multiple.of, counted)
        plus = self._part(multiple.plus, counted) if multiple.plus is not None else (Fraction(0),)
        if any(value <= 0 or value.denominator != 1 for value in of) or any(value.denominator != 1 for value in plus):
            more = f" plus {decimal(plus[0])}" if multiple.plus is not None else ""
            message = f"No count fits a multiple of {decimal(of[0])}{more}."
            mend = "A multiple is of a whole number above zero, plus a whole number: “multiple of 6 plus 2”."
            raise _fault(BAD_STEP, multiple.span, message, mend)
        return of, plus

    def _part(self, tree: Tree, counted: Dimension) -> tuple[Fraction, ...]:
        worth = self.tree(tree)
        if worth.dimension not in (PLAIN, counted):
            message = f"This is {spoken(worth.dimension)}, where a number of {spoken(counted)} was expected."
            raise _fault(WRONG_UNITS, tree.span, message, "Write a whole number.")
        return worth.values

    def _length_step(self, rounding: Rounding, step: Tree, worth: Worth, text: str) -> tuple[Fraction, ...]:
        given = self.tree(step)
        if given.dimension != worth.dimension:
            rounded, by = spoken(worth.dimension), spoken(given.dimension)
            message = f"“{' '.join(text.split())}” rounds {rounded} to a step that is {by}."
            mend = f"Write the step in the same unit: “{rounding.direction} {_STEPS.get(worth.dimension, '…')}”."
            if worth.dimension in COUNTS:
                mend = f"Write “{rounding.direction} multiple of …”, “whole”, “even” or “odd”."
            raise _fault(WRONG_UNITS, rounding.span, message, mend)
        if any(value <= 0 for value in given.values):
            raise _fault(BAD_STEP, step.span, "The step of a rounding is above zero.", "Write for example “0.5 cm”.")
        return given.values


def _literal(tree: Literal) -> Worth:
    if tree.unit is None:
        return Worth(PLAIN, tree.values)
    return Worth(tree.unit.dimension, tuple(value * tree.unit.factor for value in tree.values))


# Roundings to a step, on whole numbers: value / step is (value.numerator * step.denominator) over the other two.


def _nearest(value: Fraction, step: Fraction) -> Fraction:
    over = value.denominator * step.numerator
    return (2 * value.numerator * step.denominator + over) // (2 * over) * step


def _up(value: Fraction, step: Fraction) -> Fraction:
    return -(-value.numerator * step.denominator // (value.denominator * step.numerator)) * step


def _down(value: Fraction, step: Fraction) -> Fraction:
    return value.numerator * step.denominator // (value.denominator * step.numerator) * step


# What a step looks like for what is not counted, and the names of gauges with the key of the header that gives them.
_STEPS = {LENGTH: "0.5 cm", MASS: "5 g"}
_GAUGES = (("stitch_gauge", "stitches", STITCH_GAUGE), ("row_gauge", "rows", ROW_GAUGE))
_ROUNDINGS: Mapping[Direction, Callable[[Fraction, Fraction], Fraction]] = {
    Direction.NEAREST: _nearest,
    Direction.UP: _up,
    Direction.DOWN: _down,
}


def _fault(rule: Rule, span: Span, message: str, mend: str, sizes: Sequence[str] = ()) -> Fault:
    return Fault(rule.at(span, message, mend, sizes))
