"""In: a piece of a schematic as written. Out: its edges and its outline in every size, or what is wrong with it."""

from collections.abc import Iterator, Mapping, Sequence

from sizewright.base.finding import Finding
from sizewright.base.nearest import did_you_mean
from sizewright.base.printing import amount
from sizewright.base.units import LENGTH, ROWS, STITCHES, spoken
from sizewright.grade.arguments import bound
from sizewright.grade.evaluate import Evaluator
from sizewright.grade.graded import DrawnEdge, DrawnPiece, Values
from sizewright.grade.rules import IMPOSSIBLE_OUTLINE, REPEATED_NAME, UNKNOWN_FUNCTION, WRONG_UNITS
from sizewright.grade.schematic.shape import Edge, Edges, Outline, Shape
from sizewright.grade.schematic.table import SHAPES
from sizewright.grade.worth import Fault, spread
from sizewright.read.formula import Call, Definition, Tree
from sizewright.read.plan_lines import plan_called

_GAUGES = {STITCHES: "stitch_gauge", ROWS: "row_gauge"}
_LARGEST = 1000  # cm; nothing that is knitted in one piece is larger


class Drawing:
    """Draws the pieces of one schematic for the sizes that read it: those of the passage around it, else all."""

    def __init__(self, evaluator: Evaluator, sizes: Sequence[str], within: Sequence[str] | None) -> None:
        self._evaluator = evaluator
        self._sizes = sizes or ("",)
        self._read = [place for place, name in enumerate(self._sizes) if within is None or name in within]

    def piece(self, definition: Definition, first: Definition) -> DrawnPiece:
        """The piece; `first` is the first of its name. Raises `Fault`."""
        if first is not definition:
            message = f"“{first.name.name}” is drawn already, in line {first.span.shown.line}."
            raise Fault(REPEATED_NAME.at(definition.name.span, message, "Give one of them another name."))
        shape, call = _shape_of(definition)
        given = bound(call, shape.names, [edge.name for edge in shape.edges if edge.usual is None], shape.page)
        for edge in shape.edges:
            if edge.name in given and edge.needs and edge.needs not in given:
                message = f"“{shape.name}” is given “{edge.name}” and no “{edge.needs}”."
                raise Fault(UNKNOWN_FUNCTION.at(call.span, message, f"Give both. {shape.page}"))
        edges = tuple(self._edge(edge, given[edge.name]) for edge in shape.edges if edge.name in given)
        return DrawnPiece(definition.span, definition.name.name, shape, edges, self._outlines(definition, shape, edges))

    def _edge(self, edge: Edge, tree: Tree) -> DrawnEdge:
        worth = self._evaluator.tree(tree)
        if worth.dimension != LENGTH:
            message = f"“{edge.name}” of a schematic is a length; this is {spoken(worth.dimension)}."
            gauge = _GAUGES.get(worth.dimension)
            mend = (
                f"Divide it by the gauge: “{edge.name} = … / {gauge}”." if gauge else "Give its length, with the unit."
            )
            raise Fault(WRONG_UNITS.at(tree.span, message, mend))
        values = spread(worth.values, len(self._sizes))
        return DrawnEdge(tree.span, edge, Values(LENGTH, values, values))

    def _outlines(self, definition: Definition, shape: Shape, edges: Sequence[DrawnEdge]) -> Mapping[int, Outline]:
        outlines: dict[int, Outline] = {}
        faults: dict[str, list[str]] = {}
        for place in self._read:
            whole = shape.filled({one.edge.name: one.values.values[place] for one in edges})
            wrong = [*_unsized(edges, place)] or [*_contrary(shape, whole)]
            for words in wrong:
                faults.setdefault(words, []).append(self._sizes[place])
            if not wrong:
                outlines[place] = shape.outline(whole)
        if faults:
            raise Fault(_impossible(definition, faults))
        return outlines


def _shape_of(definition: Definition) -> tuple[Shape, Call]:
    """The shape that is all of a definition. Raises `Fault`."""
    formula = definition.formula
    name = plan_called(formula)
    shape = SHAPES.get(name)
    known = f"Known shapes: {', '.join(SHAPES)}."
    if shape is None or not isinstance(formula.tree, Call):
        message = f"There is no shape “{name}”." if name else f"“{formula.text}” is no shape with its edges."
        raise Fault(UNKNOWN_FUNCTION.at(formula.span, message, did_you_mean(name, SHAPES, known) if name else known))
    if formula.rounding is not None:
        message = "A piece of a schematic cannot be rounded."
        raise Fault(WRONG_UNITS.at(formula.rounding.span, message, "Round its measurements, in a grade block."))
    return shape, formula.tree


def _unsized(edges: Sequence[DrawnEdge], place: int) -> Iterator[str]:
    """Edges that are nothing, less than nothing, or larger than anything that is knitted."""
    for one in edges:
        value, name = one.values.values[place], one.edge.name.replace("_", " ")
        if value < 0 or (value == 0 and not one.edge.may_be_nothing):
            yield f"{name} is {amount(value, LENGTH)}, and must be more than nothing"
        elif value > _LARGEST:
            yield f"{name} is {amount(value, LENGTH)}, more than a piece can be"


def _contrary(shape: Shape, edges: Edges) -> Iterator[str]:
    """What an outline with these edges would contradict."""
    for demand in shape.demands:
        if not demand.holds(edges):
            name = demand.edge.replace("_", " ")
            others = ", ".join(f"{one.replace('_', ' ')} {amount(edges[one], LENGTH)}" for one in demand.others)
            yield f"{name} is {amount(edges[demand.edge], LENGTH)}, and must be {demand.words} ({others})"


def _impossible(definition: Definition, faults: Mapping[str, Sequence[str]]) -> Finding:
    """One finding for all sizes: what is wrong, each with its sizes."""
    sizes = tuple(dict.fromkeys(size for named in faults.values() for size in named if size))
    told = (f"{', '.join(named)}: {words}" if sizes and len(faults) > 1 else words for words, named in faults.items())
    message = f"“{definition.name.name}” cannot be drawn: {'; '.join(told)}."
    return IMPOSSIBLE_OUTLINE.at(
        definition.span, message, "Mend the measurements, or leave these sizes out of it.", sizes
    )
