"""A bracket list typed in the text that is a computed number in every size but one.

**Why it matters.** It is the same number, and one size of it was mistyped, or went out of date when that size was
changed. The reader of that size knits from the wrong one. Looked at are lists for three sizes and more.

**Example.** `You have 72 (80, 86) sts.`, where `cast_on` is 72 (80, 88) stitches

**Instead.** `You have {cast_on} sts.`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import amount
from sizewright.grade.graded import Named
from sizewright.proof.typed_lists import TypedNumbers, typed_lists
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("contrary-number", Level.WARNING, __doc__)
_FEWEST = 3  # sizes; of two lists with one value in common nobody can say that they are meant to be the same


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each list that differs from a quantity in one size, and is none of the others."""
    if len(worked.graded.sizes) < _FEWEST:
        return
    for typed in typed_lists(worked.graded):
        if all(differing for _, differing in typed.beside):
            found = next(((named, differing[0]) for named, differing in typed.beside if len(differing) == 1), None)
            if found is not None:
                yield _finding(worked.graded.sizes, typed, *found)


def _finding(sizes: tuple[str, ...], typed: TypedNumbers, named: Named, at: int) -> Finding:
    worth = amount(named.result.values[at], named.result.dimension)
    message = f"“{typed.text}” is “{named.name}” in every size but {sizes[at]}, where that is {worth}."
    return RULE.at(typed.span, message, f"Write “{{{named.name}}}”, or mend the one or the other.", (sizes[at],))
