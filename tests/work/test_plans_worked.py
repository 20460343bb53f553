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


def test_a_sock_from_leg_to_foot() -> None:
    """Source: craicnyarn.com 2016: 64 sts, 28 rows of flap, 18 left after the turn, 78 with the gusset, 64 again.

    The heel of a round whose other half waits on a holder is worked in rows, and its rows are no fault.
    """
    grade_block = "```grade\nheel = heel_turn(32 st)\ngusset = sock_gusset(heel.left, 32 st, 28 row, 64 st)\n```\n"
    lines = """Cast on 64 sts. Pm and join to work in the round.
Rnd 1: Knit.
Next Rnd: K32, place next 32 sts on hold for instep, turn.
Row 1 (WS): Sl 1, p to end.
Row 2 (RS): *Sl 1, k1; rep from * to end.
Rep Rows 1 and 2 12 more times.
Row 3 (WS): Sl 1, p to end.
{heel}
{gusset}
Bind off all sts."""
    project = read_text(f"---\ntitle: A\n---\n{grade_block}```work\n{lines}\n```\n", "a.md")
    assert project.findings == ()
    worked = work(grade(project.patterns[0]))
    assert (worked.faults, worked.forgotten) == ((), ())
    after = {entry.label: entry.after for entry in worked.entries}
    assert after["Rep Rows 1 and 2"] == (18,)
    assert after["Pick-up Row (RS)"] == (78,)
    assert worked.entries[-1].before == (64,)
