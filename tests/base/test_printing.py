"""In: exact values. Out: the words and figures of the trade, in both unit systems, and the way back from them."""

import re
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizewright.base.place import Lines
from sizewright.base.printing import STYLES, amount, as_text, bracketed, decimal, printed, printed_ease, quarters
from sizewright.base.units import (
    LENGTH,
    MASS,
    PLAIN,
    ROW_GAUGE,
    ROWS,
    STITCH_GAUGE,
    STITCHES,
    Dimension,
    per,
    unit_named,
)
from sizewright.read.formula import Formula, Literal
from sizewright.read.formula_parser import FormulaParser

THOROUGH = settings(derandomize=True, max_examples=150, deadline=None)
INCH = Fraction(254, 100)


def text(*values: int | str | Fraction, of: Dimension = PLAIN, style: str | None = None) -> str:
    return as_text(printed([Fraction(value) for value in values], of, style))


@pytest.mark.parametrize(
    ("values", "shown"),
    [
        # smallest size first, the rest in brackets with commas; one number alone for all sizes (craftstarstudios.com,
        # yayforyarn.com)
        ((72, 80, 88, 96), "72 (80, 88, 96)"),
        ((72, 72, 72), "72"),
        ((72,), "72"),
        ((72, 72, 80), "72 (72, 80)"),
    ],
)
def test_counts_are_printed_as_the_trade_writes_them(values: tuple[int, ...], shown: str) -> None:
    assert text(*values, of=STITCHES) == text(*values, of=ROWS) == text(*values) == shown


@pytest.mark.parametrize(
    ("values", "shown"),
    [
        (("4", "4", "5"), "4 (4, 5) cm / 1½ (1½, 2) in"),
        (("16.5",), "16.5 cm / 6½ in"),
        (("56.515",), "56.5 cm / 22¼ in"),  # 22¼ in
        (("3.3",), "3.3 cm / 1¼ in"),  # exact to a tenth: as it is
        (("10", "3.33"), "10 (3.5) cm / 4 (1¼) in"),
        (("-5",), "−5 cm / −2 in"),
        (("0",), "0 cm / 0 in"),
        (("0.3",), "0.3 cm / ⅛ in"),
        (("0.05",), "0.1 cm / 0.02 in"),
        (("1.27",), "1.3 cm / ½ in"),
        (("299",), "299 cm / 117¾ in"),
        (("350",), "3.5 m / 3.8 yd"),  # not 4 m: a cord would come out half a metre too long
        (("10500",), "105 m / 115 yd"),
    ],
)
def test_a_length_is_printed_in_both_systems(values: tuple[str, ...], shown: str) -> None:
    """Inches in quarters: common practice, no source."""
    assert text(*values, of=LENGTH) == shown


def test_imperial_may_stand_first() -> None:
    series = printed([Fraction(10)], LENGTH, metric_first=False)
    assert as_text(series) == "4 in / 10 cm"


@pytest.mark.parametrize(
    ("ounces", "shown"),
    [
        # Source: 16 CFR 500.19(b): metric in three figures at most, in two under 100 g; 1 oz is 28.3495 g (500.19(a))
        ("1", "28 g / 1 oz"),
        ("4", "113 g / 4 oz"),
        ("16", "454 g / 16 oz"),
        ("1/4", "7.1 g / 0.25 oz"),
    ],
)
def test_a_mass_from_ounces_is_printed_as_on_a_label(ounces: str, shown: str) -> None:
    ounce = unit_named("oz")
    assert ounce is not None
    assert text(Fraction(ounces) * ounce.factor, of=MASS) == shown


@pytest.mark.parametrize(("grams", "shown"), [("50", "50 g / 1.76 oz"), ("62.5", "62.5 g / 2.2 oz")])
def test_a_mass_given_in_grams_stays_what_it_is(grams: str, shown: str) -> None:
    assert text(grams, of=MASS) == shown


def test_a_gauge_tells_ten_centimetres_from_four_inches() -> None:
    """22 sts in 4 in are 21.654 sts in 10 cm (derived from 16 CFR 500.19(a))."""
    assert text(Fraction(22) / (4 * INCH), of=STITCH_GAUGE) == "≈ 21¾ sts in 10 cm / 22 sts in 4 in"
    assert text(3, of=ROW_GAUGE) == "30 rows in 10 cm / ≈ 30½ rows in 4 in"


def test_a_gauge_stays_as_it_is_stated_and_is_countable_elsewhere() -> None:
    """Quarters of a stitch are the least that is counted in a swatch: common practice, no source."""
    assert text("2.25", of=STITCH_GAUGE) == "22.5 sts in 10 cm / ≈ 22¾ sts in 4 in"  # 22.86
    assert text("2.24", of=STITCH_GAUGE) == "22.4 sts in 10 cm / ≈ 22¾ sts in 4 in"  # 22.758
    assert text("2.5", of=STITCH_GAUGE) == "25 sts in 10 cm / ≈ 25½ sts in 4 in"  # 25.4, which nobody has counted
    assert text(Fraction("22.5") / (4 * INCH), of=STITCH_GAUGE) == "≈ 22¼ sts in 10 cm / 22½ sts in 4 in"
    assert text(Fraction("18.3") / (4 * INCH), of=STITCH_GAUGE) == "≈ 18 sts in 10 cm / 18.3 sts in 4 in"
    assert text(Fraction(7, 3), of=STITCH_GAUGE) == "≈ 23¼ sts in 10 cm / ≈ 23¾ sts in 4 in"


@pytest.mark.parametrize(
    ("style", "of", "values", "shown"),
    [
        ("times", PLAIN, (1, 2, 3), "once (twice, 3 times)"),
        ("times", PLAIN, (0, 12), "0 (12) times"),
        ("times", PLAIN, (4, 4, 2), "4 (4, 2) times"),
        ("times", PLAIN, (4, 4, 4), "4 times"),
        ("times", PLAIN, (1, 2, 4), "once (twice, 4 times)"),
        ("times", PLAIN, (2, 2, 2), "twice"),
        ("ordinal", PLAIN, (1, 2, 3, 4), "1st (2nd, 3rd, 4th)"),
        ("ordinal", PLAIN, (11, 12, 13, 21, 22, 111), "11th (12th, 13th, 21st, 22nd, 111th)"),
        ("words", STITCHES, (0, 8, 12, 13), "zero (eight, twelve, 13)"),
        ("cm", LENGTH, (10,), "10 cm"),
        ("in", LENGTH, (10,), "4 in"),
        ("mm", LENGTH, ("0.4",), "4 mm"),
        ("long", LENGTH, (250,), "2.5 m / 2.7 yd"),
        ("g", MASS, (50,), "50 g"),
        ("oz", MASS, (50,), "1.76 oz"),
        ("percent", PLAIN, ("1/2", "1/3"), "50 % (33.3 %)"),
    ],
)
def test_a_style(style: str, of: Dimension, values: tuple[int | str, ...], shown: str) -> None:
    assert text(*values, of=of, style=style) == shown
    assert of in STYLES[style][1]


@pytest.mark.parametrize(
    ("value", "of", "shown"),
    [
        ("74", STITCHES, "74 sts"),
        ("1", STITCHES, "1 st"),
        ("71.5", STITCHES, "71.5 sts"),
        ("1", ROWS, "1 row"),
        ("-2", ROWS, "−2 rows"),
        ("32.5", LENGTH, "32.5 cm / 12¾ in"),
        ("8", PLAIN, "8"),
        ("100", Dimension(length=2), "100 cm^2"),
        ("2", per(ROWS, STITCHES), "2 row/st"),
    ],
)
def test_one_value_in_a_sentence(value: str, of: Dimension, shown: str) -> None:
    assert amount(Fraction(value), of) == shown


@THOROUGH
@given(value=st.fractions(min_value=-1000, max_value=1000), places=st.integers(0, 4))
def test_a_plain_number_is_at_most_half_a_place_away(value: Fraction, places: int) -> None:
    shown = decimal(value, places)
    assert re.fullmatch(r"−?\d+(\.\d+)?", shown)
    assert not re.search(r"\..*0$", shown), "no idle zeros"
    assert abs(Fraction(shown.replace("−", "-")) - value) <= Fraction(1, 2 * 10**places)


def parsed(words: str, sizes: int) -> Literal:
    """The one number or list that a text holds, read as a formula."""
    formula = FormulaParser(Lines("x.md", words), tuple(f"S{n}" for n in range(sizes))).formula(0, len(words))
    assert isinstance(formula, Formula), formula
    assert isinstance(formula.tree, Literal)
    return formula.tree


@THOROUGH
@given(parts=st.lists(st.integers(-900, 900), min_size=1, max_size=6))
def test_inches_in_quarters_are_read_back_as_they_were(parts: list[int]) -> None:
    values = [Fraction(part, 4) for part in parts]
    words = f"{bracketed([quarters(value) for value in values])} in"
    literal = parsed(words, len(values))
    assert literal.values == tuple(values)
    assert literal.unit == unit_named("in")


@THOROUGH
@given(tenths=st.lists(st.integers(-2990, 2990), min_size=2, max_size=6))
def test_centimetres_to_a_tenth_are_read_back_as_they_were(tenths: list[int]) -> None:
    values = tuple(Fraction(tenth, 10) for tenth in tenths)
    (series,) = printed(values, LENGTH, "cm")
    literal = parsed(as_text([series]), len(values))
    assert literal.values == (values if len(set(values)) > 1 else values[:1])


@THOROUGH
@given(values=st.lists(st.fractions(min_value=2, max_value=299), min_size=1, max_size=6))
def test_any_length_is_printed_as_near_as_it_is_measured(values: list[Fraction]) -> None:
    """To the nearest half centimetre and the nearest quarter inch (common practice, no source)."""
    metric, imperial = printed(values, LENGTH)
    for series, factor, half in ((metric, Fraction(1), Fraction(1, 4)), (imperial, INCH, Fraction(1, 8))):
        shown = parsed(as_text([series]), len(values)).values
        for value, near in zip(values, shown * (len(values) // len(shown)), strict=True):
            assert abs(near - value / factor) <= half


@pytest.mark.parametrize(
    ("finished", "body", "said"),
    [
        ("13.3", "15", "−1.5 cm / −¾ in"),  # 13.5 − 15; 5¼ − 6: the exact −1.7 cm would contradict the table
        ("40/3", "15", "−1.5 cm / −¾ in"),
        ("61.5", "56", "5.5 cm / 2¼ in"),  # 24¼ − 22
        ("50", "50", "0 cm / 0 in"),
    ],
)
def test_ease_is_the_difference_of_the_numbers_printed_beside_it(finished: str, body: str, said: str) -> None:
    more = Fraction(1, 3)  # makes the sizes no tenths, so that they are printed to the nearest half
    values = [(Fraction(one), Fraction(one) + more) for one in (finished, body)]
    ease = printed_ease(*values)
    assert as_text([replace(one, values=one.values[:1]) for one in ease]) == said
