"""The ledger names the piece of each row, and tells the rows and the length of each part by the row gauge."""

from fractions import Fraction

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.run import work

TEXT = """---
title: Mitten
sizes: [S, L]
gauge: {stitches: 20 st / 10 cm, rows: 30 rnd / 10 cm}
---
## Hand

```work
Cast on 20 sts. Join in the round.
Rnd 1: Knit.
Rep Rnd 1 8 (11) more times.
Next Rnd: K5, place next 4 sts on hold for thumb, cast on 4 sts, k to end.
Rep Rnd 1 until piece measures 5 (6) cm.
Bind off all sts.
```

## Thumb

```work
Place 4 held thumb sts on needles. Join in the round.
Rnd 1: Knit. (4 sts)
Rep Rnd 1 4 more times.
Bind off all sts.
```
"""


def test_parts_with_their_rows_and_lengths() -> None:
    """3 rounds to the cm, so 5 (6) cm are 15 (18) rounds, and 5 rounds of the thumb are 5/3 cm."""
    project = read_text(TEXT, "a.md")
    assert project.findings == ()
    worked = work(grade(project.patterns[0]))
    assert worked.faults == ()
    assert [(part.piece, part.rows, part.lengths) for part in worked.parts] == [
        ("Hand", (15, 18), (Fraction(5), Fraction(6))),
        ("Thumb", (5, 5), (Fraction(5, 3), Fraction(5, 3))),
    ]
    assert [entry.piece for entry in worked.entries] == ["Hand"] * 6 + ["Thumb"] * 4


def test_a_part_whose_rows_are_not_known() -> None:
    project = read_text(TEXT.replace("k to end.", "k40."), "a.md")
    (hand, _) = work(grade(project.patterns[0])).parts
    assert (hand.rows, hand.lengths) == ((None, None), (None, None))
    (part, *_) = work(grade(read_text(TEXT.replace(", rows: 30 rnd / 10 cm", ""), "a.md").patterns[0])).parts
    assert part.lengths == (None, None)


def test_a_length_typed_in_inches_for_each_size() -> None:
    """5 (6) in are 12.7 (15.24) cm, 38.1 and 45.72 rounds, to the nearest whole 38 and 46."""
    project = read_text(TEXT.replace("5 (6) cm", "5 (6) in"), "a.md")
    (hand, _) = work(grade(project.patterns[0])).parts
    assert hand.rows == (38, 46)
