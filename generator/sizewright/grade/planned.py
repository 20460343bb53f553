"""In: a formula that calls a plan, and what it is given. Out: the plan's numbers, by size, or why there are none."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from sizewright.base.finding import Finding
from sizewright.base.units import spoken
from sizewright.grade.arguments import bound
from sizewright.grade.evaluate import Evaluator
from sizewright.grade.rules import IMPOSSIBLE_SHAPING, WRONG_UNITS
from sizewright.grade.shaping.plan import Argument, Impossible, Plan
from sizewright.grade.worth import Fault, Worth, spread
from sizewright.read.formula import Call, Formula, Tree


def planned(plan: Plan, formula: Formula, evaluator: Evaluator, sizes: Sequence[str]) -> Mapping[str, Worth]:
    """The plan's numbers by their names, one a size. Raises `Fault`."""
    call = formula.tree
    if formula.rounding is not None or not isinstance(call, Call):
        mend = "Round one of its numbers instead, in a definition of its own."
        raise Fault(WRONG_UNITS.at(formula.span, f"“{plan.name}” is a plan and cannot be rounded.", mend))
    given = bound(call, [one.name for one in plan.arguments], _required(plan), plan.gist)
    columns = [
        _values(plan, argument, given.get(argument.name), evaluator, max(1, len(sizes))) for argument in plan.arguments
    ]
    found: list[tuple[Fraction, ...]] = []
    impossible: dict[str, list[str]] = {}
    for place, name in enumerate(sizes or ("",)):
        try:
            found.append(plan.worked([column[place] for column in columns]))
        except Impossible as reason:
            impossible.setdefault(str(reason), []).append(name)
    if impossible:
        raise Fault(_impossible(plan, call, impossible))
    by_member = zip(*found, strict=True)
    return {
        member.name: Worth(member.dimension, values) for member, values in zip(plan.members, by_member, strict=True)
    }


def _required(plan: Plan) -> list[str]:
    return [one.name for one in plan.arguments if one.default is None]


def _values(
    plan: Plan, argument: Argument, tree: Tree | None, evaluator: Evaluator, count: int
) -> tuple[Fraction, ...]:
    if tree is None:
        return (argument.default or Fraction(0),) * count
    worth = evaluator.tree(tree)
    if worth.dimension not in argument.dimensions:
        message = f"“{plan.name}” takes {spoken(argument.dimensions[0])} as “{argument.name}”; this is "
        raise Fault(WRONG_UNITS.at(tree.span, f"{message}{spoken(worth.dimension)}.", plan.gist))
    return spread(worth.values, count)


def _impossible(plan: Plan, call: Call, reasons: Mapping[str, Sequence[str]]) -> Finding:
    """One finding, whatever the sizes fail of: each reason with its sizes."""
    sizes = tuple(size for named in reasons.values() for size in named if size)
    told = [reason if len(reasons) == 1 else f"{', '.join(named)}: {reason}" for reason, named in reasons.items()]
    message = f"“{plan.name}” cannot be worked: {' '.join(told)}"
    return IMPOSSIBLE_SHAPING.at(call.span, message, "Change what it is given, or leave these sizes out of it.", sizes)
