"""The published schema of `errata --format json`: what is printed is valid by it, and it tells every key of it."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from jsonschema import Draft202012Validator
from tests.command.schemas import faults, shipped

from sizewright.command.main import sizewright
from sizewright.command.report_errata import VERSION
from sizewright.proof.errata import Change
from sizewright.proof.line import Kind

SCHEMA: dict[str, Any] = shipped("errata.schema.json")
ERRATUM = SCHEMA["$defs"]["erratum"]["properties"]
LINES = "Rnd 1: *K2, p2; rep from * to end.\n"
# What a designer may do to the band, and which changes it is told as.
EDITS: tuple[Callable[[str], str], ...] = (
    lambda text: text.replace("nearest multiple of 4", "up to multiple of 4").replace("9 (10) cm", "9 (12) cm"),
    lambda text: text.replace("  Large: {head: 60 cm}\n", "").replace("9 (10)", "9"),
    lambda text: text.replace(LINES, ""),
    lambda text: text.replace("licence: invented for a test\n", "").replace("200 m", "180 m"),
)


def errata(*words: str) -> Any:  # noqa: ANN401 (a tree of JSON)
    return json.loads(CliRunner().invoke(sizewright, ["errata", *words]).stdout)


def test_it_is_a_schema_of_draft_2020_12() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["properties"]["version"]["const"] == VERSION
    assert SCHEMA["$id"].endswith(f":{VERSION}")


def test_it_knows_every_change_and_every_kind_of_line() -> None:
    assert ERRATUM["change"]["enum"] == [str(one) for one in Change]
    assert ERRATUM["kind"]["enum"] == [str(one) for one in Kind]


@pytest.mark.parametrize("edit", EDITS)
def test_what_is_told_is_valid(band: Path, edit: Callable[[str], str]) -> None:
    text = band.read_text(encoding="utf-8")
    Path("new.md").write_text(edit(text), encoding="utf-8")
    for old, new in (("band.md", "new.md"), ("new.md", "band.md")):
        told = errata(old, new, "--format", "json")
        assert told["summary"]["errata"] > 0
        assert faults(SCHEMA, told) == []


def test_folders_and_patterns_that_only_one_side_has_are_valid(band: Path) -> None:
    for folder, name in (("old", "band"), ("new", "cap")):
        place = Path(folder, "content/patterns")
        place.mkdir(parents=True)
        (place / f"{name}.md").write_text(band.read_text(encoding="utf-8"), encoding="utf-8")
    told = errata("old", "new", "--format", "json")
    assert (told["only_old"], told["only_new"]) == (["band"], ["cap"])
    assert faults(SCHEMA, told) == []


@pytest.mark.parametrize(
    ("spoil", "place"),
    [
        (lambda told: told.pop("version"), "$"),
        (lambda told: told["patterns"][0]["errata"][0].update(change="worse"), "$.patterns[0].errata[0].change"),
        (lambda told: told["patterns"][0]["errata"][0].update(line=0), "$.patterns[0].errata[0].line"),
        (lambda told: told["patterns"][0].update(colour="red"), "$.patterns[0]"),
    ],
)
def test_what_is_not_as_told_is_not_valid(band: Path, spoil: Callable[[Any], object], place: str) -> None:
    Path("new.md").write_text(EDITS[0](band.read_text(encoding="utf-8")), encoding="utf-8")
    told = errata("band.md", "new.md", "--format", "json")
    spoil(told)
    assert [one.partition(": ")[0] for one in faults(SCHEMA, told)] == [place]


def test_the_schema_is_printed() -> None:
    assert errata("--schema") == SCHEMA
