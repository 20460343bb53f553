"""SARIF and lines of `proof`: valid by a package that knows the standard, places and sizes as they were found."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner
from pydantic import BaseModel
from sarif_pydantic import Sarif

from sizewright.base.finding import Finding, Level
from sizewright.base.place import Span
from sizewright.command.main import sizewright
from sizewright.command.proofing import Proofing
from sizewright.command.report_lines import lines_report
from sizewright.command.report_sarif import sarif_report
from sizewright.proof.run import RULES

Made = Callable[..., Proofing]
FOUND = Finding(
    "broken-repeat", Level.ERROR, "“94”: ½ too many", "Cast on 92.", Span("my band.md", 16, 1, 16, 8), ("Small",)
)
APART = Finding("missing-alt", Level.WARNING, "No words.", "", None)


def unknown_keys(model: BaseModel) -> Iterator[str]:
    """Keys the standard does not have; `properties` is where it lets a tool have its own."""
    yield from model.model_extra or {}
    for name in type(model).model_fields:
        value = getattr(model, name)
        for one in value if isinstance(value, list) else [value]:
            if isinstance(one, BaseModel):
                yield from unknown_keys(one)


def test_valid_by_a_reference_package(made: Made) -> None:
    """Source: SARIF 2.1.0 (OASIS) as the package sarif-pydantic models it."""
    told = Sarif.model_validate_json(sarif_report(made([FOUND], [APART])))
    assert set(unknown_keys(told)) <= {"$schema", "columnKind"}  # of the standard (3.14.17), not in the package's model
    assert told.version == "2.1.0"
    (run,) = told.runs
    rules = run.tool.driver.rules or []
    assert [rule.id for rule in rules] == ["broken-repeat", "missing-alt"]
    assert [rules[result.rule_index or 0].id for result in run.results or []] == [
        result.rule_id for result in run.results or []
    ]


def test_place_sizes_and_words(made: Made) -> None:
    told = Sarif.model_validate_json(sarif_report(made([FOUND], [APART])))
    apart, found = told.runs[0].results or []
    assert (apart.level, apart.locations) == ("warning", None)
    assert found.message.text == "“94”: ½ too many Cast on 92."
    assert (found.properties or {})["sizes"] == ["Small"]
    place = (found.locations or [])[0].physical_location
    assert place is not None
    assert place.artifact_location is not None
    assert place.artifact_location.uri == "my%20band.md"
    assert place.region is not None
    assert (place.region.start_line, place.region.start_column, place.region.end_column) == (16, 1, 8)


def test_a_file_far_away_has_its_whole_address(made: Made, tmp_path: Path) -> None:
    far = Finding("missing-alt", Level.WARNING, "No words.", "", Span(str(tmp_path / "a b.md"), 1, 1, 1, 2))
    assert f"{tmp_path.as_uri()}/a%20b.md" in sarif_report(made([far], [])).decode()


def test_one_line_a_finding(made: Made) -> None:
    lines = lines_report(made([FOUND], [APART])).decode().splitlines()
    assert lines == [
        "warning: missing-alt: No words.",
        "my band.md:16:1: error: broken-repeat: “94”: ½ too many (sizes: Small) Cast on 92.",
    ]
    assert lines_report(made([], [])) == b""


@pytest.mark.parametrize("name", sorted(RULES))
def test_every_rule_has_its_page(name: str) -> None:
    shown = CliRunner().invoke(sizewright, ["rule", name])
    assert shown.exit_code == 0
    for part in (name, "Why it matters.", "Example.", "Instead."):
        assert part in shown.output


def test_rules_are_listed_and_a_misspelt_one_is_said() -> None:
    assert all(name in CliRunner().invoke(sizewright, ["rule"]).output for name in RULES)
    wrong = CliRunner().invoke(sizewright, ["rule", "broken-repat"])
    assert (wrong.exit_code, "Did you mean “broken-repeat”?" in wrong.output) == (2, True)
