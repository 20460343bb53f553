"""In: a graded pattern. Out: what every number of it would become if it were graded for a gauge a little different."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from sizewright.base.units import ROW_GAUGE, STITCH_GAUGE, Dimension, base_unit
from sizewright.grade.at_gauge import shifted
from sizewright.grade.graded import Graded, Values
from sizewright.grade.moved import is_gauge
from sizewright.grade.regraded import regraded
from sizewright.proof.rules.broken_promise import broken
from sizewright.publish.sheet.figures import NONE, exact, lines_text, row, signed
from sizewright.publish.sheet.quantities import refs
from sizewright.publish.sheet.view import Cell, GroupView, RegradedView, RowView
from sizewright.read.formula import Name
from sizewright.read.inserts import Insert
from sizewright.read.names_used import inserts_of

_ONE_IN_TEN = Fraction(1, 10)  # one more or less in 10 cm, to the cm

# How a gauge may come out otherwise: what is counted, by how many to the cm, and the words for it.
SHIFTS: Sequence[tuple[Dimension, Fraction, str]] = (
    (STITCH_GAUGE, -_ONE_IN_TEN, "one stitch fewer in 10 cm"),
    (STITCH_GAUGE, _ONE_IN_TEN, "one stitch more in 10 cm"),
    (ROW_GAUGE, -_ONE_IN_TEN, "one row fewer in 10 cm"),
    (ROW_GAUGE, _ONE_IN_TEN, "one row more in 10 cm"),
)


def regraded_view(graded: Graded) -> RegradedView:
    """The pattern graded anew for each gauge of `SHIFTS` that it has."""
    others = {words: regraded(graded, gauges) for kind, by, words in SHIFTS if (gauges := shifted(graded, kind, by))}
    return RegradedView((*_quantities(graded, others), *_inserts(graded, others)), tuple(_told(graded, others)))


def _quantities(graded: Graded, others: Mapping[str, Graded]) -> Iterator[GroupView]:
    for name, named in graded.quantities.items():
        if is_gauge(named):
            continue
        anew = {
            words: other.quantities[name].result if name in other.quantities else None
            for words, other in others.items()
        }
        rows = tuple(_rows(named.result, anew))
        if rows:
            formula = " ".join(named.formula.text.split()) if named.formula else ""
            facts = (lines_text([named.span.line]),)
            yield GroupView(name, facts, rows, code=formula, relies_on=refs(graded, named.relies_on))


def _inserts(graded: Graded, others: Mapping[str, Graded]) -> Iterator[GroupView]:
    """Numbers of the text that are more than a quantity, each once."""
    found: dict[str, list[Insert]] = {}
    for insert in inserts_of(graded.pattern):
        if not isinstance(insert.formula.tree, Name) or insert.formula.rounding is not None:
            found.setdefault(" ".join(insert.formula.text.split()), []).append(insert)
    for text, inserts in found.items():
        values = graded.inserts.get(inserts[0].key)
        if values is not None:
            rows = tuple(_rows(values, {words: other.inserts.get(inserts[0].key) for words, other in others.items()}))
            if rows:
                yield GroupView(f"{{{text}}}", (lines_text(one.span.line for one in inserts),), rows)


def _rows(own: Values, anew: Mapping[str, Values | None]) -> Iterator[RowView]:
    """As graded, and at each gauge that changes it; nothing where none does."""
    changed = {words: one for words, one in anew.items() if one is None or one.values != own.values}
    if not changed:
        return
    unit = base_unit(own.dimension)
    behind = f", {unit}" if unit else ""
    yield row(f"as graded{behind}", map(exact, own.values), main=True)
    for words, one in changed.items():
        if one is None:
            yield row(f"{words}: no value", [NONE] * len(own.values))
            continue
        pairs = zip(one.values, own.values, strict=True)
        yield RowView(f"{words}{behind}", tuple(_cell(value, before) for value, before in pairs))


def _cell(value: Fraction, before: Fraction) -> Cell:
    return Cell(exact(value), "changed", signed(value - before)) if value != before else Cell(exact(value))


def _told(graded: Graded, others: Mapping[str, Graded]) -> Iterator[str]:
    """What is found of the pattern graded anew, and not of it as it is."""
    before = {(one.rule, one.span) for one in (*graded.findings, *broken(graded))}
    for words, other in others.items():
        for one in (*other.findings, *broken(other)):
            if (one.rule, one.span) not in before and one.span is not None:
                yield f"With {words}, {lines_text([one.span.line])}: {one.message}"
