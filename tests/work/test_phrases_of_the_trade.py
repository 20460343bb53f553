"""Sentences as patterns word them, worked: rows called from stitch blocks, drops, loops, stars in stars."""

import pytest

from sizewright.base.finding import Finding
from sizewright.grade.run import grade
from sizewright.proof.run import proof
from sizewright.read.folder import read_text
from sizewright.work.run import work
from sizewright.work.worked import Worked

MOSS = "```stitch Moss\nRnd 1: *K1, p1; rep from * to end.\nRnd 2: *P1, k1; rep from * to end.\n```\n"


def text(lines: str) -> str:
    return f"---\ntitle: A\n---\n```work\nCast on 20 sts. Join in the round.\n{lines}\n```\n{MOSS}"


def knitted(lines: str) -> Worked:
    project = read_text(text(lines), "a.md")
    assert [finding.message for finding in project.findings] == []
    return work(grade(project.patterns[0]))


def errors(lines: str) -> list[Finding]:
    project = read_text(text(lines), "a.md")
    return [finding for finding in proof(project.patterns[0], project).findings if finding.level == "error"]


@pytest.mark.parametrize(
    ("words", "after", "rows"),
    [
        ("Work the 2 rounds of Moss once more.", 20, 2),
        ("Work Moss Rnds 1-2 twice.", 20, 4),
        ("Work Moss Rnd 2.", 20, 1),
        ("Work in pattern as established for 6 rnds.", 20, 6),
        ("Work in rib as set for 6 rnds.", 20, 6),
        ("Work in rev St st for 4 rnds.", 20, 4),
        ("Rnd 1: K2, work in rib as set to last 2 sts, k2.", 20, 1),
        ("Rnd 1: Work as set to end.", 20, 1),
        ("Rnd 1: Bind off 4 sts loosely in rib, k to end.", 16, 1),
        ("Rnd 1: K to last 4 sts, bind off 4 sts in patt.", 16, 1),
        ("Work one more purl round.", 20, 1),
        ("Work one purl round.", 20, 1),
        ("Knit one more round.", 20, 1),
        ("Work in Moss.", 20, 0),
        ("Rnd 1: *K2, p2; rep from * once more, k to end.", 20, 1),
        ("Rnd 1: *K1, **k1, p1; rep from ** once more; rep from * to end.", 20, 1),
        ("Rnd 1: *K1, **k1, p1**, rep from ** to ** once more, rep from * to end.", 20, 1),
        ("Rnd 1: *K2, p3; rep from * to end, ending last rep p3.", 20, 1),
        ("Rnd 1: Drop next st and let it unravel to the cast-on edge, k19.", 19, 1),
        ("Rnd 1: K4, drop 2 sts off needle, k to end.", 18, 1),
        ("Rnd 1: *K1 wrapping yarn twice around needle; rep from * to end.", 20, 1),
        ("Rnd 1: Knit, wrapping yarn 3 times for each st.", 20, 1),
        ("Rnd 1: *Sl 4, dropping extra loops, k1; rep from * to end.", 20, 1),
        ("Rnd 1: *K3, k2 elongated; rep from * to end.", 20, 1),
        ("Knit 2 rnds; purl 1 rnd.", 20, 1),
    ],
)
def test_what_they_come_to(words: str, after: int, rows: int) -> None:
    worked = knitted(words)
    assert worked.faults == ()
    assert (worked.entries[-1].after[0], worked.entries[-1].rows[0]) == (after, rows)


def test_double_yarn_overs() -> None:
    for double in ("yo twice", "double yo"):
        first = f"Rnd 1: *{double}, k2tog, ssk; rep from * to end. (20 sts)"
        worked = knitted(f"{first}\nRnd 2: *(K1, p1) into double yo, k2; rep from * to end. (20 sts)")
        assert worked.faults == ()
        assert worked.entries[-1].after == (20,)


def test_a_yarn_over_dropped() -> None:
    worked = knitted("Rnd 1: *K1, yo; rep from * to end. (40 sts)\nRnd 2: *K1, drop yo; rep from * to end. (20 sts)")
    assert worked.faults == ()


@pytest.mark.parametrize(
    ("words", "rule"),
    [
        ("Work the 4 rounds of Moss once more.", "wrong-count"),
        ("Work Moss Rnd 3.", "unknown-row"),
        ("Work in Mos.", "unknown-fabric"),
        ("Rnd 1: K4, drop yo, k to end.", "missing-yarn-over"),
        ("Rnd 1: K4, (k1, p1) into double yo, k to end.", "missing-yarn-over"),
        ("Rnd 1: K4, drop the beat, k to end.", "not-understood"),
        ("Rnd 1: K{x sts, p to end.", "unclosed"),
        ("Rnd 1: K{20 +} sts.", "unreadable-formula"),
    ],
)
def test_what_cannot_be_worked_is_told_once(words: str, rule: str) -> None:
    assert [finding.rule for finding in errors(words)] == [rule]


def test_a_second_clause_behind_a_cast_on() -> None:
    body = "Cast on 85 stitches; knit in basket-stitch.\nBind off."
    project = read_text(f"---\ntitle: A\n---\n```work\n{body}\n```\n```stitch Basket\nRow 1: Knit.\n```\n", "a.md")
    worked = work(grade(project.patterns[0]))
    assert (worked.faults, [entry.after[0] for entry in worked.entries]) == ((), [85, 85, 0])
