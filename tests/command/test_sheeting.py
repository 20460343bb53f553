"""`proof --to FOLDER`: what is written, what is said, and the exit codes, which are those of proof."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from sizewright.command.main import sizewright

FILES = {"band.html", "band-quantities.csv", "band-ledger.csv", "index.html", "proof.js"}


def proof(*words: str) -> Result:
    return CliRunner().invoke(sizewright, ["proof", *words])


def held(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir() if not path.name.startswith(".")}


def test_a_sound_pattern(band: Path) -> None:
    done = proof(str(band), "--to", "sheets/of today")
    assert done.exit_code == 0
    assert done.output.endswith("1 proof sheet written; open sheets/of today/index.html in a browser.\n")
    assert held(Path("sheets/of today")) == FILES
    assert "<code>band.md</code>" in Path("sheets/of today/band.html").read_text(encoding="utf-8")


def test_one_with_an_error_is_proofed_too(band: Path) -> None:
    band.write_text(band.read_text(encoding="utf-8").replace("nearest multiple of 4", "nearest odd"), encoding="utf-8")
    done = proof(str(band), "--to", "sheets")
    assert done.exit_code == 1
    assert held(Path("sheets")) == FILES
    assert "Error" in Path("sheets/band.html").read_text(encoding="utf-8")


def test_what_is_printed_for_programs_stays_alone(band: Path) -> None:
    done = proof(str(band), "--to", "sheets", "--format", "json")
    assert json.loads(done.stdout)["summary"]["patterns"] == 1
    assert held(Path("sheets")) == FILES


@pytest.mark.parametrize("folder", [".", "other", "band.md"])
def test_a_folder_that_holds_other_things_is_refused(band: Path, folder: str) -> None:
    Path("other").mkdir()
    Path("other/letter.txt").write_text("dear reader", encoding="utf-8")
    before = band.read_bytes()
    done = proof(str(band), "--to", folder)
    assert done.exit_code == 2
    assert "Move" in done.output
    assert (band.read_bytes(), held(Path("other"))) == (before, {"letter.txt"})
