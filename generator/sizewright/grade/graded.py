"""What grading gives: every quantity of a pattern, exact, for every size."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.finding import Finding
from sizewright.base.place import Span
from sizewright.base.units import Dimension
from sizewright.grade.schematic.shape import Edge, Outline, Shape
from sizewright.read.formula import Comparison, Fit, Formula, names_in
from sizewright.read.pattern import Finished, Pattern


@dataclass(frozen=True, slots=True)
class Values:
    """One exact value a size, in base units: as many as the pattern has sizes, one where it names none."""

    dimension: Dimension
    values: tuple[Fraction, ...]
    unrounded: tuple[Fraction, ...]


Inserts = Mapping[tuple[Span, int], Values]  # by the key of an insert


@dataclass(frozen=True, slots=True)
class Named:
    """A quantity with its name, where it was defined, by which formula, and the names that formula relies on.

    `formula` is None for what the header gives: body measurements and gauges.
    """

    name: str
    span: Span
    result: Values
    formula: Formula | None
    relies_on: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Measured:
    """A finished measurement of the garment, beside the body it goes on; ease is finished less body.

    `told` is what the header says of it, the ease it is meant to have among that.
    """

    told: Finished
    finished: Values
    body: Named | None
    ease: tuple[Fraction, ...] | None

    @property
    def label(self) -> str:
        """What it is called."""
        return self.told.label


@dataclass(frozen=True, slots=True)
class Promise:
    """A `require` with its values worked out; a comparison has a right side, a fit what it is a multiple of."""

    statement: Comparison | Fit
    left: Values
    right: Values | None = None
    of: tuple[Fraction, ...] = ()
    plus: tuple[Fraction, ...] = ()


@dataclass(frozen=True, slots=True)
class DrawnEdge:
    """An edge of a piece that the source gives: where, by which formula, and how long in every size."""

    span: Span
    edge: Edge
    values: Values


@dataclass(frozen=True, slots=True)
class DrawnPiece:
    """A piece of a schematic; `outlines` are those of the sizes that read it, by their places."""

    span: Span
    name: str
    shape: Shape
    edges: tuple[DrawnEdge, ...]
    outlines: Mapping[int, Outline]


@dataclass(frozen=True, slots=True)
class Schematic:
    """Pieces drawn side by side, to one scale; a piece that cannot be drawn is missing."""

    span: Span
    pieces: tuple[DrawnPiece, ...]


@dataclass(frozen=True, slots=True)
class Graded:
    """A pattern with its numbers. `inserts` has the values of every `{...}` by its place; what failed is missing."""

    pattern: Pattern
    sizes: tuple[str, ...]
    quantities: Mapping[str, Named]
    inserts: Inserts
    promises: tuple[Promise, ...]
    finished: tuple[Measured, ...]
    schematics: tuple[Schematic, ...]
    findings: tuple[Finding, ...]

    def behind(self, formula: Formula) -> frozenset[str]:
        """The names a formula relies on, at any distance."""
        reached: set[str] = set()
        waiting = [name.name for name in (*names_in(formula.tree), *names_in(formula.rounding))]
        while waiting:
            name = waiting.pop()
            if name not in reached and name in self.quantities:
                reached.add(name)
                waiting.extend(self.quantities[name].relies_on)
        return frozenset(reached)

    def read_in(self, sizes: tuple[str, ...] | None) -> tuple[tuple[int, str], ...]:
        """The sizes that read a passage, with their places in every tuple of values; one without a name by itself."""
        everybody = enumerate(self.sizes or ("",))
        return tuple((place, size) for place, size in everybody if sizes is None or size in sizes)
