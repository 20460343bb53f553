"""In: a value rounded to the nearest. Out: the sizes in which it lay exactly between two."""

from sizewright.grade.evaluate import Evaluator
from sizewright.grade.graded import Graded, Values
from sizewright.grade.worth import Worth, listed, spread
from sizewright.read.formula import Direction, Formula


def tied(graded: Graded, formula: Formula, result: Values) -> tuple[int, ...]:
    """The places of the sizes in which a formula's value lay exactly between two steps of its rounding."""
    rounding = formula.rounding
    if rounding is None or rounding.direction is not Direction.NEAREST:
        return ()
    known = {name: Worth(one.result.dimension, one.result.values) for name, one in graded.quantities.items()}
    evaluator = Evaluator(graded.sizes, known, set(), {})
    steps, _ = evaluator.step(rounding, Worth(result.dimension, result.unrounded), formula.text)
    cases = zip(result.values, result.unrounded, spread(steps, len(result.values)), strict=True)
    return tuple(at for at, (value, before, step) in enumerate(cases) if 2 * abs(value - before) == step)


def tie_told(graded: Graded, formula: Formula, result: Values) -> str:
    """ "exactly between two in S and L: up"; "" where nothing did."""
    places = tied(graded, formula, result)
    if not places:
        return ""
    where = f" in {listed([graded.sizes[place] for place in places])}" if graded.sizes else ""
    up = all(result.values[place] > result.unrounded[place] for place in places)
    return f"exactly between two{where}: {'up' if up else 'down'}"
