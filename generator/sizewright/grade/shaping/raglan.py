"""In: the stitches of body and sleeves below and above a raglan yoke, and its rounds. Out: decreases at two rates."""

from dataclasses import dataclass

from sizewright.grade.shaping.over_rows import paired
from sizewright.grade.shaping.plan import Impossible, Plan, Result, of_rows, of_stitches, plain, rows, stitches

_LEAST = 4  # stitches left in a section: the two decreases and their edge stitches take six, and leave four


@dataclass(frozen=True, slots=True)
class _Rates:
    """How many times every 4th and every 2nd round come, from one decrease to the next, over the same rounds."""

    slow: int
    fast: int


def _rates(decreases: int, rounds: int) -> _Rates:
    """The rates of so many decreases behind the first, over rounds between twice and four times as many."""
    slow = rounds // 2 - decreases
    return _Rates(slow, decreases - slow)


def _decreases(start: int, end: int, where: str) -> int:
    """The rounds in which a section loses a stitch at either side."""
    if end < _LEAST:
        raise Impossible(f"{end} sts are left in the {where}; the decreases at its two sides need {_LEAST}.")
    if start <= end:
        raise Impossible(f"the {where} has {start} sts and should keep {end}: there is nothing to decrease.")
    return paired(start - end, f"decreases in the {where}")


def _span(body: int, sleeve: int, rounds: int) -> int:
    """The rounds from the first decrease to the last, an even number."""
    most, least = max(body, sleeve) - 1, min(body, sleeve) - 1
    if rounds - 1 < 2 * most:
        raise Impossible(
            f"{most + 1} decreases, one every 2nd round, need {2 * most + 1} rounds, there are {rounds}; "
            f"{(rounds - 1) // 2 + 1} fit."
        )
    if most > 2 * least:
        raise Impossible(
            f"{body} decreases of the body and {sleeve} of the sleeve are too far apart: one every 2nd round and one "
            f"every 4th is the widest; with {most + 1} go {(most + 1) // 2 + 1} at least."
        )
    return min(rounds - 1, 4 * least) // 2 * 2


def _raglan(body: int, sleeve: int, body_left: int, sleeve_left: int, rounds: int) -> Result:
    in_body, in_sleeve = _decreases(body, body_left, "body"), _decreases(sleeve, sleeve_left, "sleeve")
    span = _span(in_body, in_sleeve, rounds)
    of_body, of_sleeve = _rates(in_body - 1, span), _rates(in_sleeve - 1, span)
    mixed = of_body.slow - of_sleeve.slow
    found = _cycles(mixed, min(of_body.slow, of_sleeve.slow), min(of_body.fast, of_sleeve.fast))
    left = 2 * (body_left + sleeve_left)
    return {**found, "even": rounds - 1 - span, "body_decreases": in_body, "sleeve_decreases": in_sleeve, "left": left}


def _cycles(mixed: int, slow: int, fast: int) -> Result:
    """Four rounds that are worked once at least: decreases of one kind in the second, of both in the fourth.

    Where body and sleeve go at the same rates, they take the place of one slow interval or of two fast ones.
    """
    found = {"body": 0, "sleeve": 0, "both": 0, "neither": 0, "again": 0, "slow": slow, "fast": fast}
    if mixed:
        kind = "body" if mixed < 0 else "sleeve"
        return {**found, kind: 2, "again": abs(mixed) - 1}
    if slow:
        return {**found, "neither": 1, "slow": slow - 1}
    if fast < 2:
        raise Impossible("fewer than 3 decreases make no raglan line; write their rounds out.")
    return {**found, "both": 4, "fast": fast - 2}


RAGLANS = (
    Plan(
        "raglan",
        (stitches("front"), stitches("upper_sleeve"), stitches("front_left"), stitches("sleeve_left"), rows("rounds")),
        (
            *of_rows("even"),
            *plain("slow", "body", "sleeve", "both", "neither", "again", "fast", "body_decreases", "sleeve_decreases"),
            *of_stitches("left"),
        ),
        _raglan,
        "The decreases of a raglan yoke in the round, at two rates: the stitches of front (or back) and sleeve between "
        "markers, what they keep at the neck, and the rounds: `raglan(104 st, 68 st, 52 st, 28 st, 60 row)`. The body "
        "loses 26 pairs and the sleeve 20, each every 4th round at first and every 2nd round at last, over the same "
        "rounds; where their rates differ, the one that goes faster decreases alone in between. Rounds that neither "
        "needs are worked even before. The round begins at a marker before the front, and a marker lies on each raglan "
        "line. Source: common practice, no source; it comes out exactly.",
    ),
)
