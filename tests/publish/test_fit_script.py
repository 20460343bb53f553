"""In: measures by the thousand. Out: the page proposes the size, and tells the ease, that Python reckons."""

import json
import random
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

import pytest

from sizewright.base.printing import printed
from sizewright.base.units import LENGTH
from sizewright.publish.view import PatternView
from sizewright.read.typed_numbers import exact

InNode = Callable[..., Any]
ViewOf = Callable[[str, str], PatternView]
Said = Callable[..., list[list[str]]]
SCRIPTS = ["exact", "fit", "fit_words"]
INCH = Fraction(254, 100)  # cm, exactly: 16 CFR 500.19(a)


@dataclass(frozen=True, slots=True)
class Made:
    """A measure of a pattern: bodies and finished measurements in cm, and the ease that is meant, of what."""

    body: tuple[Fraction, ...]
    finished: tuple[Fraction, ...]
    meant: tuple[str, Fraction, Fraction] | None

    def data(self) -> dict[str, object]:
        meant = self.meant and {"of": self.meant[0], "least": str(self.meant[1]), "most": str(self.meant[2])}
        texts = {"body": [*map(str, self.body)], "finished": [*map(str, self.finished)]}
        return {"key": "head", "name": "head", "label": "Around", **texts, "meant": meant}


# ------------------------------------------------------------------------------ the same by other means: fractions only


@cache
def in_print(values: tuple[Fraction, ...], unit: str) -> list[Fraction]:
    """The numbers of the page, read back."""
    series = next(one for one in printed(values, LENGTH) if one.unit == unit).values
    texts = series * len(values) if len(series) == 1 else series
    return [-exact(text[1:]) if text.startswith("−") else exact(text) for text in texts]


def off_and_middle(made: Made, at: int, value: Fraction, unit: str) -> tuple[Fraction, Fraction]:
    body = in_print(made.body, unit)[at]
    if made.meant is None:
        return body - value, Fraction(0)
    of, *ends = made.meant
    least, most = (end * value if of == "body" else end / (INCH if unit == "in" else 1) for end in ends)
    ease = in_print(made.finished, unit)[at] - value
    off = ease - most if ease > most else ease - least if ease < least else Fraction(0)
    return off, abs(ease - (least + most) / 2)


def proposed(made: Made, value: Fraction, unit: str) -> dict[str, object]:
    bodies = in_print(made.body, unit)
    places = range(len(bodies))
    fits = [at for at in places if bodies[at] == value]
    below = [at for at in places if bodies[at] == max((one for one in bodies if one < value), default=None)]
    above = [at for at in places if bodies[at] == min((one for one in bodies if one > value), default=None)]
    kind = "made" if fits else "between" if below and above else "outside"
    those = fits or below + above
    offs = {at: off_and_middle(made, at, value, unit) for at in those}
    best = min((abs(off), middle) for off, middle in offs.values())
    nearest = [at for at in those if (abs(offs[at][0]), offs[at][1]) == best]
    if kind == "outside" and not (made.meant and any(off == 0 for off, _ in offs.values())):
        nearest = []
    finished = in_print(made.finished, unit) if made.finished else None
    told = [[at, str(finished[at] - value) if finished else None, str(offs[at][0])] for at in those]
    return {"kind": kind, "those": told, "proposed": nearest}


# ---------------------------------------------------------------------------------------------------------------- tests


def drawn(seed: int, many: int) -> list[tuple[Made, Fraction, str]]:
    """Tables in order and out of it, with sizes that print alike; measures on them, beside them and far from them."""
    chance = random.Random(seed)  # noqa: S311 (no secret)
    cases = []
    for _ in range(many):
        unit = chance.choice(("cm", "in"))
        step = chance.choice((Fraction(1, 2), INCH / 2, INCH / 4, Fraction(1, 3)))
        body = tuple(chance.randint(20, 200) * step for _ in range(chance.randint(2, 10)))
        if chance.random() < 0.8:
            body = tuple(sorted(body))
        finished = tuple(max(Fraction(1), one + chance.randint(-30, 40) * Fraction(7, 23)) for one in body)
        least = Fraction(chance.randint(-20, 10))
        of, scale = chance.choice((("cm", 1), ("body", 100)))
        meant = (of, least / scale, (least + chance.randint(0, 12)) / scale) if chance.random() < 0.6 else None
        if chance.random() < 0.1:
            finished, meant = (), None
        printed_bodies = in_print(body, unit)
        near = chance.choice(printed_bodies) + chance.randint(-8, 8) * chance.choice((Fraction(1, 4), Fraction(1, 8)))
        cases.append((Made(body, finished, meant), abs(near) or Fraction(1), unit))
    return cases


def typed(value: Fraction) -> str:
    whole, part = divmod(value.numerator, value.denominator)
    return f"{whole} {part}/{value.denominator}" if part else f"{whole}"


def test_the_page_proposes_what_python_reckons(in_node: InNode) -> None:
    cases = drawn(11, 1500)
    program = (
        "const t = (one) => one && exact.text(one); return given.map(([measure, typed, unit]) => {"
        " const { kind, those, proposed } = fit.answer(measure, typed, unit); return { kind, proposed,"
        " those: those.map((one) => [one.size, t(one.ease), t(one.off)]) }; });"
    )
    given = [[made.data(), typed(value), unit] for made, value, unit in cases]
    expected = [proposed(*case) for case in cases]
    assert {str(one["kind"]) for one in expected} == {"made", "between", "outside"}
    assert in_node(SCRIPTS, program, given) == expected


def test_of_several_measures_the_worst_decides(in_node: InNode) -> None:
    pairs = list(zip(drawn(12, 600), drawn(13, 600), strict=True))
    pairs = [(one, other) for one, other in pairs if len(one[0].body) == len(other[0].body)]
    assert len(pairs) > 50
    program = (
        "return given.map((typed) => { const { proposed, sizes, worst } = fit.together(typed.map((one) =>"
        " fit.answer(...one))); return [proposed, sizes, worst ? exact.text(worst) : null]; });"
    )
    given = [[[made.data(), typed(value), unit] for made, value, unit in pair] for pair in pairs]
    expected = [together(pair) for pair in pairs]
    assert [] in [one[0] for one in expected]
    assert in_node(SCRIPTS, program, given) == expected


def together(cases: tuple[tuple[Made, Fraction, str], ...]) -> list[object]:
    answers = [proposed(*case) for case in cases]
    if not all(one["proposed"] for one in answers):
        return [[], [], None]
    sizes = sorted({at for one in answers for at, *_ in one["those"]})  # type: ignore[attr-defined]
    worst = {
        at: max(
            abs(off_and_middle(made, at, value, unit)[0]) * (INCH if unit == "in" else 1) for made, value, unit in cases
        )
        for at in sizes
    }
    best = min(worst.values())
    return [[at for at in sizes if worst[at] == best], sizes, str(best)]


TYPED = {
    "56": ["56", "cm"],
    "56 cm": ["56", "cm"],
    "22 1/4 in": ["89/4", "in"],
    "22,5": ["45/2", "cm"],
    "22.5″": ["45/2", "in"],
    '22¼"': ["89/4", "in"],
    "22-1/4 inches": ["89/4", "in"],
    " 560 mm ": ["56", "cm"],
    "56CM.": ["56", "cm"],
    **dict.fromkeys(("0", "-5 cm", "", "cm", "about 56", "1e9", "9" * 5000, "5 ft", "5 cm in", "1/0 in")),
}


def test_a_measure_is_read_as_people_type_it(in_node: InNode) -> None:
    program = "return given.map((one) => fit.read(one, 'cm')).map((one) => one && [exact.text(one.value), one.unit]);"
    assert in_node(SCRIPTS, program, list(TYPED)) == list(TYPED.values())


# --------------------------------------------------------------------------------------------------------- in sentences

HAT = """sizes: {Child: {head: 51 cm}, Adult: {head: 57 cm}, Large: {head: 61 cm}}
gauge: {stitches: 20 st / 10 cm}
finished: [{label: Circumference, value: around, body: head, ease: -15 % to -5 %}]
"""
LOOSE = """sizes: {S: {bust: 80 cm, arm: 25 cm}, M: {bust: 90 cm, arm: 30 cm}, L: {bust: 100 cm, arm: 33 cm}}
gauge: {stitches: 20 st / 10 cm}
finished: [{label: Chest, value: bust + 8 cm, body: bust}, {label: Sleeve, value: arm + 4 cm, body: arm}]
"""
SCARF = "sizes: {Narrow: {width: 20 cm}, Wide: {width: 28 cm}}\ngauge: {stitches: 20 st / 10 cm}\n"
SAID = """
    return given.map(([{ sizes, measures }, typed]) => {
      const names = sizes.map(({ name }) => name);
      const answers = typed.map((one, at) => fit.answer(measures[at], one, "cm"));
      const said = answers.map((one, at) => fitWords.answer(names, one, typed[at]));
      if (said.length > 1) said.push(fitWords.together(names, answers));
      return said.map(({ lead, items, verdict, meaning }) =>
        [lead, ...items, verdict, meaning].filter(Boolean).join(" ").replaceAll("\u00a0", " "));
    });
"""


@pytest.fixture
def said(view_of: ViewOf, in_node: InNode) -> Said:
    """What the page says, in one run: for each `["56 cm", …]` one answer a measure, and one of all together."""

    def answers(header: str, *typed: list[str]) -> list[list[str]]:
        fit = view_of(header, "```grade\naround = head * 9/10\n```" if "head" in header else "").fit
        assert fit is not None
        told: list[list[str]] = in_node(SCRIPTS, SAID, [[json.loads(fit.data), one] for one in typed])
        return told

    return answers


def words(text: str) -> str:
    return " ".join(text.split())


def test_both_sizes_are_told_and_the_nearer_named_and_none_proposed_beyond_the_table(said: Said) -> None:
    between, beyond, still, other, long, none = said(
        HAT, *([one] for one in ("56", "70", "62 cm", "22", "5000 cm", "big"))
    )
    assert between == [
        words("""
        Your head 56 cm lies between Child (made for 51 cm) and Adult (made for 57 cm). Child comes out at
        45.9 cm: 10.1 cm of negative ease, 1.7 cm less room than the pattern means. Adult comes out at 51.3
        cm: 4.7 cm of negative ease, as the pattern means. Adult is nearer to the ease that the pattern
        means. The pattern means 2.8 cm to 8.4 cm of negative ease for a head of 56 cm.
        """)
    ]
    assert beyond == [
        words("""
        Your head 70 cm is outside the table: 9 cm more than the largest, Large (made for 61 cm). No size is
        proposed. Large comes out at 54.9 cm: 15.1 cm of negative ease, 4.6 cm less room than the pattern
        means.
        """)
    ]
    fits = "It still has the ease that the pattern means. The pattern means 3.1 cm to 9.3 cm of negative ease"
    assert still[0].endswith(f"{fits} for a head of 62 cm.")
    assert "22 in would be within it: is the unit right?" in other[0]
    assert long == ["5000 cm is more than a tape has. Is the unit right?"]
    assert none[0].startswith("“big” is no measure.")


def test_several_measures_are_weighed_together(said: Said) -> None:
    (bust, arm, both), (*_, beyond) = said(LOOSE, ["92 cm", "33 cm"], ["92", "60"])
    assert "M comes out at 98 cm: 6 cm of positive ease, 2 cm less room than the pattern means." in bust
    assert arm == words("""
        Your arm 33 cm is what size L is made for. L comes out at 37 cm: 4 cm of positive ease, as the
        pattern means. The pattern means 4 cm of positive ease: that of this size on the body it is made
        for.
    """)
    assert both == words("""
        All together, M comes nearest to the ease that the pattern means, nowhere further than 3 cm from it.
        M: bust 6 cm of positive ease, 2 cm less room than the pattern means; arm 1 cm of positive ease, 3
        cm less room than the pattern means. L: bust 16 cm of positive ease, 8 cm more room than the pattern
        means; arm 4 cm of positive ease, as the pattern means.
    """)
    assert beyond == "Not all your measures lie within the table: no size is proposed for them together."


def test_what_no_body_is_measured_for_has_no_ease(said: Said) -> None:
    assert said(SCARF, ["24 cm"]) == [
        [
            words("""
        A width of 24 cm lies between Narrow (made for 20 cm) and Wide (made for 28 cm). Narrow is made for
        20 cm: 4 cm less. Wide is made for 28 cm: 4 cm more. Narrow and Wide are equally near.
        """)
        ]
    ]


def test_what_cannot_be_chosen_by_measure_is_not_offered(view_of: ViewOf) -> None:
    assert view_of("sizes: {Only: {head: 50 cm}}\n", "").fit is None
    assert view_of("sizes: {S: {age: 2 years}, M: {age: 5 years}}\n", "").fit is None
    assert view_of("sizes: {S: {side: 100 cm}, M: {side: 400 cm}}\n", "").fit is None
