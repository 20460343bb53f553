"""A reserve of yarn for which alone a reader has to buy a ball more.

**Why it matters.** A whole ball may be bought for the last few metres of a reserve, or the balls are chosen badly for
these sizes. A reserve of a whole ball and more is no accident, and is not told.

**Example.** `reserve: 10 %`, where the stitches take 1.95 balls: that is 2 balls without the reserve and 3 with it.

**Instead.** A smaller reserve that stays within the balls, `reserve: 2 %`, or other balls. Where the ball is meant,
accept it: `accepted: [{rule: reserve-in-next-ball, reason: better a ball too many}]`. The page tells a reader how many
balls would do without the reserve.
"""

from collections.abc import Iterator
from fractions import Fraction
from math import floor

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import amount, decimal
from sizewright.base.units import LENGTH, MASS
from sizewright.proof.grouped import name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.worked import Worked
from sizewright.work.yarn_need import YarnNeed

RULE = Rule("reserve-in-next-ball", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each yarn, for all sizes concerned."""
    for need in worked.yarns:
        reserve = need.yarn.reserve
        sizes = [size for size in range(len(need.worked)) if need.reserve_takes_ball(size)]
        if reserve is None or not sizes:
            continue
        told = by_size((name_of(worked, size), _told(need, size)) for size in sizes)
        share = decimal(reserve.share * 100, 3)
        message = f"Only the reserve of {share} % takes “{need.yarn.name}” into the next ball: {told}."
        names = tuple(name for size in sizes if (name := name_of(worked, size)))
        yield RULE.at(reserve.span, message, _mend(need, sizes), names)


def _told(need: YarnNeed, size: int) -> str:
    """ "3 balls instead of 2, for 2.4 m / 2.6 yd of the third"."""
    over, balls = need.over(size), need.reserved[size].balls or 0
    length, mass = (over.length, over.mass) if over else (None, None)
    used = amount(length, LENGTH, "long") if length is not None else amount(mass or Fraction(0), MASS)
    return f"{balls} balls instead of {balls - 1}, for {used} of the last"


def _mend(need: YarnNeed, sizes: list[int]) -> str:
    """The largest whole reserve that stays within the balls of these sizes, or that it is meant."""
    meant = "Where the ball is meant, accept it with your reason."
    room = min(_room(need, size) for size in sizes)
    most = floor(room * 100)
    return f"A reserve of {most} % stays within the balls. {meant}" if most else meant


def _room(need: YarnNeed, size: int) -> Fraction:
    """The share of its yarn that is left in the balls of a size without a reserve."""
    bare, ball = need.worked[size], need.ball
    if bare.length is not None and ball.length is not None:
        return (bare.balls or 0) * ball.length / bare.length - 1
    return (bare.balls or 0) * (ball.mass or Fraction(0)) / (bare.mass or Fraction(1)) - 1
