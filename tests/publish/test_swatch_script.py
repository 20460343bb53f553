"""In: patterns and gauges by the thousand. Out: the page's script comes to what the program does, exact and printed."""

import json
import random
from collections.abc import Callable
from fractions import Fraction
from math import ceil
from typing import Any

import pytest

from sizewright.base.printing import printed
from sizewright.base.units import LENGTH, MASS
from sizewright.grade.at_gauge import at_gauge
from sizewright.grade.functions import FUNCTIONS
from sizewright.grade.run import grade
from sizewright.publish.view_my_gauge import my_gauge_view
from sizewright.publish.view_sizes import size_choices
from sizewright.publish.yarn_range import known, measured
from sizewright.read.folder import read_text
from sizewright.read.project import Project
from sizewright.work.at_row_gauge import tall
from sizewright.work.run import work
from sizewright.work.worked import Worked

InNode = Callable[..., Any]
OWN = {"body.stitches": "11/5", "body.rows": "3", "cuff.stitches": "5/2", "cuff.rows": "16/5"}

HEADER = """---
title: Drawn at random
sizes:
  S: {chest: 80 cm, tall: 52.5 cm}
  M: {chest: 91 cm, tall: 55 cm}
  L: {chest: 40 in, tall: 55 cm}
gauge:
  body: {stitches: 22 st / 10 cm, rows: 30 row / 10 cm}
  cuff: {stitches: 25 st / 10 cm, rows: 32 row / 10 cm}
finished:
FINISHED
---
```grade
sts   = chest * body.stitches, nearest multiple of 4
rows  = tall * body.rows, up to even
cuffs = chest / 4 * cuff.stitches, nearest even
depth = 20 (22, 24) cm
deep  = depth * cuff.rows, nearest whole
wide  = sts / body.stitches
high  = rows / body.rows
grip  = cuffs / cuff.stitches, nearest 0.5 cm
rest  = tall - high / 3, up to 1 in
```
```work
Cast on {sts} sts. Join to work in the round.
Rnd 1: Knit.
Rep Rnd 1 until piece measures {rest}.
```
"""
# What a length is put together from, and what may be done with lengths: every function of the language.
LEAVES = ("wide", "high", "grip", "rest", "chest", "depth", "7 cm", "sts / cuff.stitches", "(rows + 3 row) / body.rows")
DOES = (
    "({} + {})",
    "({} - {} / 3)",
    "min({}, {})",
    "max({}, {}, 30 cm)",
    "abs({} - {})",
    "half({} + {})",
    "{} * floor({} / 4 cm)",
    "{} / ceil({} / 9 cm)",
    "(smallest({}) + {})",
    "(largest({}) + {})",
    "(finished(sts, body.stitches) - {} + {})",
    "ease_of({}, {})",
    "(to_next({}) + {})",
    "(smallest_step({}) - {})",
    "(largest_step({}) * 2 - {})",
    "{} * repeats({}, 11 cm)",
    "(left_over({}, 6 cm) - {})",
    "{} * {} / 10 cm",
    "({} - -{})",
)
ROUNDINGS = ("", "", ", nearest 0.5 cm", ", up to 1 in", ", down to 0.25 in")


def drawn(seed: int, many: int) -> Worked:
    """A pattern with so many finished lengths, each by a formula drawn at random."""
    chance = random.Random(seed)  # noqa: S311 (no secret)

    def length(deep: int) -> str:
        if not deep:
            return chance.choice(LEAVES)
        return chance.choice(DOES).format(length(chance.randrange(deep)), length(chance.randrange(deep)))

    lines = [
        f'  - {{label: "{place}", value: "{length(chance.randint(0, 3))}{chance.choice(ROUNDINGS)}"}}'
        for place in range(many)
    ]
    lines.append('  - {label: "deep", value: depth}')
    graded = grade(read_text(HEADER.replace("FINISHED", "\n".join(lines))).patterns[0])
    assert not graded.findings
    return work(graded)


@pytest.fixture(scope="module")
def demo(demo_project: Project) -> tuple[Worked, ...]:
    return tuple(work(grade(pattern)) for pattern in demo_project.patterns)


def data_of(worked: Worked) -> dict[str, Any]:
    view = my_gauge_view(worked, size_choices(worked.graded.pattern.header.sizes), metric_first=True)
    assert view is not None
    data: dict[str, Any] = json.loads(view.data)
    return data


def gauges_at(seed: int, names: list[str], many: int) -> list[dict[str, Fraction]]:
    """Swatches as readers count them: 5 to 60 over 3 to 20 cm or some inches; some leave a gauge untold."""
    chance = random.Random(seed)  # noqa: S311 (no secret)
    found = []
    for _ in range(many):
        told = [name for name in names if chance.random() < 0.8]
        over = Fraction(chance.randint(6, 40), 2) * chance.choice((Fraction(1), Fraction(254, 100)))
        found.append({name: Fraction(chance.randint(10, 120), 2) / over for name in told})
    return found


PROGRAM = """
const t = (values) => values && values.map(exact.text);
return given.map(({ data, told }) => told.map((one) => {
  const gauges = one.map((text) => text && exact.of(text));
  const values = data.measures.map((measure) => swatch.measured(data, measure, gauges));
  return {
    measures: values.map(t),
    printed: values.map((all) => all && exact.printed.length(all)),
    tall: data.parts.map((part) => part.rows.map((rows, size) =>
      exact.text(swatch.tall(rows, part.worked[size], swatch.gauges(data, gauges)[part.gauge][0])))),
    yarn: data.yarns.map((yarn) => swatch.yarn(data, yarn, gauges)).map((one) => one && {
      after: t(one.after), balls: one.balls, mine: one.mine,
    }),
  };
}));
"""


def names_of(data: dict[str, Any], worked: Worked) -> list[str]:
    """The gauges by their places in the data."""
    gauges = [name for name, one in worked.graded.quantities.items() if one.formula is None and "gauge" in name]
    return gauges if len(data["own"]) == 2 else list(OWN)


def expected(worked: Worked, data: dict[str, Any], gauges: dict[str, Fraction]) -> dict[str, Any]:
    by_label = {one.measured.label: one.values for one in at_gauge(worked.graded, gauges)}
    values = [by_label.get(one["label"]) for one in data["measures"]]
    names = names_of(data, worked)
    own = {name: Fraction(text) for name, text in zip(names, data["own"], strict=True)}
    met = {**own, **gauges}
    return {
        "measures": [None if one is None else list(map(str, one)) for one in values],
        "printed": [None if one is None else in_print(one) for one in values],
        "tall": [
            [
                str(tall(rows, part.stretches[size], met[part.gauge]).length)
                for size, rows in enumerate(part.rows)
                if rows is not None
            ]
            for part in alike_once(worked)
        ],
        "yarn": [yarn_at(worked, place, own, gauges) for place in range(len(data["yarns"]))],
    }


def in_print(values: tuple[Fraction, ...]) -> list[dict[str, Any]]:
    many = len(values)
    return [
        {"unit": one.unit, "values": list(one.values * (many // len(one.values)))} for one in printed(values, LENGTH)
    ]


def alike_once(worked: Worked) -> list[Any]:
    found: dict[Any, Any] = {}
    for part in worked.parts:
        found.setdefault((part.piece, part.rows, part.stretches), part)
    return list(found.values())


def yarn_at(worked: Worked, place: int, own: dict[str, Fraction], gauges: dict[str, Fraction]) -> dict[str, Any]:
    """The mean of how much wider and how much taller a stitch is, times the rows there are more or fewer of.

    Rows whose gauge is not told change as stitches do.
    """
    need = known(worked)[place]
    wide = own["stitch_gauge"] / gauges.get("stitch_gauge", own["stitch_gauge"])
    high = own["row_gauge"] / gauges["row_gauge"] if "row_gauge" in gauges else wide
    share = (wide + high) / 2
    dimension = LENGTH if all(amount.length is not None for amount in need.reserved) else MASS
    amounts = [(measured(amount, dimension) or Fraction(0)) for amount in need.reserved]
    ball = measured(need.ball, dimension)
    assert ball is not None
    before, after = (
        [rows_in_all(worked, size, met) for size in range(len(amounts))] for met in (own, {**own, **gauges})
    )
    rows = [new / old if old else Fraction(1) for old, new in zip(before, after, strict=True)]
    return {
        "after": [str(amount * share * more) for amount, more in zip(amounts, rows, strict=True)],
        "balls": [amount.balls for amount in need.reserved],
        "mine": [ceil(amount * share * more / ball) for amount, more in zip(amounts, rows, strict=True)],
    }


def rows_in_all(worked: Worked, size: int, gauges: dict[str, Fraction]) -> Fraction:
    """The rows of all parts at these gauges; alike parts count once, and those whose rows are not known not at all."""
    parts = [part for part in alike_once(worked) if part.rows[size] is not None and part.gauge in gauges]
    lengths = (tall(part.rows[size], part.stretches[size], gauges[part.gauge]).length for part in parts)
    return sum((length * gauges[part.gauge] for length, part in zip(lengths, parts, strict=True)), Fraction(0))


def test_another_gauge_is_reckoned_alike(in_node: InNode, demo: tuple[Worked, ...]) -> None:
    patterns = [*demo, *(drawn(seed, 60) for seed in range(3))]
    given, wanted, compared = [], [], 0
    for seed, worked in enumerate(patterns):
        data = data_of(worked)
        names = names_of(data, worked)
        many = gauges_at(seed, names, 16)
        told = [[str(one[name]) if name in one else None for name in names] for one in many]
        given.append({"data": data, "told": told})
        wanted.append([expected(worked, data, gauges) for gauges in many])
        compared += len(many) * len(data["measures"]) * (len(data["sizes"]) or 1)
    assert compared > 9_000
    assert in_node(["exact", "swatch"], PROGRAM, given) == wanted


def test_at_its_own_gauge_a_pattern_comes_out_as_printed(in_node: InNode, demo: tuple[Worked, ...]) -> None:
    given = [{"data": data, "told": [data["own"]]} for data in map(data_of, demo)]
    for worked, data, (found,) in zip(demo, given, in_node(["exact", "swatch"], PROGRAM, given), strict=True):
        lengths = [one.finished for one in worked.graded.finished if one.finished.dimension == LENGTH]
        assert found["printed"] == [in_print(one.values) for one in lengths]
        assert [one["mine"] for one in found["yarn"]] == [one["balls"] for one in found["yarn"]]
        assert data["told"]


def test_the_script_knows_every_function_of_the_language(in_node: InNode) -> None:
    known_there = in_node(["exact", "swatch"], "return Object.keys(swatch.DONE)", None)
    assert set(known_there) == {*FUNCTIONS, "+", "-", "*", "/", "nearest", "up to", "down to"}


def test_what_an_expression_cannot_say_small_is_left_out() -> None:
    long = " + ".join(["wide"] * 150)
    graded = grade(read_text(HEADER.replace("FINISHED", f"  - {{label: L, value: {long}}}")).patterns[0])
    assert data_of(work(graded))["measures"] == []


@pytest.mark.parametrize(
    ("count", "over", "unit", "told"),
    [
        # 20 sts over 3.625 in are 5.517 sts to the inch (knittinghelp.com, the thread on how needles are changed)
        ("20", "3 5/8", "in", {"gauge": str(Fraction(20) / Fraction("3.625") / Fraction("2.54"))}),
        ("21,5", "10", "cm", {"gauge": "43/20"}),
        ("", "10", "cm", "count"),
        ("0", "10", "cm", "count"),
        ("-22", "10", "cm", "count"),
        ("twenty", "10", "cm", "count"),
        ("1000000000000", "0.1", "cm", "count"),
        ("22", "", "cm", "length"),
        ("22", "0", "cm", "length"),
        ("22", "-10", "cm", "length"),
        ("22", "1/0", "cm", "length"),
        ("22", "0.1", "cm", "length"),
        ("22", "400", "cm", "length"),
        ("88.5", "10", "cm", "count"),  # more than four times the gauge of the pattern
        ("5", "10", "cm", "count"),
    ],
)
def test_a_swatch_is_read_or_kindly_refused(
    swatches: Callable[..., dict[str, str]], count: str, over: str, unit: str, told: dict[str, str] | str
) -> None:
    found = swatches(count, over, unit)
    if isinstance(told, str):
        assert found["field"] == told
        assert found["words"].endswith(".")
    else:
        assert found == told


@pytest.fixture(scope="module")
def swatches(in_node: InNode) -> Callable[..., dict[str, str]]:
    """What the script makes of a swatch as typed, where the pattern has 22 sts in 10 cm; all asked in one process."""
    answers: dict[tuple[str, ...], dict[str, str]] = {}
    marks = test_a_swatch_is_read_or_kindly_refused.pytestmark
    asked = [tuple(case[:3]) for case in marks[0].args[1]]
    program = """return given.map((one) => swatch.counted(...one, exact.of("11/5"), "sts"))
      .map((one) => (one.gauge ? { gauge: exact.text(one.gauge) } : one));"""
    answers = dict(zip(asked, in_node(["exact", "swatch"], program, asked), strict=True))
    return lambda *case: answers[case]
