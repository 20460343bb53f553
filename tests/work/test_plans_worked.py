"""A plan's sentences are carried out like any others, and each has a line of its own in the ledger."""

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.run import work

HEADER = "---\ntitle: A\nsizes: [S, M]\n---\n"


def test_sentences_alike_are_told_apart() -> None:
    """By hand: 80 sts, a neck of 32 with 16 in the middle: 24 sts of shoulder on either side; 80 (84) in two sizes."""
    grade_block = "```grade\nneck = neckline(80 (84) st, 32 st, 24 row)\n```\n"
    project = read_text(f"{HEADER}{grade_block}```work\nCast on 80 (84) sts.\n{{neck}}\n```\n", "a.md")
    assert project.findings == ()
    worked = work(grade(project.patterns[0]))
    assert worked.faults == ()
    rows = [(entry.before, entry.after) for entry in worked.entries if entry.label == "Dec Row (RS)"]
    assert rows == [((28, 30), (27, 29)), ((28, 30), (27, 29))]
    assert [entry.after for entry in worked.entries if entry.label == "Bind off"] == [(0, 0), (0, 0)]
    assert [entry.before for entry in worked.entries if entry.label == "Work even"] == [(24, 26), (24, 26)]
    assert sum(entry.rows[0] for entry in worked.entries) == 48
