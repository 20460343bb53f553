"""In: headers and YAML files as people write them. Out: values as they were typed, each with its place."""

from collections.abc import Callable
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizewright.base.place import Lines, Span
from sizewright.base.units import LENGTH, MASS, ROW_GAUGE, STITCH_GAUGE
from sizewright.read.folder import read_project
from sizewright.read.pattern import Header
from sizewright.read.project import Project
from sizewright.read.yaml_tree import Listing, Node, Scalar, Table, read_yaml

Read = Callable[[str], Project]

THOROUGH = settings(derandomize=True, max_examples=150, deadline=None)


def tree(text: str) -> Node | None:
    lines = Lines("x.yaml", text)
    node, findings = read_yaml(lines, 1, len(lines.lines) + 1)
    assert findings == ()
    return node


def plain(node: Node | None) -> object:
    """A tree as lists and dictionaries of texts."""
    match node:
        case Scalar(text=text):
            return text
        case Listing(items=items):
            return [plain(item) for item in items]
        case Table(entries=entries):
            return {key.text: plain(value) for key, value in entries}
    return None


@pytest.mark.parametrize(
    "typed",
    [
        # What YAML 1.1 itself turns into false, 8, 1.1, 750, a date, nothing and a float (YAML 1.1, yaml.org/type).
        *(
            "no",
            "yes",
            "on",
            "off",
            "010",
            "0x1F",
            "1.10",
            "12:30",
            "2026-03-01",
            "~",
            "null",
            "1e3",
            ".inf",
            "=",
            "<<",
        ),
    ],
)
def test_a_value_stays_what_was_typed(typed: str) -> None:
    assert plain(tree(f"key: {typed}\n")) == {"key": typed}
    assert plain(tree(f"{typed}: value\n")) == {typed: "value"}


def test_every_way_to_write_a_tree() -> None:
    text = "a: {b: [1, 'two', \"three\"]}\nc:\n  - x\n  - {y: z}\n  -\nd: >-\n  folded\n  text\ne: |\n  as\n  it is\n"
    assert plain(tree(text)) == {
        "a": {"b": ["1", "two", "three"]},
        "c": ["x", {"y": "z"}, ""],
        "d": "folded text",
        "e": "as\nit is\n",
    }
    assert tree("") is None
    assert tree("# a comment\n") is None


def spans(node: Node) -> list[Scalar]:
    match node:
        case Scalar():
            return [node]
        case Listing(items=items):
            return [one for item in items for one in spans(item)]
        case Table(entries=entries):
            return [one for key, value in entries for one in (key, *spans(value))]


def slice_of(lines: Lines, span: Span) -> str:
    return lines.text[lines.offset(span.line, span.column) : lines.offset(span.end_line, span.end_column)]


def test_every_value_has_its_place() -> None:
    lines = Lines("x.md", "---\ntitle: Größe 🧶\nä: {'q': [\"x\", y z]}\nlist:\n  - one # comment\n  - two\n---\n")
    node, findings = read_yaml(lines, 2, 7)
    assert findings == ()
    assert node is not None
    found = spans(node)
    assert [one.text for one in found] == ["title", "Größe 🧶", "ä", "q", "x", "y z", "list", "one", "two"]
    for one in found:
        assert slice_of(lines, one.span).strip("'\"") == one.text
        assert lines.text[one.start : one.start + len(one.text)] == one.text


@THOROUGH
@given(words=st.lists(st.text(st.characters(categories=["L", "N"]), min_size=1, max_size=9), min_size=1, max_size=6))
def test_any_words_come_back(words: list[str]) -> None:
    text = "".join(f"- {word}\n" for word in words)
    assert plain(tree(text)) == words


# ----------------------------------------------------------------------------------------------------------- the header

WHOLE = """---
title: Hat
summary: >-
  A hat in
  two lines.
designer: Maren Tolley
published: 2026-03-01
revised: 2026-10-12
licence: CC BY 4.0
skill: easy
kind: hat
picture: {file: hat.svg, alt: A hat}
sizes:
  Baby: {head: 41 cm, age: 3 to 6 months}
  Adult M: {head: 22 1/4 in, age: from 16 years, note: close}
gauge:
  body: {stitches: 22 st / 10 cm, rows: 30 rnd / 10 cm, over: stockinette, needle: 4 mm}
  ribbing: {stitches: 24 st / 4 in, rows: 32 row / 4 in}
needles: [4 mm, 3.5 mm]
yarn:
  main: {weight: light, fibre: 100% wool, length: 105 m, mass: 50 g, colour: rust}
  second: {weight: lace, length: 400 yd, mass: 1 3/4 oz}
notions: tapestry needle
techniques: [blocking]
cautions: [small-children]
finished: [{label: Around, value: head - 5 cm, body: head}]
changes:
  - {date: 2026-05-01, text: first}
  - {date: 2026-10-12, text: second}
---
"""


@pytest.fixture
def header(read_text: Read) -> Header:
    project = read_text(WHOLE)
    assert project.findings == ()
    return project.patterns[0].header


def test_a_header_is_read_whole(header: Header) -> None:
    assert header.title == "Hat"
    assert header.summary is not None
    assert header.summary.text == "A hat in two lines."
    assert header.published is not None
    assert header.published.date == date(2026, 3, 1)
    assert [size.name for size in header.sizes] == ["Baby", "Adult M"]
    assert [words.text for words in header.needles] == ["4 mm", "3.5 mm"]
    assert [words.text for words in header.notions] == ["tapestry needle"]
    assert [change.text.text for change in header.changes] == ["second", "first"], "newest first"


def test_quantities_of_a_header_are_exact(header: Header) -> None:
    baby, adult = (size.measurements["head"] for size in header.sizes)
    assert (baby.quantity.value, baby.quantity.dimension, baby.typed) == (Fraction(41), LENGTH, "41 cm")
    assert (adult.quantity.value, adult.typed) == (Fraction("22.25") * Fraction("2.54"), "22 1/4 in")
    main, second = header.yarns
    assert main.length is not None
    assert second.length is not None
    assert second.mass is not None
    assert main.length.quantity.value == 10500
    assert second.length.quantity.value == 400 * Fraction("91.44")  # 16 CFR 500.19(a)
    assert second.mass.quantity.dimension == MASS


def test_gauges_of_several_fabrics(header: Header) -> None:
    body, ribbing = header.gauges
    assert (body.name, body.in_the_round, ribbing.name, ribbing.in_the_round) == ("body", True, "ribbing", False)
    assert body.stitches is not None
    assert body.rows is not None
    assert ribbing.stitches is not None
    assert (body.stitches.quantity.value, body.stitches.quantity.dimension) == (Fraction("2.2"), STITCH_GAUGE)
    assert (body.rows.quantity.value, body.rows.quantity.dimension) == (Fraction(3), ROW_GAUGE)
    assert ribbing.stitches.quantity.value == 24 / Fraction("10.16")
    assert ribbing.needle is None


def test_words_of_a_size_are_no_measurements(header: Header) -> None:
    baby, adult = header.sizes
    assert (set(baby.measurements), set(baby.remarks)) == ({"head"}, {"age"})
    assert {key: words.text for key, words in adult.remarks.items()} == {"age": "from 16 years", "note": "close"}


@pytest.mark.parametrize(
    ("weight", "gauge"), [("{weight: light}", "22 sts / 10 cm"), ("{main: {weight: light}}", "22 stitches / 4 inches")]
)
def test_one_yarn_and_one_gauge_may_stand_alone(read_text: Read, weight: str, gauge: str) -> None:
    project = read_text(f"---\ntitle: A\nyarn: {weight}\ngauge: {{stitches: {gauge}}}\n---\n")
    assert project.findings == ()
    found = project.patterns[0].header
    assert [yarn.name for yarn in found.yarns] == ["main"]
    assert [one.name for one in found.gauges] == [""]


@pytest.mark.parametrize(
    "head", ["", "---\n", "---\ntitle: A\n", "text\n---\ntitle: A\n---\n", "\n---\ntitle: A\n---\n"]
)
def test_a_source_without_a_header_is_told_so(read_text: Read, head: str) -> None:
    assert [finding.rule for finding in read_text(head).findings] == ["unreadable-header"]


@pytest.mark.parametrize("ending", ["\r\n", "\r", "\n"])
def test_lines_may_end_in_any_way(read_text: Read, ending: str) -> None:
    project = read_text("\ufeff" + f"{WHOLE}Cast on {{2 st}} sts.\n".replace("\n", ending))
    assert project.findings == ()
    assert project.patterns[0].header.span.end_line == WHOLE.count("\n")


# ----------------------------------------------------------------------------------------------------------- the tables


def test_a_size_takes_its_measurements_from_the_tables_and_its_own_win(tmp_path: Path) -> None:
    files = {
        "sizes/heads.yaml": "title: Heads\nsource: invented\nsizes: {M: {head: 56 cm, age: adult}, L: {head: 58 cm}}\n",
        "sizes/hands.yaml": "title: Hands\nsource: invented\nsizes: {M: {hand: 19 cm}, L: {hand: 20 cm}}\n",
        "patterns/a.md": "---\ntitle: A\ntable: [heads, hands]\nsizes:\n  m: {}\n  Mine: {like: L, head: 57 cm}\n---\n",
    }
    for name, text in files.items():
        path = tmp_path / "content" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    project = read_project(tmp_path)
    assert project.findings == ()
    (pattern,) = project.patterns
    found = [{key: measure.typed for key, measure in size.measurements.items()} for size in pattern.header.sizes]
    assert found == [{"head": "56 cm", "hand": "19 cm"}, {"head": "57 cm", "hand": "20 cm"}]
    assert pattern.header.sizes[0].remarks["age"].text == "adult"
    assert project.tables["heads"].source.text == "invented"
