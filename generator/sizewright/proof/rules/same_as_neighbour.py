"""Two neighbouring sizes whose finished measurements all come out the same, though their bodies differ.

**Why it matters.** Rounding to a repeat has swallowed the step: one of the two readers gets a piece that is no fit,
with an ease nobody meant. It cannot be seen in the pattern, only in the table.

**Example.** wrists of 13 and 15 cm with `, nearest multiple of 8`, which gives 40 stitches for both

**Instead.** A smaller step (`nearest multiple of 4`), another ease, or one size instead of two.
"""

from collections.abc import Iterator
from itertools import pairwise

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.pattern import Size
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("same-as-neighbour", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding at the second of two such sizes."""
    graded = worked.graded
    fitted = [measured.finished.values for measured in graded.finished if measured.body is not None]
    for at, (one, other) in enumerate(pairwise(graded.pattern.header.sizes)):
        same = all(values[at] == values[at + 1] for values in fitted)
        if fitted and same and _bodies(one) != _bodies(other):
            message = f"“{one.name}” and “{other.name}” come out the same in all that is fitted to a body."
            mend = "Round to a smaller step, change the ease, or make one size of the two."
            yield RULE.at(other.span, message, mend, (one.name, other.name))


def _bodies(size: Size) -> dict[str, object]:
    return {name: measure.quantity for name, measure in size.measurements.items()}
