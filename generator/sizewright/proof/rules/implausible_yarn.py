"""A swatch by which a stitch takes far more yarn, or far less, than a stitch so wide can.

**Why it matters.** All amounts of yarn are worked out from the swatch. A mass typed for a length, a swatch that was
weighed with its ball, or a slip of the decimal point sends a reader home with two balls for a pullover. A plain stitch
takes three to four times its width; told is less than twice, and more than ten times. The bounds are our own (no
source): twice is the way across a stitch and back, and ten times is more than any cable or bobble takes on the whole.

**Example.** `swatch: {stitches: 2400 st, mass: 120 g}`, where 12 g were meant

**Instead.** Weigh the swatch again, and count its stitches.
"""

from collections.abc import Iterator
from fractions import Fraction

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import decimal
from sizewright.base.units import STITCHES
from sizewright.proof.gauges import only_gauge
from sizewright.read.project import Project
from sizewright.work.worked import Worked
from sizewright.work.yarn_need import YarnNeed

RULE = Rule("implausible-yarn", Level.WARNING, __doc__)

_LEAST, _MOST = 2, 10  # times the width of a stitch


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding at each swatch out of bounds, in a pattern of one gauge."""
    gauge = only_gauge(worked.graded, STITCHES)
    for need in worked.yarns if gauge else ():
        taken = _of_one_stitch(need)
        if gauge is None or taken is None or need.yarn.swatch is None or _LEAST <= taken * gauge <= _MOST:
            continue
        message = (
            f"By this swatch of “{need.yarn.name}” a stitch takes {decimal(taken, 2)} cm of yarn, "
            f"{decimal(taken * gauge, 1)} times its width of {decimal(1 / gauge, 2)} cm."
        )
        yield RULE.at(need.yarn.swatch.span, message, "Weigh or measure the swatch again, and count its stitches.")


def _of_one_stitch(need: YarnNeed) -> Fraction | None:
    """The yarn in a stitch, in cm; None where nothing is worked in it, or its length is not known."""
    pairs = zip(need.worked, need.stitches, strict=False)  # no amounts without a swatch
    return next((amount.length / stitches for amount, stitches in pairs if amount.length and stitches), None)
