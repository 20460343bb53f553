"""In: a pattern. Out: it graded: every name, insert, promise and finished measurement, exact, for every size."""

from fractions import Fraction

from sizewright.base.finding import Finding
from sizewright.base.nearest import did_you_mean
from sizewright.base.units import COUNTS, LENGTH, MASS, PLAIN, ROWS, STITCHES, Dimension, spoken
from sizewright.grade.evaluate import Evaluator
from sizewright.grade.given import Given, given_names
from sizewright.grade.graded import Graded, Measured, Named, Promise, Schematic, Values
from sizewright.grade.order import in_order, relied_on
from sizewright.grade.planned import planned
from sizewright.grade.rules import MISSING_MEASUREMENT, OVERSIZED_NUMBER, REPEATED_NAME, UNKNOWN_NAME, WRONG_UNITS
from sizewright.grade.schematic.drawing import Drawing
from sizewright.grade.shaping.plan import Plan
from sizewright.grade.shaping.table import PLANS
from sizewright.grade.sums import unit_mend
from sizewright.grade.worth import Fault, Worth, listed, spread
from sizewright.read.formula import Comparison, Definition, Fit, Formula, Literal, Name, names_in
from sizewright.read.names_used import inserts_of, names_used
from sizewright.read.pattern import Finished, GradeBlock, Pattern, SchematicBlock
from sizewright.read.plan_lines import plan_called

# What a finished measurement may be, and what turns a count into one.
_MEASURED = (LENGTH, MASS)
_AREA = Dimension(length=2)
_GAUGES = {STITCHES: "stitch_gauge", ROWS: "row_gauge"}
_LARGEST = 1 << 512  # no numerator or denominator of what is knitted comes near it


def grade(pattern: Pattern, *, rounded: bool = True) -> Graded:
    """Every number of a pattern. What has no value is left out, and a finding says why.

    Not `rounded`, every number is what it would be if no formula rounded, to tell what rounding does.
    """
    return _Grading(pattern, rounded=rounded).run()


class _Grading:
    def __init__(self, pattern: Pattern, *, rounded: bool) -> None:
        self.pattern = pattern
        self.rounded = rounded
        self.sizes = pattern.size_names or ("",)
        self.findings: list[Finding] = []
        self.names: dict[str, Named] = {}
        self.worths: dict[str, Worth] = {}
        self.failed: set[str] = set()
        self.plans: dict[str, Plan] = {}
        self.evaluator = Evaluator(pattern.size_names, self.worths, self.failed, self.plans)

    def run(self) -> Graded:
        given = given_names(self.pattern, len(self.sizes))
        self.findings.extend(given.findings)
        for name in given.names:
            self.keep(name, Worth(name.result.dimension, name.result.values))
        self.failed.update(given.failed)
        statements = [one for piece in self.pattern.body if isinstance(piece, GradeBlock) for one in piece.statements]
        self.define([one for one in statements if isinstance(one, Definition)], given)
        promises = [self.promise(one) for one in statements if isinstance(one, (Comparison, Fit))]
        inserts = {insert.key: self.values(insert.formula) for insert in inserts_of(self.pattern)}
        finished = [self.measured(one) for one in self.pattern.header.finished]
        drawn = [self.schematic(piece) for piece in self.pattern.body if isinstance(piece, SchematicBlock)]
        return Graded(
            self.pattern,
            self.pattern.size_names,
            self.names,
            {key: values for key, values in inserts.items() if values is not None},
            tuple(promise for promise in promises if promise is not None),
            tuple(one for one in finished if one is not None),
            tuple(drawn),
            tuple(self.findings),
        )

    def keep(self, named: Named, worth: Worth) -> None:
        self.names[named.name] = named
        self.worths[named.name] = worth

    def define(self, definitions: list[Definition], given: Given) -> None:
        """Works out the definitions, each behind those it relies on."""
        own: dict[str, Definition] = {}
        for definition in definitions:
            name = definition.name.name
            before = own[name].span if name in own else given.place(name)
            if before is None:
                own[name] = definition
                continue
            message = f"“{name}” is defined already, in {before.line_near(definition.name.span)}."
            self.findings.append(REPEATED_NAME.at(definition.name.span, message, "Keep one, or give it another name."))
        self.lacking(given, set(own))
        relied = {name: relied_on(definition) for name, definition in own.items()}
        ordered, circles, circling = in_order(own, relied)
        self.findings.extend(circles)
        self.failed |= circling
        self.failed |= {
            name for piece in self.pattern.body if isinstance(piece, GradeBlock) for name in piece.unreadable
        }
        for definition in ordered:
            self.definition(definition, relied[definition.name.name])

    def lacking(self, given: Given, own: set[str]) -> None:
        """Measurements that some sizes do not have are a fault where a formula uses them."""
        used = set(names_used(self.pattern)) if given.lacking else set()
        for name, (span, sizes) in given.lacking.items():
            if name in own:
                continue
            self.failed.add(name)
            if name in used:
                message = f"“{name}”, which {listed(sizes)} {'does' if len(sizes) == 1 else 'do'} not have, is used."
                mend = f"Add “{name}: …” to {'this size' if len(sizes) == 1 else 'these sizes'}."
                self.findings.append(MISSING_MEASUREMENT.at(span, message, mend, sizes))

    def definition(self, definition: Definition, relied: tuple[str, ...]) -> None:
        name = definition.name.name
        plan = PLANS.get(plan_called(definition.formula))
        if plan is not None:
            self.plan(definition, plan, relied)
            return
        worths = self.worked(definition.formula)
        if worths is None:
            self.failed.add(name)
            return
        values = self.spread(*worths)
        named = Named(name, definition.name.span, values, definition.formula, relied)
        self.keep(named, worths[0])

    def plan(self, definition: Definition, plan: Plan, relied: tuple[str, ...]) -> None:
        """The numbers of a plan, each by a name of its own; the plan itself is no number."""
        name, formula = definition.name.name, definition.formula
        self.plans[name] = plan
        try:
            numbers = planned(plan, formula, self.evaluator, self.pattern.size_names)
        except Fault as fault:
            self.told(fault, names_in(formula.tree))
            self.failed.update(f"{name}.{member.name}" for member in plan.members)
            return
        for member, worth in numbers.items():
            values = self.spread(worth, worth)
            self.keep(Named(f"{name}.{member}", definition.name.span, values, formula, relied), worth)

    def worked(self, formula: Formula) -> tuple[Worth, Worth] | None:
        try:
            worths = self.evaluator.formula(formula)
        except Fault as fault:
            self.told(fault, names_in(formula.tree) + names_in(formula.rounding))
            return None
        if _oversized(worths[1].values):
            message = f"“{formula.text}” has far more digits than anything that is knitted."
            self.findings.append(OVERSIZED_NUMBER.at(formula.span, message, "Mend the formula."))
            return None
        return worths if self.rounded else (worths[1], worths[1])

    def told(self, fault: Fault, names: tuple[Name, ...]) -> None:
        """Records why there is no value, and every name among those used that nothing defines."""
        self.findings.extend(self.evaluator.unknown(names))
        if fault.finding is not None:
            self.findings.append(fault.finding)

    def spread(self, worth: Worth, unrounded: Worth) -> Values:
        count = len(self.sizes)
        values = spread(worth.values, count)
        return Values(worth.dimension, values, values if unrounded is worth else spread(unrounded.values, count))

    def values(self, formula: Formula) -> Values | None:
        worths = self.worked(formula)
        return None if worths is None else self.spread(*worths)

    def promise(self, statement: Comparison | Fit) -> Promise | None:
        left = self.values(statement.left)
        if isinstance(statement, Fit):
            return None if left is None else self.fit(statement, left)
        right = self.values(statement.right)
        if left is None or right is None:
            return None
        if not _comparable(statement, left, right):
            message = f"This compares {spoken(left.dimension)} with {spoken(right.dimension)}."
            mend = unit_mend(left.dimension, right.dimension)
            self.findings.append(WRONG_UNITS.at(statement.span, message, mend))
            return None
        return Promise(statement, left, right)

    def schematic(self, block: SchematicBlock) -> Schematic:
        """The pieces of a schematic that can be drawn."""
        drawing = Drawing(self.evaluator, self.pattern.size_names, block.sizes)
        pieces = []
        before: dict[str, Definition] = {}
        for definition in block.pieces:
            name = definition.name
            first = before.setdefault(name.name, definition)
            try:
                pieces.append(drawing.piece(definition, first))
            except Fault as fault:
                self.told(fault, names_in(definition.formula.tree))
        return Schematic(block.span, tuple(pieces))

    def fit(self, statement: Fit, left: Values) -> Promise | None:
        try:
            of, plus = self.evaluator.multiple(statement.multiple, left.dimension, statement.span)
        except Fault as fault:
            self.told(fault, names_in(statement.multiple))
            return None
        count = len(self.sizes)
        return Promise(statement, left, None, spread(of, count), spread(plus, count))

    def measured(self, finished: Finished) -> Measured | None:
        values = self.values(finished.formula)
        body = self.names.get(finished.body.text) if finished.body else None
        if finished.body is not None and body is None:
            known = [name for name, named in self.names.items() if named.formula is None]
            if finished.body.text not in self.failed:
                mend = did_you_mean(finished.body.text, known, "Name a measurement that every size has.")
                message = f"“{finished.body.text}” is no body measurement of this pattern."
                self.findings.append(UNKNOWN_NAME.at(finished.body.span, message, mend))
            return None
        if values is None or not self.measurable(finished, values):
            return None
        if body is not None and body.result.dimension != values.dimension:
            message = f"This compares {spoken(values.dimension)} with {spoken(body.result.dimension)}, the body's."
            self.findings.append(
                WRONG_UNITS.at(finished.span, message, unit_mend(values.dimension, body.result.dimension))
            )
            return None
        return Measured(finished, values, body, _ease(values, body))

    def measurable(self, finished: Finished, values: Values) -> bool:
        """A garment is measured with a tape or on scales; stitches and rows are counted."""
        if values.dimension in _MEASURED:
            return True
        message = f"“{finished.label}” is {spoken(values.dimension)}, but a finished measurement is a length."
        if gauge := _GAUGES.get(values.dimension):
            mend = f"Divide by the gauge: “({finished.formula.text}) / {gauge}”."
        elif values.dimension == _AREA:
            mend = "Two lengths are multiplied somewhere: look for a “*” that is meant to be a “+”, or leave one out."
        else:
            mend = "Give it its unit, for example “50 cm”."
        self.findings.append(WRONG_UNITS.at(finished.formula.span, message, mend))
        return False


def _oversized(values: tuple[Fraction, ...]) -> bool:
    return any(not -_LARGEST < value.numerator < _LARGEST or value.denominator > _LARGEST for value in values)


def _ease(values: Values, body: Named | None) -> tuple[Fraction, ...] | None:
    if body is None:
        return None
    return tuple(own - wearer for own, wearer in zip(values.values, body.result.values, strict=True))


def _comparable(statement: Comparison, left: Values, right: Values) -> bool:
    """A bare number promised of a count can only mean as many stitches or rows: `require crown_left = 8`."""
    if left.dimension == right.dimension:
        return True
    bare_right = right.dimension == PLAIN and _bare(statement.right) and left.dimension in COUNTS
    bare_left = left.dimension == PLAIN and _bare(statement.left) and right.dimension in COUNTS
    return bare_right or bare_left


def _bare(formula: Formula) -> bool:
    return isinstance(formula.tree, Literal) and formula.rounding is None
