"""What a table with a row for each size says, ready to be set: columns in groups, cells as markup."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from markupsafe import Markup

from sizewright.base.telling import within_sentence


@dataclass(frozen=True, slots=True)
class SizeChoice:
    """One size. `z` is its class in the page ("z0"), `key` its word in an address ("adult-m")."""

    z: str
    key: str
    name: str
    remark: str


@dataclass(frozen=True, slots=True)
class Column:
    """One column of the table of sizes; `cells` has a measurement for each size, in both unit systems."""

    label: str
    cells: tuple[Markup, ...]


@dataclass(frozen=True, slots=True)
class ColumnGroup:
    """A measurement of the table of sizes: the body it fits, the finished garment and the ease between them."""

    label: str
    columns: tuple[Column, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """One size's row of the table, one cell a column."""

    size: SizeChoice
    cells: tuple[Markup, ...]


@dataclass(frozen=True, slots=True)
class SizeTable:
    """Sizes, body measurements, finished measurements and ease; or the yarn each size needs."""

    groups: tuple[ColumnGroup, ...]
    rows: tuple[Row, ...]
    has_ease: bool

    @property
    def labels(self) -> tuple[str, ...]:
        """What each cell of a row is, said by itself: "Chest: finished"; for a row that is shown alone."""
        return tuple(
            f"{group.label}: {within_sentence(column.label)}" if column.label else group.label
            for group in self.groups
            for column in group.columns
        )

    def only(self, place: int) -> "SizeTable":
        """The row of one size."""
        return replace(self, rows=(self.rows[place],))

    def parts(self, most: int) -> Iterator["SizeTable"]:
        """The table in tables of at most so many columns, where a page is too narrow for it; groups stay whole."""
        first, groups, width = 0, list[ColumnGroup](), 0
        for group in self.groups:
            if groups and width + len(group.columns) > most:
                yield self._part(groups, first, width)
                first, groups, width = first + width, [], 0
            groups.append(group)
            width += len(group.columns)
        yield self._part(groups, first, width)

    def _part(self, groups: list[ColumnGroup], first: int, width: int) -> "SizeTable":
        rows = tuple(Row(row.size, row.cells[first : first + width]) for row in self.rows)
        return SizeTable(tuple(groups), rows, self.has_ease)
