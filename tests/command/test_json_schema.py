"""The published schema of `proof --format json`: what is printed is valid by it, and it tells every key of it."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from jsonschema import Draft202012Validator
from tests.command import schemas

from sizewright.base.finding import Finding, Level
from sizewright.base.place import Span
from sizewright.command.main import sizewright
from sizewright.command.proofing import Proofing
from sizewright.command.report_json import VERSION, json_report

Made = Callable[..., Proofing]
SCHEMA: dict[str, Any] = schemas.shipped("proof.schema.json")
FOUND = Finding("broken-repeat", Level.ERROR, "½ too many", "Cast on 92.", Span("band.md", 16, 1, 16, 8), ("Small",))
APART = Finding("missing-alt", Level.WARNING, "No words.", "", None)


def faults(told: object) -> list[str]:
    return schemas.faults(SCHEMA, told)


def printed(*words: str) -> Any:  # noqa: ANN401 (a tree of JSON)
    return json.loads(CliRunner().invoke(sizewright, ["proof", *words]).stdout)


def test_it_is_a_schema_of_draft_2020_12() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert SCHEMA["properties"]["version"]["const"] == VERSION
    assert SCHEMA["$id"].endswith(f":{VERSION}")


def test_what_is_found_is_valid(made: Made) -> None:
    assert faults(json.loads(json_report(made([FOUND], [APART])))) == []


def test_the_demo_is_valid(repository: Path) -> None:
    told = printed("--format", "json", str(repository))
    assert len(told["patterns"]) > 3
    assert faults(told) == []


SOURCES = ("language/blocks", "language/idle-acceptance", "language/unclosed", "publish/sheet_source")


@pytest.mark.parametrize("source", SOURCES)
def test_sources_with_faults_are_valid(repository: Path, source: str) -> None:
    told = printed("--format", "json", str(repository / "tests" / f"{source}.md"))
    assert told["summary"]["errors"] + told["summary"]["warnings"] > 0
    assert faults(told) == []


@pytest.mark.parametrize(
    ("spoil", "place"),
    [
        (lambda told: told.pop("version"), "$"),
        (lambda told: told.update(version=2), "$.version"),
        (lambda told: told["patterns"][0]["quantities"][0].update(unit=1), "$.patterns[0].quantities[0].unit"),
        (lambda told: told["patterns"][0]["yarn"][0].update(reserve="0.1"), "$.patterns[0].yarn[0].reserve"),
        (lambda told: told["patterns"][0]["rows"][0].update(after=["72"]), "$.patterns[0].rows[0].after[0]"),
        (lambda told: told["patterns"][0]["findings"][0].update(level="hint"), "$.patterns[0].findings[0].level"),
        (lambda told: told["patterns"][0].update(colour="red"), "$.patterns[0]"),
    ],
)
def test_what_is_not_as_told_is_not_valid(made: Made, spoil: Callable[[Any], object], place: str) -> None:
    told = json.loads(json_report(made([FOUND], [APART])))
    spoil(told)
    assert [one.partition(": ")[0] for one in faults(told)] == [place]


def test_the_schema_is_printed() -> None:
    assert printed("--schema") == SCHEMA
