"""Hostile instructions: findings, never an exception, and work that stays in bounds.

The work is the calls that Python makes, which are the same on every machine; no second is measured.
"""

import sys
from collections.abc import Callable
from types import FrameType

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizewright.proof.run import proof
from sizewright.read.folder import read_text

HEAD = "---\ntitle: A\nsizes: {A: {}, B: {}}\n---\n"
WORK = "```work\nCast on 8 (9) sts.\n{}\n```\n"
STITCH = "```stitch Trial\nMultiple of 4 sts.\n{}\n```\n"

WORDS = (
    *("k2", "p", "K3", "yo", "k2tog", "sl 1", "psso", "m1", "kfb", "C4F", "(k1, p1, k1) in next st", "knit", "purl"),
    *(
        "*",
        "**",
        "[",
        "]",
        "(",
        ")",
        ",",
        ";",
        ":",
        ".",
        "\n",
        " ",
        "-",
        "rep from *",
        "to end",
        "to last 2 sts",
        "around",
    ),
    *(
        "3 times",
        "twice",
        "99999 times",
        "0 times",
        "once more",
        "to m",
        "to 2 sts before m",
        "pm",
        "sm",
        "rm",
        "end k1",
    ),
    *(
        "Row 1:",
        "Rnd 2 (WS):",
        "Rows 1-4:",
        "Rows 1 to 4 (5):",
        "Next row:",
        "Rep last 2 rows 3 more times",
        "As Row 1",
    ),
    *(
        "Rep Rows 1-4 until 2 sts remain",
        "work even for 10 rows",
        "Dec 1 st at each end of every 4th row 3 times",
        "turn",
    ),
    *(
        "w&t",
        "bind off 3 sts",
        "cast on 2 sts",
        "place next 3 sts on hold",
        "Place the held sts on needles",
        "drop 1 st",
    ),
    *(
        "with A",
        "MC",
        "2A",
        "(88 sts)",
        "(2 sts decreased)",
        "8 (9)",
        "0 (-)",
        "{x}",
        "{2 st}",
        "{2 cm}",
        "Cast on 9 sts",
    ),
    *(
        "Join in the round",
        "Bind off all sts",
        "knit the knits and purl the purls",
        "evenly across",
        "99999",
        "999999999999",
    ),
    *(
        "placing markers every 9 sts",
        "# declared: 5 sts",
        "Multiple of 0 sts",
        "in pattern",
        "k1.5",
        "½",
        "🧶",
        "\t",
        "and",
        "then",
    ),
)
SOUP = st.lists(st.sampled_from(WORDS), max_size=30).map(" ".join) | st.text(max_size=60)


def proofed(body: str) -> None:
    """The proof of a body; each finding has words for a person."""
    project = read_text(f"{HEAD}{body}", "a.md")
    for finding in proof(project.patterns[0], project).findings:
        assert finding.message


@settings(derandomize=True, max_examples=100, deadline=None)
@given(soup=SOUP)
def test_any_soup_of_words_is_worked(soup: str) -> None:
    proofed(WORK.format(soup))
    proofed(STITCH.format(soup) + WORK.format("Work in Trial for 6 rows."))


def calls(action: Callable[[], object]) -> int:
    """How many calls Python makes for it."""
    count = 0

    def counted(_: FrameType, event: str, __: object) -> None:
        nonlocal count
        count += event == "call"

    before = sys.getprofile()
    sys.setprofile(counted)
    try:
        action()
    finally:
        sys.setprofile(before)
    return count


HUGE = {
    "brackets in brackets": "Row 1: " + "[" * 8 + "k1" + "] 99 times" * 8,
    "yarn overs in brackets": "Row 1: " + "[" * 6 + "yo" + "] 99 times" * 6,
    "many of many": "Row 1: [[k1, yo, k1] 99999 times] 99999 times, k to end",
    "slipped": "Row 1: [[sl 1] 99999 times] 99999 times",
    "markers": "Row 1: [[pm] 99999 times] 99999 times, k to end",
    "yarns": "Row 1: [[with A, k1, with B, k1] 99999 times] 99999 times",
    "turns": "Row 1: " + "[" * 6 + "k1, turn" + "] 99 times" * 6,
    "passed over": "Row 1: [sl 1, [k1, psso] 99999 times] 99999 times",
    "many stitches": "Row 1: K99999, m1 99999",
    "more figures than anything has": "Row 1: K999999999999. Rep Row 1 999999999999 times. Rows 2-999999999999: Knit",
    "doubled in every row": "Row 1: *Kfb; rep from * to end.\nRep Row 1 99999 more times",
    "one more in every row": "Row 1: M1, k to end.\nRep Row 1 99999 more times",
    "rows without end": "Row 1: Knit.\nRep Row 1 until piece measures 99999 cm.\nWork even for 99999 rows",
    "rows that are never reached": "Row 1: Knit.\nRep Row 1 until 3 sts remain",
    "cast on": "Row 1: Cast on {99999999 st} sts, k to end",
    "markers every so often": "Cast on 8 sts, placing markers every 9 sts",
}


@pytest.mark.parametrize("hostile", HUGE.values(), ids=HUGE.keys())
def test_numbers_do_not_carry_the_work_away(hostile: str) -> None:
    """About as much as 5 000 rows of a common piece take, in two sizes."""
    assert calls(lambda: proofed(WORK.format(f"{hostile}."))) < 1_500_000


LONG = {
    "stitches": ("Row 1: ", "k1, "),
    "stars": ("Row 1: ", "*k1, "),
    "words": ("Row 1: ", "foo "),
    "labels": ("", "Row 1: "),
    "sentences": ("", "Knit. "),
    "repeats": ("Row 1: ", "*k1; rep from * to end, "),
    "open brackets": ("Row 1: ", "[("),
    "holders": ("Row 1: ", "place next 1 st on hold, "),
    "counts": ("Row 1: K8. ", "(8 sts) "),
}


@pytest.mark.parametrize(("before", "again"), LONG.values(), ids=LONG.keys())
def test_the_work_grows_with_what_is_written(before: str, again: str) -> None:
    """Four times as much of the same takes less than eight times the calls; its square would be sixteen."""
    short, long = (WORK.format(before + again * times) for times in (200, 800))
    assert calls(lambda: proofed(long)) < calls(lambda: proofed(short)) * 8
