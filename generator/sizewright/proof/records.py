"""In: a pattern carried out, and what its header accepts. Out: what somebody signs off, as records, and as a file.

Its numbers, rows and acceptances; words that change none of them are not recorded, so they may be mended afterwards.
"""

from collections.abc import Iterator, Sequence

from sizewright.base.printing import exact_text
from sizewright.base.units import base_unit
from sizewright.proof.acceptance import Accepted
from sizewright.proof.line import Kind, Line
from sizewright.proof.printed_lines import printed_lines
from sizewright.read.sign_off import BAR, FIRST, NOTHING, Record
from sizewright.work.worked import Entry, Worked

_KINDS = {Kind.FACT: "fact", Kind.DRAWN: "fact", Kind.TEXT: "text"}


def records_of(worked: Worked, accepted: Sequence[Accepted]) -> tuple[Record, ...]:
    """The records: quantities by their names, so that to move one is no change, all else as a person reads it."""
    return tuple(_records(worked, accepted))


def sizes_of(worked: Worked) -> tuple[str, ...]:
    """The sizes as records have them, one without a name too."""
    return tuple(map(_part, worked.graded.sizes or ("",)))


def sign_off_text(worked: Worked, accepted: Sequence[Accepted], by: str, on: str) -> str:
    """The file; the same pattern, person and day always give the same text."""
    head = (FIRST, ("by", _part(by)), ("on", _part(on)), ("sizes", *sizes_of(worked)))
    lines = [*head, *(_parts(record) for record in records_of(worked, accepted))]
    return "".join(f"{BAR.join(parts)}\n" for parts in lines)


def _parts(record: Record) -> tuple[str, ...]:
    values = record.values[:1] if len(set(record.values)) == 1 else record.values
    return (record.kind, record.name, *values)


def _records(worked: Worked, accepted: Sequence[Accepted]) -> Iterator[Record]:
    for name, named in sorted(worked.graded.quantities.items()):
        unit = base_unit(named.result.dimension)
        values = tuple(map(exact_text, named.result.values))
        yield Record("quantity", _part(f"{name} in {unit}" if unit else name), values, named.span)
    for line in printed_lines(worked):
        yield _of_line(line)
    for entry in worked.entries:
        yield Record("row", _part(f"{entry.piece}, {entry.label}".strip(", ")), _counts(entry), entry.span)
    sizes = worked.graded.sizes or ("",)
    for one in accepted:
        where = f" on “{one.acceptance.text.text}”" if one.acceptance.text else ""
        concerned = one.finding.sizes or sizes
        values = tuple("accepted" if size in concerned else NOTHING for size in sizes)
        yield Record("accepted", _part(f"{one.finding.rule}{where}: {one.reason}"), values, one.acceptance.span)


def _of_line(line: Line) -> Record:
    """A line without its heading, which is words."""
    values = tuple(_part(said or "") for said in line.counts)
    side = f" ({line.side})" if line.side and line.side not in line.name else ""
    return Record(_KINDS.get(line.kind, "does"), _part(line.name + side), values, line.span)


def _counts(entry: Entry) -> tuple[str, ...]:
    return tuple(
        f"{_count(before)} to {_count(after)}{f' in {rows} rows' if rows > 1 else ''}"
        for before, after, rows in zip(entry.before, entry.after, entry.rows, strict=True)
    )


def _count(count: int | None) -> str:
    return NOTHING if count is None else str(count)


def _part(text: str) -> str:
    """A text as a part of a line: no bar and no line end in it, and never empty."""
    return " ".join(text.replace("|", "¦").split()) or NOTHING
