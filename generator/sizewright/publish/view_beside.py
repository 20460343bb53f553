"""In: a worked pattern and its tables. Out: one table in which any two of its sizes can stand side by side."""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from markupsafe import Markup

from sizewright.base.language import later, named, tr
from sizewright.base.printing import decimal
from sizewright.publish.view_choice import BesideGroup, BesideRow
from sizewright.publish.view_start import untitled
from sizewright.publish.view_table import SizeTable
from sizewright.read.pattern import Heading, Piece
from sizewright.work.worked import Entry, Worked

_NONE = Markup("–")
_BEGUN = {"Cast on": later("stitches cast on"), "Take up": later("stitches taken up")}


def beside_groups(worked: Worked, table: SizeTable | None, amounts: SizeTable | None) -> tuple[BesideGroup, ...]:
    """Measurements, yarn and the counts of each section; nothing where there are no two sizes to compare."""
    if len(worked.graded.sizes) < 2:
        return ()
    groups = (
        BesideGroup(tr("Measurements"), tuple(_table_rows(table))),
        BesideGroup(tr("Yarn"), tuple(_table_rows(amounts))),
        BesideGroup(tr("Stitches and rows"), tuple(_stage_rows(worked, untitled(worked.graded.pattern.body)[1]))),
    )
    return tuple(group for group in groups if group.rows)


def _table_rows(table: SizeTable | None) -> Iterator[BesideRow]:
    for at, label in enumerate(table.labels if table else ()):
        yield BesideRow(label, tuple(row.cells[at] for row in table.rows) if table else ())


def _stage_rows(worked: Worked, pieces: Sequence[Piece]) -> Iterator[BesideRow]:
    """What each section begins and ends with, and the rows between; one worked the same way again is told once."""
    sizes = range(len(worked.graded.sizes))
    for heading, entries in _sections(worked.entries, pieces):
        for what, counts in dict.fromkeys(_begun(entry) for entry in entries if entry.label in _BEGUN):
            yield from _row(_of(heading, tr(what)), counts)
        yield from _row(
            _of(heading, tr("rows or rounds")), [sum(entry.rows[size] for entry in entries) for size in sizes]
        )
        yield from _row(_of(heading, tr("stitches at the end")), [_left(entries, size) for size in sizes])


def _of(heading: str, what: str) -> str:
    return f"{heading}: {what}"


def _sections(entries: Iterable[Entry], pieces: Sequence[Piece]) -> Iterator[tuple[str, list[Entry]]]:
    """What is worked under each of the main headings, in the order of the source."""
    headings = [piece for piece in pieces if isinstance(piece, Heading)]
    top = min((heading.level for heading in headings), default=0)
    main = [heading for heading in headings if heading.level == top]
    found: dict[str, list[Entry]] = {}
    for entry in entries:
        above = [heading.text for heading in main if heading.span.line <= entry.span.line]
        found.setdefault(named(above[-1]) if above else tr("Beginning"), []).append(entry)
    yield from found.items()


def _begun(entry: Entry) -> tuple[str, tuple[int | None, ...]]:
    """What a section is begun with; two sleeves that are written one after the other are begun alike."""
    pairs = zip(entry.after, entry.before, strict=True)
    return _BEGUN[entry.label], tuple(None if after is None else after - (before or 0) for after, before in pairs)


def _left(entries: Sequence[Entry], size: int) -> int | None:
    """The stitches at the end of a section, before they are bound off or closed."""
    return next((entry.after[size] for entry in reversed(entries) if entry.after[size]), None)


def _row(label: str, counts: Sequence[int | None]) -> Iterator[BesideRow]:
    if any(counts):
        yield BesideRow(label, tuple(_NONE if one is None else Markup(decimal(Fraction(one))) for one in counts))  # noqa: S704 (numbers)
