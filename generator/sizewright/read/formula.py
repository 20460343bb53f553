"""The nodes of a formula: what the words of the grading language say, each with its place, nothing evaluated."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from sizewright.base.place import Span
from sizewright.base.units import Unit


class Operator(StrEnum):
    """The four operations."""

    PLUS = "+"
    MINUS = "-"
    TIMES = "*"
    OVER = "/"


class Direction(StrEnum):
    """Which way a rounding goes; to the nearest, a tie goes up."""

    NEAREST = "nearest"
    UP = "up to"
    DOWN = "down to"


class Relation(StrEnum):
    """What a promise says of its two sides."""

    EQUAL = "="
    UNEQUAL = "!="
    LESS = "<"
    AT_MOST = "<="
    MORE = ">"
    AT_LEAST = ">="


@dataclass(frozen=True, slots=True)
class Literal:
    """A typed number, one or one a size, with its unit; the values are as typed, not yet in base units."""

    span: Span
    values: tuple[Fraction, ...]
    unit: Unit | None


@dataclass(frozen=True, slots=True)
class Name:
    """A name that stands for a quantity: `cast_on`, `body.stitches`."""

    span: Span
    name: str


@dataclass(frozen=True, slots=True)
class Negation:
    """The value with its sign turned."""

    span: Span
    operand: "Tree"


@dataclass(frozen=True, slots=True)
class Operation:
    """Two values and what is done with them."""

    span: Span
    operator: Operator
    left: "Tree"
    right: "Tree"


@dataclass(frozen=True, slots=True)
class Call:
    """A function of the language and what it is given; `keys` name the arguments, "" where one stands in its place."""

    span: Span
    function: str
    arguments: tuple["Tree", ...]
    keys: tuple[str, ...]


Tree = Literal | Name | Negation | Operation | Call


@dataclass(frozen=True, slots=True)
class Multiple:
    """ "multiple of 6 plus 2": the step of a rounding, or what a count must fit."""

    span: Span
    of: Tree
    plus: Tree | None


@dataclass(frozen=True, slots=True)
class Rounding:
    """ "nearest multiple of 4", "up to even", "down to 0.5 cm": `step` is a tree where it is a quantity."""

    span: Span
    direction: Direction
    step: Multiple | Tree


@dataclass(frozen=True, slots=True)
class Formula:
    """A whole formula as it was written."""

    span: Span
    text: str
    tree: Tree
    rounding: Rounding | None


@dataclass(frozen=True, slots=True)
class Definition:
    """`name = formula`."""

    span: Span
    name: Name
    formula: Formula


@dataclass(frozen=True, slots=True)
class Comparison:
    """`require left relation right`: a promise about two values."""

    span: Span
    text: str
    left: Formula
    relation: Relation
    right: Formula


@dataclass(frozen=True, slots=True)
class Fit:
    """`require left fits multiple of N plus M`: a promise about a count."""

    span: Span
    text: str
    left: Formula
    multiple: Multiple


Statement = Definition | Comparison | Fit


def names_in(tree: Tree | Multiple | Rounding | None) -> tuple[Name, ...]:
    """Every name in a tree, in the order they stand."""
    match tree:
        case Name():
            return (tree,)
        case Negation(operand=part) | Rounding(step=part):
            return names_in(part)
        case Operation(left=left, right=right):
            return names_in(left) + names_in(right)
        case Call(arguments=arguments):
            return tuple(name for argument in arguments for name in names_in(argument))
        case Multiple(of=of, plus=plus):
            return names_in(of) + names_in(plus)
    return ()
