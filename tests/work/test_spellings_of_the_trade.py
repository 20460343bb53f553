"""Spellings of one thing, worked: each comes to what its plain one comes to. Common practice, no source."""

import pytest

from sizewright.grade.run import grade
from sizewright.proof.run import proof
from sizewright.read.folder import read_text
from sizewright.work.run import work

HEADER = "---\ntitle: A\ngauge: {stitches: 20 st / 10 cm, rows: 28 row / 10 cm}\nyarn: {MC: {}, CC: {}}\n---\n"


def text(lines: str) -> str:
    return f"{HEADER}```work\nCast on 20 sts.\n{lines}\n```\n"


def outcome(lines: str) -> tuple[list[str], int | None, int]:
    """What is found while reading and working, the stitches behind the last direction, and all rows worked."""
    project = read_text(text(lines), "a.md")
    worked = work(grade(project.patterns[0]))
    found = [finding.message for finding in project.findings] + [str(fault) for fault in worked.faults]
    return found, worked.entries[-1].after[0], sum(entry.rows[0] for entry in worked.entries)


@pytest.mark.parametrize(
    ("row", "after"),
    [
        # Stitches
        ("k3tbl, p2tbl, k to end", 20),
        ("sl1p, k1, sl1k, k to end", 20),
        ("sl 1 pw, k1, sl 1 kw, k to end", 20),
        ("slip the first stitch purlwise, k to end", 20),
        ("slip first st, k to end", 20),
        ("k the first st tbl, k to end", 20),
        ("knit first stitch, purl to last stitch, knit last stitch", 20),
        ("knit the first 3 sts, p to last 3 sts, k last 3 sts", 20),
        ("knit 2 sts together, purl two stitches together, k next 3 sts tog, k to end", 16),
        ("k2 sts tog, k2 together through back loops, k to end", 18),
        ("slip, slip, knit, k to end", 19),
        ("slip slip purl, k to end", 19),
        ("sl 2 tog kwise, k1, p2sso, k to end", 18),
        ("slip 2 sts together knitwise, k1, pass both slipped sts over, k to end", 18),
        ("sl 2 as if to k2tog, k1, pass the 2 slipped sts over, k to end", 18),
        ("k4tog, p4tog, k5tog, p5tog, k to end", 6),
        ("k2, 2yo, k1, y/o, k1, yfd, p1, yarn forward, k to end", 25),
        ("M1 left, k1, make 1 right, k to end, m1pl", 23),
        ("inc in first st, k to last st, inc in last st", 22),
        ("increase 1 st in next st, k to end", 21),
        ("knit into front and back of next st, k to end", 21),
        ("k1, p into the front and back of the next st, k to end", 21),
        ("k1, kfb of next 2 sts, k to end", 22),
        ("kfb in each st across", 40),
        ("k2, (k1, yo, k1) all in next st, [k1, p1] all into 1 st, k to end", 23),
        ("k2, work (k1, yo, k1) in next st, k to end", 22),
        ("k to end, using the backward loop method CO 4 sts", 24),
        ("k to end, using the backward-loop method, cast on 4 sts", 24),
        # Repeats
        ("*k2, p2. Rep from * to end", 20),
        ("*k2, p2*, repeat from * to * across row", 20),
        ("*k2, p2; repeat from * a total of 5 times", 20),
        ("*k2, p2; rep from * 5 times in all", 20),
        ("*k2, p2; rep between *s to end", 20),
        ("[k2, p2], repeat to end", 20),
        ("(k2, p2); rep to last 4 sts, k4", 20),
        ("(k2, p2) x5", 20),
        ("(k2, p2) 5 times total", 20),
        ("*k2, p3; rep from * to within 5 sts of end, k5", 20),
        ("*k2, p3; rep from * to 5 sts from end, k5", 20),
        ("k2, *p3, k2; rep from *; end p3", 20),
        ("k1, p1 to end", 20),
        ("k2, p2 across", 20),
        ("k2, p1 to last 2 sts, k2", 20),
        # Places
        ("k to within 3 sts of end, k2tog, k1", 19),
        ("knit across to last 3 sts, k2tog, k1", 19),
        ("k5, p remaining sts", 20),
        ("k5, k rem 15 sts", 20),
        ("k5, p rest of row", 20),
        ("bind off 3 sts at beg of row, k to end", 17),
        ("k8, bind off center 4 sts, k to end", 16),
        ("k8, join a second ball of yarn, bind off 4 sts, k to end", 16),
        ("k to end, turn, cast on 5 sts", 25),
        ("k15, W+T, p to end", 20),
        ("k15, wrap and turn (w&t), p to end", 20),
        ("k the knit sts and p the purl sts as they face you", 20),
        ("work all stitches as they present themselves", 20),
        ("work 5 sts in patterns as established, patt to end", 20),
        # So many on the right needle, which the stitch left by binding off is one of
        ("k until 10 sts are on right needle, p to end", 20),
        ("bind off 4 sts, k until there are 10 sts on RH needle, p to end", 16),
        ("bind off 4 sts, k until 10 sts remain on right needle after bind-off, p to end", 16),
        ("bind off 4 sts, k until you have 10 sts on the right-hand needle, p to end", 16),
        # "These" are those worked last
        ("bind off 4 sts, k until there are 10 sts on right needle, place these 10 sts on hold, k to end", 6),
        ("bind off 4 sts, k until there are 10 sts on right needle, place these sts on hold, bind off 6 sts", 0),
        ("k3, bind off 4 sts, k until 10 sts are on right needle, k3, slip these 10 sts to holder, k3", 6),
        ("k12, place the 12 sts just worked on hold, bind off 8 sts", 0),
        ("k2, place these 8 sts on hold, k10", 12),
        # Fabrics over a part
        ("k2, work in rib over next 10 sts, k to end", 20),
        ("k5, work in St st to last 5 sts, k5", 20),
        ("k5, work in garter stitch to last 5 sts, k5", 20),
        ("k2, work k2, p2 rib to last 2 sts, k2tog", 19),
        ("rib 10, k to end", 20),
        ("rib to last 2 sts, k2tog", 19),
        ("work in rib", 20),
        # Counts
        ("k2tog, k to end. (19 sts.)", 19),
        ("k2tog, k to end. <19 sts>", 19),
        ("k2tog, k to end. You now have 19 sts", 19),
        ("k2tog, k to end. There are now 19 sts on needle", 19),
        ("k2tog, k to end. Total: 19 sts", 19),
        ("k2tog, k to end. Stitch count: 19", 19),
        ("k2tog, k to end. (dec 1 st)", 19),
        ("k2tog, k to end (-1 st)", 19),
        ("m1, k to end. (+1 st)", 21),
        ("k2tog, k to end. (1 st dec'd, 19 sts)", 19),
        ("k2tog, k to end. (1 st decreased; 19 sts remain)", 19),
    ],
)
def test_spellings_of_rows(row: str, after: int) -> None:
    found, left, _ = outcome(f"Row 1: {row}.")
    assert (found, left) == ([], after)


@pytest.mark.parametrize(
    ("lines", "after", "rows"),
    [
        # Labels
        ("Row 1. K to end.\nRow 2 (WS). Purl.", 20, 2),
        ("Row 1 - K to end.\nRow 2 (WS) – Purl.", 20, 2),
        ("Row 1) K to end.\nR2: P to end.\nR 3 (RS): K.", 20, 3),
        ("RS: Knit.\nWS: Purl.", 20, 2),
        ("Row 1: Knit; Row 2: Purl.", 20, 2),
        # Rows like others, each like its own
        ("Row 1: K2tog, k to end.\nRow 2: P.\nRows 3 and 4: As Rows 1 and 2.", 18, 4),
        ("Row 1: K2tog, k to end.\nRow 2: P.\nRows 3-6: Rep Rows 1-2 twice. (17 sts)", 17, 6),
        ("Row 1: K2tog, k to end.\nRow 2: P.\nRows 3-6: Repeat Rows 1 and 2.", 17, 6),
        # Rows again
        ("Row 1: K2tog, k to end.\nRow 2: P.\nRepeat Rows 1 & 2 a total of 4 times.", 16, 8),
        ("Row 1: K2tog, k to end.\nRow 2: P.\nRep last 2 rows, 4 times in total.", 16, 8),
        ("Row 1: K2tog, k to end.\nRow 2: P.\nRep previous 2 rows 3 more times.", 16, 8),
        ("Row 1: P.\nRow 2: K.\nRep Rows 1 and 2 once more, then Row 1 once more.", 20, 5),
        ("Row 1: K.\nRow 2: P.\nThese 2 rows form St st.\nRows 1 and 2 set the pattern. Rep last 2 rows twice.", 20, 6),
        # Rows of one stitch
        ("Knit 1 row, purl 1 row.", 20, 2),
        ("P 1 row, k 2 rows and p 1 row.", 20, 4),
        ("Purl next row.", 20, 1),
        ("Knit 1 row, decreasing 4 sts evenly across. (16 sts)", 16, 1),
        # Shaping
        ("BO 3 sts at beg of next 2 rows, then 2 sts at beg of next 2 rows.", 10, 4),
        ("Bind off 3 sts at the beginning of each of the next 2 rows.", 14, 2),
        ("At beg of next 2 rows, bind off 3 sts.", 14, 2),
        ("Row 1: Inc 1 st at beg and end of row.", 22, 1),
        ("Keeping pattern correct, dec 1 st at each end of next row.", 18, 1),
        ("Cont in patterns as est for 6 rows.", 20, 6),
        ("Cast on 5 sts at beg of next 2 rows.", 30, 2),
        ("Next 4 rows: Knit.", 20, 4),
        ("Row 1: K2tog, k to end.\nRow 2: P.\nRep Rows 1 and 2 twice, then Row 1.", 16, 7),
        ("Row 1: Repeat (k1, p1) to end.\nRow 2: K all but last 2 sts, k2tog.", 19, 2),
        ("Inc 1 st at each end of every 4th row, 3 times.", 26, 12),
        ("BO 3 sts at beg of next 2 rows, then 2 sts at beg of foll 2 rows.", 10, 4),
        ("Purl 1 row, increasing 5 sts evenly spaced. 25 sts.", 25, 1),
        ("Row 1: Knit, dec 4 sts evenly across row.\nRow 2: Purl, inc 4 sts evenly.", 20, 2),
        ("Dec 1 st at each end of next and foll 4th row.", 16, 5),
        # Bound off
        ("Bind off remaining 20 sts in rib.", 0, 0),
        ("Cast off rem 20 sts loosely.", 0, 0),
        ("Bind off all 20 sts.", 0, 0),
        ("BO all sts kwise.", 0, 0),
        ("Bind off all sts knitwise on WS.", 0, 0),
        ("Bind off all sts in k2, p2 rib.", 0, 0),
        # Sides of the first and of the last row; where nothing was worked, the words tell which comes first
        ("Beg with a k row, work 6 rows in St st.", 20, 6),
        ("Row 1 (RS): K.\nBeginning with a purl row, work in stocking stitch for 5 rows.", 20, 6),
        ("Row 1 (RS): K.\nStarting with a WS row, work 5 rows in garter st.", 20, 6),
        ("Starting with a WS row, work 5 rows in garter st.\nRow 6 (RS): K.", 20, 6),
        ("Work 5 rows even, ending with a WS row.\nRow 6 (RS): K.", 20, 6),
        ("Work 6 rows in garter stitch ending with a WS row.", 20, 6),
        ("Row 1 (RS): K.\nKnit 1 WS row.", 20, 2),
        ("Row 1 (RS): K.\nWork in St st for 3 rows, ending with RS facing for next row.", 20, 4),
        ("Purl 1 row. Knit 1 row. Rep last 2 rows 3 times.", 20, 8),
        ("Keeping pattern correct, work 6 rows.", 20, 6),
        # Ribs and lengths in inches; the row gauge is 28 rows in 10 cm
        ('Work in 1x1 rib (k1, p1) for 2"/5 cm.', 20, 14),
        ('Work 1x1 rib for 2".', 20, 14),
        ("Work in rib for 2″.", 20, 14),
        ('Work in k1, p1 rib for 2".', 20, 14),
        ('Change to smaller needles and work 1x1 rib for 2"/5 cm.', 20, 14),
        ('Work even until piece measures 2" / 5 cm from cast-on edge.', 20, 14),
        ("Change to larger needles and purl 4 rows.", 20, 4),
        # Held stitches, and how the piece is held
        ("Row 1: K15, place next 5 sts on hold for thumb.\nBO all sts.\nTransfer 5 held thumb sts to dpns.", 5, 1),
        (
            "Row 1: K15, place next 5 sts on hold.\nBO all sts.\nPlace the 5 held sts onto larger dpns. Rejoin yarn.",
            5,
            1,
        ),
        ("PM for BOR, join.\nRnd 1: Knit.", 20, 1),
        ("Bind off all sts.\nWith RS facing and smaller needles, pick up and knit 9 sts along edge.", 9, 1),
        ("Bind off all sts.\nUsing smaller needles, pick up and knit 9 sts along edge.", 9, 1),
        ("Bind off all sts.\nWith RS facing, using larger dpns, pick up and knit 9 sts along edge.", 9, 1),
        ("Bind off all sts.\nWith RS facing and starting at center of underarm, pick up and knit 9 sts.", 9, 1),
        ("Bind off all sts.\nWith RS facing, pick up & knit 9 sts along edge, pick up and k2 at the corner.", 11, 1),
        ("Bind off all sts.\nRow 1: Pick up and k 9, pick up & k3 sts, pick up & purl 2 sts.", 14, 1),
        ("Row 1: K15, place next 5 sts on hold for sleeve. 15 body sts.", 15, 1),
        ("Row 1: K15, place next 5 sts on hold for sleeve. 15 body sts remain.", 15, 1),
        # Short rows and markers
        ("Row 1: K15, turn.\nRow 2: DS, p9, turn.\nRow 3: DS, k to DS, k DS, k to end.", 20, 3),
        ("Row 1: K15, turn.\nRow 2: DS, p to end.\nRow 3: K to end, working each DS as 1 st.", 20, 3),
        ("Row 1: K5, pm, k to end.\nRow 2: P to within 2 sts of marker, p2tog, slm, p to end.", 19, 2),
        ("Row 1: K5, place marker A (mA), k to end.\nRow 2: P to 2 sts from mA, p2tog, sl mA, p5.", 19, 2),
        ("Row 1: K5, pm, k to end.\nRow 2: Purl, slipping marker.\nRow 3: K to 1st marker, sm, k to end.", 20, 3),
        ("Row 1: K5, pm, k5, pm, k10.\nRow 2: P to last marker, sm, p5.", 20, 2),
    ],
)
def test_spellings_of_directions(lines: str, after: int, rows: int) -> None:
    assert outcome(lines) == ([], after, rows)


@pytest.mark.parametrize(
    ("lines", "rule", "words"),
    [
        # Nothing is guessed, and what is said is held against what is there
        ("Row 1: K3, k1, p1 to end.", "not-understood", "[k1, p1] to end"),
        ("Work in 1x1 rib (k2, p2) for 5 cm.", "not-understood", ""),
        ("Row 1: K15, place next 5 sts on hold for sleeve. 16 body sts.", "wrong-count", "16"),
        ("Change to smaller needles, purl 2 rows.", "not-understood", "sentence of its own"),
        ("Row 1: K.\nRow 2: P.\nRows 3-5: As Rows 1 and 2.", "not-understood", "3 stand for 2"),
        ("Row 1: K.\nRow 2: P.\nRows 3-8: Rep Rows 1 and 2 twice.", "not-understood", "6 stand for 4"),
        (
            "Row 1: K5, pm, k to end.\nRow 2: Purl to end, removing markers.\nRow 3: K to m, sm, k to end.",
            "missing-marker",
            "",
        ),
        ("Row 1: K.\nRow 2: Purl to end, removing markers.", "missing-marker", ""),
        ("Row 1: K5, k rem 14 sts.", "stitches-left-over", "1"),
        ("Row 1: K5, p to last 3 sts, k last 4 sts.", "row-too-long", ""),
        ("Row 1 (RS): K.\nBeg with a k row, work 6 rows in St st.", "swapped-side", "RS"),
        ("Row 1 (RS): K.\nStarting with a RS row, work 5 rows in garter st.", "swapped-side", "RS"),
        ("Row 1 (RS): K.\nWork 5 rows even, ending with a RS row.", "swapped-side", "RS"),
        ("Row 1 (RS): K.\nWork in St st for 4 rows, ending with RS facing for next row.", "swapped-side", "WS"),
        ("Row 1 (RS): K.\nKnit 1 RS row.", "swapped-side", "RS"),
        ("Bind off remaining 18 sts in rib.", "wrong-count", "18"),
        ("Row 1: K2tog, k to end. (1 st decreased; 18 sts remain)", "wrong-count", "18"),
        ("Row 1: K2tog, k to end. (2 sts decreased; 19 sts remain)", "wrong-count", "2"),
        ("Row 1: K2tog, k to end. (-2 sts)", "wrong-count", "2"),
        ("Row 1: K12, bind off 2 sts, k until 10 sts are on right needle, k to end.", "wrong-count", "10"),
        ("Row 1: K2, work in k2, p2 rib over next 10 sts, k to end.", "broken-repeat", "10"),
        ("Next 4 rows: K2tog, k to end.", "not-understood", "Rep last row"),
        ("Work 2 rows of garter, then Row 1.", "unknown-row", "row 1"),
        ("Row 1: [K2, p2 5 times.", "not-understood", "not closed"),
        ("Row 1: P to 2nd marker, k to end.", "not-understood", "Say how far"),
        ("Row 1: Bind off a few sts, k to end.", "not-understood", "Bind off all sts"),
    ],
)
def test_what_is_wrong_in_them(lines: str, rule: str, words: str) -> None:
    project = read_text(text(lines), "a.md")
    findings = proof(project.patterns[0], project).findings
    found = [one for one in findings if one.level == "error" or one.rule == "swapped-side"]
    assert [one.rule for one in found] == [rule]
    assert words in f"{found[0].message} {found[0].mend}"


@pytest.mark.parametrize(
    ("row", "after"),
    [
        ("K8 [9, 10], k2tog, k to end", (19, 19, 19)),
        ("K8[9:10], k2tog, k to end", (19, 19, 19)),
        ("K2tog 1 [-, 2] times, k to end", (19, 20, 18)),
        ("[K2tog] 1 [0, 2] times, k to end. [19 (20, 18) sts]", (19, 20, 18)),
        ("K2tog, k rem 18 (18, 18) sts", (19, 19, 19)),
        ("K until 8 [9, 10] sts are on right needle, p to end", (20, 20, 20)),
        ("Inc 1 (0, 2) sts evenly. (+1 (0, 2) sts; 21 (20, 22) sts)", (21, 20, 22)),
    ],
)
def test_spellings_of_lists(row: str, after: tuple[int, ...]) -> None:
    project = read_text(text(f"Row 1: {row}.").replace("title: A\n", "title: A\nsizes: [S, M, L]\n"), "a.md")
    worked = work(grade(project.patterns[0]))
    assert ([finding.message for finding in project.findings], worked.faults) == ([], ())
    assert worked.entries[-1].after == after


def test_list_in_two_kinds_of_brackets_is_none() -> None:
    project = read_text(
        text("Row 1: K8 [9, 10), k to end.").replace("title: A\n", "title: A\nsizes: [S, M, L]\n"), "a.md"
    )
    assert [finding.rule for finding in project.findings] == ["not-understood"]
