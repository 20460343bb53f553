"""In: the stitches of body and sleeves below and above a raglan yoke, and its rounds. Out: its shaping at two rates.

A yoke knitted from the neck downwards is one knitted upwards, read backwards: increases where there were decreases.
"""

from dataclasses import dataclass

from sizewright.grade.shaping.over_rows import paired
from sizewright.grade.shaping.plan import Impossible, Plan, Result, of_rows, of_stitches, plain, rows, stitches

_LEAST = 4  # stitches left in a section: the two decreases and their edge stitches take six, and leave four
_BEGUN = 2  # stitches that a section begins with: one at either side of its increases


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


def _increases(start: int, end: int, where: str) -> int:
    """The rounds in which a section gains a stitch at either side."""
    if start < _BEGUN:
        raise Impossible(f"the {where} begins with {start} sts; the increases at its two sides need {_BEGUN}.")
    if end <= start:
        raise Impossible(f"the {where} has {start} sts and should come to {end}: there is nothing to increase.")
    return paired(end - start, f"increases in the {where}")


def _span(body: int, sleeve: int, rounds: int, change: str) -> int:
    """The rounds from the first change to the last, an even number."""
    most, least = max(body, sleeve) - 1, min(body, sleeve) - 1
    if rounds - 1 < 2 * most:
        raise Impossible(
            f"{most + 1} {change}, one every 2nd round, need {2 * most + 1} rounds, there are {rounds}; "
            f"{(rounds - 1) // 2 + 1} fit."
        )
    if most > 2 * least:
        raise Impossible(
            f"{body} {change} of the body and {sleeve} of the sleeve are too far apart: one every 2nd round and one "
            f"every 4th is the widest; with {most + 1} go {(most + 1) // 2 + 1} at least."
        )
    return min(rounds - 1, 4 * least) // 2 * 2


def _at_two_rates(in_body: int, in_sleeve: int, rounds: int, change: str) -> Result:
    """How often each round comes: so many changes of a section of the body and of a sleeve, over the same rounds."""
    span = _span(in_body, in_sleeve, rounds, change)
    of_body, of_sleeve = _rates(in_body - 1, span), _rates(in_sleeve - 1, span)
    mixed = of_body.slow - of_sleeve.slow
    found = _cycles(mixed, min(of_body.slow, of_sleeve.slow), min(of_body.fast, of_sleeve.fast))
    return {**found, "even": rounds - 1 - span, f"body_{change}": in_body, f"sleeve_{change}": in_sleeve}


def _raglan(body: int, sleeve: int, body_left: int, sleeve_left: int, rounds: int, back_more: int) -> Result:
    in_body, in_sleeve = _decreases(body, body_left, "body"), _decreases(sleeve, sleeve_left, "sleeve")
    found = _at_two_rates(in_body, in_sleeve, rounds, "decreases")
    return {**found, "left": 2 * (body_left + sleeve_left) + back_more}


def _from_neck(body: int, sleeve: int, body_full: int, sleeve_full: int, rounds: int, back_more: int) -> Result:
    in_body, in_sleeve = _increases(body, body_full, "body"), _increases(sleeve, sleeve_full, "sleeve")
    found = _at_two_rates(in_body, in_sleeve, rounds, "increases")
    return {**found, "total": 2 * (body_full + sleeve_full) + back_more}


def _cycles(mixed: int, slow: int, fast: int) -> Result:
    """Four rounds that are worked once at least: changes of one kind in the second, of both in the fourth.

    Where body and sleeve go at the same rates, they take the place of one slow interval or of two fast ones.
    """
    found = {"body": 0, "sleeve": 0, "both": 0, "neither": 0, "again": 0, "slow": slow, "fast": fast}
    if mixed:
        kind = "body" if mixed < 0 else "sleeve"
        return {**found, kind: 2, "again": abs(mixed) - 1}
    if slow:
        return {**found, "neither": 1, "slow": slow - 1}
    if fast < 2:
        raise Impossible("fewer than 3 shaping rounds make no raglan line; write them out.")
    return {**found, "both": 4, "fast": fast - 2}


_TIMES = plain("slow", "body", "sleeve", "both", "neither", "again", "fast")
_BACK_MORE = (
    "Where the back has more stitches than the front, all the way, the last value tells how many. The round begins at "
    "a marker before the front, and a marker lies on each raglan line. Source: common practice, no source; it comes "
    "out exactly."
)

RAGLANS = (
    Plan(
        "raglan",
        (
            *(stitches(name) for name in ("front", "upper_sleeve", "front_left", "sleeve_left")),
            rows("rounds"),
            stitches("back_more", 0),
        ),
        (*of_rows("even"), *_TIMES, *plain("body_decreases", "sleeve_decreases"), *of_stitches("left")),
        _raglan,
        "The decreases of a raglan yoke in the round, at two rates: the stitches of front (or back) and sleeve between "
        "markers, what they keep at the neck, and the rounds: `raglan(104 st, 68 st, 52 st, 28 st, 60 row)`. The body "
        "loses 26 pairs and the sleeve 20, each every 4th round at first and every 2nd round at last, over the same "
        "rounds; where their rates differ, the one that goes faster decreases alone in between. Rounds that neither "
        f"needs are worked even before. {_BACK_MORE}",
    ),
    Plan(
        "raglan_from_neck",
        (
            *(stitches(name) for name in ("front", "upper_sleeve", "front_full", "sleeve_full")),
            rows("rounds"),
            stitches("back_more", 0),
        ),
        (*_TIMES, *of_rows("even"), *plain("body_increases", "sleeve_increases"), *of_stitches("total")),
        _from_neck,
        "The increases of a raglan yoke knitted from the neck downwards, in the round, at two rates: the stitches of "
        "front (or back) and sleeve at the neck, what they come to, and the rounds: `raglan_from_neck(52 st, 28 st, "
        "104 st, 68 st, 60 row)`. The body gains 26 pairs and the sleeve 20, each every 2nd round at first and every "
        "4th round at last, over the same rounds; where their rates differ, the one that goes faster increases alone "
        f"in between. Rounds that neither needs are worked even behind. {_BACK_MORE}",
    ),
)
