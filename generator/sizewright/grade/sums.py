"""In: a sum. Out: its terms, and what is wrong where one of them is not of the kind of the others."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from sizewright.base.printing import decimal
from sizewright.base.units import COUNTS, LENGTH, MASS, PLAIN, ROWS, STITCHES, Dimension, base_unit, per, spoken
from sizewright.grade.rules import WRONG_UNITS
from sizewright.grade.worth import Fault, Worth
from sizewright.read.formula import Literal, Operation, Operator, Tree, names_in

_VERBS = {Operator.PLUS: ("adds", "to", "added to"), Operator.MINUS: ("subtracts", "from", "taken from")}


def terms_of(tree: Operation) -> list[tuple[Operator, Tree]]:
    """The terms of a sum in their order, each with the sign before it; what stands in brackets behind one is one."""
    found: list[tuple[Operator, Tree]] = []
    left: Tree = tree
    while isinstance(left, Operation) and left.operator in _VERBS:
        found.append((left.operator, left.right))
        left = left.left
    return [(Operator.PLUS, left), *reversed(found)]


def unlike(
    terms: Sequence[tuple[Operator, Tree]], dimensions: Sequence[Dimension], known: Mapping[str, Worth]
) -> Fault:
    """The fault of a sum, at the term that is not what most are: of two, at the plain number, else at the second.

    `known` are the values that names have: one of them may lack the unit that would make all terms alike.
    """
    most = max(dimensions, key=lambda one: (dimensions.count(one), one != PLAIN))
    at = next(place for place, one in enumerate(dimensions) if one != most)
    odd, term = dimensions[at], terms[at][1]
    verb, joint, joined = _VERBS[terms[max(at, 1)][0]]
    message = f"This {verb} {spoken(odd)} {joint} {spoken(most)}."
    if at == 0:
        message = f"This is {spoken(odd)}; what is {joined} it is {spoken(most)}."
    unit = base_unit(most)
    mend = unit_mend(most, odd)
    if odd == PLAIN and unit and not isinstance(term, Literal):
        mend = f"Give it its unit: “… * 1 {unit}”."
    others = [(one, per(odd, most)) for (_, one), has in zip(terms, dimensions, strict=True) if has == most]
    asked = (_unit_lacking(one, lacking, known) for one, lacking in ((term, per(most, odd)), *others))
    mend = next(filter(None, asked), mend)
    return Fault(WRONG_UNITS.at(term.span, message, mend))


def _unit_lacking(term: Tree, lacking: Dimension, known: Mapping[str, Worth]) -> str:
    """What to ask of the one plain number a term names, where its unit is all the term lacks; else ""."""
    names = {one.name for one in names_in(term)}
    plain = [name for name in sorted(names) if name in known and known[name].dimension == PLAIN]
    if lacking not in (LENGTH, MASS, STITCHES, ROWS) or len(plain) != 1:
        return ""
    return no_unit(plain[0], known[plain[0]].values[0], lacking)


def no_unit(name: str, value: Fraction, lacking: Dimension) -> str:
    """The question whether a plain number, by its name, was meant with a unit: "“band” is …: 3 cm?"."""
    return f"“{name}” is a plain number here: {decimal(value)} {base_unit(lacking)}?"


def unit_mend(left: Dimension, right: Dimension) -> str:
    """How to mend two values that measure different things."""
    kinds = {left, right}
    if PLAIN in kinds:
        other = next(iter(kinds - {PLAIN}))
        unit = base_unit(other)
        return f"Give the plain number its unit, for example “4 {unit}”." if unit else "Give both the same unit."
    if LENGTH in kinds and kinds & set(COUNTS):
        gauge = "stitch_gauge" if STITCHES in kinds else "row_gauge"
        return f"Turn the length into a count with the gauge first: length * {gauge}."
    return "Bring both to the same unit first."
