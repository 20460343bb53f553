"""In: values of every size. Out: their steps, and the one size that is out of line, where there is one.

No published body is out of line; what is, are those bodies with one digit or decimal point slipped in one size.
"""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizewright.grade.growth import Course, growth
from sizewright.read.folder import read_project

LENGTHS = st.fractions(min_value=1, max_value=200, max_denominator=4)


def values(row: str) -> list[Fraction]:
    return [Fraction(value) for value in row.split()]


def test_steps_are_exact_and_parts_are_of_the_value_before() -> None:
    grown = growth(values("40 44 1/3 0 2"))
    assert list(grown.steps) == [4, Fraction(1, 3) - 44, Fraction(-1, 3), 2]
    assert list(grown.parts) == [Fraction(1, 10), Fraction(-131, 132), -1, None]


@pytest.mark.parametrize(
    ("row", "course"),
    [
        ("5 5 5", Course.LEVEL),
        ("5 6 6", Course.RISING),
        ("6 6 5", Course.FALLING),
        ("5 6 5", Course.MIXED),
        ("5", Course.LEVEL),
    ],
)
def test_the_course_is_told(row: str, course: Course) -> None:
    assert growth(values(row)).course is course


@pytest.mark.parametrize(
    ("row", "astray"),
    [
        # Slips of our own in one size of a row that is even otherwise.
        ("2.5 3 30 4", 2),
        ("72 80 88 69 104", 3),
        ("72 80 88 69", 3),
        ("81 91 102 18 122", 3),
        ("250 30 35 40", 0),
        ("40 35 300 25", 2),
        ("2.5 3 3.5 40", 3),
        ("5 5 5 50 5", 3),
        # Comes close, and is none: left-overs, a multiple more or less, three sizes only, sizes far apart, two at once.
        ("0 1 0 1 0", None),
        ("7 6 7 7 6", None),
        ("20 22 21 23", None),
        ("72 88 80 96", None),
        ("22 26 20", None),
        ("41 43 46 48 86", None),
        ("10 20 15 30", None),
        ("30 28 32 30", None),
        ("5 5 5 5 6", None),
        ("0 0 0 4", None),
    ],
)
def test_one_size_is_out_of_line_or_none(row: str, astray: int | None) -> None:
    assert growth(values(row)).astray == astray


def test_no_published_body_is_out_of_line(repository: Path) -> None:
    """The tables of content/sizes/, each with its source, children and adults in one table left aside."""
    tables = read_project(repository).tables
    seen = 0
    for table in tables.values():
        for name in table.sizes[0].measurements:
            if table.name != "heads-by-age":  # the smallest adult has a smaller head than the largest child
                seen += 1
                row = [size.measurements[name].quantity.value for size in table.sizes]
                assert growth(row).astray is None, (table.name, name)
    assert seen >= 20


@given(st.lists(LENGTHS, min_size=4, max_size=12, unique=True), st.data())
def test_a_decimal_point_slipped_in_an_even_row_is_found(lengths: list[Fraction], data: st.DataObject) -> None:
    """A row of even steps, one value of it ten times too large."""
    start, step, count = lengths[0], 1 + lengths[1] / 100, len(lengths)
    row = [start + 20 + place * step for place in range(count)]
    place = data.draw(st.integers(0, count - 1))
    row[place] *= 10
    assert growth(row).astray == place


@given(st.lists(LENGTHS, max_size=12))
def test_steps_add_up_and_a_row_that_only_rises_never_turns_back(lengths: list[Fraction]) -> None:
    grown = growth(lengths)
    assert sum(grown.steps) == (lengths[-1] - lengths[0] if lengths else 0)
    rising = growth(sorted(lengths))
    assert rising.course in (Course.LEVEL, Course.RISING)
    assert all(step >= 0 for step in rising.steps)


@given(st.lists(st.integers(40, 60), min_size=4, max_size=10), st.integers(2, 24))
def test_rounding_a_row_that_rises_puts_no_size_out_of_line(steps: list[int], multiple: int) -> None:
    """Steps of much the same width, rounded to a multiple: the widest grows by one multiple at most."""
    row = [Fraction(200)]
    for step in steps:
        row.append(row[-1] + step)
    rounded = [Fraction(round(value / multiple) * multiple) for value in row]
    assert growth(rounded).astray is None
