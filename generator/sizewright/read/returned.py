"""In: the bytes of a tester's sheet that came back. Out: its sheets, line by line as typed, and what cannot be read.

A spreadsheet may have written it: with commas, semicolons or tabs, in UTF-8, UTF-16 or the encoding of an old Windows.
Which one it was is told by the names of the columns, so nothing has to be guessed.
"""

import codecs
import csv
import io
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

COLUMNS = ("pattern", "version", "size", "stage", "at", "unit", "expected", "got", "remarks")
_NEEDED = (*COLUMNS[:6], "got")
_DELIMITERS = ",;\t"
_MOST = 5_000_000  # bytes; a sheet has some thousands
_WORKBOOKS = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")  # an .xlsx or .ods, an .xls


@dataclass(frozen=True, slots=True)
class Trouble:
    """What keeps a sheet, or a box of it, from being compared: where, what stands there, and what to do.

    `row` is that of the spreadsheet, 0 where it is about the whole file.
    """

    source: str
    row: int
    message: str
    mend: str


@dataclass(frozen=True, slots=True)
class Given:
    """A line of a sheet as it came back; `row` is that of the spreadsheet, from 1."""

    row: int
    stage: str
    at: str
    unit: str
    expected: str
    got: str
    remarks: str

    @property
    def key(self) -> tuple[str, str, str]:
        """What tells it from all other lines, in the spelling that `same` gives."""
        return same(self.stage), same(self.at), same(self.unit)


@dataclass(frozen=True, slots=True)
class Returned:
    """The lines of a file that belong to one sheet: one version of one pattern in one size."""

    source: str
    pattern: str
    version: str
    size: str
    lines: tuple[Given, ...]


def same(text: str) -> str:
    """A text without what a spreadsheet may change of it: capitals, space, and the sign that says it is text."""
    return " ".join(text.removeprefix("'").split()).casefold()


def read_returned(source: str, content: bytes) -> tuple[tuple[Returned, ...], tuple[Trouble, ...]]:
    """The sheets of one file, in its order, and its troubles."""
    text = _text(source, content)
    if isinstance(text, Trouble):
        return (), (text,)
    rows = _rows(source, text)
    if isinstance(rows, Trouble):
        return (), (rows,)
    (head_row, head), *lines = rows
    places = {same(name): place for place, name in enumerate(head) if same(name) in COLUMNS}
    missing = [name for name in _NEEDED if name not in places]
    if missing:
        columns = "column" if len(missing) == 1 else "columns"
        message = f"The {columns} {', '.join(f'“{name}”' for name in missing)} cannot be found in the first row."
        return (), (Trouble(source, head_row, message, _TAKE_ANEW),)
    if not lines:
        return (), (Trouble(source, 0, "There is no line below the names of the columns.", _TAKE_ANEW),)
    return _sheets(source, places, len(head), lines)


_TAKE_ANEW = "Fill in the file as “sizewright test-sheets” wrote it; columns may be added, and none may go."


def _text(source: str, content: bytes) -> str | Trouble:
    if content.startswith(_WORKBOOKS):
        mend = "Open it in the spreadsheet and save the sheet as CSV."
        return Trouble(source, 0, "This is a workbook of a spreadsheet, not a CSV file.", mend)
    if len(content) > _MOST:
        return Trouble(source, 0, "This file is too large to be a tester's sheet.", "See whether it is the right one.")
    utf16 = content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
    for encoding in ("utf-16",) if utf16 else ("utf-8-sig", "cp1252"):
        try:
            text = content.decode(encoding)
        except UnicodeDecodeError:
            continue
        if "\0" not in text:
            return text
    mend = "Save it from the spreadsheet as “CSV UTF-8”."
    return Trouble(source, 0, "This file is no text that can be read.", mend)


def _empty(source: str) -> Trouble:
    return Trouble(source, 0, "This file is empty.", _TAKE_ANEW)


def _rows(source: str, text: str) -> list[tuple[int, list[str]]] | Trouble:
    """The rows that are not empty, each with its number; one at least."""
    lines = text.splitlines()
    first = 1 if lines and re.fullmatch(r'"?sep=.?"?', lines[0].strip(), re.IGNORECASE) else 0
    head = next((line for line in lines[first:] if line.strip()), "")
    if not head:
        return _empty(source)
    delimiter = max(
        _DELIMITERS, key=lambda sign: len({same(part.strip('" ')) for part in head.split(sign)} & {*COLUMNS})
    )
    rows = []
    try:
        for number, row in enumerate(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True), 1):
            if number > first and any(map(str.strip, row)):
                rows.append((number, row))
    except csv.Error as error:
        mend = "Open it in a spreadsheet and save it as CSV again."
        return Trouble(source, len(rows) + 1, f"From here on this is no CSV: {error}.", mend)
    return rows or _empty(source)


def _columns_in(head: str, delimiter: str) -> int:
    """How many columns a first row has when it is parted so."""
    return len({same(part.strip('" ')) for part in head.split(delimiter)}.intersection(COLUMNS))


def _sheets(
    source: str, places: Mapping[str, int], width: int, rows: Sequence[tuple[int, list[str]]]
) -> tuple[tuple[Returned, ...], tuple[Trouble, ...]]:
    found: dict[tuple[str, str, str], dict[tuple[str, str, str], Given]] = {}
    named: dict[tuple[str, str, str], tuple[str, str, str]] = {}
    troubles = []
    for number, cells in rows:
        if any(map(str.strip, cells[width:])):
            mend = "A number with a comma in it has to stand in quotation marks, as a spreadsheet writes it."
            troubles.append(Trouble(source, number, "This row has more cells than there are columns.", mend))
            continue
        told = {name: cells[place].strip() if place < len(cells) else "" for name, place in places.items()}
        key = (told["pattern"], told["version"], told["size"])
        given = Given(number, *(told.get(name, "") for name in COLUMNS[3:]))
        sheet = found.setdefault(tuple(map(same, key)), {})  # type: ignore[arg-type]  # three in, three out
        named.setdefault(tuple(map(same, key)), key)  # type: ignore[arg-type]
        troubles += _twice(source, sheet.get(given.key), given)
        sheet.setdefault(given.key, given)
    sheets = (Returned(source, *named[key], tuple(lines.values())) for key, lines in found.items())
    return tuple(sheets), tuple(troubles)


def _twice(source: str, before: Given | None, given: Given) -> Iterator[Trouble]:
    if before is not None and before.got != given.got:
        message = f"“{given.stage}, {given.at}” stands twice, with “{before.got}” and “{given.got}”."
        yield Trouble(source, given.row, message, f"Keep one of the two; row {before.row} was taken.")
