"""An adaptation that neither the licence of its base allows nor its designer permits, or that credits nobody.

**Why it matters.** A pattern is its designer's work: to publish a changed one needs leave, by word or by licence. The
Creative Commons licences with “ND” allow no changed version; those with “SA” allow it under the same licence, those
with “NC” for no gain, and all but CC0 ask for credit (creativecommons.org).

**Example.** `based_on: {pattern: undercombe-hat}`, where the base is “all rights reserved”.

**Instead.** `based_on: {pattern: undercombe-hat, permission: "M. Tolley, by letter of 3 May 2026", credit: After the
Undercombe Hat by Maren Tolley}`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.licences import Adapting, allows
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("missing-permission", Level.ERROR, __doc__ or "")


def check(worked: Worked, _: Project) -> Iterator[Finding]:
    """Leave and credit."""
    adapts, header = worked.graded.pattern.adapts, worked.graded.pattern.header
    if adapts is None:
        return
    told, base = adapts.based_on, adapts.base.header
    licence = base.licence.text if base.licence else ""
    if told.permission is None:
        judged = allows(licence, header.licence.text if header.licence else "")
        if judged is not Adapting.ALLOWED:
            message = f"The licence of “{base.title}”, {f'“{licence}”' if licence else 'which names none'}, {judged}"
            mend = "Ask its designer, and write down what they permitted: “permission: …”."
            yield RULE.at(told.span, message, mend)
    if told.credit is None:
        message = f"Nothing says whose work “{base.title}” is."
        mend = f"Add “credit: After {base.title} by {base.designer.text if base.designer else '…'}” to “based_on:”."
        yield RULE.at(told.span, message, mend)
