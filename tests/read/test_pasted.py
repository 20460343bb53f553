"""A pasted pattern becomes a source: every word in its order, instructions in work blocks, nothing guessed.

The patterns here are invented for these tests.
"""

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizewright.proof.run import proof
from sizewright.read.folder import read_text
from sizewright.read.notation.direction_tree import Unread
from sizewright.read.pasted import Pasted, pasted
from sizewright.read.pattern import StitchBlock, WorkBlock

HAT = """Alder Hat

A plain hat with a folded brim; {braces} and *stars* and <b>more</b>.

Sizes: S (M, L)
To fit head: 52 (56, 60) cm
Gauge: 20 sts and 28 rounds = 10 cm in stockinette

Little Check
Multiple of 4 sts.
Rnd 1: *K2, p2; rep from * to end.
Rnd 2: Knit.

BRIM
With smaller needles, cast on 80 (88, 96) sts. Place marker and join to work in the round.
Rnd 1: *K2, p2; rep from *
to end.
Rep Rnd 1 until piece measures 4 cm.

CROWN
Work in Little Check for 8 rounds.
Rnd 2: *K6,
k2tog; rep from * to end. (70 (77, 84) sts)
Rnd 3: Do the fancy thing twice around.
Next Rnd: Knit.
Bind off all sts.

Wear it often, and tell us how it was.
"""
WORD = re.compile(r"[^\W_]+")


def in_order(text: str, source: str) -> bool:
    """Whether every word of a text is in a source, in its order."""
    left = iter(WORD.findall(source))
    return all(word in left for word in WORD.findall(text.replace("Sizes M only:", "M")))


def blocks(found: Pasted) -> list[WorkBlock | StitchBlock]:
    project = read_text(found.source)
    return [piece for piece in project.patterns[0].body if isinstance(piece, WorkBlock | StitchBlock)]


def not_understood(found: Pasted) -> list[str]:
    """The lines in blocks that the proof asks for."""
    project = read_text(found.source)
    asked = [one.span for one in proof(project.patterns[0], project).findings if one.rule == "not-understood"]
    lines = found.source.split("\n")
    return [lines[span.line - 1].strip().replace("\\{", "{").replace("\\}", "}") for span in asked if span is not None]


def swallowed(found: Pasted) -> list[str]:
    """Lines that the proof asks for and that were not listed."""
    listed = [one.text for one in found.unplaced if one.in_block]
    return [line for line in not_understood(found) if not any(line in text for text in listed)]


def test_every_word_is_kept_in_its_order() -> None:
    assert in_order(HAT, pasted(HAT, "hat").source)


def test_what_is_understood_is_proofed() -> None:
    found = pasted(HAT, "hat")
    assert not_understood(found) == ["Rnd 3: Do the fancy thing twice around."]
    project = read_text(found.source)
    worked = proof(project.patterns[0], project).worked
    counts = {entry.label: entry.after for entry in worked.entries if entry.span.source}
    assert counts["Cast on"] == (80, 88, 96)
    assert counts["Rnd 2"] == (70, 77, 84)  # the seventh part of each eight is gone
    assert (worked.stitch_patterns[0].name, worked.stitch_patterns[0].multiple) == ("Little Check", 4)


def test_the_header_says_what_is_certain() -> None:
    found = pasted(HAT, "hat")
    header = read_text(found.source).patterns[0].header
    assert (header.title, [size.name for size in header.sizes]) == ("Alder Hat", ["S", "M", "L"])
    (gauge,) = header.gauges
    assert gauge.stitches is not None
    assert (gauge.stitches.typed, gauge.in_the_round) == ("20 st / 10 cm", True)


def test_what_found_no_place_is_told() -> None:
    found = pasted(HAT, "hat")
    assert [(one.line, one.text) for one in found.unplaced] == [(24, "Rnd 3: Do the fancy thing twice around.")]


@pytest.mark.parametrize(
    "line",
    [
        "Change to smaller needles and purl as you like for 2 in.",
        "Transfer 14 (16, 18) waiting sleeve sts to the fancy tool.",
        "Repeat decrease round each blue moon, 7 (8, 9) more times \u2014 38 (40, 42) sts remain.",
        "Somehow make 12 (14, 16) sts of the first 10 (11, 12).",
        "Take the 11 (13, 15) thumb sts from where they are. Rejoin yarn.",
        "Work 2 in of a dream, then 3 of another.",
    ],
)
def test_an_instruction_that_is_not_understood_is_never_lost(line: str) -> None:
    """Below a row, and in a paragraph of its own."""
    for gap in ("\n", "\n\n"):
        text = f"Hat\n\nSizes: S (M, L)\n\nCast on 80 (88, 96) sts.{gap}{line}{gap}Row 1: Knit.\n"
        found = pasted(text, "hat")
        assert [one.text for one in found.unplaced] == [line]
        if gap == "\n":
            assert not_understood(found) == [line]
            assert found.placed == 2


def test_a_note_that_only_tells_counts_stays_text_and_is_listed() -> None:
    note = "That makes 80 sts in all, so count."
    text = f"Hat\n\nAllow 9 sts more.\n\nCast on 80 sts.\n\n{note}\n\nRow 1: Knit.\n\nTea at 4.\n"
    found = pasted(text, "hat")
    assert [(one.line, one.in_block) for one in found.unplaced] == [(7, False)]
    assert not_understood(found) == []


def test_a_row_that_is_not_understood_keeps_the_lines_it_is_wrapped_over() -> None:
    text = "Hat\n\nCast on 80 sts.\nRow 1: Do something\n(whatever you like) to the end\nof it all.\nRow 2: Knit.\n"
    found = pasted(text, "hat")
    assert "Row 1: Do something\n  (whatever you like) to the end\n  of it all.\nRow 2: Knit." in found.source
    assert [one.line for one in found.unplaced] == [4]


def test_headings_and_wrapped_rows() -> None:
    source = pasted(HAT, "hat").source
    assert "## BRIM\n\n```work\n" in source
    assert "Rnd 1: *K2, p2; rep from *\n  to end.\n" in source
    assert "```stitch Little Check\nMultiple of 4 sts.\n" in source


def test_a_multiple_that_is_none_names_no_stitch_pattern() -> None:
    text = "Hat\n\nSeed Stitch\nMultiple of what you like.\nRow 1: Knit.\n\nCast on 20 sts.\n"
    assert "```stitch" not in pasted(text, "hat").source
    assert "```stitch Seed Stitch\nMultiple of 2" in pasted(text.replace("what you like", "2"), "hat").source


def test_signs_of_the_text_stay_signs() -> None:
    source = pasted(HAT, "hat").source
    assert "\\{braces\\} and \\*stars\\* and \\<b>more\\</b>." in source
    assert read_text(source).patterns[0].header.title == "Alder Hat"


@pytest.mark.parametrize(
    "line",
    [
        "To fit bust: 34 (38, 42) in",
        "Sizes: one size",
        "Sizes: S (S, M)",
        "Sizes: S, M, L",
        "The sizes: are many (or few)",
        "Sizes: S (M, L)\n\nSizes: 34 (38, 42)",
        "Sizes: S (, L)",
    ],
)
def test_sizes_that_are_not_certain_are_left_to_the_designer(line: str) -> None:
    found = pasted(f"Hat\n\n{line}\n\nCast on 80 (88, 96) sts.\n", "hat")
    assert found.told.sizes == ()
    assert "\n# sizes: [S, M, L]" in found.source


@pytest.mark.parametrize(
    ("line", "gauge"),
    [
        ("Gauge: 22 sts and 30 rows = 4 in", ("22 st / 4 in", "30 row / 4 in")),
        ("5.5 stitches x 7 rnds per 1 inch", ("5.5 st / 1 in", "7 rnd / 1 in")),
        ("22 sts = 10 cm", None),
        ("about 22 sts and some rows over 10 cm", None),
        ("22 sts and 30 rows = 10 cm, or 20 sts and 30 rows = 10 cm\n20 sts and 28 rows = 10 cm", None),
    ],
)
def test_a_gauge_that_is_certain(line: str, gauge: tuple[str, str] | None) -> None:
    assert pasted(f"Hat\n\n{line}\n", "hat").told.gauge == gauge


def test_a_text_without_a_title_has_that_of_its_file() -> None:
    found = pasted("Cast on 20 sts.\nRow 1: Knit.\n", "Old hat")
    assert read_text(found.source).patterns[0].header.title == "Old hat"
    assert "none of its own" in found.source
    assert found.placed == 2


def test_published_texts_keep_their_words(demo_patterns: tuple[Path, ...]) -> None:
    """The demo's own instructions, as somebody would copy them from a page: their numbers stand in brackets."""
    for path in demo_patterns[:3]:
        text = path.read_text(encoding="utf-8").split("---\n", 2)[2]
        found = pasted(text, "copy")
        assert in_order(text, found.source)
        assert swallowed(found) == []


LINES = st.lists(
    st.sampled_from(
        [
            *HAT.split("\n"),
            "```",
            "```work",
            "~~~",
            "---",
            "===",
            "- a list",
            "Sizes M only:",
            "ABBREVIATIONS",
            "SSK: slip, slip, knit",
            "Waves",
            "Multiple of 3.",
            "Multiple of what you like",
            "Row 1: Knit.",
            "1) first",
            "# declared: 3 sts",
            "Rnd 4: Knit. # declared: 3 sts",
            "::: sizes S",
            ":::",
            "| a | b |",
            "|---|---|",
            "    set in",
            "\tRow 7: Knit.",
            "title: x",
            "{cast_on}",
            "Row 1: K{n}.",
            "&amp; [a](b) ![c](d)",
        ]
    ),
    max_size=14,
)


@given(LINES)
def test_any_text_keeps_its_words_and_reads(lines: list[str]) -> None:
    text = "\n".join(lines)
    found = pasted(text, "Any")
    assert in_order(text, found.source)
    project = read_text(found.source)
    assert not [one for one in project.findings if one.rule in ("unclosed", "unreadable-header", "unknown-block")]
    unread = [one for block in blocks(found) for one in block.directions if isinstance(one, Unread)]
    assert len(unread) <= len(not_understood(found))
    assert swallowed(found) == []
