"""Every stitch that takes yarn is counted, by yarn, and none that takes none: against counts made by hand and naively.

What takes yarn follows from how stitches are made (common practice, no source): a knit, purl or yarn over is one loop,
several stitches worked together become one, a slipped stitch is moved and not made, and cast-on and bound-off stitches
are made like those of a row.
"""

from random import Random

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.run import work
from sizewright.work.worked import Worked

GAUGE = "gauge: {stitches: 20 st / 10 cm, rows: 30 row / 10 cm}\n"
TWO = "yarn:\n  main: {weight: light}\n  contrast: {weight: light, called: [Oat]}\n"


def worked(body: str, header: str = GAUGE) -> Worked:
    project = read_text(f"---\ntitle: Pair of mittens\n{header}---\n{body}", "a.md")
    assert project.findings == ()
    done = work(grade(project.patterns[0]))
    assert done.faults == ()
    return done


def counted(lines: str, header: str = GAUGE) -> dict[str, int]:
    """The stitches of one size, by the words of the rows."""
    stitches = worked(f"```work\n{lines}\n```\n", header).stitches
    return {yarn: counts[0] for yarn, counts in stitches.items() if counts[0]}


@pytest.mark.parametrize(
    ("lines", "count"),
    [
        ("Cast on 10 sts.", 10),
        ("Cast on 10 sts.\nRow 1: Knit.", 20),
        ("Cast on 10 sts.\nRow 1: K2tog, k8.", 10 + 9),  # two together become one
        ("Cast on 10 sts.\nRow 1: K2tog, yo, k8.", 10 + 10),
        ("Cast on 10 sts.\nRow 1: Kfb, k9.", 10 + 11),
        ("Cast on 10 sts.\nRow 1: Sl 1, k9.", 10 + 9),  # the slipped one is not made
        ("Cast on 10 sts.\nRow 1: Sl1 wyib, [k1, sl1] 4 times, k1.", 10 + 5),
        ("Cast on 10 sts.\nRow 1: Sl 1, k2tog, psso, k7.", 10 + 8),
        ("Cast on 10 sts.\nRow 1: Sl1, k1, psso, k8.", 10 + 9),
        ("Cast on 10 sts.\nRow 1: (K1, p1, k1) in next st, k9.", 10 + 12),
        ("Cast on 12 sts.\nRow 1: K4, C4F, k4.", 10 + 14),  # all four stitches of a cable are knitted
        ("Cast on 10 sts.\nRow 1: Bind off 3 sts, k to end.", 10 + 10),  # three bound off, seven knitted
        ("Cast on 10 sts.\nRow 1: Bind off 3 sts, k to end.\nRow 2: Knit.", 10 + 10 + 7),
        ("Cast on 10 sts.\nRow 1: K to end, cast on 4 sts.\nRow 2: Knit.", 10 + 14 + 14),
        ("Cast on 10 sts.\nRow 1: Pick up and knit 5 sts along the edge, k10.", 10 + 15),
        ("Cast on 10 sts.\nRow 1: K4, place next 2 sts on hold, k4.", 10 + 8),
        ("Cast on 10 sts.\nRow 1: Drop 1 st, k9.", 10 + 9),
        ("Cast on 10 sts.\nRow 1: K6, turn.\nRow 2: P6.", 10 + 6 + 6),  # short rows
        ("Cast on 10 sts.\nRow 1: Knit.\nBind off all sts.", 30),
        ("Cast on 8 sts.\nRow 1: Inc 2 sts evenly.", 8 + 10),  # a raised stitch each, counted with the knitted ones
        ("Cast on 8 sts.\nRow 1: Dec 2 sts evenly across.", 8 + 6),
        ("Cast on 8 sts. Join in the round.\nRnd 1: Knit.\nRep Rnd 1 99 more times.", 8 + 800),
        ("Cast on 8 sts.\nRow 1: Knit.\nRow 2: Purl.\nRep Rows 1 and 2 until piece measures 10 cm.", 8 + 8 * 30),
        ("Cast on 8 sts.\nWork in garter stitch for 20 rows.", 8 + 160),
        ("Cast on 8 sts.\nRow 1: As they appear.", 16),
        ("Cast on 8 sts. Join in the round.\nRnd 1: Knit.\nThread tail through the remaining 8 sts.", 16),
    ],
)
def test_what_takes_yarn(lines: str, count: int) -> None:
    assert counted(lines) == {"": count}


MADE = {"k": 1, "p": 1, "k2tog": 1, "ssk": 1, "yo": 1, "sl 1": 0, "kfb": 2, "k tbl": 1, "s2kp": 1, "m1": 1}
USED = {"k": 1, "p": 1, "k2tog": 2, "ssk": 2, "yo": 0, "sl 1": 1, "kfb": 1, "k tbl": 1, "s2kp": 3, "m1": 0}


@pytest.mark.parametrize("seed", range(12))
def test_rows_at_random_are_counted_like_one_by_one(seed: int) -> None:
    random, naive, on_needle, lines = Random(seed), 40, 40, ["Cast on 40 sts."]  # noqa: S311 -- no secret
    for number in range(1, 30):
        row, left, after = [], on_needle, 0
        while left:
            stitch = random.choice([word for word, uses in USED.items() if uses <= left])
            row.append("k1" if stitch == "k" else "p1" if stitch == "p" else stitch)
            left -= USED[stitch]
            naive += MADE[stitch]
            after += 1 if stitch == "sl 1" else MADE[stitch]
        lines.append(f"Row {number}: {', '.join(row)}. ({after} sts)")
        on_needle = after
    assert counted("\n".join(lines)) == {"": naive}


def test_ten_times_the_rows_take_ten_times_the_yarn() -> None:
    once, edge = (counted(f"Cast on 30 sts.\nWork in garter stitch for {rows} rows.")[""] for rows in (12, 0))
    ten = counted("Cast on 30 sts.\nWork in garter stitch for 120 rows.")[""]
    assert ten - edge == 10 * (once - edge)


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        ("With CC, cast on 10 sts.\nRow 1: Knit.", {"CC": 20}),
        ("Using MC, cast on 10 sts.\nRow 1: Knit.", {"MC": 20}),
        ("Cast on 10 sts with CC.\nRow 1: Knit.", {"CC": 20}),
        ("With the contrast colour, cast on 10 sts. Join to work in the round.\nRnd 1: Knit.", {"contrast": 20}),
        ("Cast on 10 sts in Oat, place marker and join to work in the round.\nRnd 1: Knit.", {"Oat": 20}),
        ("Cast on 10 sts.\nChange to CC.\nRow 1: Knit.", {"": 10, "CC": 10}),
        ("Cast on 10 sts.\nChange to smaller needles and CC.\nRow 1: Knit.", {"": 10, "CC": 10}),
        ("Cast on 10 sts.\nChange to larger needles.\nRow 1: Knit.", {"": 20}),
        ("Cast on 10 sts.\nCut MC, join CC and knit 2 rows.", {"": 10, "CC": 20}),
        ("Cast on 10 sts.\nWith CC, knit 2 rows.\nWith MC, purl 1 row.", {"": 10, "CC": 20, "MC": 10}),
        ("Cast on 10 sts.\nRow 1 (CC): Knit.\nRow 2: Purl.\nRow 3 (RS, MC): Knit.", {"": 10, "CC": 20, "MC": 10}),
        ("Cast on 10 sts.\nRow 1: With CC, knit.", {"": 10, "CC": 10}),
        ("Cast on 10 sts.\nRow 1: Knit with CC.\nRow 2: Purl.", {"": 20, "CC": 10}),
        ("Cast on 10 sts.\nRow 1: *K1 with A, k1 with B; rep from * to end.", {"": 10, "A": 5, "B": 5}),
        ("Cast on 10 sts.\nRow 1: Knit.\nBind off all sts with CC.", {"": 20, "CC": 10}),
        (
            "Cast on 10 sts.\nRow 1 (CC): Knit.\nRow 2 (MC): Knit.\nRep Rows 1 and 2 4 more times.",
            {"": 10, "CC": 50, "MC": 50},
        ),
        # the first of these rows is worked in the yarn that is in hand: once in the main one, then in the other
        ("Cast on 10 sts.\nRow 1: Knit.\nRow 2 (CC): Knit.\nRep Rows 1 and 2 4 more times.", {"": 20, "CC": 90}),
        # a remark that names no yarn changes none
        ("Cast on 10 sts.\nRow 1 (buttonhole): Knit.\nRow 2 (plain): Knit.", {"": 30}),
        ("With CC, cast on 10 sts.\nBind off all sts.\nCast on 4 sts.", {"CC": 20, "": 4}),
    ],
)
def test_the_yarn_in_hand(lines: str, expected: dict[str, int]) -> None:
    assert counted(lines, GAUGE + TWO) == expected


def test_the_second_of_a_pair_takes_as_much_as_the_first() -> None:
    mitten = """Cast on 10 sts.
Row 1: K4, place next 2 sts on hold, k4.
Bind off all sts.
Place the 2 held sts on needles.
Row 1: K2.
Bind off all sts."""
    one = counted(mitten)[""]
    assert counted(f"{mitten}\nMake the second mitten the same way.")[""] == 2 * one
    assert counted(f"{mitten}\nKnit 2 mittens alike.")[""] == 2 * one
    assert counted(f"{mitten}\nMake 2 more mittens the same.")[""] == 3 * one
    # what the pattern does not make by that name is the part that was begun last: the thumb, 4 stitches
    assert counted(f"{mitten}\nMake the other thumb to match.")[""] == one + 4


def test_a_part_made_again_begins_with_its_heading() -> None:
    body = """## Body
```work
Cast on 20 sts.
Row 1: Place 8 sts on hold, k4, place 8 sts on hold.
Bind off all sts.
```
## Sleeve
```work
Place the 8 held sts on needles.
Row 1: Knit.
Bind off all sts.
Work the second sleeve the same way.
```
"""
    assert worked(body).stitches[""] == (20 + 4 + 4 + 2 * 16,)


@pytest.mark.parametrize(("said", "times"), [("(make 2)", 2), ("(make four)", 4), ("(optional)", 1)])
def test_what_stands_below_a_heading_that_says_so_is_made_so_often(said: str, times: int) -> None:
    body = f"""## Body
```work
Cast on 20 sts.
Bind off all sts.
```
## Sleeves {said}
```work
Cast on 8 sts.
```
### Cap
```work
Bind off all sts.
```
## Neck
```work
Cast on 5 sts.
```
"""
    assert worked(body).stitches[""] == (40 + 16 * times + 5,)


@pytest.mark.parametrize(
    ("lines", "header", "whole"),
    [
        ("Cast on 8 sts.\nRow 1: Knit.", GAUGE, True),
        ("Cast on 8 sts.\nWork the panel.   # declared: 12 sts, 4 rows", GAUGE, False),
        ("Cast on 8 sts.\nWork the panel.   # declared: 12 sts", GAUGE, False),
        ("Cast on 8 sts.\nMove the first 2 sts to the end.   # declared: 8 sts, 0 rows", GAUGE, True),
        ("Cast on 8 sts.\nRow 1: Knit.\nRep Row 1 until piece measures 9 cm.", "", False),  # no row gauge
    ],
)
def test_what_cannot_be_counted_is_said(lines: str, header: str, whole: bool) -> None:  # noqa: FBT001
    done = worked(f"```work\n{lines}\n```\n", header)
    assert (done.uncounted == ((),)) is whole


def test_the_first_row_of_a_repeat_is_worked_in_the_yarn_in_hand_each_time() -> None:
    """Cast on and once in the main yarn; then the other one is in hand, and stays there for the other nine rows."""
    stripes = "```stitch Stripes\nMultiple of 2 sts.\nRow 1: Knit.\nRow 2 (CC): Purl.\n```\n"
    body = f"{stripes}```work\nCast on 10 sts.\nWork Rows 1 and 2 of Stripes 5 times.\n```\n"
    assert worked(body, GAUGE + TWO).stitches == {"": (20,), "CC": (90,)}
