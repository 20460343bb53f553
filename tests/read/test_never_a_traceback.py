"""In: any text at all. Out: findings, never an exception, and an end in reasonable time.

The time is bounded by the tests ending at all; no second is measured, as machines differ.
"""

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizewright.base.finding import Finding
from sizewright.proof.run import proof
from sizewright.read.project import Project

Read = Callable[[str], Project]

THOROUGH = settings(derandomize=True, max_examples=120, deadline=None)

# Fragments of the language, whole and broken, that are joined in any order.
FRAGMENTS = (
    *"{}[]()*:,;.=<>/+-−–—#|\\`~!&\"'″%½⅐⁄",
    *("\n", "\n\n", "\n---\n", "\n```\n", "\n```grade\n", "\n```work\n", "\n```stitch Shale\n", "\n::: sizes A, B\n"),
    *(
        "\n:::\n",
        "\n::: szes A\n",
        "\n| a | {b} |\n|---|---|\n| c | d |\n",
        "\n> ",
        "\n- ",
        "\n# ",
        "\n    ",
        "\t",
        "\r",
    ),
    *(
        "{chest}",
        "{chest:times}",
        "{chest / 0}",
        "{cast_on",
        "\\{",
        "{",
        "{:}",
        "{1/0}",
        "{1 (2, 3)}",
        "{9 (8, 7) cm:in}",
    ),
    *("a = b\n", "b = a\n", "a = chest * stitch_gauge, nearest multiple of 4 plus\n", "require a fits multiple of 0\n"),
    *("require chest > 4", "up to even", "down to 0 cm", "min(", "largest()", "1/0 st", "00012", "9" * 40),
    *("Cast on 8 (9, 10) sts.", "Cast on 0 sts", "Rnd 1: ", "Row 1 (RS): ", "Rows 2-1000000: ", "Next row: ", "K2, p2"),
    *(
        "*K2, p2; rep from * to end.",
        "[k2tog] 3 times",
        "rep from * to last 0 sts",
        "(yo, k1) 99999999 times",
        "k to end",
    ),
    *(
        "Rep Rows 1-4",
        "Rep last row 0 times",
        "until piece measures {brim}.",
        "(88 sts)",
        "BO all sts.",
        "pm, sl m",
        "C4F",
    ),
    *("Multiple of 0 sts plus 6.", "# declared: 72 sts", "work even", "k–2", "k1.5", "k½", "- (-, -)", "8 (9: 10; 11)"),
    *(
        "![](x)",
        "[a](javascript:b)",
        "<b>",
        "&amp;",
        "é",
        "🧶",
        "\u202e",
        "\x00",
        "\x0c",
        "\x1b[2J",
        "\u2028",
        "\ufeff",
    ),
)
HEADER_FRAGMENTS = (
    *("title: A\n", "title:\n", "sizes:\n", "  A: {chest: 80 cm}\n", "  B: 4\n", "gauge: {stitches: 22 st / 0 cm}\n"),
    *("gauge:\n  body: {stitches: 2 st}\n", "yarn: {main: {weight: light}}\n", "needles: [4 mm\n", "cautions: []\n"),
    *(
        "published: 2026-13-45\n",
        "published: 0000-00-00\n",
        "changes: [{date: x}]\n",
        "finished: {a: b}\n",
        "? a\n",
        "- b\n",
    ),
    *("picture: {file: ../x, alt: y}\n", "films: [{start: -1}]\n", "terms: {k: [}\n", "techniques: [../../x]\n"),
    *(
        "&a",
        "*a",
        "!!x ",
        "{",
        "}",
        "[",
        "]",
        ": ",
        "\n",
        "  ",
        "\t",
        "'",
        '"',
        "|\n",
        ">\n",
        "%YAML 9\n",
        "...\n",
        "---\n",
    ),
    *(
        "\x00",
        "\x85",
        "\ufeff",
        "é",
        "🧶",
        "1/0 cm",
        "0 cm",
        "-5 cm",
        "99999999999999999999 cm",
        "1 st / 4 in",
        "no",
        "~",
    ),
)
HEADER = "---\ntitle: A\nsizes: {A: {chest: 80 cm}, B: {chest: 90 cm}, C: {chest: 40 in}}\n---\n\n"


def joined(fragments: tuple[str, ...]) -> st.SearchStrategy[str]:
    return st.lists(st.sampled_from(fragments) | st.text(max_size=6), max_size=40).map("".join)


def proofed(project: Project) -> tuple[Finding, ...]:
    """All findings; reaching them without an exception is what is tested, and each must have words for a person."""
    findings = (*project.findings, *(one for each in project.patterns for one in proof(each, project).findings))
    for finding in findings:
        assert finding.message
        assert finding.span is None or (finding.span.line >= 1 and finding.span.column >= 1)
        assert finding.span is None or finding.span.line <= len(project.patterns[0].lines.lines)
    return findings


@THOROUGH
@given(text=st.text() | joined(FRAGMENTS + HEADER_FRAGMENTS))
def test_any_text_is_read(read_text: Read, text: str) -> None:
    proofed(read_text(text))


@THOROUGH
@given(header=st.text() | joined(HEADER_FRAGMENTS))
def test_any_header_is_read(read_text: Read, header: str) -> None:
    proofed(read_text(f"---\n{header}\n---\n\n{{chest}} {{stitch_gauge}}\n"))


@THOROUGH
@given(formula=st.text() | joined(FRAGMENTS))
def test_any_formula_is_read(read_text: Read, formula: str) -> None:
    proofed(read_text(f"{HEADER}{{{formula}}}\n\n```grade\nx = {formula}\nrequire {formula}\n{formula}\n```\n"))


@THOROUGH
@given(body=st.text() | joined(FRAGMENTS))
def test_any_body_is_read(read_text: Read, body: str) -> None:
    proofed(read_text(f"{HEADER}{body}"))


@THOROUGH
@given(instructions=st.text() | joined(FRAGMENTS))
def test_any_instructions_are_read(read_text: Read, instructions: str) -> None:
    proofed(read_text(f"{HEADER}```work\nCast on 8 (9, 10) sts.\n{instructions}\n```\n"))


@THOROUGH
@given(rows=st.text() | joined(FRAGMENTS))
def test_any_stitch_pattern_is_read(read_text: Read, rows: str) -> None:
    proofed(read_text(f"{HEADER}```stitch Shale\nMultiple of 4 sts.\n{rows}\n```\n"))


MANY = 10_000
WORDS = 1_000  # a line of so many directions takes a time that grows with their square
NESTED = {
    "round brackets": "(" * MANY + "1" + ")" * MANY,
    "open round brackets": "(" * MANY,
    "square brackets": "[" * MANY + "k1" + "]" * MANY,
    "square brackets, repeated": "[" * MANY + "k1" + "] 2 times" * MANY,
    "braces": "{" * MANY + "1" + "}" * MANY,
    "open braces": "{" * MANY,
    "stars": "*" * MANY,
    "stars apart": "* " * MANY,
    "stars around words": "*k2, " * WORDS + "rep from *; " * WORDS,
    "signs": "-" * MANY + "1",
    "sums": "1+" * MANY + "1",
    "calls": "min(" * MANY + "1",
    "quotes": "> " * MANY + "k1",
    "lists": "- " * MANY + "k1",
    "links": "[a](" * MANY,
    "pictures": "![" * MANY,
    "backticks": "`" * MANY + " a " + "`" * (MANY - 1),
    "a long list": "8 (" + "9, " * MANY + "10)",
    "nothing below the line": "2 1/0 (3, 4 1/0) sts, 5 1/00 sts, k2 1/0",
}


@pytest.mark.parametrize("hostile", NESTED.values(), ids=NESTED.keys())
def test_hostile_nesting_ends(read_text: Read, hostile: str) -> None:
    proofed(read_text(f"{HEADER}{hostile}\n\n{{{hostile}}}\n\n```grade\nx = {hostile}\nrequire {hostile}\n```\n"))
    proofed(read_text(f"{HEADER}```work\nCast on 8 sts.\nRow 1: {hostile}\n{hostile}\n```\n"))


WHOLE = f"""{HEADER}# Hat {{2 st}}

> ::: sizes A, B
> Quoted {{chest}}, *loud*.
> :::

| a {{chest}} | b |
|---|---|
| [c](d.md) | ![e](f.svg) |

```grade
around = chest - 5 cm  # less
cast_on = around * 22 st / 10 cm, nearest multiple of 4 plus 2
brim = 4 (4,
  5) cm
require cast_on fits multiple of 4 plus 2
```

::: sizes C
```work
Cast on {{cast_on}} sts. Join to work in the round.
Rnd 1: *K2 (2, 2), p2; rep from * to last 2 sts, k2. (178 (198, 222) sts)
```
:::

```stitch Shale
Multiple of 2 sts.
Row 1: *K1, p1; rep from * to end.
"""


def test_a_source_may_end_anywhere(read_text: Read) -> None:
    """As it does while it is being written."""
    assert not [one for one in proofed(read_text(f"{WHOLE}```\n")) if one.rule == "unreadable-header"]
    for end in range(len(WHOLE)):
        proofed(read_text(WHOLE[:end]))
