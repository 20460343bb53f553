"""A finished measurement that is smaller or larger than the body it goes on allows.

**Why it matters.** A hat much smaller than the head is not pulled on twice; a pullover planned with 5 cm of ease that
comes out with 15 in one size is another garment there. Where the designer states the ease, every size is held to it.
Where nothing is stated, what goes around a head may be a fifth smaller than the head: published hats are 10 to 15 %
(rhyflowerknits.com), 1 in (calicojoy.com), 2 in (Susan B. Anderson, 2008) or 2 to 4 in (quiltnparty.com) smaller, and
4 in are a fifth of a head of 20 in.

**Example.** `finished: [{label: Chest, value: around, body: chest, ease: 5 cm to 10 cm}]`, and the ease of size L is
12 cm

**Instead.** Mend what gives the measurement its value, or state the ease it is meant to have: `ease: 5 cm to 12 cm`.
"""

from collections.abc import Iterator
from fractions import Fraction

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import amount
from sizewright.base.units import LENGTH, PLAIN
from sizewright.grade.graded import Graded, Measured
from sizewright.proof.telling import by_size
from sizewright.read.pattern import Ease
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("ease-out-of-range", Level.WARNING, __doc__)

_HEADS = ("head", "head_circumference", "head_girls", "head_boys")
_SMALLEST_HAT = Fraction(-1, 5)  # of the head


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each finished measurement that leaves its range in some size."""
    for measured in worked.graded.finished:
        if measured.ease is not None and measured.finished.dimension == LENGTH:
            broken = list(_broken(worked.graded, measured, measured.ease))
            if broken:
                yield _finding(measured, broken)


def _broken(graded: Graded, measured: Measured, ease: tuple[Fraction, ...]) -> Iterator[tuple[str, str]]:
    """The sizes whose ease leaves the range, with the ease and what it may be."""
    bodies = measured.body.result.values if measured.body else ()
    for size, body, own in zip(graded.sizes or ("",), bodies, ease, strict=True):
        least, most = _range(measured, body)
        if least is not None and own < least:
            yield size, f"the ease is {amount(own, LENGTH)}, {amount(least - own, LENGTH)} too little"
        if most is not None and own > most:
            yield size, f"the ease is {amount(own, LENGTH)}, {amount(own - most, LENGTH)} too much"


def _range(measured: Measured, body: Fraction) -> tuple[Fraction | None, Fraction | None]:
    """The least and the most ease on a body, None where nothing says."""
    stated = measured.told.ease
    if stated is not None:
        of = body if stated.least.dimension == PLAIN else Fraction(1)
        return stated.least.value * of, stated.most.value * of
    around_head = measured.body is not None and measured.body.name in _HEADS
    return (_SMALLEST_HAT * body if around_head else None), None


def _finding(measured: Measured, broken: list[tuple[str, str]]) -> Finding:
    stated: Ease | None = measured.told.ease
    body = measured.body.name if measured.body else ""
    if stated is not None:
        meant = f"is meant to have an ease of {stated.typed}"
        mend = f"Mend what gives “{measured.told.formula.text}” its value, or the ease."
    else:
        meant = f"is compared with “{body}”, and no published hat is more than a fifth smaller than the head"
        mend = f"Mend what gives “{measured.told.formula.text}” its value, or state the ease: “ease: -6 in to -4 in”."
    message = f"“{measured.label}” {meant}: {by_size(broken)}."
    return RULE.at(measured.told.span, message, mend, tuple(size for size, _ in broken if size))
