"""In: a call of a plan or a shape, and the names of what it takes. Out: what it is given, by name."""

from collections.abc import Mapping, Sequence

from sizewright.base.nearest import did_you_mean
from sizewright.grade.rules import UNKNOWN_FUNCTION
from sizewright.grade.worth import Fault
from sizewright.read.formula import Call, Tree


def bound(call: Call, names: Sequence[str], required: Sequence[str], gist: str) -> Mapping[str, Tree]:
    """The arguments by their names; `gist` says in a sentence what is called. Raises `Fault`."""
    takes = f"It takes: {', '.join(names)}."
    given: dict[str, Tree] = {}
    for place, (key, tree) in enumerate(zip(call.keys, call.arguments, strict=True)):
        name = key or (names[place] if place < len(names) else "")
        if name not in names:
            said = f"by the name “{key}”" if key else f"number {place + 1}"
            raise _fault(call, f"“{call.function}” takes no value {said}.", did_you_mean(key, names, takes), gist)
        if name in given:
            raise _fault(call, f"“{call.function}” is given “{name}” twice.", takes, gist)
        given[name] = tree
    lacking = [name for name in required if name not in given]
    if lacking:
        raise _fault(call, f"“{call.function}” is not given “{lacking[0]}”.", takes, gist)
    return given


def _fault(call: Call, message: str, mend: str, gist: str) -> Fault:
    return Fault(UNKNOWN_FUNCTION.at(call.span, message, f"{mend} {gist}"))
