"""What fits a search of the collection: words, yarn held against the engine's own need, bodies, and any slip."""

import random
from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import Any

from sizewright.base.printing import bought
from sizewright.base.units import LENGTH, MASS, unit_named
from sizewright.proof.proofed import Proofed
from sizewright.publish.card import Card
from sizewright.publish.links import Links
from sizewright.publish.view_collection import card_views, find_view
from sizewright.read.project import Project

InNode = Callable[..., Any]
SCRIPTS = ["exact", "fit", "find"]
NOTHING = {"words": "", "measures": [], "yarns": []}


def test_words_are_folded_begin_words_and_must_all_fit(in_node: InNode) -> None:
    pattern = "Fünf Ærmer: a cabled CARDIGAN, long-tail cast-on; light yarn, 10 years, Ørsta"
    asked = {
        "cardigan": True, "CARD": True, "cab cardi": True, "cardigan socks": False, "fun": True, "fünf": True,
        "FUNF": True, "aermer": True, "orsta": True, "tail cast": True, "digan": False, "10": True, "": True,
        "  ?!": True, "<b>": False, "light": True, "lightly": False,
    }  # fmt: skip
    program = "return given.asked.map((one) => find.fits(find.words(given.pattern), find.words(one)));"
    told = in_node(SCRIPTS, program, {"pattern": pattern, "asked": [*asked]})
    assert dict(zip(asked, told, strict=True)) == asked


FITS = (
    "const { pattern, asked } = given;"
    "return asked.map((one) => find.fits(find.words(pattern), find.words(one), find.compounds(pattern)));"
)


def test_a_word_is_found_in_another_number_and_at_the_end_of_a_compound(in_node: InNode) -> None:
    pattern = (
        "Tidemark Cowl: a pullover with sock heels, scarves, washcloths; increases, measuring, knitting, a necklace"
    )
    asked = {
        "cowls": True, "socks": True, "scarf": True, "cloth": True, "cloths": True, "washcloths": True,
        "ring": False, "over": False, "lace": False, "ease": False, "king": False, "cow": True,
        "owl": False, "lights": False,
    }  # fmt: skip
    told = in_node(SCRIPTS, FITS, {"pattern": pattern, "asked": [*asked]})
    assert dict(zip(asked, told, strict=True)) == asked


def test_german_compounds_are_found_by_what_they_are(in_node: InNode) -> None:
    pattern = "Rundschal Tidemark, Gesichtstücher, Fäustlinge mit Daumenzwickel, Mütze; enthalten, gestrickt im Grund"
    asked = {
        "Schal": True, "schals": True, "Rundschals": True, "tuch": True, "Tücher": True, "Zwickel": True,
        "Mützen": True, "Fäustling": True, "halten": False, "rund": True, "und": False, "strickt": False,
    }  # fmt: skip
    told = in_node(SCRIPTS, FITS, {"pattern": pattern, "asked": [*asked]}, "de")
    assert dict(zip(asked, told, strict=True)) == asked


def test_a_word_that_nothing_has_leads_to_the_nearest(in_node: InNode) -> None:
    text = "Mittens for hands; SOCKS, heel flap, Pullover with a yoke, Mütze in Größe 2, Fäustlinge"
    meant = {
        "mitens": "mittens", "mittnes": "mittens", "sokcs": "socks", "heal flap": "heel flap",
        "pulover yok": "pullover yok",
        "mutzr": "mütze", "Mütse grosse": "mütze größe", "grösze": "größe", "fausling": "fäustlinge",
        "mittens": "", "xylophone": "", "mit xylophone": "", "soks mitens": "socks mittens", "a": "", "zz": "",
    }  # fmt: skip
    program = "return given[0].map((one) => find.meant(find.words(one), [find.words(given[1])], given[1]));"
    told = in_node(SCRIPTS, program, [[*meant], text])
    assert dict(zip(meant, told, strict=True)) == meant


def test_amounts_as_they_are_typed(in_node: InNode) -> None:
    read = {
        "180": ("180", "m"), " 180,5 ": ("361/2", "m"), "180 m": ("180", "m"), "200 yards": ("200", "yd"),
        "50g": ("50", "g"), "1 1/2 oz": ("3/2", "oz"), "2½ balls": ("5/2", "balls"), "180 Metres.": ("180", "m"),
    }  # fmt: skip
    program = (
        "return given.map((one) => { const { value, unit, wrong } = find.amount(one, 'm');"
        " return wrong ?? [exact.text(value), unit]; });"
    )
    assert in_node(SCRIPTS, program, [*read]) == [list(one) for one in read.values()]
    wrong = ["abc", "0", "-180", "1000000000", "1,234", "180 apples", "1e5", "Infinity", "180 180", "½½", "<b>", "1/0"]
    told = in_node(SCRIPTS, program, wrong)
    assert all(isinstance(one, str) and one.endswith((".", "?")) for one in told)
    assert told[1] == "Nothing can be made with no yarn. Write an amount above 0."
    assert told[3] == "That is more than any pattern takes. Is a figure too many?"


def data_of(proofed: Sequence[Proofed]) -> list[Any]:
    import json  # noqa: PLC0415

    views = card_views(map(Card.of, proofed), Links(""))
    found: list[Any] = json.loads(find_view(views, (), metric_first=True).data)
    return found


UNITS = {"m": (LENGTH, 0), "yd": (LENGTH, 1), "g": (MASS, 0), "oz": (MASS, 1)}


def test_the_sizes_it_suffices_for_are_those_of_the_engine(
    in_node: InNode, sample_proofed: tuple[Proofed, ...]
) -> None:
    """Exactly: what is needed to the last fraction, a hair less, and a hair more."""
    hat = next(one for one in sample_proofed if one.graded.pattern.name == "hat")
    (card,) = data_of([hat])
    need, sizes = hat.worked.yarns[0], hat.graded.sizes
    chance = random.Random(6)  # noqa: S311 (no secret)
    asked, expected = [], []
    for unit, (dimension, at) in UNITS.items():
        known = unit_named(unit)
        assert known is not None
        values = [one.length if dimension == LENGTH else one.mass for one in need.reserved]
        needs = [value for value in values if value is not None]
        texts = bought(needs, dimension)[at].values
        for _ in range(60):
            value = (
                chance.choice(needs)
                / known.factor
                * chance.choice((1, 1, Fraction(999999, 10**6), Fraction(1000001, 10**6)))
            )
            enough = [place for place, one in enumerate(needs) if one <= value * known.factor]
            first = next((place for place in range(len(sizes)) if place not in enough), None)
            asked.append([str(value), unit])
            expected.append(
                [enough, f"{sizes[first]} needs {texts[first]}\u00a0{unit}" if enough and first is not None else ""]
            )
    program = (
        "return given[1].map(([value, unit]) => find.yarn(given[0], { value: exact.of(value), unit }))"
        ".map(({ places, words }) => [places ?? [], /(?<=; ).* needs .*?(?=\\.( |$))/.exec(words)?.[0] ?? '']);"
    )
    assert in_node(SCRIPTS, program, [card, asked]) == expected
    assert any(not enough for enough, _ in expected)
    assert any(len(enough) == len(sizes) for enough, _ in expected)


YARN = {"weight": "light", "ball": "50 g", "balls": ["1", "2", "2", "3"], "least": [0, 0, 0, 0]}
MAIN = {**YARN, "name": "Main", "length": ["5000", "10000", "15000", "21000"], "mass": ["25", "50", "75", "100"]}
SECOND = {**YARN, "name": "Contrast", "weight": "fine", "length": ["1000", "2000", "3000", "4000"], "mass": None}
SILENT = {**YARN, "name": "Trim", "length": None, "mass": None, "balls": None}
SIZES = [{"key": name.lower(), "name": name} for name in ("Baby", "Child", "Adult", "Giant")]


SAID: tuple[tuple[list[Any], tuple[str, str], dict[str, Any], str, str], ...] = (
    ([MAIN], ("180", "m"), {}, "enough", "Yarn: enough for Baby to Adult; Giant needs 210 m."),
    ([MAIN], ("210", "m"), {}, "enough", "Yarn: enough for every size."),
    ([MAIN], ("100", "m"), {}, "enough", "Yarn: enough for Baby and Child; Adult needs 150 m."),
    ([MAIN], ("49.9", "m"), {}, "none", ""),
    ([MAIN], ("2", "balls"), {}, "enough", "Yarn: enough for Baby to Adult; Giant needs 3 balls of 50 g."),
    ([MAIN], ("180", "m"), {"places": [3]}, "none", ""),
    ([MAIN], ("180", "m"), {"places": [0, 2]}, "enough", "Yarn: enough for Baby, Adult."),
    ([MAIN], ("180", "m"), {"weight": "bulky"}, "untold", "It does not tell how much yarn it takes."),
    ([MAIN, SECOND], ("180", "m"), {}, "enough",
     "Main: enough for Baby to Adult; Giant needs 210 m. It also takes up to 30 m of contrast yarn."),
    ([MAIN, SECOND], ("180", "m"), {"all": True}, "enough",
     "All its yarns together: enough for Baby to Adult; Giant needs 250 m."),
    ([MAIN, SECOND], ("20", "m"), {"weight": "fine"}, "enough",
     "Contrast: enough for Baby and Child; Adult needs 30 m. It also takes up to 100 m of main yarn."),
    ([MAIN, SECOND], ("60", "g"), {"all": True}, "untold", "It does not tell its yarn in g."),
    ([MAIN, SILENT], ("300", "m"), {}, "enough", "Main: enough for every size. It also takes trim yarn."),
    ([SILENT], ("300", "m"), {}, "untold", "It does not tell how much yarn it takes."),
    ([], ("300", "m"), {}, "untold", "It does not tell how much yarn it takes."),
    ([{**MAIN, "least": [0, 0, 1, 1]}], ("180", "m"), {}, "enough",
     ("Yarn: enough for Baby and Child; perhaps enough for Adult, as not all of it could be counted; "
      "Giant needs 210 m.")),
    ([{**MAIN, "least": [1, 1, 1, 1]}], ("60", "m"), {}, "perhaps",
     "Yarn: perhaps enough for Baby, as not all of it could be counted; Child needs 100 m."),
)  # fmt: skip


def test_what_a_card_says_of_yarn(in_node: InNode) -> None:
    program = (
        "return given.map(({ card, amount, options }) => {"
        " const { value, unit } = find.amount(amount.join(' '), 'm');"
        " const { kind, words } = find.yarn(card, { value, unit }, options);"
        " return [kind, words.replaceAll('\\u00a0', ' ')]; });"
    )
    given = [
        {"card": {**NOTHING, "sizes": SIZES, "yarns": yarns}, "amount": amount, "options": options}
        for yarns, amount, options, _, _ in SAID
    ]
    told = in_node(SCRIPTS, program, given)
    for (_, amount, options, kind, words), answer in zip(SAID, told, strict=True):
        assert (amount, options, answer) == (amount, options, [kind, words])


def test_a_body_leads_to_the_size_its_pattern_proposes(in_node: InNode) -> None:
    """The answer of the page of the pattern itself (fit.js), which has tests of its own."""
    head = {"key": "head", "name": "head", "label": "Circumference", "body": ["48", "52", "56", "60"]}
    card = {**NOTHING, "sizes": SIZES, "measures": [{**head, "finished": ["44", "48", "52", "56"], "meant": None}]}
    asked = [
        ["head", "56", "cm"],
        ["head", "22 in", "cm"],
        ["head", "58", "cm"],
        ["head", "90", "cm"],
        ["bust", "56", "cm"],
    ]
    program = (
        "return given[1].map((one) => find.body(given[0], ...one))"
        ".map(({ places, words }) => [places, words.replaceAll('\\u00a0', ' ')]);"
    )
    told = in_node(SCRIPTS, program, [card, asked])
    assert told[0] == [[2], "Your head, 56 cm: size Adult for 56 cm, circumference 52 cm."]
    assert told[1][0] == [2]
    assert told[2][0] == [2, 3]
    assert told[3:] == [[[], ""], [[], ""]]
    wrong = in_node(
        SCRIPTS, "return given.map((one) => find.unmeasured(one, 'cm'));", ["56", "22 in", "abc", "0", "999", "-5"]
    )
    assert [bool(one) for one in wrong] == [False, False, True, True, True, True]


def test_every_card_says_what_it_knows(sample_proofed: tuple[Proofed, ...], sample_project: Project) -> None:
    assert sample_project.findings == ()
    by_title = {one["words"].split()[0]: one for one in data_of(sample_proofed)}
    hat = by_title["Hat"]
    assert [size["name"] for size in hat["sizes"]] == list(sample_proofed[1].graded.sizes)
    assert [yarn["name"] for yarn in hat["yarns"]] == ["Main", "Second"]
    assert hat["yarns"][1]["length"] is None
    assert by_title["A"]["yarns"][0]["weight"] == "medium"
    assert by_title["A"]["sizes"] == [{"key": "one-size", "name": "One size"}]
