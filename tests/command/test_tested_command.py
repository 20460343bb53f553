"""`test-sheets` and `tested`: what is written and said, and the exit codes. The band is invented."""

import csv
import io
import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from sizewright.command.main import sizewright
from sizewright.grade.run import grade
from sizewright.proof.expected import expectations
from sizewright.publish.tester.sheets import sheet_csv
from sizewright.read.folder import read_single
from sizewright.work.run import work

Fill = Callable[[dict[str, str]], None]


def run(*words: str) -> Result:
    return CliRunner().invoke(sizewright, [*words])


def returned(file: str, fill: Fill, size: int = 0) -> str:
    """A sheet that came out as expected but for what `fill` changes, as a file."""
    told = sheet_csv(expectations(work(grade(read_single(Path("band.md")).patterns[0])))[size])
    lines = list(csv.DictReader(io.StringIO(told.decode("utf-8-sig"), newline="")))
    with Path(file).open("w", encoding="utf-8", newline="") as opened:
        writer = csv.DictWriter(opened, lines[0].keys())
        writer.writeheader()
        for line in lines:
            line["got"] = line["expected"]
            fill(line)
            writer.writerow(line)
    return file


def knitted(name: str, counts: str = "", remarks: str = "") -> Fill:
    def fill(line: dict[str, str]) -> None:
        if line["at"] == "Name":
            line["got"] = name
        elif counts and line["at"] == "after “Cast on”":
            line["got"], line["remarks"] = counts, remarks

    return fill


@pytest.mark.usefixtures("band")
def test_sheets_are_written() -> None:
    done = run("test-sheets", "band.md", "--to", "sheets/of today", "--size", "small")
    assert done.output == "1 sheet for test knitters written; open sheets/of today/testers.html in a browser.\n"
    assert done.exit_code == 0
    held = {path.name for path in Path("sheets/of today").iterdir() if not path.name.startswith(".")}
    assert held == {"testers.html", "band-small.html", "band-small.pdf", "band-small.csv"}


def test_a_pattern_with_errors_gets_no_sheet(band: Path) -> None:
    band.write_text(band.read_text(encoding="utf-8").replace("nearest multiple of 4", "nearest odd"), encoding="utf-8")
    done = run("test-sheets", "band.md", "--to", "sheets")
    assert (done.exit_code, Path("sheets").exists()) == (1, False)
    assert "No sheet for band.md: it has" in done.output


@pytest.mark.usefixtures("band")
def test_wrong_use() -> None:
    Path("other").mkdir()
    Path("other/letter.txt").write_text("dear reader", encoding="utf-8")
    for words, said in (
        (("test-sheets", "band.md", "--to", "sheets", "--size", "Smal"), "Did you mean “Small”?"),
        (("test-sheets", "band.md", "--to", "sheets", "--size", "42"), "The sizes are Small, Large."),
        (("test-sheets", "band.md"), "--to"),
        (("test-sheets", "gone.md", "--to", "sheets"), "gone.md"),
        (("test-sheets", "band.md", "--to", "other", "--size", "Small"), "Move"),
        (("tested", "band.md"), "RETURNED"),
        (("tested", "band.md", "gone.csv"), "gone.csv is not there."),
        (("tested", "band.md", "other"), "other holds no CSV file."),
        (("tested", "gone.md", "other/letter.txt"), "gone.md"),
        (("tested", "band.md", "other/letter.txt", "--tolerance", "-1"), "--tolerance"),
    ):
        done = run(*words)
        assert (words, done.exit_code) == (words, 2)
        assert said in done.output
    assert not Path("sheets").exists()


@pytest.mark.usefixtures("band")
def test_everything_as_expected() -> None:
    done = run("tested", "band.md", returned("ann.csv", knitted("Ann")))
    assert done.output.splitlines()[-1] == "1 sheet of 1 size compared: everything is as expected."
    assert done.exit_code == 0


@pytest.mark.usefixtures("band")
def test_knitters_of_one_size_stand_beside_each_other() -> None:
    """52 cm * 0.9 * 2 sts are 93.6, next to 92 and 96: 92 is nearer."""
    ann = returned("ann.csv", knitted("Ann"))
    ben = returned("ben.csv", knitted("Ben", "90", "hard to see"))
    cem = returned("cem.csv", knitted("", "about 90"), size=1)
    done = run("tested", "band.md", ann, ben, cem)
    assert done.exit_code == 1
    lines = [line.strip() for line in done.output.splitlines()]
    place = lines.index("Test Band, after “Cast on”: 92 sts expected")
    assert lines[place + 1 : place + 3] == ["Ann: as expected", "Ben: 90 sts, 2 fewer; “hard to see”"]
    assert lines[0:2] == ["Test Band", "Size Small"]
    assert any(line.startswith("cem (cem.csv): ") for line in lines)
    trouble = "cem.csv, row 9: Test Band, after “Cast on”: “about 90” is no number."
    assert any(line.startswith(trouble) for line in lines)
    assert lines[-1] == "3 sheets of 2 sizes compared: 1 difference, 1 box that could not be read."


@pytest.mark.usefixtures("band")
def test_as_json() -> None:
    returned("ben.csv", knitted("Ben", "94"))
    Path("returned").mkdir()
    for name in ("ben.csv", "again.CSV"):
        Path("returned", name).write_bytes(Path("ben.csv").read_bytes())
    done = run("tested", "band.md", "returned", "--format", "json")
    told = json.loads(done.stdout)
    (sheet,) = told["sheets"]
    (line,) = (one for one in sheet["lines"] if one["verdict"] == "different")
    assert line == {
        "stage": "Test Band",
        "at": "after “Cast on”",
        "unit": "sts",
        "expected": "92",
        "typed": "94",
        "got": "94",
        "by": "2",
        "verdict": "different",
        "text": "2 more",
        "remarks": "",
    }
    assert (sheet["knitter"], sheet["size"], sheet["same_version"]) == ("Ben", "Small", True)
    assert [one["message"] for one in told["troubles"]] == ["This file is the same as returned/again.CSV."]
    assert told["summary"]["different"] == 1
    assert done.exit_code == 1


def test_the_pattern_moved_since(band: Path) -> None:
    ann = returned("ann.csv", knitted("Ann"))
    text = band.read_text(encoding="utf-8")
    band.write_text(text.replace("depth = 9 (10) cm", "depth = 12 (13) cm"), encoding="utf-8")
    done = run("tested", "band.md", ann)
    assert done.exit_code == 1
    assert "ann.csv: The sheet was made for another version of the pattern" in done.output
    assert "Test Band, at the end, rounds of this part" in done.output
    assert "0 difference" not in done.output
    band.write_text(text.replace("nearest multiple of 4", "nearest odd"), encoding="utf-8")
    assert "band.md has errors, so what it expects is not sure." in run("tested", "band.md", ann).output


@pytest.mark.usefixtures("band")
def test_another_tolerance() -> None:
    def fill(line: dict[str, str]) -> None:
        if line["unit"] == "cm":
            line["got"] = "9.5"  # 25 rows at 2.8 to the cm are 8.93 cm: more than 5 mm off, and less than a tenth

    ann = returned("ann.csv", fill)
    assert run("tested", "band.md", ann).exit_code == 1
    assert run("tested", "band.md", ann, "--tolerance", "10").exit_code == 0
