"""A gauge that the yarn's weight is not knitted to.

**Why it matters.** Either the gauge or the weight is mistyped, or the fabric will be much looser or tighter than the
yarn is made for, and a reader who chooses a yarn by its weight will not get the gauge. The ranges are those of the
Standard Yarn Weight System of the Craft Yarn Council, in stockinette stitch over 4 in, which are 10.16 cm. They count
whole stitches, so that half a stitch beyond is still within. Not judged are other fabrics, yarns of several weights
or held together, and lace weight, for which the standard gives a guideline only.

**Example.** `stitches: 28 st / 10 cm` in stockinette stitch, with a yarn of `weight: medium`

**Instead.** `weight: super fine`, or the gauge that was meant: `stitches: 18 st / 10 cm`. A fabric that is meant to
be so says what it is: `over: stockinette stitch, felted`.
"""

from collections.abc import Iterator
from fractions import Fraction

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import decimal
from sizewright.base.units import unit_named
from sizewright.proof.yarn_gauges import judged
from sizewright.read.project import Project
from sizewright.read.yarn_weights import SOURCE, YARN_WEIGHTS, YarnWeight
from sizewright.work.worked import Worked

RULE = Rule("gauge-outside-yarn", Level.WARNING, __doc__)
_WHOLE = Fraction(1, 2)  # the table counts whole stitches: what is rounded to its ends is within it


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each gauge that is judged and lies outside."""
    for gauge, weight in judged(worked.graded.pattern.header):
        if gauge.stitches is None:
            continue
        stitches = gauge.stitches.quantity.value * 4 * _inch()
        if not _within(stitches, weight):
            message = (
                f"“{gauge.stitches.typed}” is {decimal(stitches, 1)} sts in 4 in (10.16 cm), but “{weight.name}” yarn "
                f"({weight.number}) knits to {_range(weight)} in stockinette stitch ({SOURCE})."
            )
            yield RULE.at(gauge.stitches.span, message, _mend(stitches))


def _inch() -> Fraction:
    inch = unit_named("in")
    assert inch is not None  # noqa: S101 -- a unit of the tool's own table
    return inch.factor


def _within(stitches: Fraction, weight: YarnWeight) -> bool:
    low, high = weight.stitches
    return (low or 0) - _WHOLE <= stitches <= high + _WHOLE


def _range(weight: YarnWeight) -> str:
    low, high = weight.stitches
    return f"{low} to {high} sts" if low else f"{high} sts or fewer"


def _mend(stitches: Fraction) -> str:
    fitting = [f"“{weight.name}”" for weight in YARN_WEIGHTS if _within(stitches, weight)]
    meant = f"The gauge is that of {' or '.join(fitting)} yarn. " if fitting else ""
    return f"{meant}Mend the gauge or the weight, or name the fabric: “over: …”."
