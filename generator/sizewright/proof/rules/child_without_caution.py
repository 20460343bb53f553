"""A size for a baby or a child in a pattern without the usual cautions.

**Why it matters.** Cords at a neck strangle, loose parts are swallowed, a hat worn asleep overheats. Published rules
say so (US 16 CFR 1120 and 1501, EU EN 14682, AAP 2022), and a reader must be told and referred to the rules at home.

**Example.** `sizes: {Baby: {head: 41 cm}}` and no `cautions:`

**Instead.** `cautions: [small-children]`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.ages import for_a_child
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("child-without-caution", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding for all such sizes."""
    header = worked.graded.pattern.header
    children = [size for size in header.sizes if for_a_child(size)]
    if children and not any(words.text == "small-children" for words in header.cautions):
        names = ", ".join(size.name for size in children)
        message = (
            f"Sizes for children ({names}) and none of the usual cautions. The page adds them, whatever is written."
        )
        yield RULE.at(
            children[0].span, message, "Add “cautions: [small-children]”.", tuple(size.name for size in children)
        )
