"""What differs between two versions of a pattern, in the words of an errata page. Sources of our own, invented."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizewright.grade.run import grade
from sizewright.proof.errata import Change, Erratum, errata
from sizewright.proof.errata_words import in_words
from sizewright.read.folder import read_text
from sizewright.work.run import work
from sizewright.work.worked import Worked

SIZES = ("S", "M", "L")
CAP = """---
title: Cap
sizes:
  S: {head: 50 cm}
  M: {head: 55 cm}
  L: {head: 60 cm}
gauge: {stitches: 20 st / 10 cm, rows: 28 rnd / 10 cm, needle: 4 mm}
needles: [4 mm circular needle]
yarn: {weight: light, length: 100 m, mass: 50 g}
finished: [{label: Around, value: around, body: head}]
---

```grade
cast_on = 80 (90, 100) st
around  = cast_on / stitch_gauge
```

## Brim

Bring 3 (4, 4) clips. The brim is {around} around.

```work
Cast on {cast_on} sts. Join to work in the round.
Rnd 1: *K1, p1; rep from * to end.
Knit 4 rounds.
```

## Crown

```work
Dec Rnd: *K8, k2tog; rep from * to end. (72 (81, 90) sts)
Rnd 3: Knit.
Rnd 4: K8 (9, 10), k2tog, k to end. (71 (80, 89) sts)
Rnd 5: Knit.
Bind off all sts loosely.
```
"""


def carried_out(text: str) -> Worked:
    return work(grade(read_text(text).patterns[0]))


def told(old: str, new: str) -> list[str]:
    return [in_words(one) for one in errata(carried_out(old), carried_out(new))]


def changed(*pairs: tuple[str, str]) -> list[str]:
    """The errata of the cap after some changes of its text."""
    text = CAP
    for before, after in pairs:
        assert text.count(before) == 1, before
        text = text.replace(before, after)
    return told(CAP, text)


def test_a_pattern_against_itself_has_none() -> None:
    assert told(CAP, CAP) == []


@pytest.mark.parametrize(
    ("before", "after", "expected"),
    [
        ("K8 (9, 10),", "K8 (10, 10),", ["Size M: Rnd 4 reads k9, should read k10."]),
        (
            "K8 (9, 10),",
            "K7 (9, 9),",
            ["Size S: Rnd 4 reads k8, should read k7.", "Size L: Rnd 4 reads k10, should read k9."],
        ),
        ("*K8, k2tog", "*K9, k2tog", ["All sizes: Dec Rnd reads k8, should read k9."]),
        ("*K8, k2tog", "*K8, ssk", ["All sizes: Dec Rnd reads k2tog, should read ssk."]),
        ("(71 (80, 89) sts)", "(71 (79, 89) sts)", ["Size M: Rnd 4 reads (80 sts), should read (79 sts)."]),
        ("Knit 4 rounds.", "Knit 5 rounds.", ["All sizes: under “Brim”, “Knit 4 rnds.” should read “Knit 5 rnds.”"]),
        ("clips. The", "hooks. The", []),
        (
            "Bring 3 (4, 4) clips",
            "Bring 3 (4, 5) clips",
            ["All sizes: under “Brim”, “…3 (4, 4) clips” should read “…3 (4, 5) clips”."],
        ),
        ("needles: [4 mm", "needles: [5 mm", ["All sizes: needle is 5 mm circular needle, not 4 mm circular needle."]),
        ("needles: [4 mm circular", "needles: [US 6 (4 mm) long circular", []),
        ("100 m, mass", "110 m, mass", ["All sizes: length of a ball of yarn main is 110 m, not 100 m."]),
        (
            "M: {head: 55 cm}",
            "M: {head: 56 cm}",
            ["Size M: body measurement “head” is 56 cm / 22 in, not 55 cm / 21¾ in."],
        ),
        ("Dec Rnd: *K8", "Decrease Rnd: *K8", []),
        ("Bind off all sts loosely.", "Bind off all sts loosely in pattern.", []),
        ("Join to work in the round.", "Join to work in the round, being careful not to twist.", []),
        (" (72 (81, 90) sts)", "", []),
        ("Rnd 3: Knit.\n", "", ["All sizes: under “Crown”, leave out “Rnd 3: Knit.”"]),
        (
            "Rnd 5: Knit.\n",
            "Rnd 5: Knit.\nRnd 6: Purl.\n",
            ["All sizes: under “Crown”, after Rnd 5, add “Rnd 6: Purl.”"],
        ),
    ],
)
def test_what_differs_is_told(before: str, after: str, expected: list[str]) -> None:
    assert changed((before, after)) == expected


def test_a_cast_on_says_what_it_was_not() -> None:
    found = changed(("80 (90, 100) st", "80 (90, 110) st"))
    assert "Size L: under “Brim”, cast on 110 sts, not 100 sts." in found
    assert all(line.startswith("Size L: ") for line in found)


def test_one_row_more_does_not_make_all_behind_it_differ() -> None:
    renumbered = (
        ("Rnd 5: Knit", "Rnd 6: Knit"),
        ("Rnd 4: K8", "Rnd 5: K8"),
        ("Rnd 3: Knit.", "Rnd 3: Purl.\nRnd 4: Knit."),
    )
    assert changed(*renumbered) == ["All sizes: under “Crown”, after Dec Rnd, add “Rnd 3: Purl.”"]


def test_a_passage_at_another_place_is_no_erratum() -> None:
    brim, _, crown = CAP.partition("## Crown")
    middle = "## Middle\n\n```work\nPurl 6 rounds.\nKnit 2 rounds.\n```\n\n"
    assert told(f"{brim}## Crown{crown}{middle}", f"{brim}{middle}## Crown{crown}") == []


def test_what_comes_in_another_order_is_told_once() -> None:
    found = changed(("Rnd 3: Knit.\n", ""), ("Rnd 5: Knit.", "Rnd 3: Knit.\nRnd 5: Knit."))
    assert found[1] == "Size M: under “Crown”, “Rnd 4: K9, k2tog, k to end. (80 sts)” comes after Dec Rnd."
    assert len(found) == 3


def test_only_the_sizes_both_have_are_compared() -> None:
    smaller = CAP.replace("  M: {head: 55 cm}\n", "").replace("80 (90, 100)", "80 (100)").replace("3 (4, 4)", "3 (4)")
    smaller = (
        smaller.replace("K8 (9, 10)", "K8 (10)").replace("72 (81, 90)", "72 (90)").replace("71 (80, 89)", "71 (89)")
    )
    assert told(CAP, smaller)[0] == "Size M is no longer given."
    assert told(smaller, CAP)[0] == "Size M is new."
    rows = [line for line in told(CAP, smaller) if "Rnd" in line or "cast on" in line]
    assert rows == []


def test_a_side_that_was_turned_round_is_told_and_one_only_named_is_not() -> None:
    flat = "---\ntitle: F\n---\n```work\nCast on 20 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\n```\n"
    assert told(flat, flat.replace("Row 2:", "Row 2 (WS):")) == []
    (line,) = told(flat, flat.replace("1 (RS)", "1 (WS)"))
    assert line == "Row 1 (WS) reads (RS), should read (WS)."


@given(st.integers(0, 2), st.integers(1, 40))
def test_a_planted_number_is_told_for_its_size_alone(size: int, number: int) -> None:
    rows = ["8", "9", "10"]
    old, rows[size] = rows[size], str(number)
    found = errata(carried_out(CAP), carried_out(CAP.replace("K8 (9, 10)", f"K{rows[0]} ({rows[1]}, {rows[2]})")))
    if old == str(number):
        assert found == ()
        return
    (one,) = found
    assert isinstance(one, Erratum)
    assert (one.change, one.name, one.sizes) == (Change.CORRECTED, "Rnd 4", (SIZES[size],))
    assert in_words(one) == f"Size {SIZES[size]}: Rnd 4 reads k{old}, should read k{number}."


_ROWS = ("Knit.", "Purl.", "*K1, p1; rep from * to end.", "K2tog, k to end.", "K1, yo, k to end.", "K3, p3, k to end.")


@given(st.lists(st.sampled_from(_ROWS), min_size=1, max_size=8), st.data())
def test_rows_against_themselves_have_none_and_one_left_out_is_one(rows: list[str], data: st.DataObject) -> None:
    def pattern(rows: list[str]) -> str:
        lines = "".join(f"Rnd {number}: {row}\n" for number, row in enumerate(rows, start=1))
        return f"---\ntitle: Rows\n---\n```work\nCast on 40 sts. Join to work in the round.\n{lines}```\n"

    assert told(pattern(rows), pattern(rows)) == []
    left_out = data.draw(st.integers(0, len(rows) - 1))
    found = told(pattern(rows), pattern(rows[:left_out] + rows[left_out + 1 :]))
    assert len(found) == 1, found
    assert "eave out" in found[0]
