"""In: definitions in any order, gauges, passages. Out: every name worked out once, by the gauge it was meant for."""

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizewright.grade.graded import Graded
from sizewright.grade.run import grade
from sizewright.proof.gauges import gauge_behind, only_gauge
from sizewright.proof.rules.broken_repeat import nearest_fits
from sizewright.read.folder import read_text

Grade = Callable[..., Graded]

THOROUGH = settings(derandomize=True, max_examples=100, deadline=None)


def exactly(*numbers: int | str) -> tuple[Fraction, ...]:
    return tuple(map(Fraction, numbers))


LONG = 3000  # definitions; deeper than the stack of any interpreter


def test_a_long_chain_is_worked_out_from_its_end(graded: Grade) -> None:
    lines = [f"n{number} = n{number + 1} + 1 st" for number in range(LONG)]
    found = graded(*lines, f"n{LONG} = 2 st")
    assert found.findings == ()
    assert found.quantities["n0"].result.values == exactly(LONG + 2)
    assert found.quantities["n0"].relies_on == ("n1",)


def test_a_long_circle_is_one_finding_and_takes_what_relies_on_it_along(graded: Grade) -> None:
    lines = [f"n{number} = n{(number + 1) % LONG} + 1 st" for number in range(LONG)]
    found = graded(*lines, "beside = n5 * 2", "free = 2 st")
    assert [finding.rule for finding in found.findings] == ["circle"]
    assert set(found.quantities) == {"free"}


@pytest.mark.parametrize(
    ("lines", "circles"),
    [
        (("a = a",), ["a → a"]),
        (("a = b", "b = a"), ["a → b → a"]),
        (("x = a", "a = b", "b = a"), ["a → b → a"]),
        (("a = b", "b = a", "c = d", "d = c"), ["a → b → a", "c → d → c"]),
        (("a = b + c", "b = a", "c = a"), ["a → c → a"]),  # one circle of a knot is enough to begin with
        (("a = 1 st, nearest multiple of a",), ["a → a"]),
    ],
)
def test_a_circle_is_shown(graded: Grade, lines: tuple[str, ...], circles: list[str]) -> None:
    found = graded(*lines)
    assert [finding.message for finding in found.findings] == [
        f"These names are defined by one another: {circle}." for circle in circles
    ]
    assert found.quantities == {}


def test_a_name_is_told_missing_where_it_stands_and_not_where_it_is_missed(graded: Grade) -> None:
    found = graded("a = nothing * 2", "b = a + 1", "c = b + nothing")
    assert [(finding.rule, finding.span and finding.span.line) for finding in found.findings] == [
        ("unknown-name", 6),
        ("unknown-name", 8),
    ]


# ----------------------------------------------------------------------------------------------------------- the gauges

TWO = "gauge:\n  body: {stitches: 22 st / 10 cm, rows: 30 rnd / 10 cm}\n  ribbing: {stitches: 26 st / 10 cm}\n"
ONE = "gauge: {stitches: 22 st / 10 cm, rows: 30 row / 10 cm}\n"


def behind(found: Graded, name: str) -> Fraction | None:
    named = found.quantities[name]
    assert named.formula is not None
    return gauge_behind(found, named.formula, named.result.dimension)


def test_a_count_is_measured_at_the_gauge_it_was_worked_out_with(graded: Grade) -> None:
    found = graded(
        "around = 50 cm",
        "body_sts = around * body.stitches, nearest even",
        "rib_sts = around * ribbing.stitches, nearest even",
        "less = body_sts - 2 st",
        "mixed = body_sts + rib_sts",
        "typed = 72 st",
        "rounds = 10 cm * body.rows",
        header=TWO,
    )
    assert behind(found, "body_sts") == behind(found, "less") == Fraction("2.2")
    assert behind(found, "rib_sts") == Fraction("2.6")
    assert behind(found, "mixed") is None, "two gauges: no width can be told"
    assert behind(found, "typed") is None
    assert behind(found, "rounds") == 3
    assert only_gauge(found, found.quantities["typed"].result.dimension) is None


def test_where_there_is_one_gauge_a_typed_count_is_measured_by_it(graded: Grade) -> None:
    found = graded("typed = 72 st", "worked = 72 row", header=ONE)
    assert behind(found, "typed") == Fraction("2.2")
    assert behind(found, "worked") == 3


def test_a_gauge_of_each_size_tells_no_width_of_all(graded: Grade) -> None:
    sizes = "sizes:\n  A: {stitch_gauge: 22 st / 10 cm}\n  B: {stitch_gauge: 24 st / 10 cm}\n"
    found = graded("around = 50 cm * stitch_gauge", header=sizes)
    assert found.quantities["around"].result.values == exactly(110, 120)
    assert behind(found, "around") is None


@pytest.mark.parametrize(
    ("count", "of", "plus", "fits"),
    [
        ("74", 8, 0, (72, 80)),
        ("71.5", 8, 0, (64, 72)),
        ("80", 18, 6, (78, 96)),
        ("3", 8, 5, (13,)),  # one repeat at least
        ("7", 8, 0, (8,)),
        ("-4", 8, 0, (8,)),
    ],
)
def test_the_nearest_counts_that_fit(count: str, of: int, plus: int, fits: tuple[int, ...]) -> None:
    assert nearest_fits(Fraction(count), Fraction(of), Fraction(plus)) == exactly(*fits)


@THOROUGH
@given(
    scale=st.fractions(min_value=Fraction(1, 8), max_value=8, max_denominator=16),
    chests=st.lists(st.integers(40, 160), min_size=3, max_size=3),
)
def test_counts_stay_when_lengths_and_gauges_are_scaled_together(
    graded: Grade, scale: Fraction, chests: list[int]
) -> None:
    """Twice the width at half the gauge is the same knitting: rounding in between must not know the unit."""

    def counts(factor: Fraction) -> list[tuple[Fraction, ...]]:
        def length(value: int) -> str:
            return f"({(value * factor).numerator}/{(value * factor).denominator} cm)"

        sizes = "\n".join(f"  S{n}: {{chest: {length(chest)}}}" for n, chest in enumerate(chests))
        found = graded(
            f"ease = {length(5)}",
            "cast_on = (chest + ease) * stitch_gauge, nearest multiple of 4 plus 2",
            "depth = cast_on / stitch_gauge / 3",
            "rounds = depth * row_gauge, up to even",
            "left = left_over(cast_on, 8 st)",
            header=f"sizes:\n{sizes}\ngauge: {{stitches: 22 st / {length(10)}, rows: 30 row / {length(10)}}}\n",
        )
        assert found.findings == ()
        return [found.quantities[name].result.values for name in ("cast_on", "rounds", "left")]

    assert counts(scale) == counts(Fraction(1))


def test_every_value_keeps_what_it_was_before_its_rounding(graded: Grade, sizes: str) -> None:
    found = graded("cast_on = chest * 22 st / 10 cm, nearest multiple of 4", header=sizes).quantities["cast_on"]
    assert found.result.unrounded == exactly(176, 198, "223.52")
    assert found.result.values == exactly(176, 200, 224)


def test_a_tie_goes_up(graded: Grade) -> None:
    found = graded("a = 110 st, nearest multiple of 4", "b = -2 st, nearest multiple of 4", "c = 2.5, nearest whole")
    values = [named.result.values for named in found.quantities.values()]
    assert values == [exactly(112), exactly(0), exactly(3)]


def test_a_passage_is_worked_out_by_the_places_of_its_sizes() -> None:
    text = "---\ntitle: A\nsizes: [S, M, L]\n---\n::: sizes L, S\n{4 (5, 6) st}\n:::\n"
    found = grade(read_text(text).patterns[0])
    (((span, _), values),) = found.inserts.items()
    assert values.values == exactly(4, 5, 6)
    assert found.read_in(("S", "L")) == ((0, "S"), (2, "L"))
    assert found.read_in(None) == ((0, "S"), (1, "M"), (2, "L"))
    assert span.line == 6


def test_ease_is_the_finished_measurement_less_the_body(graded: Grade, sizes: str) -> None:
    """Source: tincanknits, knotions: ease = finished - body; positive = larger than the body."""
    finished = "finished: [{label: Bust, value: chest + 5 cm, body: chest}, {label: Length, value: 60 cm}]\n"
    bust, length = graded("a = 1", header=sizes + finished).finished
    assert bust.ease == exactly(5, 5, 5)
    assert (length.body, length.ease) == (None, None)
