"""In: sections turned inside out. Out: stitches of the same lean for the other face, by its loops; else what to write.

That strands cross the same way from either side, and so a made stitch leans as it does, is geometry; the words are
common practice, no source.
"""

from pathlib import Path

import pytest

from sizewright.proof.run import proof
from sizewright.publish.told_lines import ToldLines
from sizewright.read.folder import read_project
from sizewright.read.pattern import WorkBlock

BASE = """---
title: Tube
designer: A. Tester
licence: CC BY 4.0
---

## Body

```work
Cast on 20 sts. Join to work in the round.
Rnd 1: Knit.
Rnd 2: ROW
Rnd 3: Knit.
Bind off all sts.
```
"""
TURNED = """---
title: Tube, other side out
based_on: {pattern: tube, permission: by letter, credit: After A. Tester}
---

::: inside-out section Body
because: the purl side is worn outside
:::
"""


def turned(folder: Path, row: str) -> tuple[str, list[tuple[str, str]]]:
    """The second round of the section as it is turned, and what is found of faces."""
    patterns = folder / "content" / "patterns"
    patterns.mkdir(parents=True)
    (patterns / "tube.md").write_text(BASE.replace("ROW", row), encoding="utf-8")
    (patterns / "turned.md").write_text(TURNED, encoding="utf-8")
    project = read_project(folder)
    pattern = next(one for one in project.patterns if one.name == "turned")
    found = [one for one in proof(pattern, project).findings if one.rule in ("no-mirror", "wrong-face", "wrong-count")]
    lines = [line for piece in pattern.body if isinstance(piece, WorkBlock) for line in piece.lines]
    words = next(words for words in map(ToldLines().words, lines) if words.startswith("Rnd 2"))
    return words, [(one.rule, one.mend) for one in found]


@pytest.mark.parametrize(
    ("row", "other"),
    [
        ("K1, m1l, k to last st, m1r, k1. (22 sts)", "P1, m1lp, p to last st, m1rp, p1. (22 sts)"),
        ("P1, m1lp, p to last st, m1rp, p1. (22 sts)", "K1, m1l, k to last st, m1r, k1. (22 sts)"),
        ("K1, skp, k to end. (19 sts)", "P1, ssp, p to end. (19 sts)"),
    ],
)
def test_a_stitch_is_turned_into_that_of_the_same_lean(tmp_path: Path, row: str, other: str) -> None:
    words, found = turned(tmp_path, row)
    assert words == f"Rnd 2: {other}"
    assert found == []


@pytest.mark.parametrize(
    ("row", "hint"),
    [
        ("C4F, k to end.", "sl 2 to cn, hold in front, p2, p2 from cn."),
        ("1/1 RC, k to end.", "sl 1 to cn, hold in back, p1, p1 from cn."),
        ("T4B, k to end.", "“::: instead of section …”."),
        ("K1, s2kp, k to end. (18 sts)", "p1, pass the 2 slipped over."),
        ("K1, sk2p, k to end. (18 sts)", "sssp leans as sk2p does on this one."),
        ("K1, mb, k to end.", "pushed through to the other face: say so in the text."),
    ],
)
def test_what_cannot_be_turned_is_refused_with_what_to_write(tmp_path: Path, row: str, hint: str) -> None:
    _, ((rule, mend),) = turned(tmp_path, row)
    assert rule == "no-mirror"
    assert mend.startswith("Write its rows yourself: “::: instead of section …”.")
    assert mend.endswith(hint)
