"""Published stitch patterns: every row is read without help, and the multiple found is the published one.

The source stands beside each; modern ones are restated (same stitches, order, repeat and multiple, other wording).
"""

from pathlib import Path

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_single
from sizewright.work.run import work

PATTERNS = {
    "2x2 rib, plain": (
        "copiouscrafts.com, restated",
        4,
        0,
        ("Row 1: *K2, P2* to end.",),
    ),
    "2x2 rib in the round": (
        "copiouscrafts.com, restated",
        4,
        0,
        ("Rnd 1: [K2, P2] around.",),
    ),
    "2x2 rib": (
        "copiouscrafts.com, restated",
        4,
        2,
        (
            "Row 1: K2, [P2, K2] to end.",
            "Row 2: P2, [K2, P2] to end.",
        ),
    ),
    "moss stitch": (
        "stitchandstory.com, restated",
        2,
        0,
        (
            "1st Row: *k1 p1*.",
            "2nd Row: *p1 k1*.",
        ),
    ),
    "double moss": (
        "knittingmagic.biz, restated",
        2,
        1,
        (
            "Rows 1, 4: k1, *p1, k1* to end.",
            "Rows 2, 3: p1, *k1, p1* to end.",
        ),
    ),
    "waffle": (
        "fredamossdesigns.com, restated",
        3,
        1,
        (
            "Row 1: knit.",
            "Row 2: purl.",
            "Row 3: *K1, P2; rep to last st, K1.",
            "Row 4: *P1, K2; rep to last st, P1.",
        ),
    ),
    "farmer's rib": (
        "ella.difluir.com, restated",
        4,
        1,
        (
            "Row 1 (RS): P1, *K3, P1*.",
            "Row 2 (WS): K2, P1, *K3, P1* to last 2, K2.",
        ),
    ),
    "linen stitch flat": (
        "abeeinthebonnet.com, restated",
        2,
        0,
        (
            "Row 1: *K1, sl1 pwise wyif; to last 2, K2.",
            "Row 2: *P1, sl1 pwise wyib; to last 2, P2.",
        ),
    ),
    "linen stitch in the round": (
        "abeeinthebonnet.com, restated",
        2,
        0,
        (
            "Round 1: *K1, sl1 wyif.",
            "Round 2: *sl1 wyif, K1.",
        ),
    ),
    "old shale": (
        "theweeklystitch.com 2013, restated",
        18,
        0,
        (
            "Row 1: knit.",
            "Row 2: knit.",
            "Row 3: [k2tog] 3x, [yo, k1] 6x, [k2tog] 3x; repeat.",
            "Row 4: purl.",
        ),
    ),
    "fan and feather cloth": (
        "teenaintoronto.com 2009, restated; cast on 42",
        18,
        6,
        (
            "Row 4: knit.",
            "Row 5: k3, p to last 3, k3.",
            "Row 6: k3, *(k2tog) 3x, (yo, k1) 6x, (k2tog) 3x, rep to last 3, k3.",
            "Row 7: knit.",
        ),
    ),
    "horseshoe": (
        "dianne-jones.blogspot.com 2013, restated",
        10,
        1,
        (
            "Row 1: k1, *yo, k3, sl1 k2tog psso, k3, yo, k1*.",
            "Row 3: k1, *k1, yo, k2, sl1 k2tog psso, k2, yo, k2*.",
            "Row 5: k1, *k2, yo, k1, sl1 k2tog psso, k1, yo, k3*.",
            "Row 7: k1, *k3, yo, sl1 k2tog psso, yo, k4*.",
            "Even rows: purl.",
        ),
    ),
    "small lace": (
        "zanotowane.pl, book scan, restated; cast on 25",
        6,
        1,
        (
            "Row 1: K1, *yfwd, k1, sk2po, k1, yfwd, k1; to end.",
            "Row 3: K1, *k1, yfwd, sk2po, yfwd, k2; to end.",
            "Rows 2 and 4: purl.",
        ),
    ),
    "cable": (
        "theweeklystitch.com 2023-08, restated",
        7,
        3,
        (
            "Row 1 (RS): *P3, K4; rep from *, end p3.",
            "Row 2: as they appear.",
            "Row 3: as they appear.",
            "Row 4: as they appear.",
            "Row 5: *P3, 2 to cn in front, K2, K2 from cn; rep from *, end p3.",
            "Row 6: as they appear.",
        ),
    ),
    "honeycomb": (
        "nimble-needles.com, restated",
        8,
        0,
        (
            "Row 1: K.",
            "Row 2: P.",
            "Row 3: *C4B, C4F*.",
            "Row 4: P.",
            "Row 5: K.",
            "Row 6: P.",
            "Row 7: *C4F, C4B*.",
            "Row 8: P.",
        ),
    ),
    "woven cable": (
        "eknittingstitches.com, restated",
        4,
        0,
        (
            "Row 1: C4F to end.",
            "Row 2: Purl.",
            "Row 3: K2, C4B to last 2, K2.",
            "Row 4: Purl.",
        ),
    ),
    "zigzag in two colours": (
        "alaskapublic.org 2014, restated; 80 sts",
        20,
        0,
        (
            "Rnd 1: *1B 2A 3B 2A 4B 2A 3B 2A 1B; rep from * to end.",
            "Rnd 2: *2B 2A 3B 2A 2B 2A 3B 2A 2B; rep from * to end.",
            "Rnd 3: *3B 2A 3B 4A 3B 2A 3B; rep from * to end.",
            "Rnd 4: *1A 3B 2A 3B 2A 3B 2A 3B 1A; rep from * to end.",
        ),
    ),
    "colour bands": (
        "shiz-knit.blogspot.com 2008, restated; 80 sts",
        5,
        0,
        (
            "Rnd 1: [K1 CC1, K4 MC] around.",
            "Rnd 2: [K2 CC1, K2 MC, K1 CC1] around.",
            "Rnd 3: [K1 CC2, K4 CC1] around.",
            "Rnd 4: [K1 CC1, K1 CC2, K2 CC1, K1 CC2] around.",
            "Rnd 5: [K2 CC1, K2 CC2, K1 CC1] around.",
            "Rnd 6: As Rnd 5.",
            "Rnd 7: As Rnd 4.",
            "Rnd 8: As Rnd 3.",
            "Rnd 9: As Rnd 2.",
            "Rnd 10: As Rnd 1.",
        ),
    ),
    "8+2, first shape": (
        "readknittingpatterns.com, restated",
        8,
        2,
        ("Row 1: K2, *P6, K2 to end.",),
    ),
    "8+2, second shape": (
        "readknittingpatterns.com, restated",
        8,
        2,
        ("Row 1: K1, *P4, K4 until 1 st remains, K1.",),
    ),
    "basket stitch": (
        "Handbook of Wool Knitting and Crochet, Augusta 1918 (Project Gutenberg 26113), public domain; cast on 85",
        10,
        5,
        (
            "Row 1: * Knit 5, purl 5; repeat across, ending with knit 5.",
            "Row 2: * Purl 5, knit 5; repeat across, ending with purl 5.",
        ),
    ),
}


@pytest.mark.parametrize("name", PATTERNS)
def test_the_multiple_is_the_published_one(name: str, tmp_path: Path) -> None:
    _, multiple, plus, rows = PATTERNS[name]
    file = tmp_path / "published.md"
    file.write_text("\n".join(("---", "title: Published", "---", "```stitch Published", *rows, "```", "")), "utf-8")
    project = read_single(file)
    assert [finding.message for finding in project.findings] == []
    (pattern,) = work(grade(project.patterns[0])).stitch_patterns
    assert (pattern.multiple, pattern.plus) == (multiple, plus)
