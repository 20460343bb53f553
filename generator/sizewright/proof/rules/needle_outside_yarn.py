"""A needle far from those that the yarn's weight is knitted on.

**Why it matters.** It is nearly always a slip: a US or UK label written as millimetres, or a weight that is mistyped.
Every hand knits differently, so a needle is far off only where it is none of the yarn's own weight nor of the next
one to either side, in the Standard Yarn Weight System of the Craft Yarn Council. Only needles of gauges are judged,
and only where the gauge is (in stockinette stitch, one strand of one weight, not lace).

**Example.** `needle: 8 mm` with a yarn of `weight: medium`, where US 8 was meant

**Instead.** `needle: 5 mm`
"""

from collections.abc import Iterator
from fractions import Fraction

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.needle_sizes import SYSTEMS, labelled
from sizewright.base.printing import decimal
from sizewright.proof.yarn_gauges import judged
from sizewright.read.needles import MM, Needle
from sizewright.read.project import Project
from sizewright.read.yarn_weights import SOURCE, YARN_WEIGHTS, YarnWeight
from sizewright.work.worked import Worked

RULE = Rule("needle-outside-yarn", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each needle of a gauge that is judged and lies far outside."""
    for gauge, weight in judged(worked.graded.pattern.header):
        needle = gauge.needle
        if needle is None or needle.sure is None or _near(needle.sure, weight):
            continue
        message = (
            f"“{needle.text}” is far from the needles that “{weight.name}” yarn ({weight.number}) is knitted on: "
            f"{_range(weight)} ({SOURCE})."
        )
        yield RULE.at(needle.span, message, _mend(needle, weight))


def _near(mm: Fraction, weight: YarnWeight) -> bool:
    """Whether a needle is one of the weight's own or of a neighbour's."""
    neighbours = YARN_WEIGHTS[max(0, weight.number - 1) : weight.number + 2]
    low, high = neighbours[0].needle[0], neighbours[-1].needle[1]
    return low <= mm and (high is None or mm <= high)


def _range(weight: YarnWeight) -> str:
    low, high = weight.needle
    return f"{decimal(low)} to {decimal(high)} mm" if high is not None else f"{decimal(low)} mm and larger"


def _mend(needle: Needle, weight: YarnWeight) -> str:
    """What the number of millimetres would be as a label, where that is a needle of the weight's own."""
    typed = [label.number for label in needle.sizes[0].labels if label.system == MM]
    meant = [
        f"{system} {number} is {decimal(mm)} mm"
        for number in typed
        for system in SYSTEMS
        for mm in labelled(system, number)
        if weight.needle[0] <= mm and (weight.needle[1] is None or mm <= weight.needle[1])
    ]
    slip = f"Was a label meant? {', '.join(meant)}. " if meant else ""
    return f"{slip}Mend the needle or the weight."
