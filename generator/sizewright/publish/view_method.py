"""In: the functions, plans and shapes of the grading language. Out: what the page on the numbers says of each."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup, escape

from sizewright.base.units import spoken
from sizewright.grade.functions import FUNCTIONS, Function
from sizewright.grade.schematic.shape import Shape
from sizewright.grade.schematic.table import SHAPES
from sizewright.grade.shaping.plan import Argument, Plan
from sizewright.grade.shaping.table import PLANS

PATH = "method.html"
_CODE = re.compile(r"`([^`]+)`")


@dataclass(frozen=True, slots=True)
class MethodView:
    """A function, plan or shape of the grading language: what it does, what it takes and the numbers it gives."""

    name: str
    anchor: str
    page: str
    takes: tuple[str, ...]
    gives: tuple[str, ...]

    @property
    def text(self) -> Markup:
        """What it does, with the formulas in it set as such."""
        return _marked(self.page)


def method_views() -> Iterator[MethodView]:
    """Every function, every plan and every shape, in this order."""
    for function in FUNCTIONS.values():
        yield _function(function)
    for plan in PLANS.values():
        yield _plan(plan)
    for shape in SHAPES.values():
        yield _shape(shape)


def _function(function: Function) -> MethodView:
    many = f"{function.least} value{'s' if function.least > 1 else ''}{'' if function.most else ' or more'}"
    return MethodView(function.name, f"function--{function.name}", function.page, (many,), ())


def _plan(plan: Plan) -> MethodView:
    takes = tuple(f"{argument.name.replace('_', ' ')}: {_taken(argument)}" for argument in plan.arguments)
    gives = tuple(f"{member.name}: {spoken(member.dimension)}" for member in plan.members)
    return MethodView(plan.name, f"plan--{plan.name}", plan.page, takes, gives)


def _shape(shape: Shape) -> MethodView:
    takes = tuple(f"{edge.name.replace('_', ' ')}{' (if you like)' if edge.usual else ''}" for edge in shape.edges)
    return MethodView(shape.name, f"shape--{shape.name}", f"A shape of schematics. {shape.page}", takes, ())


def _taken(argument: Argument) -> str:
    return " or ".join(spoken(dimension) for dimension in argument.dimensions)


def _marked(text: str) -> Markup:
    """The words of a page with the formulas in them set as such."""
    return Markup(_CODE.sub(r"<code>\1</code>", str(escape(text))))  # noqa: S704 (escaped here)
