"""Instructions printed in German from their trees: the very same numbers, and no English word of the notation.

The German is common practice among knitters, from memory, without a source.
"""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path

import pytest
from hypothesis import given, settings
from tests.read.notation_again import directions, source
from tests.read.notation_trees import DIRECTIONS

from sizewright.base.language import language, speaking
from sizewright.read.folder import read_project
from sizewright.read.inserts import Insert, Told, TypedList
from sizewright.read.notation.direction_tree import Direction
from sizewright.read.notation.printed import printable, printed, source_text
from sizewright.read.notation.tree import Count

GERMAN = language("de")
ENGLISH_WORDS = re.compile(
    r"\b(?:k|p|sl|yo|k\d+|p\d+|sts?|rnds?|rows?|rep|from|to|end|last|next|rem|knit|purl|work|until|measures|piece|marker"
    r"|pm|sm|ssk|ssp|[kp]\d*tog|m1[lrp]?|cast|bind|off|all|place|on|hold|times|more|once|twice|the|with|decreased"
    r"|increased|every|other|each|held|sleeve|turn|yarn|cut|wyi[bf]|tbl|MC|CC|RS|WS)\b",
    re.IGNORECASE,
)


def german(direction: Direction) -> Told:
    with speaking(GERMAN):
        return printed(direction)


def numbers(told: Told) -> Counter[int]:
    """The numbers that differ by size, each by what it is, not by what it looks like."""
    return Counter(id(piece) for piece in told if isinstance(piece, Insert | TypedList))


def counts(node: object) -> Iterator[int]:
    """The counts of a tree that are the same in all sizes."""
    if isinstance(node, Count):
        if isinstance(node.value, int):
            yield node.value
    elif is_dataclass(node):
        for field in fields(node):
            if field.compare and field.name != "words":
                yield from counts(getattr(node, field.name))
    elif isinstance(node, tuple):
        for one in node:
            yield from counts(one)


@pytest.fixture(scope="module")
def demo(repository: Path) -> tuple[Direction, ...]:
    project = read_project(repository)
    sources = (*project.patterns, *project.techniques)
    return tuple(one for pattern in sources for block in directions(pattern) for one in block)


def test_every_direction_of_the_demo_is_told_from_its_tree(demo: tuple[Direction, ...]) -> None:
    assert len(demo) > 100
    assert [source_text(printed(one)) for one in demo if not printable(one)] == []


def test_it_has_the_numbers_of_the_english_line(demo: tuple[Direction, ...]) -> None:
    for one in demo:
        assert numbers(german(one)) == numbers(printed(one)), source_text(german(one))


def test_every_count_of_its_tree_stands_in_it(demo: tuple[Direction, ...]) -> None:
    for one in demo:
        line = source_text(german(one))
        figures = set(re.findall(r"\d+", line))
        told = {"1"} | {str(count) for count in counts(one)}  # "to last st" has no figure
        assert told - figures <= {"1"}, line


def test_no_english_word_of_the_notation_is_left(demo: tuple[Direction, ...]) -> None:
    for one in demo:
        words = " ".join(piece for piece in german(one) if isinstance(piece, str))
        named = re.sub("„[^“]*“", "", words)  # the names of stitch patterns, which their source translates
        assert ENGLISH_WORDS.findall(named) == [], words


@given(DIRECTIONS)
@settings(derandomize=True, max_examples=80, deadline=None)
def test_any_direction_keeps_its_numbers(direction: Direction) -> None:
    line = german(direction)
    assert numbers(line) == numbers(printed(direction))
    assert printable(direction) or line == printed(direction)


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("Row 3 (RS): K3, *(k2tog) 3 times, (yo, k1) 6 times; rep from * to last 3 sts, k3. (42 sts)",
         ("3. R (Hinr): 3 M re, *[2 M re zus-str] 3-mal, [1 U, 1 M re] 6-mal; ab * wdh bis zu den letzten 3 M, 3 M re. "
         "(42 M)")),
        ("Rnds 1 to 4, 6 and 7: Knit.", "1. bis 4., 6. und 7. Rd: alle M re."),
        ("Row 2 and all WS rows: Purl.", "2. R und alle Rückr: alle M li."),
        ("Dec Rnd: *K{a}, ssk, pm; rep from * 6 more times, k to last st, k1 tbl. (8 sts decreased)",
         ("Abnahme-Rd: *{a} M re, 2 M überz zus-str, MM setzen; ab * noch 6-mal wdh, re bis zur letzten M, "
         "1 M re verschr. (8 M abgenommen)")),
        ("Row 1: Sl 1 wyif, kfb, m1l, sk2p, p2tog twice, k to 2 sts before marker A, slip marker, turn.",
         ("1. R: 1 M abh (Faden vor der Arbeit), 1 M re verdopp, 1 linksgen Zun, 1 dopp überz Abn, "
         "zweimal 2 M li zus-str, re bis 2 M vor MM A, MM abh, wenden.")),
        ("Work {n} rows even.", "{n} R gerade str."),
        ("Rep last 2 rnds {n} more times.", "Letzte 2 Rd noch {n}-mal wdh."),
        ("Rep Rows 1 and 2 five more times.", "1. und 2. R noch 5-mal wdh."),
        ("Work in k2, p2 rib until piece measures {a} from cast-on edge, ending with a WS row.",
         "Im Rippenmuster (2 M re, 2 M li) str, bis die Arbeit ab der Anschlagkante {a} misst, mit einer Rückr enden."),
        ("Work in stockinette until thumb measures 2.5 cm.", "Glatt re str, bis der Daumen 2,5 cm misst."),
        ("Rep Dec Row every 4th row 3 times, then every other row twice.",
         "Abnahme-R wdh: in jeder 4. R 3-mal, dann in jeder 2. R zweimal."),
        ("Dec 1 st at each end of every RS row until 20 sts remain.",
         "Am Anfang und am Ende je 1 M abn: in jeder Hinr, bis noch 20 M übrig sind."),
        ("Dec 1 st at each end of every 4th rnd 3 times.",
         "Am Anfang und am Ende je 1 M abn: in jeder 4. Rd 3-mal."),
        ("Dec 1 st at each end of next row.", "Am Anfang und am Ende je 1 M abn: in der nächsten R."),
        ("Dec 1 st at neck edge of every other row twice.",
         "An der Halsausschnittkante je 1 M abn: in jeder 2. R zweimal."),
        ("Dec 1 st at neck edge of next row.", "An der Halsausschnittkante 1 M abn: in der nächsten R."),
        ("Row 1: Bind off {n} sts in rib, k to end.", "1. R: {n} M im Rippenmuster abketten, re bis Ende."),
        ("Row 1: Bind off 4 sts purlwise loosely, k4.", "1. R: 4 M locker li abketten, 4 M re."),
        ("Row 1: Bind off 4 sts loosely in patt, k4.", "1. R: 4 M locker im Muster abketten, 4 M re."),
        ("Bind off 4 sts in rib at beginning of next 2 rows.",
         "Am Anfang je 4 M im Rippenmuster abketten: in den nächsten 2 R."),
        ("Row 3: Work in rib as set to last 2 sts, k2.", "3. R: im Muster bis zu den letzten 2 M, 2 M re."),
        ("Row 3: K2, work in rib to end.", "3. R: 2 M re, im Rippenmuster bis Ende."),
        ("Bind off 3 sts at beginning of next 2 rows.", "Am Anfang je 3 M abketten: in den nächsten 2 R."),
        ("Cast on 3 sts at beginning of next 2 rows.", "Am Anfang je 3 M neu anschlagen: in den nächsten 2 R."),
        ("Bind off remaining 20 sts in rib.", "Restliche 20 M im Rippenmuster abketten."),
        ("Row 1: K until 9 sts are on right needle, work rib to end. (8 sts decreased; 80 sts)",
         "1. R: re bis 9 M auf der rechten Nadel liegen, im Rippenmuster bis Ende. (8 M abgenommen; 80 M)"),
        ("Row 1: K until 9 sts are on right needle, place these 9 sts on hold for thumb, k to end.",
         "1. R: re bis 9 M auf der rechten Nadel liegen, diese 9 M stilllegen (Daumen), re bis Ende."),
        ("Row 1: Purl, inc 4 sts evenly.", "1. R: li, dabei gleichmäßig verteilt 4 M zun."),
        ("Row 1: P to end, removing markers.", "1. R: li bis Ende, dabei die MM entfernen."),
        ("Bind off {n} sts at beginning of next row.", "Am Anfang {n} M abketten: in der nächsten R."),
        ("Cut yarn and thread the tail through the remaining 8 sts and pull tight.",
         "Faden abschneiden, durch die restlichen 8 M ziehen und fest zuziehen."),
        ("Row 1: Sl 3 to cn, hold in front, p2, k3 from cn, k2, sl 2 to cn, hold in back, k1, p1, k2 from cn.",
         ("1. R: 3/2 LPC, 2 M re, 2 M auf einer Hilfsnadel hinter die Arbeit legen, 1 M re, 1 M li, 2 M re von der "
         "Hilfsnadel.")),
    ],
)  # fmt: skip
def test_how_it_is_told(typed: str, told: str) -> None:
    project = source(typed)
    ((direction,),) = directions(project.patterns[0])
    assert project.findings == ()
    assert source_text(german(direction)) == told


@pytest.mark.parametrize(
    ("fabrics", "told"),
    [
        ("St st, st st, stockinette, stockinette stitch, stocking stitch, Stocking st", "glatt re"),
        ("rev St st, reverse st st, reverse stockinette, rev stocking stitch", "glatt li"),
        ("garter, garter st, Garter stitch", "kraus re"),
        ("rib, ribbing, rib pattern", "im Rippenmuster"),
        ("k2p2 rib, K2 P2 ribbing, 2x2 rib", "im Rippenmuster (2 M re, 2 M li)"),
        ("moss st, moss stitch, seed, Seed stitch", "im Perlmuster"),
        ("double moss stitch, Irish moss", "im großen Perlmuster"),
        ("patt, pattern, pat", "im Muster"),
        ("pattern as set, established pattern, rib as set, rib as established", "wie bisher"),
    ],
)
def test_a_fabric_is_told_by_any_of_its_names(fabrics: str, told: str) -> None:
    for fabric in fabrics.split(", "):
        ((direction,),) = directions(source(f"Work in {fabric} until piece measures 30 cm.").patterns[0])
        line = source_text(german(direction))
        assert line == f"{told[:1].upper()}{told[1:]} str, bis die Arbeit 30 cm misst.", fabric


def test_a_stitch_pattern_by_its_own_name_is_no_usual_fabric() -> None:
    ((direction,),) = directions(source("Work in Rib until piece measures 30 cm.").patterns[0])
    with speaking(GERMAN.naming({"Rib": "Wellen"})):
        assert "„Wellen“" in source_text(printed(direction))


def test_the_arm_is_held_at_the_armpit_not_at_the_forearm() -> None:
    ((_, direction),) = directions(
        source("Cast on 9 sts.\nRow 1: Place next 4 sts on hold for left underarm, k5.").patterns[0]
    )
    assert "(linke Achsel)" in source_text(german(direction))


@pytest.mark.parametrize(
    "typed",
    [
        "Work the wobbly bit.   # declared: 72 sts",
        "Rep Row 1 until gusset of dreams measures 5 cm.",
        "Graft the toe in the way you like best.",
        "Bind off all sts with an icy edge.",
        "Frobnicate.",
    ],
)
def test_the_designers_own_words_are_left_as_they_are(typed: str) -> None:
    ((direction,),) = directions(source(typed).patterns[0])
    assert not printable(direction)
    assert german(direction) == printed(direction)
