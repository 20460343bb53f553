"""In: a proofed pattern. Out: its quantities and its ledger as CSV (RFC 4180) for a spreadsheet, one row a size.

UTF-8 with its mark, by which spreadsheets know it. A fraction is in two columns, as "1/2" would be taken for a day; a
text that would be taken for a formula has an apostrophe before it.
"""

import csv
import io
from collections.abc import Iterable, Iterator
from fractions import Fraction

from sizewright.base.units import base_unit
from sizewright.grade.graded import Graded, Named
from sizewright.grade.growth import growth
from sizewright.grade.moved import gauges_behind, moved
from sizewright.grade.reliance import Kind, Use, reliance
from sizewright.publish.sheet.quantities import looks_at
from sizewright.work.worked import Worked

_Field = str | int | Fraction | None
_FORMULAS = ("=", "+", "-", "@", "\t", "\r")

QUANTITIES = (
    "name", "formula", "unit", "size", "value", "before_rounding", "moved", "moved_cm", "step", "step_percent",
    "value_numerator", "value_denominator", "before_rounding_numerator", "before_rounding_denominator",
    "relies_on", "used_by", "text_lines", "gauges", "source", "line", "second_look",
)  # fmt: skip
LEDGER = ("piece", "row", "line", "size", "before", "after", "change", "rows", "declared")


def quantities_csv(graded: Graded) -> bytes:
    """Every quantity, in the order of the source, a row for each size."""
    uses = reliance(graded)
    quantities = sorted(graded.quantities.values(), key=lambda one: (one.span, one.name))
    return csv_table(QUANTITIES, (line for named in quantities for line in _quantity(graded, named, uses[named.name])))


def ledger_csv(worked: Worked) -> bytes:
    """Every direction that was carried out, a row for each size that has it."""
    return csv_table(LEDGER, _ledger(worked))


def _quantity(graded: Graded, named: Named, uses: tuple[Use, ...]) -> Iterator[tuple[_Field, ...]]:
    how, grown, result = moved(graded, named), growth(named.result.values), named.result
    users = " ".join(use.called for use in uses if use.kind is Kind.QUANTITY)
    lines = " ".join(dict.fromkeys(str(use.span.shown.line) for use in uses if use.kind is Kind.TEXT))
    gauges = " ".join(one.name for one in gauges_behind(graded, named))
    looks = "; ".join(looks_at(graded, named))
    formula = f"{named.name} = {' '.join(named.formula.text.split())}" if named.formula else ""
    for place, size in enumerate(graded.sizes or ("",)):
        value, before = result.values[place], result.unrounded[place]
        part = grown.parts[place - 1] if place else None
        yield (
            named.name, formula, base_unit(result.dimension), size, value, before,
            how.by[place] if how else None, how.length[place] if how and how.length else None,
            grown.steps[place - 1] if place else None, part * 100 if part is not None else None,
            value.numerator, value.denominator, before.numerator, before.denominator,
            " ".join(named.relies_on), users, lines, gauges, named.span.shown.source, named.span.shown.line, looks,
        )  # fmt: skip


def _ledger(worked: Worked) -> Iterator[tuple[_Field, ...]]:
    for entry in worked.entries:
        for place, size in enumerate(worked.graded.sizes or ("",)):
            before, after = entry.before[place], entry.after[place]
            if before is None and after is None:
                continue
            change = after - before if before is not None and after is not None else None
            declared = "declared" if entry.declared else ""
            yield (
                entry.piece,
                entry.label,
                entry.span.shown.line,
                size,
                before,
                after,
                change,
                entry.rows[place],
                declared,
            )


def csv_table(head: Iterable[str], lines: Iterable[tuple[_Field, ...]]) -> bytes:
    """A table with these columns, as every spreadsheet reads it."""
    written = io.StringIO(newline="")
    writer = csv.writer(written, lineterminator="\r\n")
    writer.writerow(head)
    writer.writerows(map(_cell, line) for line in lines)
    return written.getvalue().encode("utf-8-sig", "backslashreplace")


def _cell(told: _Field) -> str | int:
    match told:
        case None:
            return ""
        case Fraction():
            return _decimal(told)
        case str() if told.startswith(_FORMULAS):
            return f"'{told}"
    return told


def _decimal(value: Fraction) -> str:
    """Six decimals, a tie away from zero, with the sign and point that every program reads."""
    scaled = (2 * abs(value.numerator) * 10**6 + value.denominator) // (2 * value.denominator)
    whole, part = divmod(scaled, 10**6)
    text = f"{whole}.{part:06d}".rstrip("0").rstrip(".")
    return f"-{text}" if value < 0 and scaled else text
