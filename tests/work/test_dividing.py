"""Dividing and joining: held stitches keep their names and looks, come back whole, and are not forgotten."""

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.blocks import stitch_blocks
from sizewright.work.maker import Maker
from sizewright.work.needle import Needle
from sizewright.work.run import work
from sizewright.work.worked import Worked


def knitted(body: str) -> Worked:
    text = body if "```" in body else f"```work\n{body}\n```\n"
    project = read_text(f"---\ntitle: A\n---\n{text}", "a.md")
    assert [finding.message for finding in project.findings] == []
    return work(grade(project.patterns[0]))


def needle(lines: str) -> Needle:
    project = read_text(f"---\ntitle: A\n---\n```work\n{lines}\n```\n", "a.md")
    assert [finding.message for finding in project.findings] == []
    graded = grade(project.patterns[0])
    maker = Maker(graded, 0, stitch_blocks(graded))
    assert maker.make().faults == []
    assert maker.needle is not None
    return maker.needle


YOKE = """## Yoke

```work
Cast on 180 sts. Join in the round, pm.
Rnd 1: Knit.
Divide for body and sleeves: K20, place next 40 sts on hold for sleeve, cast on 8 sts, k60,
  place next 40 sts on hold for second sleeve, cast on 8, k to end. (116 sts)
Work 10 rnds in stockinette.
Bind off all sts.
```

## Sleeves

```work
Place 40 held sleeve sts on needles. Rejoin yarn.
Rnd 1: K40, pick up and knit 8 sts at underarm. Join in the round, pm.
Rnd 2: Knit. (48 sts)
Bind off all sts.
Return second sleeve sts to needle.
Rnd 1: Pick up and knit 8 sts along the underarm, k to end. (48 sts)
Bind off all sts.
```
"""


def test_a_yoke_divided() -> None:
    worked = knitted(YOKE)
    assert (worked.faults, worked.forgotten) == ((), ())
    assert {entry.piece for entry in worked.entries} == {"Yoke", "Sleeves"}


def test_a_sleeve_forgotten() -> None:
    worked = knitted(YOKE.replace("Return second sleeve sts to needle.", "Cast on 40 sts."))
    assert [(one.count, one.words) for one in worked.forgotten] == [(40, "second sleeve")]


def test_stitches_left_on_the_needle() -> None:
    assert [(one.count, one.words) for one in knitted("Cast on 8 sts.\nRow 1: Knit.").forgotten] == [(8, "")]
    assert knitted("Cast on 8 sts.\nRow 1: Knit.\nBind off.").forgotten == ()


BODY_AND_SLEEVES = """## Sleeve

```work
Cast on 40 sts. Join in the round.
Rnd 1: Knit.
Next Rnd: Bind off 4 sts, k to last 4 sts, bind off 4 sts. (32 sts)
Place all sts on hold for first sleeve.
Cast on 40 sts. Join in the round.
Rnd 1: Knit.
Next Rnd: Place first 8 sts on holder for underarm, k to end. (32 sts)
Slip remaining 32 sts onto waste yarn for second sleeve.
```

## Body

```work
Cast on 120 sts. Join in the round, pm.
Rnd 1: Knit.
Next Rnd: K52, bind off 8 sts, k52, bind off 8 sts. (104 sts)
Join body and sleeves: Knit across 52 front sts, pm, knit across 32 first sleeve sts, pm, k52, pm,
  k32 sts from holder for second sleeve, pm. (168 sts)
Rnd 2: Knit. (168 sts)
Bind off all sts.
Place 8 held underarm sts on needle.
Bind off all sts.
```
"""


def test_a_body_and_sleeves_joined() -> None:
    worked = knitted(BODY_AND_SLEEVES)
    assert (worked.faults, worked.forgotten) == ((), ())


def test_a_sleeve_that_was_never_held() -> None:
    worked = knitted(BODY_AND_SLEEVES.replace("for first sleeve", "for cuff"))
    (fault,) = worked.faults
    assert type(fault).__name__ == "TooFew"  # nothing waits by that name, so it is worked off the needle, which ends


FRONTS = """Cast on 60 sts.
Row 1 (RS): *K1, p1; rep from * to end.
Row 2 (WS): Purl.
Divide for fronts: K20, place remaining 40 sts on hold. (20 sts)
Row 1 (WS): Purl.
Bind off all sts.
With RS facing, rejoin yarn to held sts.
Row 1 (RS): Bind off 20 sts, k to end. (20 sts)
Bind off all sts."""


def test_fronts_divided() -> None:
    assert (knitted(FRONTS).faults, knitted(FRONTS).forgotten) == ((), ())


@pytest.mark.parametrize(
    "words",
    [
        "Place 4 held thumb sts on needles.",
        "Return thumb sts to needle.",
        "Return the held thumb sts to needles.",
        "Slip 4 sts from holder onto needle.",
        "Transfer the held sts back to larger needle.",
        "Place thumb sts from waste yarn on two dpns needles.",
        "Place the sts for thumb back onto the needles.",
        "With RS facing, rejoin yarn to thumb sts.",
    ],
)
def test_held_stitches_return(words: str) -> None:
    lines = f"""Cast on 10 sts.
Row 1 (RS): *K1, p1; rep from * to end.
Row 2 (WS): K3, place next 4 sts on hold for thumb, cast on 4 sts, k3. (10 sts)
Bind off all sts.
{words}"""
    # Of k p k p k p k p k p, seen from the right side, 4 wait behind 3: they keep their faces.
    assert needle(lines).left == b"pkpk"


@pytest.mark.parametrize(
    "words", ["Place 5 held thumb sts on needles.", "Return heel sts to needle.", "Slip 9 sts from holder onto needle."]
)
def test_held_stitches_of_another_name_or_count(words: str) -> None:
    lines = f"""Cast on 10 sts.
Row 1: K3, place next 4 sts on hold for thumb, k3.
Bind off all sts.
{words}"""
    (fault,) = knitted(lines).faults
    assert (type(fault).__name__, getattr(fault, "names", ())) == ("NoStitches", ("4 sts (thumb)",))


def test_held_looks_from_either_side() -> None:
    lines = """Cast on 6 sts.
Row 1 (RS): K1, p1, k4.
Row 2 (WS): Place 6 sts on hold for back.
Return back sts to needle.
Row 1 ({}): As they appear."""
    assert needle(lines.format("RS")).left == b"kpkkkk"[::-1]
    assert needle(lines.format("WS")).left == b"kpkkkk"
