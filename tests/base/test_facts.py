"""In: what the trade and the law publish about units and yarn. Out: the tool's own tables say the same."""

from fractions import Fraction
from pathlib import Path
from typing import Any

import pint
import pytest

from sizewright.base.needle_sizes import NEEDLE_SIZES, SYSTEMS, labelled
from sizewright.base.printing import needle_size
from sizewright.base.units import SPELLINGS, STITCH_GAUGE, unit_named
from sizewright.grade.graded import Values
from sizewright.grade.run import grade
from sizewright.read.folder import read_single
from sizewright.read.yarn_weights import YARN_WEIGHTS, YarnWeight, weight_named, weights_sold_as


def factor(word: str) -> Fraction:
    """How many base units (stitch, row, cm, g) a unit is."""
    unit = unit_named(word)
    assert unit is not None
    return unit.factor


@pytest.mark.parametrize(
    ("unit", "centimetres"),
    [
        ("in", "2.54"),  # 16 CFR 500.19(a): exactly
        ("yd", "91.44"),  # 16 CFR 500.19(a): exactly
        ("ft", "30.48"),  # 16 CFR 500.19(a): exactly
    ],
)
def test_a_length_is_what_the_law_says(unit: str, centimetres: str) -> None:
    assert factor(unit) == Fraction(centimetres)


@pytest.mark.parametrize(
    ("unit", "grams", "digits"),
    [
        ("oz", "28.3495", 4),  # 16 CFR 500.19(a), which gives six figures
        ("oz", "28.349523125", 9),  # NIST SP 811 appendix B (from memory; the line above and pint bear it out)
        ("lb", "453.59237", 5),  # NIST SP 811 appendix B (from memory; pint bears it out)
    ],
)
def test_a_mass_is_what_the_law_says(unit: str, grams: str, digits: int) -> None:
    assert abs(factor(unit) - Fraction(grams)) <= Fraction(1, 2 * 10**digits)


@pytest.mark.parametrize(
    ("shown", "exact"),
    [
        # 16 CFR 500.19(a), the same factors the other way, to six figures.
        ("3.28084", Fraction(100) / factor("ft")),
        ("0.0352740", 1 / factor("oz")),
        ("0.393701", 1 / factor("in")),
    ],
)
def test_the_way_back_is_what_the_law_says(shown: str, exact: Fraction) -> None:
    places = len(shown.partition(".")[2])
    assert f"{float(exact):.{places}f}" == shown


def test_every_unit_of_length_and_mass_is_the_one_pint_knows() -> None:
    """Source: pint's own default registry, which the tool does not use (it defines its units itself)."""
    reference: pint.UnitRegistry[Any] = pint.UnitRegistry(non_int_type=Fraction)
    compared = 0
    for name in set(SPELLINGS.values()) - {"stitch", "row"}:
        unit = unit_named(name)
        assert unit is not None
        base = "centimetre" if unit.dimension.length else "gram"
        expected = Fraction(reference.Quantity(Fraction(1), name).to(base).magnitude)
        assert unit.factor == expected, name
        compared += 1
    assert compared == 10


def test_four_inches_are_more_than_ten_centimetres() -> None:
    assert 4 * factor("in") == Fraction("10.16")  # derived from 16 CFR 500.19(a)


def graded_value(tmp_path: Path, gauge: str, name: str) -> Values:
    """The value of `stitch_gauge` or of `around`, 50 cm at that gauge."""
    source = tmp_path / "pattern.md"
    block = "```grade\naround = 50 cm * stitch_gauge\n```\n"
    source.write_text(f"---\ntitle: A\ngauge: {{stitches: {gauge}}}\n---\n\n{block}", encoding="utf-8")
    (pattern,) = read_single(source).patterns
    return grade(pattern).quantities[name].result


def test_a_gauge_over_four_inches_is_not_one_over_ten_centimetres(tmp_path: Path) -> None:
    """22 sts in 4 in are 21.654 sts in 10 cm (derived from 16 CFR 500.19(a))."""
    result = graded_value(tmp_path, "22 st / 4 in", "stitch_gauge")
    assert result.dimension == STITCH_GAUGE
    assert result.values == (Fraction(22) / Fraction("10.16"),)
    assert round(float(result.values[0] * 10), 3) == 21.654


@pytest.mark.parametrize(
    ("gauge", "stitches"),
    [("22 st / 10 cm", "110.0"), ("22 st / 4 in", "108.3")],  # derived from 16 CFR 500.19(a)
)
def test_what_that_costs_around_fifty_centimetres(tmp_path: Path, gauge: str, stitches: str) -> None:
    (value,) = graded_value(tmp_path, gauge, "around").values
    assert f"{float(value):.1f}" == stitches


# Craft Yarn Council, Standard Yarn Weight System, as reprinted by 222handspun.com ("Standards"), sconch.com
# ("conversion charts") and the hertzoffjo blog (2019): number, name, stockinette stitches in 4 in, needle in mm.
PUBLISHED = (
    (0, "Lace", (33, 40), ("1.5", "2.25")),
    (1, "Super Fine", (27, 32), ("2.25", "3.25")),
    (2, "Fine", (23, 26), ("3.25", "3.75")),
    (3, "Light", (21, 24), ("3.75", "4.5")),
    (4, "Medium", (16, 20), ("4.5", "5.5")),
    (5, "Bulky", (12, 15), ("5.5", "8")),
    (6, "Super Bulky", (7, 11), ("8", "12.75")),
    (7, "Jumbo", (None, 6), ("12.75", None)),
)


@pytest.mark.parametrize(("number", "name", "stitches", "needle"), PUBLISHED)
def test_a_yarn_weight_is_as_published(
    number: int, name: str, stitches: tuple[int | None, int], needle: tuple[str, str | None]
) -> None:
    weight = YARN_WEIGHTS[number]
    low, high = needle
    assert (weight.number, weight.name) == (number, name.casefold())
    assert weight.stitches == stitches
    assert weight.needle == (Fraction(low), Fraction(high) if high else None)


def test_there_are_no_other_yarn_weights() -> None:
    assert len(YARN_WEIGHTS) == len(PUBLISHED)


def test_one_gauge_may_belong_to_two_yarn_weights() -> None:
    """Fine (23-26) and Light (21-24) both hold 23 and 24 stitches in 4 in (the same sources)."""
    for stitches in (23, 24):
        held = [weight.name for weight in YARN_WEIGHTS if (weight.stitches[0] or 0) <= stitches <= weight.stitches[1]]
        assert held == ["fine", "light"]


@pytest.mark.parametrize(
    ("sold_as", "numbers"),
    [
        # The column "yarns" of the same sources.
        ("sock", [1]),
        ("Fingering", [0, 1]),
        ("baby", [1, 2]),
        ("sport", [2]),
        ("DK", [3]),
        ("light worsted yarn", [3]),
        ("worsted weight", [4]),
        ("Aran", [4]),
        ("chunky", [5]),
        ("roving", [6, 7]),
        ("double-knitting", [3]),  # what DK stands for (common practice, no source)
        ("wool", []),
    ],
)
def test_a_name_of_the_shops_is_one_of_the_weights_it_is_published_under(sold_as: str, numbers: list[int]) -> None:
    assert [weight.number for weight in weights_sold_as(sold_as)] == numbers


@pytest.mark.parametrize("weight", YARN_WEIGHTS)
def test_a_weight_goes_by_its_name_and_by_its_number(weight: YarnWeight) -> None:
    for typed in (weight.name, weight.name.title(), weight.name.replace(" ", "-"), str(weight.number)):
        assert weight_named(typed) is weight


# Sizes on which knitproblog.blogspot.com (2024), sarahmaker.com, pattern-duchess.com and soozintheshed.blogspot.com
# (2015, the UK column) agree: mm, US, UK. A dash where there is none.
NEEDLES = """
2 0 14, 2.25 1 13, 2.5 1.5 -, 2.75 2 12, 3 2.5 11, 3.25 3 10, 3.5 4 -, 3.75 5 9, 4 6 8, 4.5 7 7, 5 8 6, 5.5 9 5, 6 10 4,
6.5 10.5 3, 7 - 2, 7.5 - 1, 8 11 0, 9 13 00, 10 15 000, 15 19 -, 19 35 -, 25 50 -, 20 36 -
"""


@pytest.mark.parametrize("row", NEEDLES.split(","))
def test_a_needle_is_labelled_as_published(row: str) -> None:
    mm, us, uk = row.split()
    size = NEEDLE_SIZES[Fraction(mm)]
    assert (size.us or "-", size.uk or "-") == (us, uk)
    assert needle_size(size.mm) == tuple(filter(None, (f"{mm} mm", f"US {us}" * (us != "-"), f"UK {uk}" * (uk != "-"))))


def test_a_needle_that_no_table_has_is_in_millimetres_alone() -> None:
    assert needle_size(Fraction("2.6")) == ("2.6 mm",)


@pytest.mark.parametrize("mm", ["12", "12.5", "12.75"])
def test_a_needle_on_which_the_sources_differ_has_no_label(mm: str) -> None:
    """US 17 is each of the three in one of those sources."""
    assert needle_size(Fraction(mm)) == (f"{mm} mm",)
    assert Fraction(mm) in labelled("US", "17")


def test_labels_that_makers_use_for_two_needles_mean_both() -> None:
    """US 1 and 2: lindysknitslaces.com (2009); their second needles are from memory."""
    assert labelled("US", "1") == (Fraction("2.25"), Fraction("2.5"))
    assert labelled("US", "2") == (Fraction("2.75"), Fraction(3))
    assert labelled("US", "12") == labelled("UK", "15") == ()


def test_no_label_but_those_is_on_two_needles() -> None:
    for system in SYSTEMS:
        labels = [size.label(system) for size in NEEDLE_SIZES.values() if size.label(system)]
        assert len(set(labels)) == len(labels)
    assert list(NEEDLE_SIZES) == sorted(NEEDLE_SIZES)
    assert len(NEEDLE_SIZES) == len(NEEDLES.split(",")) + 3  # and those of the sources that differ
