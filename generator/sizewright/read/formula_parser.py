"""In: the text of a formula or a statement. Out: its tree with places, or the finding that says why there is none."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, lru_cache
from importlib.resources import files
from typing import TypeVar

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedInput

from sizewright.base.finding import Finding
from sizewright.base.nearest import did_you_mean
from sizewright.base.place import Lines, Span
from sizewright.base.units import SPELLINGS, Unit, unit_named
from sizewright.read import formula as nodes
from sizewright.read.formula_stumbles import CALCULATION, stumble_of
from sizewright.read.rules import (
    AMBIGUOUS_DIVISION,
    UNKNOWN_UNIT,
    UNREADABLE_FORMULA,
)
from sizewright.read.typed_numbers import exact, shortened, wrong_list_length

_Read = TypeVar("_Read")

# Deeper trees than this are no formula a person wrote, and would exhaust the stack of those who walk them.
_DEEPEST = 60
_LONGEST = 1000
_DIGITS = 20  # signs of one number; no measurement or count comes near it

_SIGNS = ("RELATION", "EQUALS")
_RELATIONS = {"==": "=", "≤": "<=", "≥": ">=", "≠": "!="}
_OPERATORS = {
    "plus": nodes.Operator.PLUS,
    "minus": nodes.Operator.MINUS,
    "times": nodes.Operator.TIMES,
    "over": nodes.Operator.OVER,
}
_DIRECTIONS = {"NEAREST": nodes.Direction.NEAREST, "UP": nodes.Direction.UP, "DOWN": nodes.Direction.DOWN}

_COMMENT = re.compile(r"#[^\n]*")

# "even" and "odd" are multiples too: of 2, and of 2 plus 1.
_NAMED_STEPS = {"whole": (1, 0), "even": (2, 0), "odd": (2, 1)}


@dataclass(frozen=True, slots=True)
class Faulty(Exception):  # noqa: N818 -- carries findings, is no error of ours
    """What is wrong with a formula."""

    finding: Finding


@cache
def _parser() -> Lark:
    grammar = files("sizewright.read").joinpath("formula.lark").read_text(encoding="utf-8")
    return Lark(
        grammar,
        parser="lalr",
        start=["definition", "comparison", "fit", "formula"],
        propagate_positions=True,
        maybe_placeholders=False,
    )


@lru_cache(maxsize=8192)
def _parsed(text: str, start: str) -> Tree[Token]:
    """The raw tree; its places are offsets into `text`, so that the same words anywhere share it."""
    return _parser().parse(text, start=start)


class FormulaParser:
    """Reads the formulas of one source. `sizes` are the names every bracket list must answer to."""

    def __init__(self, lines: Lines, sizes: tuple[str, ...]) -> None:
        self._lines = lines
        self._sizes = sizes

    def formula(self, start: int, end: int) -> nodes.Formula | Finding:
        """The formula between two offsets of the source."""
        return self._read(self._lines.text[start:end], start, "formula", self._formula)

    def statement(self, start: int, end: int) -> nodes.Statement | Finding:
        """The statement between two offsets of the source."""
        text = _COMMENT.sub(lambda comment: " " * len(comment.group()), self._lines.text[start:end])
        if not re.match(r"require\b", text):
            return self._read(text, start, "definition", self._definition)
        if re.search(r"\bfits\b", text):
            return self._read(text, start, "fit", self._fit)
        return self._read(text, start, "comparison", self._comparison)

    def _read(self, text: str, start: int, kind: str, build: Callable[[Tree[Token], int], _Read]) -> _Read | Finding:
        span = self._lines.span(start, start + len(text))
        if not text.strip():
            return UNREADABLE_FORMULA.at(span, "Here stands no formula.", CALCULATION)
        if len(text) > _LONGEST:
            return UNREADABLE_FORMULA.at(
                span, "This formula is too long to read.", "Give its parts names of their own."
            )
        try:
            return build(_parsed(text, kind), start)
        except UnexpectedInput as fault:
            return self._unreadable(fault, text, start, kind)
        except Faulty as fault:
            return fault.finding

    def _unreadable(self, fault: UnexpectedInput, text: str, start: int, kind: str) -> Finding:
        stumble = stumble_of(fault, text, kind)
        at = start + stumble.start
        return UNREADABLE_FORMULA.at(self._lines.span(at, at + len(stumble.word)), stumble.message, stumble.mend)

    def _span(self, tree: Tree[Token] | Token, start: int) -> Span:
        if isinstance(tree, Token):
            return self._lines.span(start + (tree.start_pos or 0), start + (tree.end_pos or 0))
        return self._lines.span(start + tree.meta.start_pos, start + tree.meta.end_pos)

    def _definition(self, tree: Tree[Token], start: int) -> nodes.Definition:
        name, formula = _branches(tree)
        if len(name.children) > 1:
            message = f"“{self._text(name, start)}” has a dot in it, as only the names of gauges do."
            raise Faulty(UNREADABLE_FORMULA.at(self._span(name, start), message, "Write “_” for the dot."))
        return nodes.Definition(self._span(tree, start), self._name(name, start), self._formula(formula, start))

    def _comparison(self, tree: Tree[Token], start: int) -> nodes.Comparison:
        left, right = _branches(tree)
        sign = next(str(child) for child in tree.children if isinstance(child, Token) and child.type in _SIGNS)
        return nodes.Comparison(
            self._span(tree, start),
            self._text(tree, start),
            self._formula(left, start),
            nodes.Relation(_RELATIONS.get(sign, sign)),
            self._formula(right, start),
        )

    def _fit(self, tree: Tree[Token], start: int) -> nodes.Fit:
        left, multiple = _branches(tree)
        return nodes.Fit(
            self._span(tree, start),
            self._text(tree, start),
            self._formula(left, start),
            self._multiple(multiple, start),
        )

    def _text(self, tree: Tree[Token], start: int) -> str:
        return self._lines.text[start + tree.meta.start_pos : start + tree.meta.end_pos]

    def _formula(self, tree: Tree[Token], start: int) -> nodes.Formula:
        total, *rounding = _branches(tree)
        return nodes.Formula(
            self._span(tree, start),
            self._text(tree, start),
            self._tree(total, start),
            self._rounding(rounding[0], start) if rounding else None,
        )

    def _rounding(self, tree: Tree[Token], start: int) -> nodes.Rounding:
        direction = next(child for child in tree.children if isinstance(child, Token))
        (step,) = _branches(tree)
        span = self._span(tree, start)
        if step.data in _NAMED_STEPS:
            of, plus = (nodes.Literal(span, (Fraction(n),), None) for n in _NAMED_STEPS[str(step.data)])
            return nodes.Rounding(span, _DIRECTIONS[direction.type], nodes.Multiple(span, of, plus))
        read = self._multiple(step, start) if step.data == "multiple" else self._tree(step, start)
        return nodes.Rounding(span, _DIRECTIONS[direction.type], read)

    def _multiple(self, tree: Tree[Token], start: int) -> nodes.Multiple:
        of, *plus = _branches(tree)
        return nodes.Multiple(
            self._span(tree, start), self._tree(of, start), self._tree(plus[0], start) if plus else None
        )

    def _name(self, tree: Tree[Token], start: int) -> nodes.Name:
        return nodes.Name(self._span(tree, start), ".".join(str(child) for child in tree.children))

    def _tree(self, tree: Tree[Token], start: int, depth: int = 0) -> nodes.Tree:
        span = self._span(tree, start)
        if depth > _DEEPEST:
            raise Faulty(
                UNREADABLE_FORMULA.at(span, "This formula is nested too deeply.", "Give its parts names of their own.")
            )
        match str(tree.data):
            case "literal" | "listed":
                return self._literal(tree, start)
            case "name":
                return self._name(tree, start)
            case "bracketed" | "positive":
                return self._tree(_branches(tree)[0], start, depth + 1)
            case "negation":
                return self._negated(tree, start, depth)
            case "call":
                given = [_argument(branch) for branch in _branches(tree)]
                arguments = tuple(self._tree(branch, start, depth + 1) for _, branch in given)
                return nodes.Call(span, str(tree.children[0]), arguments, tuple(key for key, _ in given))
            case operation:
                left, right = (self._tree(branch, start, depth + 1) for branch in _branches(tree))
                self._refuse_double_division(tree, start)
                return nodes.Operation(span, _OPERATORS[operation], left, right)

    def _negated(self, tree: Tree[Token], start: int, depth: int) -> nodes.Tree:
        """A minus before a bracket list is the sign of its first value, as the trade writes "-5 (-5, -4) cm"."""
        span = self._span(tree, start)
        (branch,) = _branches(tree)
        operand = self._tree(branch, start, depth + 1)
        if isinstance(operand, nodes.Literal) and branch.data in ("literal", "listed"):
            return nodes.Literal(span, (-operand.values[0], *operand.values[1:]), operand.unit)
        return nodes.Negation(span, operand)

    def _refuse_double_division(self, tree: Tree[Token], start: int) -> None:
        right = _branches(tree)[1]
        typed = str(right.children[0]) if right.data == "literal" else ""
        if tree.data == "over" and "/" in typed and " " not in typed:
            over, under = typed.split("/")
            raise Faulty(
                AMBIGUOUS_DIVISION.at(
                    self._span(right, start),
                    f"“/ {typed}” can be read in two ways.",
                    f"Write “/ ({typed})” for the fraction, or “/ {over} / {under}” for two divisions.",
                )
            )

    def _literal(self, tree: Tree[Token], start: int) -> nodes.Literal:
        values = [self._exact(tree.children[0], start)]
        unit: Unit | None = None
        for branch in _branches(tree):
            if branch.data == "unit":
                unit = self._unit(branch, start)
            else:
                value = self._exact(branch.children[0], start)
                values.append(-value if branch.data == "below_zero" else value)
        if tree.data == "listed" and len(values) != len(self._sizes):
            raise Faulty(wrong_list_length(self._span(tree, start), self._text(tree, start), len(values), self._sizes))
        return nodes.Literal(self._span(tree, start), tuple(values), unit)

    def _exact(self, token: Tree[Token] | Token, start: int) -> Fraction:
        span = self._span(token, start)
        if len(str(token)) > _DIGITS:
            raise Faulty(UNREADABLE_FORMULA.at(span, f"“{shortened(str(token))}” has too many digits.", "Round it."))
        try:
            return exact(str(token))
        except ZeroDivisionError:
            raise Faulty(UNREADABLE_FORMULA.at(span, f"“{token}” divides by nothing.", "Mend the number.")) from None

    def _unit(self, tree: Tree[Token], start: int) -> Unit:
        word = str(tree.children[0])
        unit = unit_named(word)
        if unit is None:
            alike = [unit for unit in SPELLINGS if unit[0] == word[0].casefold()]
            mend = did_you_mean(word, alike, "Known units: st, row, rnd, mm, cm, m, in, ft, yd, g, kg, oz, lb, %.")
            if word in ("nearest", "up", "down"):
                mend = "Write a comma before a rounding: “, nearest multiple of 4”."
            raise Faulty(UNKNOWN_UNIT.at(self._span(tree, start), f"“{word}” is not a unit.", mend))
        return unit


def _argument(branch: Tree[Token]) -> tuple[str, Tree[Token]]:
    """The name an argument is given by, "" where it has none, and its tree."""
    if branch.data != "named":
        return "", branch
    return str(branch.children[0]), _branches(branch)[0]


def _branches(tree: Tree[Token]) -> list[Tree[Token]]:
    return [child for child in tree.children if isinstance(child, Tree)]
