"""In: braces and typed lists anywhere in a source. Out: each has the place where a person finds it."""

import re
from collections.abc import Callable, Iterator
from fractions import Fraction

import pytest

from sizewright.base.place import Lines, Span
from sizewright.proof.run import proof
from sizewright.read.pattern import Insert, Pattern, StitchBlock, TypedList, WorkBlock
from sizewright.read.project import Project

Read = Callable[[str], Project]

HEADER = "---\ntitle: A\nsizes: {A: {chest: 80 cm}, B: {chest: 90 cm}, C: {chest: 40 in}}\n---\n\n"


def typed_at(lines: Lines, span: Span) -> str:
    """What stands in the source at a place."""
    return lines.text[lines.offset(span.line, span.column) : lines.offset(span.end_line, span.end_column)]


def numbers(pattern: Pattern) -> Iterator[Insert | TypedList]:
    for piece in pattern.body:
        if isinstance(piece, Insert):
            yield piece
        elif isinstance(piece, WorkBlock | StitchBlock):
            yield from (one for line in piece.lines for one in line.pieces if isinstance(one, Insert | TypedList))


BODIES = {
    "a paragraph": "One {chest} and {chest / 2}.\nNext line {chest} and\n   indented {chest * 2}.",
    "a heading": "## Size {chest}",
    "a list": "- one {chest}\n- two {chest} and {chest}\n\n  a paragraph of it {chest}\n  1. inner {chest}",
    "a block quote": "> said {chest}\n> and {chest}\nlazy {chest}\n> > deeper {chest}",
    "a table": "| a {chest} | b |\n|---|---|\n| {chest} | {chest} |\n| x {chest} | x {chest} |",
    "emphasis": "*one {chest}* **two {chest}** `code {chest}` ~~three {chest}~~",
    "a link": "[words {chest}](https://example.org/) {chest}",
    "other letters": "Größe 🧶 ½ {chest} é\u0301 {chest}\n\n| 🧶 | {chest} |\n|---|---|\n| ½ {chest} | {chest} |",
    "a passage": "::: sizes A, B\nOnly {chest}.\n\n- and {chest}\n:::\n\nAll {chest}.",
    "a work block": "```work\nCast on {chest} sts 🧶 {chest}.\n\n   Row 1: K{chest / 1 cm}, p2.\n```",
    "a work block in a list": "- one\n\n  ```work\n  Cast on {chest} sts.\n  ```",
    "space of other kinds": "\u2028\nOne {chest}\n\n\xa0\nTwo {chest}\n\n- \u2003\n  three {chest}",
    "space in a quotation": "> \u2028\n> \x85\n> {chest}\n\tfour {chest}",
    "bars in a cell": "| \\| {chest} | {chest} \\| {chest} |\n|---|---|\n| `code {chest}` | {chest} |",
    "a stitch block": "```stitch Shale\nRow 1: K{chest}.\n```",
}


@pytest.mark.parametrize("body", BODIES.values(), ids=BODIES.keys())
def test_braces_are_where_they_stand(read_text: Read, body: str) -> None:
    (pattern,) = read_text(HEADER + body + "\n").patterns
    found = [one for one in numbers(pattern) if isinstance(one, Insert)]
    text = re.sub(r"`code \{chest\}`", lambda code: "x" * len(code.group()), HEADER + body)  # code is printed as it is
    lines = Lines(pattern.source, text)
    braces = list(re.compile(r"\{[^{}]*\}").finditer(text, len(HEADER)))
    assert braces
    assert [one.span for one in found] == [lines.span(*one.span()) for one in braces]
    for one in found:
        assert typed_at(pattern.lines, one.formula.span) == one.formula.text


@pytest.mark.parametrize(
    ("words", "column"),
    [
        ("Größe 🧶 {chset}", 10),
        ("- x {chest / 2/3}", 14),
        ("> {chest, nearest}", 18),
        ("| a | {4 cn} |\n|---|---|\n| b | c |", 10),
    ],
)
def test_a_fault_within_braces_has_its_own_column(read_text: Read, words: str, column: int) -> None:
    project = read_text(HEADER + words + "\n")
    (finding, *_) = [one for one in proof(project.patterns[0], project).findings if one.level == "error"]
    assert finding.span is not None
    assert (finding.span.line, finding.span.column) == (6, column)


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("8 (9, 10)", (8, 9, 10)),
        ("8 (9: 10)", (8, 9, 10)),
        ("8 (9; 10)", (8, 9, 10)),
        ("8(9,10)", (8, 9, 10)),
        ("8½ (9, 10 1/4)", (Fraction(17, 2), 9, Fraction(41, 4))),
        ("1.5 (2, 2.5)", (Fraction(3, 2), 2, Fraction(5, 2))),
        ("- (9, 10)", (None, 9, 10)),
        ("8 (–, 10)", (8, None, 10)),
        ("8 (9, —)", (8, 9, None)),
    ],
)
def test_a_typed_list_is_read_where_it_stands(
    read_text: Read, text: str, values: tuple[int | Fraction | None, ...]
) -> None:
    project = read_text(f"{HEADER}```work\nGröße 🧶: cast on {text} sts.\n```\n")
    (pattern,) = project.patterns
    (found,) = numbers(pattern)
    assert isinstance(found, TypedList)
    assert (found.text, found.values) == (text, values)
    assert typed_at(pattern.lines, found.span) == text
    assert (found.span.line, found.span.column) == (7, 18)


@pytest.mark.parametrize("text", ["8 (9)", "8 (9, 10, 11)", "8 (9: 10: 11)"])
def test_a_list_of_the_wrong_length_is_a_finding_where_it_stands(read_text: Read, text: str) -> None:
    project = read_text(f"{HEADER}```work\nCast on {text} sts.\n```\n\n{{{text} cm}}\n")
    found = [one for one in project.findings if one.rule == "wrong-list-length"]
    spans = [one.span for one in found if one.span is not None]
    assert sorted((span.line, span.column) for span in spans) == [(7, 9), (10, 2)]
    assert [typed_at(project.patterns[0].lines, span).removesuffix(" cm") for span in spans] == [text, text]


def test_a_list_in_a_passage_may_answer_to_its_sizes(read_text: Read) -> None:
    project = read_text(f"{HEADER}::: sizes A, C\n```work\nCast on 8 (10) sts.\n```\n:::\n")
    (found,) = numbers(project.patterns[0])
    assert isinstance(found, TypedList)
    values: tuple[Fraction | None, ...] = (Fraction(8), None, Fraction(10))
    assert found.values == values
    assert found.sizes == ("A", "C")


@pytest.mark.parametrize("words", ["Row 1 (RS): knit.", "K8 (88 sts).", "Work 2 (two) rows."])
def test_other_brackets_are_words(read_text: Read, words: str) -> None:
    (pattern,) = read_text(f"---\ntitle: A\n---\n\n```work\n{words}\n```\n").patterns
    assert list(numbers(pattern)) == []
