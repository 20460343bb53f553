"""In: the directions of a stitch block. Out: its rows one by one."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from sizewright.grade.graded import Graded
from sizewright.read.notation.direction_tree import Direction, RepeatRows, Row, Unread
from sizewright.read.pattern import StitchBlock
from sizewright.work.arrange import arranged


def block_rows(directions: Iterable[Direction]) -> tuple[Row, ...]:
    """The rows in the order they are worked, repeated ones again; those that take the words of others have them."""
    rows: list[Row] = []
    for direction in arranged(directions):
        if isinstance(direction, Row):
            rows.append(_worded(direction, rows))
        elif isinstance(direction, RepeatRows) and direction.extent.times is not None:
            times = direction.extent.times.value
            rows.extend([*_meant(direction, rows)] * (times if isinstance(times, int) else 1))
    return tuple(rows)


def _worded(row: Row, before: Sequence[Row]) -> Row:
    if row.like is None:
        return row
    like = next((one for one in reversed(before) if set(row.like.listed[:1]) & set(one.numbers.listed)), None)
    return row if like is None else replace(row, actions=like.actions)


def _meant(direction: RepeatRows, before: Sequence[Row]) -> Iterator[Row]:
    """The rows that are repeated, without numbers: they stand under other ones."""
    wanted = direction.numbers.listed if direction.numbers is not None else ()
    last = {number: row for row in before for number in row.numbers.listed}
    meant = [last[number] for number in wanted if number in last] if wanted else before[-direction.back :]
    for row in meant:
        yield replace(row, numbers=replace(row.numbers, listed=()), promise=None)


def understood(block: StitchBlock) -> bool:
    """Whether every row of a block was read."""
    return not any(isinstance(direction, Unread) for direction in block.directions)


def stitch_blocks(graded: Graded) -> Mapping[str, tuple[Row, ...]]:
    """The rows of every stitch pattern, by its name in small letters; where they are drawn and written, the written."""
    blocks = [block for block in graded.pattern.body if isinstance(block, StitchBlock)]
    by_name = sorted(blocks, key=lambda block: not block.drawn)
    return {block.name.text.casefold(): block_rows(block.directions) for block in by_name}


def half_read(graded: Graded) -> frozenset[str]:
    """The names of the stitch blocks with a row that was not read."""
    blocks = (block for block in graded.pattern.body if isinstance(block, StitchBlock))
    return frozenset(block.name.text.casefold() for block in blocks if not understood(block))
