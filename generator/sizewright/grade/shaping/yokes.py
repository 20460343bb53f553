"""In: the stitches of a body, or of a yoke and its neck. Out: plans of circular yokes, by percentages and by rounds."""

from fractions import Fraction
from itertools import pairwise

from sizewright.grade.shaping.plan import Impossible, Plan, Result, number, of_rows, of_stitches, rows, share, stitches
from sizewright.grade.shaping.spread import RHYTHM, decreased, in_round

# Of all decreases, the parts made in the first and in the first two of three rounds that each take one third:
# 1/3, then 2/3 of what is left, of 1 − 8/27 in all.
_FIRST = Fraction(9, 19)
_SECOND = Fraction(15, 19)
_ROUNDS = ("first", "second", "third")


def nearest(value: Fraction, step: int = 1) -> int:
    """The multiple of a step next to a value; a tie goes up, as everywhere in the grading language."""
    steps = value / step
    return (2 * steps.numerator + steps.denominator) // (2 * steps.denominator) * step


def _shares(body: int, sleeve: Fraction, underarm: Fraction, neck: Fraction) -> Result:
    """The counts of a yoke sweater as shares of the body."""
    each, held = nearest(body * sleeve), nearest(body * underarm)
    yoke = body + 2 * each - 4 * held
    collar = nearest(body * neck)
    if held > each or 2 * held > body:
        raise Impossible(f"{held} sts held at each underarm are more than the sleeve's {each} sts or half the body's.")
    if collar >= yoke:
        raise Impossible(f"the neck of {collar} sts is no smaller than the yoke of {yoke} sts.")
    return {"sleeve": each, "underarm": held, "yoke": yoke, "neck": collar}


def _decreases(yoke: int, neck: int, rounds: int, repeat: int) -> Result:
    """Three decrease rounds at half the depth, three quarters and the top."""
    if neck >= yoke:
        raise Impossible(f"the neck of {neck} sts is no smaller than the yoke of {yoke} sts.")
    lost = yoke - neck
    counts = (yoke, nearest(yoke - lost * _FIRST, repeat), nearest(yoke - lost * _SECOND, repeat), neck)
    if sorted(set(counts), reverse=True) != list(counts):
        told = ", ".join(map(str, counts))
        raise Impossible(f"with a repeat of {repeat} sts the counts would be {told}; each must be below the last.")
    found: dict[str, int | Fraction] = {}
    for name, before, after in zip(_ROUNDS, counts, counts[1:], strict=False):
        changes = before - after
        found |= {f"{name}_{key}": value for key, value in in_round(decreased(before, changes), changes).items()}
        found[f"after_{name}"] = after
    places = (0, rounds // 2, 3 * rounds // 4, rounds)
    between = (after - before - 1 for before, after in pairwise(places))
    return found | {f"to_{name}": even for name, even in zip(_ROUNDS, between, strict=True)}


YOKES = (
    Plan(
        "yoke_shares",
        (stitches("body", least=1), share("sleeve_share", 33), share("underarm_share", 8), share("neck_share", 40)),
        of_stitches("sleeve", "underarm", "yoke", "neck"),
        _shares,
        "The counts of a circular-yoke sweater as percentages of the body: `yoke_shares(200 st)` gives 66 sts for a "
        "sleeve (33 %), 16 held at each underarm (8 %), 200 + 2 × 66 − 4 × 16 = 268 for the yoke and 80 at the neck "
        "(40 %). Source: E. Zimmermann, Knitting Without Tears, as worked through on "
        "handmadestitchbystitch.wordpress.com.",
    ),
    Plan(
        "yoke_decreases",
        (stitches("yoke"), stitches("neck", least=1), rows("rounds", least=4), number("repeat", 1, least=1)),
        tuple(
            member
            for name in _ROUNDS
            for member in (
                *of_rows(f"to_{name}"),
                *(member.__class__(f"{name}_{member.name}", member.dimension) for member in RHYTHM),
                *of_stitches(f"after_{name}"),
            )
        ),
        _decreases,
        "Three decrease rounds of a circular yoke, at half its depth, at three quarters and at the neck: "
        "`yoke_decreases(268 st, 80 st, 64 row)`. Each takes about a third: 268, 179, 120, 80. The last value, where "
        "it is given, is the repeat of the colourwork: the counts behind the first and the second round fit it. "
        "Source: counts, E. Zimmermann, Knitting Without Tears, as worked through on "
        "handmadestitchbystitch.wordpress.com; the depths of the rounds from memory of the same book.",
    ),
)
