"""In: small patterns with one fault. Out: the fault is named, and what follows from it is not told again."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sizewright.base.finding import Finding
from sizewright.proof.run import proof
from sizewright.read.folder import read_single

Told = Callable[..., list[Finding]]
HEADER = "sizes: {A: {chest: 80 cm}, B: {chest: 90 cm}}\ngauge: {stitches: 20 st / 10 cm, rows: 30 row / 10 cm}\n"


CUT = "sizes:\n  A: {chest: 80 cm, arm: 20 cm}\n  B: {chest: 90 cm arm: 22 cm}\ngauge: {stitches: 20 st / 10 cm}\n"


@pytest.fixture
def told(tmp_path: Path) -> Told:
    """`told(body, header=..., rules=...)`: the errors of a pattern, and its warnings of these rules."""

    def told(body: str, header: str = HEADER, rules: tuple[str, ...] = ()) -> list[Finding]:
        source = tmp_path / "pattern.md"
        source.write_text(f"---\ntitle: A\n{header}---\n\n{body}", encoding="utf-8")
        project = read_single(source)
        found = proof(project.patterns[0], project).findings
        return [one for one in found if one.level.value == "error" or one.rule in rules]

    return told


@pytest.mark.parametrize(
    "total",
    ["40 st - band * stitch_gauge", "band * stitch_gauge + 40 st", "20 cm + band", "band + chest + 1 cm"],
)
def test_a_plain_number_that_lacks_its_unit_is_named_with_one(told: Told, total: str) -> None:
    (one,) = told(f"```grade\nband = 3\ntotal = {total}\n```\n")
    assert one.mend == "“band” is a plain number here: 3 cm?"


def test_a_plain_number_is_not_named_where_another_unit_is_lacking(told: Told) -> None:
    (one,) = told("```grade\ntimes = 3\ntotal = 40 st - times * chest\n```\n")
    assert one.mend == "Turn the length into a count with the gauge first: length * stitch_gauge."


@pytest.mark.parametrize(
    ("given", "message", "mend"),
    [
        ("3", "“band” is a plain number.", "“band” is a plain number here: 3 cm?"),
        ("8 st", "“band” is stitches.", "Divide it by the gauge: “band / stitch_gauge”."),
        ("8 g", "“band” is a mass.", "Write a length."),
    ],
)
def test_a_length_is_wanted_where_a_piece_is_measured(told: Told, given: str, message: str, mend: str) -> None:
    work = "Cast on 20 sts.\nWork in garter stitch until piece measures {band}.\nBind off all sts."
    (one,) = told(f"```grade\nband = {given}\n```\n\n```work\n{work}\n```\n")
    assert one.message == f"A length is wanted here, and {message}"
    assert one.mend == mend
    assert one.sizes == ("A", "B")


@pytest.mark.parametrize("header", [CUT, CUT.replace("\n  B", "  B").replace("90 cm arm", "90 cm, arm")])
def test_of_a_header_that_cannot_be_read_nothing_else_is_told(told: Told, header: str) -> None:
    body = "```grade\nsts = chest * stitch_gauge\nlong = 20 (30) cm\n```\n\n```work\nCast on {sts} sts.\n```\n"
    (one,) = told(body, header, ("missing-licence", "unlisted-notion", "unsigned"))
    assert one.rule == "unreadable-header"
    assert one.mend.endswith(" All else is judged when the header can be read.")


SWATCH = "yarn: {main: {weight: light, length: 110 m, mass: 50 g, swatch: {width: 20 cm, height: 20 cm, mass: 19 g}}}\n"


def test_what_a_plan_that_cannot_be_worked_leaves_uncounted_is_not_told(told: Told) -> None:
    work = "Cast on 20 sts.\n{taper}\nWork in St st until piece measures 20 cm.\nBind off all sts."
    body = f"```grade\ntaper = sleeve_taper(20 st, 40 st, 4 row)\n```\n\n```work\n{work}\n```\n"
    assert [one.rule for one in told(body, HEADER + SWATCH, ("uncounted-yarn",))] == ["impossible-shaping"]


BROKEN = "Row 1 (RS): Knit.\nRow 2 (WS): Purl.\nRow 3 (RS): *K2, p2; rep from * to end."


def test_the_side_behind_a_row_that_cannot_be_worked_is_not_known(told: Told) -> None:
    rows = f"{BROKEN} (22 sts)\nRow 4 (WS): Purl.\nRow 5 (WS): Purl."
    found = told(f"```work\nCast on 22 sts.\n{rows}\nBind off all sts.\n```\n", rules=("swapped-side",))
    assert [one.rule for one in found] == ["broken-repeat", "swapped-side"]
    assert found[1].message.startswith("Row 5 (WS) says WS")


@pytest.mark.parametrize("called", ["Next Row (RS): Knit.", "Work in St st for 4 rows, ending with a WS row."])
def test_a_side_behind_rows_that_were_left_out_is_not_told_wrong(told: Told, called: str) -> None:
    rows = f"{BROKEN}\nRow 4 (WS): Purl. (22 sts)"
    found = told(f"```work\nCast on 22 sts.\n{rows}\n{called}\nBind off all sts.\n```\n", rules=("swapped-side",))
    assert [one.rule for one in found] == ["broken-repeat"]


@pytest.mark.parametrize("line", ["{tapper}", "{tapper}.", "Next Row: {tapper}."])
def test_a_misspelt_plan_is_told_once_with_its_name(told: Told, line: str) -> None:
    work = f"Cast on 20 sts.\n{line}\nBind off all sts."
    (one,) = told(f"```grade\ntaper = sleeve_taper(20 st, 40 st, 60 row)\n```\n\n```work\n{work}\n```\n")
    assert (one.rule, one.mend) == ("unknown-name", "Did you mean “taper”?")


def test_what_else_is_not_understood_beside_an_unknown_name_is_told(told: Told) -> None:
    found = told("```work\nCast on 20 sts.\nFrobnicate {tapper}.\nBind off all sts.\n```\n")
    assert [one.rule for one in found] == ["not-understood", "unknown-name"]


def test_rows_that_fit_one_count_alone_are_said_to_be_a_panel_of_it(told: Told) -> None:
    (one,) = told("```stitch Wave\nRow 1: K1, yo, k2.\nRow 2: K1, k2tog, k1.\n```\n")
    assert one.message == "The rows of “Wave” fit 3 sts alone."
    assert one.mend == "Write “Panel of 3 sts.” above them, or mend the row that is to fit more."
    assert told("```stitch Wave\nPanel of 3 sts.\nRow 1: K1, yo, k2.\nRow 2: K1, k2tog, k1.\n```\n") == []


def test_rows_that_fit_no_count_are_not_said_to_be_a_panel(told: Told) -> None:
    (one,) = told("```stitch Wave\nRow 1: K1, yo, k2.\nRow 2: K2, k2tog.\nRow 3: K1, m1, k2.\n```\n")
    assert "cannot be worked again" in one.message
    assert "Panel" not in one.mend


@pytest.mark.parametrize(("chest", "rules"), [("90 cm arm 22", ["unreadable-formula"]), ("", ["missing-measurement"])])
def test_a_measurement_that_could_not_be_read_is_not_said_to_be_lacking(
    told: Told, chest: str, rules: list[str]
) -> None:
    given = f"chest: {chest}" if chest else "arm: 22 cm"
    header = f"sizes:\n  A: {{chest: 80 cm}}\n  B: {{{given}}}\n"
    found = told("```grade\nhalf_chest = half(chest)\n```\n", header)
    assert [one.rule for one in found] == rules
