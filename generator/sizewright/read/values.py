"""In: nodes of YAML. Out: the typed values a header is made of; a wrong one is a finding that says what it takes."""

import re
from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from dataclasses import replace
from datetime import date
from fractions import Fraction
from typing import TypeVar

from sizewright.base.finding import Finding
from sizewright.base.nearest import did_you_mean
from sizewright.base.place import Lines, Span
from sizewright.base.quantity import Quantity
from sizewright.base.units import PLAIN, Dimension, per, spoken
from sizewright.read.formula import Formula, Literal, Negation, Operation, Operator, Tree
from sizewright.read.formula_parser import FormulaParser
from sizewright.read.formula_stumbles import CALCULATION
from sizewright.read.pattern import Day, Measure, Words
from sizewright.read.rules import IDLE_BRACES, UNKNOWN_KEY, WRONG_LIST_LENGTH, WRONG_VALUE
from sizewright.read.yaml_tree import Listing, Node, Scalar, Table

_Value = TypeVar("_Value")
BRACES = re.compile(r"\{[^{}]*\}")
_NAME = re.compile(r"[^\W\d]\w*")


class Values:
    """Turns nodes into values and gathers what is wrong with them."""

    def __init__(self, lines: Lines) -> None:
        self.lines = lines
        self.findings: list[Finding] = []

    def fault(self, span: Span, message: str, mend: str) -> None:
        """Records a wrong value."""
        self.findings.append(WRONG_VALUE.at(span, message, mend))

    def words(self, key: str, node: Node) -> Words | None:
        """One text."""
        if not isinstance(node, Scalar):
            self.fault(node.span, f"“{key}” takes one text.", f"Write “{key}: …” on one line.")
            return None
        if not node.text.strip():
            self.fault(node.span, f"“{key}” is empty.", "Write a value, or take the line out.")
            return None
        braces = BRACES.search(node.text)
        if braces:
            message = f"“{braces.group()}” stands in “{key}”, where nothing is worked out."
            self.findings.append(IDLE_BRACES.at(node.span, message, "Write the number out, or tell it in the text."))
        return Words(node.span, node.text.strip())

    def many(self, key: str, node: Node) -> tuple[Words, ...]:
        """A list of texts; one alone may stand without brackets."""
        nodes = node.items if isinstance(node, Listing) else (node,)
        return tuple(words for item in nodes if (words := self.words(key, item)))

    def one_of(self, key: str, node: Node, known: Sequence[str]) -> Words | None:
        """One of a few words."""
        words = self.words(key, node)
        if words is None or words.text in known:
            return words
        mend = did_you_mean(words.text, known, f"Known are: {', '.join(known)}.")
        self.fault(words.span, f"“{words.text}” is no value of “{key}”.", mend)
        return None

    def day(self, key: str, node: Node) -> Day | None:
        """A date, YYYY-MM-DD."""
        words = self.words(key, node)
        if words is None:
            return None
        if re.fullmatch(r"\d{4}-\d\d-\d\d", words.text):
            with suppress(ValueError):
                return Day(words.span, date.fromisoformat(words.text))
        self.fault(words.span, f"“{words.text}” is no date.", "Write year, month and day: 2026-03-01.")
        return None

    def shade(self, key: str, node: Node) -> Words | None:
        """A colour to draw with: "#" and six hexadecimal digits, kept in small letters."""
        words = self.words(key, node)
        if words is None or re.fullmatch(r"#[0-9a-fA-F]{6}", words.text):
            return words and replace(words, text=words.text.lower())
        self.fault(words.span, f"“{words.text}” is no colour.", f'Write its six digits in quotes: {key}: "#2b7377".')
        return None

    def count(self, key: str, node: Node) -> int | None:
        """A whole number of stitches, zero or more."""
        words = self.words(key, node)
        if words is None or (words.text.isascii() and words.text.isdigit() and len(words.text) <= 4):
            return int(words.text) if words else None
        self.fault(words.span, f"“{words.text}” is no count of stitches.", f"Write a whole number: “{key}: 1”.")
        return None

    @staticmethod
    def share(text: str) -> Fraction | None:
        """The part of a whole that "10 %" or "12.5%" is, exact."""
        found = re.fullmatch(r"(\d{1,3}(?:\.\d{1,3})?) ?(?:%|percent)", text.strip())
        return Fraction(found[1]) / 100 if found else None

    def measure(self, key: str, node: Node, expected: Dimension | None, example: str) -> Measure | None:
        """A quantity, above zero, of the expected kind (any kind where that is None)."""
        words = self.words(key, node)
        if words is None or not isinstance(node, Scalar):
            return None
        quantity = self.quantity(node, f"Write for example “{key}: {example}”.")
        if quantity is None:
            return None
        if expected is not None and quantity.dimension != expected:
            message = f"“{words.text}” is {spoken(quantity.dimension)}, but “{key}” takes {spoken(expected)}."
            self.fault(words.span, message, f"Write for example “{key}: {example}”.")
            return None
        if expected is None and quantity.dimension == PLAIN:
            self.fault(words.span, f"“{key}: {words.text}” has no unit.", f"Write for example “{key}: {example}”.")
            return None
        if quantity.value <= 0:
            self.fault(words.span, f"“{key}: {words.text}” is not above zero.", "A measurement is more than nothing.")
            return None
        return Measure(words.span, quantity, words.text)

    def quantity(self, node: Scalar, mend: str) -> Quantity | None:
        """One number with its unit, of any sign and kind; a finding takes `mend` where it has nothing better to say."""
        before = len(self.findings)
        formula = self.formula(node, ())
        if formula is None:
            self.findings[before:] = [_of_one(finding, node, mend) for finding in self.findings[before:]]
            return None
        quantity = constant(formula.tree) if formula.rounding is None else None
        if quantity is None:
            self.fault(node.span, f"“{node.text}” is no number with its unit.", mend)
        return quantity

    def usable(self, key: Scalar, example: str) -> bool:
        """Whether formulas can use a key as a name; one that they cannot is a wrong value."""
        if _NAME.fullmatch(key.text):
            return True
        near = re.sub(r"\W+", "_", key.text).strip("_").lstrip("0123456789_")
        self.fault(key.span, f"“{key.text}” cannot be used as a name in formulas.", f"Write “{near or example}”.")
        return False

    def formula(self, node: Scalar, sizes: tuple[str, ...]) -> Formula | None:
        """A formula in a header; it must stand on one line as it is, so that its places are true."""
        end = node.start + len(node.text)
        if self.lines.text[node.start : end] != node.text:
            self.fault(
                node.span, f"“{node.text}” is folded or holds signs behind a “\\”.", "Write it plainly on one line."
            )
            return None
        read = FormulaParser(self.lines, sizes).formula(node.start, end)
        if isinstance(read, Finding):
            self.findings.append(read)
            return None
        return read

    def table(self, key: str, node: Node, example: str) -> "Keys | None":
        """A mapping, to be read key by key."""
        if isinstance(node, Table):
            return Keys(self, node)
        self.fault(node.span, f"“{key}” takes keys and values.", f"Write for example “{key}: {example}”.")
        return None

    def tables(self, key: str, node: Node, example: str) -> Iterator["Keys"]:
        """A list of mappings; one alone may stand without brackets."""
        for item in node.items if isinstance(node, Listing) else (node,):
            keys = self.table(key, item, example)
            if keys is not None:
                yield keys


class Keys:
    """A mapping read key by key: what nobody asked for when it is closed is an unknown key."""

    def __init__(self, values: Values, table: Table) -> None:
        self.values = values
        self.span = table.span
        self._left = {key.text: (key, node) for key, node in table.entries}
        self._known: list[str] = []
        self.given = frozenset(self._left)

    def take(self, key: str, convert: Callable[[str, Node], _Value]) -> _Value | None:
        """The value of a key, converted; None where the key is left out."""
        self._known.append(key)
        entry = self._left.pop(key, None)
        return None if entry is None else convert(key, entry[1])

    def require(self, key: str, convert: Callable[[str, Node], _Value | None], example: str) -> _Value | None:
        """The value of a key that must be there."""
        if key not in self._left:
            self._known.append(key)
            self.values.fault(self.span, f"“{key}” is missing here.", f"Add “{key}: {example}”.")
            return None
        return self.take(key, convert)

    def rest(self) -> tuple[tuple[Scalar, Node], ...]:
        """All entries not taken yet."""
        entries = tuple(self._left.values())
        self._left.clear()
        return entries

    def close(self) -> None:
        """Every key that is left is unknown."""
        for key, _ in self.rest():
            mend = did_you_mean(key.text, self._known, f"Known here are: {', '.join(self._known)}.")
            self.values.findings.append(UNKNOWN_KEY.at(key.span, f"“{key.text}” is not a key of this place.", mend))


def _of_one(finding: Finding, node: Scalar, mend: str) -> Finding:
    """A finding about a formula, told for a place that takes one measurement."""
    if finding.rule == WRONG_LIST_LENGTH.name:
        return WRONG_VALUE.at(node.span, f"“{node.text}” is a list, but this place takes one number.", mend)
    return replace(finding, mend=mend) if finding.mend == CALCULATION else finding


def constant(tree: Tree) -> Quantity | None:
    """The quantity of a tree that holds nothing but one number, or one divided by another ("22 st / 10 cm")."""
    match tree:
        case Literal(values=(value,), unit=None):
            return Quantity(value, PLAIN)
        case Literal(values=(value,), unit=unit) if unit is not None:
            return Quantity(value * unit.factor, unit.dimension)
        case Negation(operand=operand):
            inner = constant(operand)
            return None if inner is None else Quantity(-inner.value, inner.dimension)
        case Operation(operator=Operator.OVER, left=left, right=right):
            over, under = constant(left), constant(right)
            if over is None or under is None or under.value == 0:
                return None
            return Quantity(Fraction(over.value / under.value), per(over.dimension, under.dimension))
    return None
