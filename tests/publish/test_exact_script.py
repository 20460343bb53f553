"""In: thousands of numbers. Out: the page's script counts and prints with them exactly as the program does."""

import random
from collections.abc import Callable, Iterable, Iterator
from fractions import Fraction
from math import ceil, floor
from typing import Any

import pytest

from sizewright.base.language import language, speaking
from sizewright.base.printing import Series, bought, decimal, printed, quarters
from sizewright.base.units import LENGTH, MASS, ROW_GAUGE, STITCH_GAUGE
from sizewright.read.typed_numbers import exact

InNode = Callable[..., Any]

_REVIVED = "const n = (text) => exact.of(text); const t = exact.text;"


def numbers(seed: int, many: int) -> Iterator[Fraction]:
    """Numbers of every kind a pattern has: ties, eighths, what is almost nothing, what is beyond a float."""
    chance = random.Random(seed)  # noqa: S311 (no secret)
    unders = (1, 2, 3, 4, 5, 7, 8, 10, 16, 20, 32, 100, 127, 254, 1016, 10**17 + 3)
    for _ in range(many):
        under = chance.choice(unders)
        most = chance.choice((3, 300, 10**5, 10**20))
        yield Fraction(chance.randint(-most, most), under)


def lines(seed: int, many: int) -> list[list[Fraction]]:
    """Values of all sizes together, since what one is printed with depends on the others."""
    chance = random.Random(seed)  # noqa: S311 (no secret)
    some = [*numbers(seed, many * 3), *(Fraction(one, 8) * Fraction(254, 100) for one in range(-12, 2200, 7))]
    bounds = [[Fraction(one)] for most in (2, 10, 300, 2000) for one in (most - 1, most, -most, most + 1)]
    return [*bounds, *(chance.sample(some, chance.randint(1, 5)) for _ in range(many))]


def as_series(series: Iterable[Series], many: int) -> list[dict[str, object]]:
    """What the script gives: a text for each size, also where all agree."""
    return [
        {"unit": one.unit, "values": list(one.values if len(one.values) == many else one.values * many)}
        for one in series
    ]


def test_sums_are_exact(in_node: InNode) -> None:
    pairs = list(zip(numbers(1, 3000), numbers(2, 3000), strict=True))
    program = (
        f"{_REVIVED} return given.map(([a, b]) => [n(a), n(b)]).map(([a, b]) => ["
        "t(exact.add(a, b)), t(exact.sub(a, b)), t(exact.mul(a, b)), b.n ? t(exact.div(a, b)) : '',"
        " exact.compare(a, b), t(exact.floor(a)), t(exact.ceil(a)), t(exact.whole(a)), t(exact.abs(a))]);"
    )
    expected = [
        [
            *(str(one) for one in (a + b, a - b, a * b)),
            str(a / b) if b else "",
            (a > b) - (a < b),
            *(str(one) for one in (floor(a), ceil(a), floor(a + Fraction(1, 2)), abs(a))),
        ]
        for a, b in pairs
    ]
    assert in_node(["exact"], program, [[str(a), str(b)] for a, b in pairs]) == expected


def test_one_value_is_printed_alike(in_node: InNode) -> None:
    values = [*numbers(3, 4000), *(Fraction(one, 200) for one in range(-50, 50))]
    program = (
        f"{_REVIVED} return given.map(n).map((one) => [exact.quarters(one), ...[0, 1, 2].map((places) =>"
        " exact.decimal(one, places))]);"
    )
    expected = [[quarters(one), *(decimal(one, places) for places in (0, 1, 2))] for one in values]
    assert in_node(["exact"], program, list(map(str, values))) == expected


def test_in_german_too(in_node: InNode) -> None:
    """A comma before decimals; of "1.000", which may be a thousand, it makes no number, of "1,000" it does."""
    values = [*numbers(5, 500), *(Fraction(one, 200) for one in range(-50, 50))]
    program = f"{_REVIVED} return given.map(n).map((one) => [exact.quarters(one), exact.decimal(one)]);"
    with speaking(language("de")):
        expected = [[quarters(one), decimal(one)] for one in values]
    assert any("," in words for _, words in expected)
    assert in_node(["exact"], program, list(map(str, values)), language="de") == expected
    typed = ["22,5", "22.5", "1.000", "1,000", "5½"]
    program = f"{_REVIVED} return given.map(exact.parse).map((one) => one && t(one));"
    assert in_node(["exact"], program, typed, language="de") == ["45/2", "45/2", None, "1", "11/2"]


def test_the_values_of_all_sizes_are_printed_alike(in_node: InNode) -> None:
    many = [[one for one in line if abs(one) < 10**6] or [Fraction(0)] for line in lines(4, 1200)]
    program = (
        f"{_REVIVED} const {{ length, gauge, bought }} = exact.printed; return given.map((line) =>"
        " line.map(n)).map((all) => [length(all), gauge(all, 'sts'), gauge(all, 'rows'),"
        " bought(all, 'length'), bought(all, 'mass')]);"
    )
    expected = [
        [
            as_series(one, len(line))
            for one in (
                printed(line, LENGTH),
                printed(line, STITCH_GAUGE),
                printed(line, ROW_GAUGE),
                bought(line, LENGTH),
                bought(line, MASS),
            )
        ]
        for line in many
    ]
    assert in_node(["exact"], program, [list(map(str, line)) for line in many]) == expected


@pytest.fixture(scope="module")
def typed(in_node: InNode) -> Callable[[list[str]], list[str | None]]:
    """What the script makes of typed numbers, exact, None where it takes one for none."""
    program = "return given.map(exact.parse).map((one) => one && exact.text(one));"
    return lambda texts: in_node(["exact"], program, texts)


def test_typed_numbers_are_those_the_source_reads(typed: Callable[[list[str]], list[str | None]]) -> None:
    glyphs = [f"{whole}{glyph}" for whole in ("", "7", "22 ") for glyph in "¼½¾⅓⅔⅛⅜⅝⅞⅕⅙⅐⅒"]
    texts = ["5", "22 1/4", "0.4", "10.16", "3/8", "007", *glyphs]
    assert typed(texts) == [str(exact(text)) for text in texts]


def test_typed_numbers_are_read_as_people_write_them(typed: Callable[[list[str]], list[str | None]]) -> None:
    said = {
        "5,5": "11/2",
        ".5": "1/2",
        " 5  1/2 ": "11/2",
        "5-1/2": "11/2",
        "5 ½": "11/2",
        "−2½": "-5/2",
        "-3": "-3",
        "5 1⁄2": "11/2",
        "0": "0",
        "10.000": "10",
        "12345678901234567890": "12345678901234567890",
    }
    assert typed(list(said)) == list(said.values())


def test_what_is_no_number_is_none(typed: Callable[[list[str]], list[str | None]]) -> None:
    texts = ["", " ", "-", "ten", "5 cm", "1e3", "0x10", "1/0", "1/2/3", "½½", "5..5", "5.5 1/2", "1,000", "Infinity"]
    texts += ["٣", "5 5", "1" * 21, "1" * 10**5, "½5", "5/", "/5", ".", "--5", "5-", "NaN", "5\u0000"]
    assert typed(texts) == [None] * len(texts)


def test_a_typed_length_stays_what_it_is_in_the_other_unit(in_node: InNode) -> None:
    """However often the unit changes; what is typed anew is in the unit of then, and what is no number stays."""
    program = """
      const fields = given.map((value) => ({ value }));
      const lengths = swatch.lengths(fields, "cm");
      const told = () => fields.map((at) => [at.value, Object.values(lengths.typed(at)).slice(0, 2).join(" ")]);
      const steps = [told()];
      for (const unit of ["in", "cm", "in"]) {
        lengths.turn(unit);
        steps.push(told());
      }
      fields[0].value = "4";
      lengths.turn("cm");
      return [...steps, told()];
    """
    first, inches, back, again, last = in_node(["exact", "swatch"], program, ["10", "5,08", "ten", ""])
    assert first == back == [["10", "10 cm"], ["5,08", "5,08 cm"], ["ten", "ten cm"], ["", " cm"]]
    assert inches == again == [["3.94", "10 cm"], ["2", "5,08 cm"], ["ten", "ten cm"], ["", " cm"]]
    assert last == [["10.16", "4 in"], *first[1:]]
