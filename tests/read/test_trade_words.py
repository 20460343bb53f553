"""Words told in US and in UK terms: which change, which stay, and that no number and no tree ever does.

Sources of the pairs stand beside them in read/trade_words.py. What is held against them here: a UK pattern has yfwd and
sk2po (zanotowane.pl book scan); British moss stitch is US seed stitch (stitchandstory.com). The rest is common practice
or from memory, as is said there.
"""

import re
from pathlib import Path

import pytest
from tests.read.notation_again import directions, source, without_places
from tests.work.test_published_stitch_patterns import PATTERNS

from sizewright.base.place import Span
from sizewright.read.folder import read_single, read_text
from sizewright.read.pattern import Pattern, StitchBlock
from sizewright.read.trade_words import AMBIGUOUS, PAIRS, Country, country_of, in_other_terms, told_twice
from sizewright.work.fabrics import fabric_rows

US, UK = Country.US, Country.UK
_BRACED = re.compile(r"(\{[^{}\n]*\})")
_LINES = re.compile(r"((?<=^```work\n)(?:.*\n)*?(?=```))", re.M)  # of a block


@pytest.mark.parametrize(
    ("us", "uk"),
    [
        ("Bind off 6 sts at the beginning of the row.", "Cast off 6 sts at the beginning of the row."),
        ("Binding off in rib; the bind-off edge.", "Casting off in rib; the cast-off edge."),
        ("Check your gauge on a gauge swatch.", "Check your tension on a tension square."),
        ("Work even in reverse stockinette stitch.", "Work straight in reverse stocking stitch."),
        ("Work in seed stitch for 4 rows.", "Work in moss stitch for 4 rows."),
        ("Work in moss stitch for 4 rows.", "Work in double moss stitch for 4 rows."),
        ("K1, skp, sk2p, k to end.", "K1, skpo, sk2po, k to end."),
        ("a bulky weight wool", "a chunky weight wool"),
        ("bind\noff", "cast\noff"),
    ],
)
def test_words_change_with_their_capitals_and_hyphens_both_ways(us: str, uk: str) -> None:
    assert " ".join(in_other_terms(us, US).split()) == " ".join(uk.split())
    assert " ".join(in_other_terms(uk, UK).split()) == " ".join(us.split())


@pytest.mark.parametrize(
    ("text", "country", "told"),
    [
        ("Row 2: BO 6 sts, k to last 6 sts, BO 6.", US, "Row 2: Cast off 6 sts, k to last 6 sts, cast off 6."),
        ("the stitches you have bound off", US, "the stitches you have cast off"),
        ("All sts are cast off.", UK, "All sts are bound off."),
        ("K1, yfwd, k2tog, yrn, p1.", UK, "K1, yo, k2tog, yo, p1."),
        (
            "K1, yo, k2tog.",
            US,
            "K1, yo, k2tog.",
        ),  # yfwd, yrn or yon, by the stitches beside it: the page says so
        ("Keep an even tension.", US, "Keep an even tension."),
        ("Keep an even tension.", UK, "Keep an even tension."),
        ("Tension: 22 sts to 10 cm.", UK, "Gauge: 22 sts to 10 cm."),
        ("a needle gauge", US, "a needle gauge"),
        ("gauge (UK: tension) and cast off (bind off)", US, "gauge (UK: tension) and cast off (bind off)"),
        ("the film “How to bind off”", US, "the film “How to bind off”"),
        (
            "Increase evenly, knit a ridge, k2tog, ssk.",
            US,
            "Increase evenly, knit a ridge, k2tog, ssk.",
        ),
        ("regauge, bind offer", US, "regauge, bind offer"),
    ],
)
def test_what_has_no_other_word_stays(text: str, country: Country, told: str) -> None:
    assert in_other_terms(text, country) == told


def test_a_name_stays_wherever_it_stands() -> None:
    text = "Work in Seed stitch hem, then in seed stitch."
    assert in_other_terms(text, US, ("Seed stitch hem",)) == "Work in Seed stitch hem, then in moss stitch."


def test_the_table_has_sources_and_leads_back() -> None:
    for pair in PAIRS:
        assert pair.source
        assert set(pair.everyday) <= {*pair.us, *pair.uk}
        for country, side in ((US, pair.us), (UK, pair.uk)):
            for form in side:
                other = in_other_terms(form, country)
                assert other.casefold() == side[form].casefold() or side[form] == form
                assert in_other_terms(in_other_terms(other, country.other), country) == other


@pytest.mark.parametrize(
    ("text", "country"),
    [
        ("Bind off. Work in stockinette stitch.", US),
        ("Cast off. Work in stocking stitch.", UK),
        ("K1, yfwd, k2tog.", UK),
        ("Bind off. Cast off.", None),
        ("Keep an even tension in moss stitch, work straight, yo.", None),  # said on both sides of the water
    ],
)
def test_a_text_shows_whose_terms_it_is_in(text: str, country: Country | None) -> None:
    assert country_of(text) is country


# ------------------------------------------------------------------------------------------------------------ the trees


def lowered(node: object, country: Country) -> object:
    """A tree with its words in UK terms and in small letters; numbers and all else as they are."""
    if isinstance(node, str):
        return (in_other_terms(node, US) if country is US else node).casefold()
    if not isinstance(node, tuple) or node[:1] == ("Stitch",):  # a stitch is known by its place in the table
        return node
    return tuple(lowered(part, country) for part in node)


def switched(text: str, names: tuple[str, ...] = ()) -> str:
    """Lines of instructions as a UK reader has them; what stands in braces is a number."""
    return "".join(part if part[:1] == "{" else in_other_terms(part, US, names) for part in _BRACED.split(text))


def assert_same_trees(us: Pattern, uk: Pattern) -> int:
    before, after = list(directions(us)), list(directions(uk))
    for one, other in zip(before, after, strict=True):
        assert lowered(without_places(one), US) == lowered(without_places(other), UK)
    return sum(map(len, before))


def test_the_demo_reads_the_same_in_either_terms(demo_patterns: tuple[Path, ...]) -> None:
    changed = checked = 0
    for file in demo_patterns:
        pattern = read_single(file).patterns[0]
        if pattern.adapts is not None:  # its lines are those of its base, which is read here too
            continue
        names = tuple(piece.name.text for piece in pattern.body if isinstance(piece, StitchBlock))
        text = pattern.lines.text
        parts = _LINES.split(text)
        other = "".join(switched(part, names) if at % 2 else part for at, part in enumerate(parts))
        assert re.findall(r"\d+|\{[^}]*\}", text) == re.findall(r"\d+|\{[^}]*\}", other)
        checked += assert_same_trees(pattern, read_text(other, file.name).patterns[0])
        changed += other != text
    assert changed >= 2
    assert checked > 100


@pytest.mark.parametrize("name", PATTERNS)
def test_so_does_every_published_stitch_pattern(name: str) -> None:
    lines = "\n".join(PATTERNS[name][3])
    assert_same_trees(source(lines).patterns[0], source(switched(lines)).patterns[0])


@pytest.mark.parametrize(
    "lines",
    [
        "Cast on 20 sts.\nRow 1: K3, bind off 4 sts, k to end.\nBind off all sts loosely.",
        "Cast on 20 sts.\nRow 1: BO 4 sts, k to end.\nBO all sts.",
        "Cast on 20 sts.\nWork even in stockinette stitch for 4 rows.\nWork even until piece measures 5 cm.",
        "Cast on 21 sts.\nWork in seed stitch for 4 rows.\nRow 5: K1, *skp, yo; rep from * to last 2 sts, k2.",
        "Cast on 21 sts.\nWork in reverse stockinette for 4 rows.\nRow 5: K1, sk2p, k to end.",
    ],
)
def test_so_do_the_phrases_that_change(lines: str) -> None:
    assert switched(lines) != lines
    assert assert_same_trees(source(lines).patterns[0], source(switched(lines)).patterns[0]) == lines.count("\n") + 1


@pytest.mark.parametrize("in_the_round", [True, False])
@pytest.mark.parametrize(
    "fabric",
    ["stockinette", "stockinette stitch", "stockinette st", "reverse stockinette", "seed stitch", "seed st"],
)
def test_a_fabric_is_the_same_under_its_other_name(fabric: str, in_the_round: bool) -> None:  # noqa: FBT001
    span = Span("a.md", 1, 1, 1, 1)
    rows = fabric_rows(fabric, span, in_the_round=in_the_round)
    assert rows is not None
    assert fabric_rows(in_other_terms(fabric, US), span, in_the_round=in_the_round) == rows


def test_ambiguous_names_are_told_by_their_rows() -> None:
    """British moss is US seed stitch (stitchandstory.com); US moss stitch has rows of its own (knittingmagic.biz)."""
    assert AMBIGUOUS[US]["seed stitch"] == AMBIGUOUS[UK]["moss stitch"]
    assert AMBIGUOUS[US]["moss stitch"] == AMBIGUOUS[UK]["double moss stitch"]
    assert AMBIGUOUS[US]["seed stitch"] != AMBIGUOUS[US]["moss stitch"]
    for names in AMBIGUOUS.values():
        for name in names:
            assert fabric_rows(name, Span("a.md", 1, 1, 1, 1), in_the_round=False)


def test_nothing_of_a_text_is_lost(repository: Path) -> None:
    text = (repository / "content/patterns/tarnside-pullover.md").read_text(encoding="utf-8")
    assert "".join(typed for typed, _ in told_twice(text, US)) == text
