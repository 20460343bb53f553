"""A needle named in a way that may mean several sizes, or none.

**Why it matters.** Millimetres are the only size that is the same with every maker. US 1 and 2 are not the same
needle everywhere, US 17 is sold as 12, 12.5 and 12.75 mm, and a plain 8 is 8 mm, US 8 (5 mm) or UK 8 (4 mm). A reader
who takes the wrong one knits another size. The labels are those of the published tables (sarahmaker.com,
pattern-duchess.com, knitproblog.blogspot.com, soozintheshed.blogspot.com).

**Example.** `needle: 8`

**Instead.** `needle: 8 mm`
"""

from collections.abc import Iterator
from fractions import Fraction

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.needle_sizes import SYSTEMS, labelled
from sizewright.base.printing import decimal
from sizewright.proof.needles import needles_of
from sizewright.read.needles import Label
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("unclear-needle", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each size that is named alone and is not sure."""
    for needle in needles_of(worked.graded.pattern.header):
        for size in needle.sizes:
            label = size.labels[0]
            if len(size.labels) == 1 and len(label.needles) != 1:
                named = needle.text[size.start : size.end]
                yield RULE.at(needle.span, f"“{named}” {_said(label)}.", _mend(label.needles))


def _said(label: Label) -> str:
    if not label.needles:
        return "is a label that no published table has"
    if label.system:
        return f"is {_or([f'{decimal(mm)} mm' for mm in label.needles])}: the label is not the same with every maker"
    return f"may be {_or(list(_meanings(label)))}"


def _meanings(label: Label) -> Iterator[str]:
    if Fraction(label.number) in label.needles:
        yield f"{label.number} mm"
    for system in SYSTEMS:
        found = [f"{decimal(mm)} mm" for mm in labelled(system, label.number)]
        if found:
            yield f"{system} {label.number} ({_or(found)})"


def _mend(needles: tuple[Fraction, ...]) -> str:
    if not needles:
        return "Write the millimetres, for example “4 mm”."
    return f"Write the millimetres: {_or([f'“{decimal(mm)} mm”' for mm in needles])}."


def _or(words: list[str]) -> str:
    *before, last = words
    return f"{', '.join(before)} or {last}" if before else last
