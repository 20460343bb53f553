"""A needle named in two systems that do not mean the same size.

**Why it matters.** One reader goes by the millimetres and another by the US or UK label, and they knit two different
garments. The labels are those of the published tables (sarahmaker.com, pattern-duchess.com, knitproblog.blogspot.com,
soozintheshed.blogspot.com).

**Example.** `needle: 4 mm (US 7)`

**Instead.** `needle: 4 mm`; the labels are printed beside it.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import decimal, needle_size
from sizewright.proof.needles import needles_of
from sizewright.read.needles import MM, Label
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("contrary-needle-sizes", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each size whose names contradict each other."""
    for needle in needles_of(worked.graded.pattern.header):
        for size in needle.sizes:
            if len(size.labels) > 1 and not size.needles:
                named = needle.text[size.start : size.end]
                told = "; ".join(filter(None, map(_told, size.labels)))
                mend = "Write the size in mm alone: the labels are printed beside it."
                yield RULE.at(needle.span, f"“{named}” names two sizes: {told}.", mend)


def _told(label: Label) -> str:
    """What the table says of a name: "4 mm is US 6, UK 8"; "US 7 is 4.5 mm"."""
    if label.system == MM:
        own, *others = needle_size(label.needles[0])
        return f"{own} is {', '.join(others)}" if others else ""
    needles = " or ".join(f"{decimal(mm)} mm" for mm in label.needles)
    named = f"{label.system} {label.number}" if label.system else f"“{label.number}”"
    return f"{named} is {needles}" if needles else f"{named} is in no table"
