"""In: a table of sizes wider than paper. Out: tables that are not, with every cell under its own column."""

from hypothesis import given
from hypothesis import strategies as st
from markupsafe import escape

from sizewright.publish.view_table import Column, ColumnGroup, Row, SizeChoice, SizeTable


@given(st.lists(st.integers(1, 3), min_size=1, max_size=12), st.integers(3, 12))
def test_a_wide_table_is_told_in_parts(widths: list[int], most: int) -> None:
    groups = tuple(
        ColumnGroup(f"G{group}", tuple(Column(f"G{group}.{column}", ()) for column in range(width)))
        for group, width in enumerate(widths)
    )
    labels = tuple(escape(column.label) for group in groups for column in group.columns)
    rows = tuple(Row(SizeChoice(f"z{size}", "", str(size), ""), labels) for size in range(3))
    parts = tuple(SizeTable(groups, rows, has_ease=True).parts(most))
    assert tuple(group for part in parts for group in part.groups) == groups
    for part in parts:
        own = tuple(column.label for group in part.groups for column in group.columns)
        assert 0 < len(own) <= most
        assert [row.size for row in part.rows] == [row.size for row in rows]
        assert all(row.cells == own for row in part.rows)
