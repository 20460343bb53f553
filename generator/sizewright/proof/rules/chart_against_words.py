"""A chart that says otherwise than the rows written under the same name.

**Why it matters.** Some knit from the chart and some from the words, and they would knit two different cloths.

**Example.** `| o / | 3` in a chart, and `Row 3: *K1, k2tog, yo, k1; rep from * to end.` under the same name.

**Instead.** Mend whichever is wrong, or leave one out: rows are written from a chart that stands alone.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project
from sizewright.work.faults import ChartDiffers
from sizewright.work.worked import Worked

RULE = Rule("chart-against-words", Level.ERROR, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding a row, for its first stitch that differs."""
    for fault in worked.faults:
        if isinstance(fault, ChartDiffers):
            where = f"{fault.row}: " if fault.row else ""
            stitch = f" as stitch {fault.stitch} of the row" if fault.stitch else ""
            message = f"{where}the chart has {fault.chart}{stitch}, the words have {fault.words}."
            mend = f"Mend the chart or the words (line {fault.beside.shown.line})."
            yield RULE.at(fault.span, message[:1].upper() + message[1:], mend)
