"""One size whose number does not go with those of the sizes around it.

**Why it matters.** A slip of the finger in one size of a bracket list, `2.5 (3, 30, 4)` for `2.5 (3, 3.5, 4)`, is
found by the one stranger who knits that size. Looked at are body measurements, bracket lists that are typed for every
size, in grade blocks and in the text, and finished measurements, in patterns of four sizes or more. Uneven steps are
no fault, nor is what rounding to a repeat explains: only a size that turns back by more than any other step is wide,
or is more than four times the one before.

**Example.** `brim = 2.5 (3, 30, 4) cm`

**Instead.** `brim = 2.5 (3, 3.5, 4) cm`
"""

from collections.abc import Iterator, Mapping

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.place import Span
from sizewright.base.printing import amount, as_text, printed
from sizewright.base.units import PLAIN
from sizewright.grade.graded import Graded, Measured, Named, Values
from sizewright.grade.growth import Growth, growth
from sizewright.grade.run import grade
from sizewright.proof.typed_lists import measured_lists
from sizewright.read.formula import Literal, Negation
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("size-out-of-line", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each quantity that is out of line in a size, told where it was typed and not again behind it."""
    graded = worked.graded
    astray: dict[str, int] = {}
    for name, named in graded.quantities.items():
        grown = growth(named.result.values) if _typed(named) else None
        if grown is not None and grown.astray is not None and not (named.formula is None and _falls(grown)):
            astray[name] = grown.astray
            yield _finding(graded, name, named.result, grown.astray, _place(graded, named, grown.astray))
    for measured in graded.finished:
        at = growth(measured.finished.values).astray
        if at is not None and at not in _behind(graded, measured, astray) and not _rounded_so(graded, measured, at):
            yield _finding(graded, measured.label, measured.finished, at, measured.told.span)
    for typed in measured_lists(graded):
        at = growth(typed.values.values).astray
        if at is not None:
            yield _finding(graded, typed.text, typed.values, at, typed.span)


def _typed(named: Named) -> bool:
    """Whether a value was typed for every size: a measurement of the header, or a bracket list."""
    if named.formula is None:
        return True
    tree = named.formula.tree
    literal = tree.operand if isinstance(tree, Negation) else tree
    return isinstance(literal, Literal) and len(literal.values) > 1


def _falls(grown: Growth) -> bool:
    """Whether a value falls somewhere, which another rule tells of body measurements."""
    return any(step < 0 for step in grown.steps)


def _place(graded: Graded, named: Named, at: int) -> Span:
    """Where the value of a size stands."""
    measures = graded.pattern.header.sizes[at].measurements if named.formula is None else {}
    return measures[named.name].span if named.name in measures else named.span


def _behind(graded: Graded, measured: Measured, astray: Mapping[str, int]) -> set[int]:
    """The sizes in which something a finished measurement relies on is out of line."""
    reached = graded.behind(measured.told.formula)
    return {at for name, at in astray.items() if name in reached}


def _rounded_so(graded: Graded, measured: Measured, at: int) -> bool:
    """Whether the size is in line where nothing is rounded; so too where that cannot be worked out."""
    unrounded = grade(graded.pattern, rounded=False).finished
    found = [one for one in unrounded if one.told == measured.told]
    return not found or growth(found[0].finished.values).astray != at


def _finding(graded: Graded, called: str, values: Values, at: int, span: Span) -> Finding:
    sizes = graded.sizes
    around = [f"{_said(values, place)} in {sizes[place]}" for place in (at - 1, at + 1) if 0 <= place < len(sizes)]
    message = f"“{called}” is {_said(values, at)} in {sizes[at]}, beside {' and '.join(around)}."
    part = growth(values.values).parts[at - 1] if at else None
    if part is not None and part > 0:
        message = f"{message[:-1]}: {as_text(printed((part,), PLAIN, 'percent'))} more than the size before."
    return RULE.at(span, message, f"Mend the number of {sizes[at]}, or what it is worked out from.", (sizes[at],))


def _said(values: Values, place: int) -> str:
    return amount(values.values[place], values.dimension)
