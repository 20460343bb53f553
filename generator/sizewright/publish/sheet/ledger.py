"""In: a pattern carried out. Out: the ledger of its rows, piece by piece, and its stitch patterns' multiples."""

from collections.abc import Iterator

from sizewright.grade.graded import Graded
from sizewright.publish.sheet.figures import NONE
from sizewright.publish.sheet.found import Found
from sizewright.publish.sheet.view import Cell, LedgerPart, LedgerRow, MultipleView
from sizewright.work.worked import Entry, StitchPattern, Worked

_LONGEST = 180  # signs of a line that are quoted


def ledger_parts(worked: Worked, found: Found) -> Iterator[LedgerPart]:
    """The rows of each piece; one that is begun anew is a part of its own."""
    begins = {part.span.line for part in worked.parts}
    rows: list[LedgerRow] = []
    first, last = None, 0
    for entry in worked.entries:
        line = entry.span.line
        if first is not None and (entry.piece != first.piece or (line in begins and line != last)):
            yield LedgerPart(_label(first), tuple(rows))
            rows, first = [], None
        first = first or entry
        rows.append(_row(worked.graded, entry, found, quoted=line != last))
        last = line
    if first is not None:
        yield LedgerPart(_label(first), tuple(rows))


def _label(first: Entry) -> str:
    return f"{first.piece or 'Piece'}, from line {first.span.shown.line}"


def _row(graded: Graded, entry: Entry, found: Found, *, quoted: bool) -> LedgerRow:
    typed = graded.pattern.lines.lines[entry.span.line - 1].strip() if quoted else ""
    beside = found.at(entry.span) if quoted else ()
    looks = [f"{'accepted' if one.reason else one.level}: {one.rule}" for one in beside]
    if entry.declared:
        looks.append("declared, not proved")
    return LedgerRow(
        entry.label,
        entry.span.shown.line,
        typed if len(typed) <= _LONGEST else f"{typed[:_LONGEST]}…",
        tuple(_cell(entry, place) for place in range(len(entry.rows))),
        entry.declared,
        beside,
        tuple(looks),
    )


def _cell(entry: Entry, place: int) -> Cell:
    """ "72 → 68", "×3": a count before and after where they differ, and the rows worked, where more than one."""
    before, after, rows = entry.before[place], entry.after[place], entry.rows[place]
    times = f"×{rows}" if rows > 1 else ""
    if before is None and after is None:
        return Cell(NONE, "none")
    if before == after:
        return Cell(f"{after}", "", times)
    ends = (NONE if count is None else str(count) for count in (before, after))
    return Cell(" → ".join(ends), "changed", times)


def multiple_views(worked: Worked, found: Found) -> Iterator[MultipleView]:
    """Every stitch pattern; what could not be read has no multiple that is known."""
    for one in worked.stitch_patterns:
        stated = _multiple(*one.stated) if one.stated else ""
        has = _has(one)
        agree = "" if not stated else "yes" if one.stated == (one.multiple, one.plus) else "no"
        yield MultipleView(
            one.name, one.span.shown.line, stated or "not stated", has, one.rows, agree, found.at(one.span)
        )


def _has(one: StitchPattern) -> str:
    if not one.understood:
        return "not known: a row was not understood"
    return "none: its rows fit no count together" if one.multiple is None else _multiple(one.multiple, one.plus)


def _multiple(of: int, plus: int) -> str:
    return f"multiple of {of} sts" + (f" plus {plus}" if plus else "")
