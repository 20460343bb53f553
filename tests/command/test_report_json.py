"""The JSON of `proof`: its keys are public, its values exact, its bytes always the same."""

import json
from collections.abc import Callable
from pathlib import Path

from sizewright.base.finding import Finding, Level
from sizewright.base.place import Span
from sizewright.command.proofing import Proofing, gathered
from sizewright.command.reading import open_paths
from sizewright.command.report_json import json_report

Made = Callable[..., Proofing]

SIZES = ("Small",)
FOUND = Finding(
    "broken-repeat", Level.ERROR, "“94”: ½ too many", "Cast on 92.", Span("band.md", 16, 1, 16, 8), ("Small",)
)
APART = Finding("missing-alt", Level.WARNING, "No words.", "", None)


def test_a_pattern(made: Made) -> None:
    told = json.loads(json_report(made([FOUND], [APART])))
    assert list(told) == ["version", "patterns", "findings", "accepted", "summary"]
    (pattern,) = told["patterns"]
    assert {key: pattern[key] for key in ("source", "title", "sizes", "stitch_patterns")} == {
        "source": "band.md",
        "title": "Test Band",
        "sizes": ["Small", "Large"],
        "stitch_patterns": [],
    }
    # 52 x 0.9 x 2 = 93.6 and 60 x 0.9 x 2 = 108 stitches; 92 is the multiple of 4 nearest to 93.6 (arithmetic)
    shown = ("name", "unit", "values", "unrounded", "line")
    assert [{key: one[key] for key in shown} for one in pattern["quantities"]] == [
        {"name": "head", "unit": "cm", "values": ["52", "60"], "unrounded": ["52", "60"], "line": 5},
        {"name": "stitch_gauge", "unit": "st/cm", "values": ["2", "2"], "unrounded": ["2", "2"], "line": 8},
        {"name": "row_gauge", "unit": "row/cm", "values": ["14/5"] * 2, "unrounded": ["14/5"] * 2, "line": 9},
        {"name": "cast_on", "unit": "st", "values": ["92", "108"], "unrounded": ["468/5", "108"], "line": 16},
        {"name": "half", "unit": "st", "values": ["46", "54"], "unrounded": ["46", "54"], "line": 17},
        {"name": "depth", "unit": "cm", "values": ["9", "10"], "unrounded": ["9", "10"], "line": 18},
    ]


def test_which_formula_a_quantity_has_and_what_it_relies_on(made: Made) -> None:
    quantities = {one["name"]: one for one in json.loads(json_report(made()))["patterns"][0]["quantities"]}
    assert quantities["cast_on"]["formula"] == "head * 0.9 * stitch_gauge, nearest multiple of 4"
    assert quantities["cast_on"]["relies_on"] == ["head", "stitch_gauge"]
    assert (quantities["head"]["formula"], quantities["head"]["relies_on"]) == (None, [])


def test_the_rows_as_they_were_carried_out(made: Made) -> None:
    rows = json.loads(json_report(made()))["patterns"][0]["rows"]
    assert [(row["label"], row["line"], row["before"], row["after"]) for row in rows] == [
        ("Cast on", 23, [None, None], [92, 108]),
        ("Rnd 1", 24, [92, 108], [92, 108]),
        ("Rep Rnd 1", 25, [92, 108], [92, 108]),
        ("Bind off", 26, [92, 108], [0, 0]),
    ]


def test_the_yarn_of_a_pattern(made: Made) -> None:
    """A pattern without a swatch has the stitches of its yarn and no amounts; sums are those of the rows above."""
    (yarn,) = json.loads(json_report(made()))["patterns"][0]["yarn"]
    rows = json.loads(json_report(made()))["patterns"][0]["rows"]
    stitches = [count * (3 + rows[2]["times"][size]) for size, count in enumerate((92, 108))]  # both edges are yarn too
    assert yarn["stitches"] == stitches
    assert {key: yarn[key] for key in ("name", "length", "mass", "balls", "reserve", "incomplete")} == {
        "name": "main",
        "length": [],
        "mass": [],
        "balls": [],
        "reserve": "0",
        "incomplete": [False, False],
    }


def test_what_was_found(made: Made) -> None:
    told = json.loads(json_report(made([FOUND], [APART])))
    found = {
        "rule": "broken-repeat",
        "level": "error",
        "message": "“94”: ½ too many",
        "mend": "Cast on 92.",
        "line": 16,
        "column": 1,
        "sizes": ["Small"],
    }
    assert told["patterns"][0]["findings"] == [found]
    apart = {"rule": "missing-alt", "level": "warning", "message": "No words.", "mend": ""}
    assert told["findings"] == [{"source": None, **apart, "line": None, "column": None, "sizes": []}]
    assert told["accepted"] == []
    assert told["summary"] == {"patterns": 1, "errors": 1, "warnings": 1, "notes": 0}


def test_it_is_utf_8_with_a_line_end_and_always_the_same(made: Made) -> None:
    report = json_report(made([FOUND]))
    assert report == json_report(made([FOUND]))
    assert report.endswith(b"}\n")
    assert "½".encode() in report


def test_half_a_sign_of_a_file_name_does_not_stop_it(made: Made) -> None:
    broken = Finding("x", Level.ERROR, "\udcff", "", None)
    assert b"\\udcff" in json_report(made([], [broken]))


def test_paths_are_those_a_person_here_would_type(band: Path, tmp_path: Path) -> None:
    text = (
        band.read_text(encoding="utf-8")
        .replace("sizes:", "table: heads\nsizes:")
        .replace("Small: {head: 52 cm}", "Small:")
    )
    for path, content in {
        "other/content/patterns/band.md": text,
        "other/content/sizes/heads.yaml": "title: t\nsource: invented\nsizes:\n  Small: {head: 52 cm}\n",
    }.items():
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_text(content, encoding="utf-8")
    opened = open_paths((Path("other"), band))
    assert [one.shown(one.project.patterns[0].source) for one in opened] == [
        "other/content/patterns/band.md",
        "band.md",
    ]
    (inside,) = open_paths((Path("other/content/patterns/band.md"),))
    assert inside.shown(inside.project.patterns[0].source) == "other/content/patterns/band.md"
    assert inside.shown("content/sizes/heads.yaml") == "other/content/sizes/heads.yaml"
    assert list(gathered([inside], []).texts) == ["other/content/patterns/band.md"]
