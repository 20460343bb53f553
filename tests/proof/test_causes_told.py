"""In: small patterns with one fault. Out: the fault is named, and what follows from it is not told again."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sizewright.base.finding import Finding
from sizewright.proof.run import proof
from sizewright.read.folder import read_single

Told = Callable[..., list[Finding]]
HEADER = "sizes: {A: {chest: 80 cm}, B: {chest: 90 cm}}\ngauge: {stitches: 20 st / 10 cm, rows: 30 row / 10 cm}\n"


@pytest.fixture
def told(tmp_path: Path) -> Told:
    """`told(body, header=...)`: the errors of a pattern."""

    def told(body: str, header: str = HEADER) -> list[Finding]:
        source = tmp_path / "pattern.md"
        source.write_text(f"---\ntitle: A\n{header}---\n\n{body}", encoding="utf-8")
        project = read_single(source)
        return [one for one in proof(project.patterns[0], project).findings if one.level.value == "error"]

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
