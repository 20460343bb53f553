"""In: rounding, units and formulas drawn at random. Out: what must hold for all of them holds.

The drawn formulas are worked out a second time by a small evaluator of their own, on the tree they were drawn as.
"""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from operator import add, mul, sub, truediv
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizewright.base.printing import as_text, printed
from sizewright.base.units import LENGTH, MASS, PLAIN, SPELLINGS, STITCHES, Dimension, unit_named
from sizewright.grade.graded import Graded
from sizewright.read.folder import read_single
from sizewright.read.pattern import TypedList, WorkBlock

Grade = Callable[..., Graded]

THOROUGH = settings(derandomize=True, max_examples=80, deadline=None)
FORMULAS = 25  # a pattern: 80 patterns of them are two thousand formulas in all

FRACTIONS = st.fractions(min_value=-500, max_value=500, max_denominator=97)


def typed(value: Fraction) -> str:
    """A fraction as a formula says it, sign and all."""
    return f"({value.numerator} / {value.denominator})"


# ------------------------------------------------------------------------------------------------------------ rounding


@THOROUGH
@given(
    value=FRACTIONS,
    direction=st.sampled_from(["nearest", "up to", "down to"]),
    of=st.integers(1, 40),
    plus=st.none() | st.integers(0, 50),
)
def test_a_rounding_lands_on_its_step_in_its_direction(
    graded: Grade, value: Fraction, direction: str, of: int, plus: int | None
) -> None:
    step = f"multiple of {of}" + ("" if plus is None else f" plus {plus}")
    found = graded(f"n = {typed(value)} * 1 st, {direction} {step}")
    result = found.quantities["n"].result
    assert result.unrounded == (value,)
    check_rounding(value, result.values[0], direction, Fraction(of), Fraction(plus or 0))


@THOROUGH
@given(
    value=FRACTIONS,
    direction=st.sampled_from(["nearest", "up to", "down to"]),
    step=st.fractions(min_value=Fraction(1, 16), max_value=9, max_denominator=16),
    unit=st.sampled_from(["cm", "in", "mm"]),
)
def test_a_length_lands_on_its_step_in_its_direction(
    graded: Grade, value: Fraction, direction: str, step: Fraction, unit: str
) -> None:
    found = graded(f"n = {typed(value)} * 1 {unit}, {direction} {typed(step)} * 1 {unit}")
    result = found.quantities["n"].result
    factor = factor_of(unit)
    assert result.unrounded == (value * factor,)
    check_rounding(value * factor, result.values[0], direction, step * factor, Fraction(0))


def check_rounding(value: Fraction, rounded: Fraction, direction: str, of: Fraction, plus: Fraction) -> None:
    assert ((rounded - plus) / of).denominator == 1, "it lands on the step"
    moved = rounded - value
    if direction == "nearest":
        assert -of / 2 < moved <= of / 2, "half a step at most, and a tie goes up"
    elif direction == "up to":
        assert 0 <= moved < of
    else:
        assert -of < moved <= 0


@pytest.mark.parametrize(("word", "of", "plus"), [("whole", 1, 0), ("even", 2, 0), ("odd", 2, 1)])
@THOROUGH
@given(value=FRACTIONS, direction=st.sampled_from(["nearest", "up to", "down to"]))
def test_a_named_step_is_a_multiple(
    graded: Grade, word: str, of: int, plus: int, value: Fraction, direction: str
) -> None:
    (rounded,) = graded(f"n = {typed(value)} * 1 row, {direction} {word}").quantities["n"].result.values
    check_rounding(value, rounded, direction, Fraction(of), Fraction(plus))


# --------------------------------------------------------------------------------------------------------------- units


def factor_of(word: str) -> Fraction:
    unit = unit_named(word)
    assert unit is not None
    return unit.factor


@THOROUGH
@given(value=FRACTIONS, data=st.data())
def test_a_quantity_comes_back_from_any_unit(graded: Grade, value: Fraction, data: st.DataObject) -> None:
    kind = data.draw(st.sampled_from([LENGTH, MASS]))
    words = sorted(
        word for word in SPELLINGS if word.isalpha() and getattr(unit_named(word), "dimension", None) == kind
    )
    there, other = data.draw(st.sampled_from(words)), data.draw(st.sampled_from(words))
    first = graded(f"a = {typed(value)} * 1 {there}", f"how_many = a / 1 {other}").quantities
    assert first["how_many"].result.dimension == PLAIN
    (many,) = first["how_many"].result.values
    second = graded(f"a = {typed(many)} * 1 {other}").quantities
    assert second["a"].result == first["a"].result
    assert first["a"].result.values == (value * factor_of(there),)


@THOROUGH
@given(counts=st.lists(st.integers(0, 5000), min_size=3, max_size=3))
def test_printed_counts_are_read_as_they_were(
    tmp_path_factory: pytest.TempPathFactory, sizes: str, counts: list[int]
) -> None:
    values = tuple(map(Fraction, counts))
    text = as_text(printed(values, STITCHES))
    source = tmp_path_factory.getbasetemp() / "printed.md"
    source.write_text(f"---\ntitle: A\n{sizes}---\n\n```work\nCast on {text} sts.\n```\n", encoding="utf-8")
    project = read_single(source)
    assert project.findings == ()
    blocks = [piece for piece in project.patterns[0].body if isinstance(piece, WorkBlock)]
    lists = [piece for block in blocks for line in block.lines for piece in line.pieces if isinstance(piece, TypedList)]
    if len(set(counts)) == 1:
        assert (lists, text) == ([], str(counts[0]))
    else:
        assert [one.values for one in lists] == [values]


# ------------------------------------------------------------------------------------------------------------ formulas


@dataclass(frozen=True)
class Drawn:
    """A formula as it was drawn: its words, how tightly they hold together, and its values, None for nothing."""

    text: str
    tightness: int
    values: tuple[Fraction, ...] | None
    listed: bool = False


SUM, PRODUCT, ATOM = 1, 2, 3
UNITS = {PLAIN: [""], STITCHES: [" st", " sts", " stitches"], LENGTH: [" cm", " in", " mm", " yd", '"']}
NUMBERS = (("7", "7"), ("0", "0"), ("12", "12"), ("1.25", "5/4"), ("0.4", "2/5"), ("2 1/4", "9/4"), ("1½", "3/2"))


def leaf(chance: Random, kind: Dimension) -> Drawn:
    unit = chance.choice(UNITS[kind])
    factor = factor_of(unit.strip()) if unit else Fraction(1)
    listed = chance.random() < 0.5
    numbers = [chance.choice(NUMBERS) for _ in range(3 if listed else 1)]
    texts = [text for text, _ in numbers]
    shown = f"{texts[0]} ({', '.join(texts[1:])})" if listed else texts[0]
    values = tuple(Fraction(value) * factor for _, value in numbers)
    return Drawn(shown + unit, ATOM, values if listed else values * 3, listed)


OPERATIONS: dict[str, Callable[[Fraction, Fraction], Fraction]] = {"+": add, "-": sub, "*": mul, "/": truediv}


def bound(drawn: Drawn, tightness: int) -> str:
    """Its words, in brackets where it would fall apart beside a neighbour that binds so tightly."""
    return drawn.text if drawn.tightness >= tightness else f"({drawn.text})"


def joined(operator: str, left: Drawn, right: Drawn) -> Drawn:
    tightness = PRODUCT if operator in "*/" else SUM
    text = f"{bound(left, tightness)} {operator} {bound(right, tightness + 1)}"
    if left.values is None or right.values is None or (operator == "/" and not all(right.values)):
        return Drawn(text, tightness, None)
    pairs = zip(left.values, right.values, strict=True)
    return Drawn(text, tightness, tuple(OPERATIONS[operator](a, b) for a, b in pairs))


def negated(drawn: Drawn) -> Drawn:
    """A minus right before a list is the sign of its first value alone, so a list goes into brackets."""
    text = f"({drawn.text})" if drawn.listed or drawn.tightness < ATOM else drawn.text
    return Drawn(f"-{text}", PRODUCT, None if drawn.values is None else tuple(-value for value in drawn.values))


FUNCTIONS: dict[str, Callable[[tuple[Fraction, ...]], Fraction]] = {
    "min": min,
    "max": max,
    "abs": lambda one: abs(one[0]),
    "half": lambda one: one[0] / 2,
}


def called(function: str, *given: Drawn) -> Drawn:
    text = f"{function}({', '.join(one.text for one in given)})"
    if any(one.values is None for one in given):
        return Drawn(text, ATOM, None)
    columns = zip(*(one.values or () for one in given), strict=True)
    return Drawn(text, ATOM, tuple(FUNCTIONS[function](column) for column in columns))


SHAPES = ("leaf", "sum", "sum", "scaled", "scaled", "ratio", "negated", "function")


def formula(chance: Random, kind: Dimension, depth: int = 4) -> Drawn:
    """A formula of a kind, with no units mixed in it."""

    def part(of: Dimension = kind) -> Drawn:
        return formula(chance, of, depth - 1)

    shape = chance.choice(SHAPES) if depth else "leaf"
    if shape == "sum":
        return joined(chance.choice("+-"), part(), part())
    if shape == "scaled":
        return joined(chance.choice("*/"), part(), part(PLAIN))
    if shape == "ratio" and kind == PLAIN:
        other = chance.choice([STITCHES, LENGTH])
        return joined("/", part(other), part(other))
    if shape == "negated":
        return negated(part())
    if shape == "function":
        function = chance.choice(list(FUNCTIONS))
        return called(function, *(part() for _ in range(1 if function in {"abs", "half"} else 2)))
    return leaf(chance, kind)


@THOROUGH
@given(chance=st.randoms(use_true_random=True))
def test_the_engine_agrees_with_another_evaluator(graded: Grade, sizes: str, chance: Random) -> None:
    kinds = [chance.choice([PLAIN, STITCHES, LENGTH]) for _ in range(FORMULAS)]
    drawn = {f"q{number}": (kind, formula(chance, kind)) for number, kind in enumerate(kinds)}
    found = graded(*(f"{name} = {one.text}" for name, (_, one) in drawn.items()), header=sizes)
    for name, (kind, one) in drawn.items():
        named = found.quantities.get(name)
        assert (named.result.values if named else None) == one.values, one.text
        assert named is None or named.result.dimension == kind, one.text
    assert {finding.rule for finding in found.findings} <= {"division-by-zero"}
    assert len(found.findings) == sum(one.values is None for _, one in drawn.values())


@THOROUGH
@given(data=st.data())
def test_the_order_of_definitions_does_not_matter(graded: Grade, sizes: str, data: st.DataObject) -> None:
    lines = ["n0 = chest"]
    for number in range(1, 12):
        one, other = (f"n{data.draw(st.integers(0, number - 1))}" for _ in range(2))
        lines.append(f"n{number} = {one} + {data.draw(st.integers(1, 9))} * {other}, nearest 0.5 cm")
    first = graded(*lines, header=sizes)
    second = graded(*data.draw(st.permutations(lines)), header=sizes)
    assert first.findings == second.findings == ()
    assert len(first.quantities) == 13
    assert {name: one.result for name, one in first.quantities.items()} == {
        name: one.result for name, one in second.quantities.items()
    }
