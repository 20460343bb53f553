"""A measurement of a schematic that differs from the finished measurement of the same label in the header.

**Why it matters.** A reader compares the drawing with the table of sizes; where they disagree, one of them is an old
number.

**Example.** `finished: [{label: Yoke depth, value: 20 cm}]`, and `depth = 21 cm` in the yoke of a schematic.

**Instead.** One formula for both: `yoke_depth`. A finished measurement that is another one has a label of its own.
"""

from collections import Counter
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.printing import amount
from sizewright.grade.graded import DrawnEdge, Measured
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("contrary-schematic", Level.WARNING, __doc__)
_MEND = "Give both the same formula, or the finished measurement another label."


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding where an edge differs from its namesake; a label that several edges have is nobody's in particular."""
    graded = worked.graded
    edges = [edge for drawing in graded.schematics for piece in drawing.pieces for edge in piece.edges]
    often = Counter(_label(edge) for edge in edges)
    finished = {one.label.casefold(): one for one in graded.finished}
    for edge in edges:
        namesake = finished.get(_label(edge))
        if namesake is not None and often[_label(edge)] == 1:
            yield from _compared(worked, edge, namesake)


def _label(edge: DrawnEdge) -> str:
    return edge.edge.label.casefold()


def _compared(worked: Worked, edge: DrawnEdge, finished: Measured) -> Iterator[Finding]:
    if finished.finished.dimension != edge.values.dimension:
        return
    pairs = zip(worked.graded.sizes or ("",), edge.values.values, finished.finished.values, strict=True)
    apart = [(size, drawn, told) for size, drawn, told in pairs if drawn != told]
    if apart:
        kind = edge.values.dimension
        shown = by_size(
            (size, f"{amount(drawn, kind)} drawn, {amount(told, kind)} in the table") for size, drawn, told in apart
        )
        message = f"“{edge.edge.label}” differs from the finished measurement of the header: {shown}."
        yield RULE.at(edge.span, message, _MEND, [size for size, _, _ in apart if size])
