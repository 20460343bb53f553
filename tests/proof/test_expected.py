"""What a test knitter should have, by hand for a small cowl of our own, and what makes another version of it."""

from fractions import Fraction
from pathlib import Path

import pytest

from sizewright.grade.run import grade
from sizewright.proof.expected import Expectation, Kind, expectations
from sizewright.read.folder import read_text
from sizewright.work.run import work

COWL = (Path(__file__).parents[1] / "publish" / "tester_cowl.md").read_text(encoding="utf-8")
SWATCH = "swatch in ribbing, blocked"


def expected(text: str = COWL) -> tuple[Expectation, ...]:
    return expectations(work(grade(read_text(text, "cowl.md").patterns[0])))


def told(one: Expectation) -> list[tuple[str, str, str, Fraction]]:
    return [(*line.key, line.value) for line in one.lines]


def test_every_number_of_the_smallest_size() -> None:
    """48 cm * 0.9 at 2 sts to the cm are 86.4, next to 88. 88 cast on and 12 rounds of 88 are 1144 sts, 100 to a gram.

    Then four rounds of 66 and 66 bound off make 1474. Four rounds are 1 1/3 cm: too short to measure.
    """
    small, _ = expected()
    assert told(small) == [
        ("Gauge", SWATCH, "sts in 10 cm", 20),
        ("Gauge", SWATCH, "rnds in 10 cm", 30),
        ("Rib", "after “Cast on”", "sts", 88),
        ("Rib", "at the end, rounds of this part", "rnds", 12),
        ("Rib", "at the end, length of this part", "cm", 4),
        ("Rib", "at the end, yarn used so far", "g", Fraction(1144, 100)),
        ("Top", "after “Dec Rnd”", "sts", 66),
        ("Top", "at the end, rounds of this part", "rnds", 4),
        ("Top", "at the end, yarn used so far", "g", Fraction(1474, 100)),
        ("Finished measurements", "Around", "cm", 44),
        ("Yarn in all", "yarn", "g", Fraction(1474, 100)),
    ]
    by_place = {line.key[:2]: line for line in small.lines}
    assert by_place["Rib", "at the end, rounds of this part"].to_length
    assert not by_place["Top", "at the end, rounds of this part"].to_length
    assert by_place["Yarn in all", "yarn"].length == Fraction(1474, 100) * 200  # 100 g are 200 m: a gram is 200 cm


def test_a_place_that_comes_again_has_a_number() -> None:
    text = COWL.replace("Knit 3 rounds.", "Dec Rnd: K1, k2tog, k to end.\nDec Rnd: K1, k2tog, k to end.")
    places = [line.at for line in expected(text)[0].lines if "Dec Rnd" in line.at]
    assert places == ["after “Dec Rnd”", "after “Dec Rnd” (2)", "after “Dec Rnd” (3)"]


def test_a_second_piece_under_one_heading_is_a_stage_of_its_own() -> None:
    block = COWL[COWL.index("```work\nCast on") :]
    more = block.replace("## Top", "### Second top")
    stages = dict.fromkeys(line.stage for line in expected(COWL + more)[0].lines)
    assert [*stages] == ["Gauge", "Rib", "Top", "Top (2)", "Second top", "Finished measurements", "Yarn in all"]


def test_short_rows_have_no_length_to_measure() -> None:
    rows = "Row 1: K20, w&t.\nRow 2: P10, w&t.\nRow 3: Knit to end.\nKnit 12 rows.\nBind off all sts."
    text = COWL.replace("Join to work in the round.", "").replace("Rnd 1: *K2, p2; rep from * to end.", "Row 1: Knit.")
    turned = text.replace("Rep Rnd 1", "Rep Row 1").replace("Knit 3 rounds.\nBind off all sts.", rows)
    lines = expected(turned)[0].lines
    assert [line.stage for line in lines if "length" in line.at] == ["Rib"]
    assert {line.unit for line in lines if line.kind is Kind.ROWS} == {"rows"}


@pytest.mark.parametrize(
    ("old", "new", "moved"),
    [
        ("48 cm", "50 cm", (True, False)),  # only that size
        ("## Top", "## Upper edge", (True, True)),  # its lines are called otherwise
        ("mass: 10 g", "mass: 11 g", (True, True)),
        ("title: Trial Cowl", "title: Cowl", (False, False)),
        ("## Rib\n", "A word about it.\n\n## Rib\n", (False, False)),
    ],
)
def test_the_version_changes_with_what_is_expected_and_with_nothing_else(
    old: str, new: str, moved: tuple[bool, ...]
) -> None:
    before, after = expected(), expected(COWL.replace(old, new))
    assert tuple(one.version != two.version for one, two in zip(before, after, strict=True)) == moved


def test_a_pattern_of_one_size_and_no_heading() -> None:
    text = COWL.replace("sizes:\n  S: {head: 48 cm}\n  10-12: {head: 56 cm}\n", "").replace("head * 0.9", "43.2 cm")
    (one,) = expected(text.replace("## Rib\n", "").replace("## Top\n", "").replace(", body: head", ""))
    assert one.size == "One size"
    assert {line.stage for line in one.lines} == {"Gauge", "Trial Cowl", "Finished measurements", "Yarn in all"}
