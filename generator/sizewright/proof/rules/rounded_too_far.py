"""A finished measurement that rounding has moved further than the designer tolerates.

**Why it matters.** A size is planned as the body and an ease. Where stitches come in repeats of eighteen, rounding to
whole repeats moves it by up to half a repeat, which may be the step to the next size. The header says how much is
tolerated, for all finished measurements or for one of them; without that nothing is told.

**Example.** `tolerance: 1 cm`, and the chest of size L comes out 2.4 cm wider than body and ease ask for

**Instead.** Take a smaller repeat, another body measurement or ease, or more tolerance: `tolerance: 2.5 cm`.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import amount
from sizewright.base.units import LENGTH
from sizewright.grade.graded import Graded, Measured
from sizewright.grade.run import grade
from sizewright.proof.telling import by_size
from sizewright.read.pattern import Measure
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("rounded-too-far", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each finished measurement beyond its tolerance, with the sizes and how far it is off."""
    graded, header = worked.graded, worked.graded.pattern.header
    if header.tolerance is None and not any(one.tolerance for one in header.finished):
        return
    meant = {one.told: one for one in grade(graded.pattern, rounded=False).finished}
    for measured in graded.finished:
        tolerance = measured.told.tolerance or header.tolerance
        unrounded = meant.get(measured.told)
        if tolerance is not None and unrounded is not None and measured.finished.dimension == LENGTH:
            yield from _judged(graded, measured, unrounded, tolerance)


def _judged(graded: Graded, measured: Measured, meant: Measured, tolerance: Measure) -> Iterator[Finding]:
    moved = [
        (size, after - before)
        for size, after, before in zip(
            graded.sizes or ("",), measured.finished.values, meant.finished.values, strict=True
        )
        if abs(after - before) > tolerance.quantity.value
    ]
    if moved:
        told = by_size((size, f"{amount(abs(by), LENGTH)} {'more' if by > 0 else 'less'}") for size, by in moved)
        message = f"Rounding moves “{measured.label}” by more than {tolerance.typed}: {told} than was asked for."
        mend = "Round to a smaller step, change the body or the ease, or tolerate more."
        yield RULE.at(measured.told.span, message, mend, tuple(size for size, _ in moved if size))
