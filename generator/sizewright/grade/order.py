"""In: definitions. Out: the same, each behind those it relies on; what goes round in a circle is found."""

from collections.abc import Mapping

from sizewright.base.finding import Finding
from sizewright.grade.rules import CIRCLE
from sizewright.grade.shaping.table import PLANS
from sizewright.read.formula import Definition, names_in
from sizewright.read.plan_lines import plan_called


def relied_on(definition: Definition) -> tuple[str, ...]:
    """The names a definition relies on, each once, in the order they stand; a number of a plan relies on the plan."""
    formula = definition.formula
    found = names_in(formula.tree) + names_in(formula.rounding)
    return tuple(dict.fromkeys(name.name for name in found))


def in_order(
    definitions: Mapping[str, Definition], relied: Mapping[str, tuple[str, ...]]
) -> tuple[tuple[Definition, ...], tuple[Finding, ...], set[str]]:
    """The definitions in an order they can be worked out in, the circles found, and the names that are in one.

    `relied` are the names each of them relies on.
    """
    waiting = {
        name: [one for used in relied[name] if (one := _defining(used, definitions)) in definitions]
        for name in definitions
    }
    done: dict[str, Definition] = {}
    circles: list[Finding] = []
    circling: set[str] = set()
    for name in definitions:
        _visit(name, definitions, waiting, done, circles, circling)
    return tuple(definition for name, definition in done.items() if name not in circling), tuple(circles), circling


def _defining(name: str, definitions: Mapping[str, Definition]) -> str:
    """The definition that gives a name its value: of `sleeve.times` the plan `sleeve`; a gauge has no definition."""
    plan = name.split(".", maxsplit=1)[0]
    return plan if plan in definitions and plan_called(definitions[plan].formula) in PLANS else name


def _visit(
    first: str,
    definitions: Mapping[str, Definition],
    waiting: dict[str, list[str]],
    done: dict[str, Definition],
    circles: list[Finding],
    circling: set[str],
) -> None:
    """Works down from one name without recursion, so that a long chain costs no stack."""
    path = dict.fromkeys([first] if first not in done else [])
    while path:
        name = next(reversed(path))
        if not waiting[name]:
            done[name] = definitions[name]
            del path[name]
        elif (used := waiting[name].pop()) in path:
            circle = [*path][[*path].index(used) :]
            if circling.isdisjoint(circle):
                circles.append(_circle(definitions, circle))
            circling.update(circle)
        elif used not in done:
            path[used] = None


def _circle(definitions: Mapping[str, Definition], circle: list[str]) -> Finding:
    shown = " → ".join((*circle, circle[0]))
    message = f"These names are defined by one another: {shown}."
    mend = "Give one of them a value that does not rely on the others."
    return CIRCLE.at(definitions[circle[0]].name.span, message, mend)
