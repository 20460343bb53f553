"""Stitch blocks: counts promised in them, counts that change and come back, rows that disagree, rows not understood."""

import pytest

from sizewright.base.finding import Finding
from sizewright.grade.run import grade
from sizewright.proof.run import proof
from sizewright.read.folder import read_text
from sizewright.work.run import work
from sizewright.work.worked import StitchPattern


def text(rows: str) -> str:
    return f"---\ntitle: A\n---\n```stitch Leaf\n{rows}\n```\n"


def pattern(rows: str) -> StitchPattern:
    project = read_text(text(rows), "a.md")
    assert project.findings == ()
    (found,) = work(grade(project.patterns[0])).stitch_patterns
    return found


def errors(rows: str) -> list[Finding]:
    project = read_text(text(rows), "a.md")
    return [finding for finding in proof(project.patterns[0], project).findings if finding.level == "error"]


CHANGING = """Multiple of 5 sts plus 2.
Row 1: K2, *yo, k3, yo, k2; rep from * to end.
Row 2: Purl.
Row 3: K2, *ssk, k1, k2tog, k2; rep from * to end.
Row 4: Purl."""


def test_a_count_that_changes_and_comes_back() -> None:
    """Counted by hand: of 5 in a repeat two yarn overs make 7, two decreases make 5 again; 2 stand beside."""
    found = pattern(CHANGING)
    assert (found.multiple, found.plus) == (5, 2)
    assert found.repeats == (7, 7, 5, 5)
    assert found.beside == (2, 2, 2, 2)
    assert errors(CHANGING) == []


@pytest.mark.parametrize("counts", [(9, 7), (16, 12), (23, 17)])
def test_counts_promised_over_one_width(counts: tuple[int, int]) -> None:
    rows = CHANGING.replace("rep from * to end.\nRow 2", f"rep from * to end. ({counts[0]} sts)\nRow 2")
    assert errors(rows.replace("Row 4: Purl.", f"Row 4: Purl. ({counts[1]} sts)")) == []


def test_counts_promised_that_hold_over_no_width_together() -> None:
    rows = CHANGING.replace("rep from * to end.\nRow 2", "rep from * to end. (9 sts)\nRow 2")
    (finding,) = errors(rows.replace("Row 4: Purl.", "Row 4: Purl. (12 sts)"))
    assert (finding.rule, finding.span.line if finding.span else 0) == ("wrong-count", 9)
    assert "7, not 12" in finding.message


def test_a_count_promised_behind_a_cast_on() -> None:
    rows = "Cast on 17 sts.\n" + CHANGING.replace("rep from * to end.\nRow 2", "rep from * to end. (9 sts)\nRow 2")
    (finding,) = errors(rows)
    assert finding.rule == "wrong-count"
    assert "23, not 9" in finding.message
    (finding,) = errors("Cast on 18 sts.\n" + CHANGING)
    assert (finding.rule, "17" in finding.mend, "22" in finding.mend) == ("wrong-multiple", True, True)


def test_rows_that_disagree_are_named_with_what_each_needs() -> None:
    (finding,) = errors(
        "Row 1: *K2, k2tog; rep from * to end.\nRow 2: Purl.\n"
        "Row 3: *K4, p1; rep from * to last 2 sts, k2.\nRow 4: K1, k2tog."
    )
    assert (finding.rule, finding.span.line if finding.span else 0) == ("disagreeing-rows", 8)
    assert "Row 4 needs 3" in finding.message
    assert "Row 3 leaves" in finding.message


def test_a_row_that_fits_no_count_at_all() -> None:
    (finding,) = errors("Row 1: K to marker, k2.\nRow 2: Purl.")
    assert finding.rule == "disagreeing-rows"


def test_rows_that_leave_another_count() -> None:
    (finding,) = errors("Row 1: K1, m1, k to end.\nRow 2: Purl.")
    assert (finding.rule, "2 after" in finding.message) == ("wrong-multiple", True)


def test_a_row_that_is_not_understood_is_the_only_finding() -> None:
    rows = CHANGING.replace("ssk, k1, k2tog", "sskk, k1, k2tog")
    assert [finding.rule for finding in errors(rows)] == ["not-understood"]
    body = (
        text(rows)
        + "```work\nCast on 17 sts.\nWork Rows 1-4 of Leaf twice.\nWork in Leaf for 8 rows.\nBind off.\n```\n"
    )
    project = read_text(body, "a.md")
    found = proof(project.patterns[0], project).findings
    assert [finding.rule for finding in found if finding.level == "error"] == ["not-understood"]


def test_rows_that_take_their_words_from_others() -> None:
    found = pattern(
        "Row 1: *K2, p2; rep from * to end.\nRow 2: *P2, k2; rep from * to end.\n"
        "Rows 3 and 4: As Row 1.\nRep Rows 1 and 2 once more."
    )
    assert (found.multiple, found.plus, found.rows) == (4, 0, 6)


def test_repeat_for_pattern_says_nothing_new() -> None:
    for words in (
        "Rep Rows 1-2 for pattern.",
        "Repeat these 2 rows for pattern.",
        "Rep these two rows.",
        "Repeat Rows 1 and 2 for pattern",
    ):
        found = pattern(f"Row 1: *K2, p2; rep from * to end.\nRow 2: *P2, k2; rep from * to end.\n{words}")
        assert (found.multiple, found.rows) == (4, 2)


@pytest.mark.parametrize("name", ["Moss stitch", "Moss", "Garter stitch", "Rib"])
def test_a_block_of_the_name_is_meant_and_not_the_fabric_that_everybody_calls_so(name: str) -> None:
    """US moss stitch is not that of the UK: what the author wrote out is worked; here its row halves the count."""
    work_block = f"```work\nCast on 20 sts.\nWork in {name} for 1 row.\n```\n"
    block = f"```stitch {name}\nMultiple of 2 sts.\nRow 1: *K2tog; rep from * to end.\n```\n"
    worked = work(grade(read_text(f"---\ntitle: A\n---\n{block}{work_block}", "a.md").patterns[0]))
    assert worked.faults == ()
    assert worked.entries[-1].after == (10,)
