"""In: the directions of a block as they are written. Out: the same in the order they are worked.

Rows may share words ("Rows 1, 4: …; Rows 2, 3: …") or be told by kind ("and all WS rows"); they are worked by number.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import groupby

from sizewright.read.notation.direction_tree import Direction, Numbers, Row
from sizewright.read.notation.tree import Side


def arranged(directions: Iterable[Direction]) -> tuple[Direction, ...]:
    """The directions in working order, each numbered row by itself."""
    found: list[Direction] = []
    for numbered, together in groupby(directions, _numbered):
        group = tuple(together)
        rows = tuple(one for one in group if isinstance(one, Row))
        found.extend(_by_number(rows) if numbered else group)
    return tuple(found)


def _numbered(direction: Direction) -> bool:
    return isinstance(direction, Row) and bool(direction.numbers.listed or direction.numbers.every)


def _by_number(rows: Sequence[Row]) -> list[Direction]:
    """Rows in the order of their numbers; a number that comes again begins anew."""
    done: list[Direction] = []
    group: dict[int, Row] = {}
    rest: list[Row] = []
    for row in rows:
        if any(number in group for number in row.numbers.listed):
            done.extend(_closed(group, rest))
            group, rest = {}, []
        if row.numbers.last is not None:
            group[row.numbers.first] = row
        group.update({number: _single(row, place) for place, number in enumerate(row.numbers.listed)})
        if row.numbers.every:
            rest.append(row)
    done.extend(_closed(group, rest))
    return done


def _single(row: Row, place: int) -> Row:
    """One of several rows told together: as one of those they are like, in their order; a count is that of the last."""
    number = row.numbers.listed[place]
    single = replace(row, numbers=Numbers((number,)), label=_label(row, number))
    if row.like is None or len(row.like.listed) < 2:
        return single
    promise = row.promise if place == len(row.numbers.listed) - 1 else None
    like = row.like.listed[place % len(row.like.listed)]
    return replace(single, like=Numbers((like,)), promise=promise)


def _label(row: Row, number: int) -> str:
    if len(row.numbers.listed) < 2 and not row.numbers.every:
        return row.label
    return f"{'Rnd' if row.in_the_round else 'Row'} {number}"


def _closed(group: dict[int, Row], rest: list[Row]) -> list[Row]:
    """The numbered rows in order, the rows told by kind filled in between and behind the last."""
    last = max(group, default=0)
    for row in rest:
        parity = _parity(row.numbers.every, group)
        behind = last + 1 if parity is not None and (last + 1) % 2 == parity else last
        for number in range(1, behind + 1):
            if number not in group and (parity is None or number % 2 == parity):
                group[number] = replace(row, numbers=Numbers((number,)), label=_label(row, number))
    return [group[number] for number in sorted(group)]


def _parity(every: str, group: dict[int, Row]) -> int | None:
    """Whether a kind of rows has even or odd numbers (0 or 1); None where the numbers written leave it open."""
    if every in ("even", "odd"):
        return 0 if every == "even" else 1
    written = next(iter(sorted(group)), 1)
    if every in ("RS", "WS"):
        side = group[written].side if written in group else None
        first_is_right = side is not Side.WRONG if written % 2 else side is Side.WRONG
        return (1 if first_is_right else 0) if every == "RS" else (0 if first_is_right else 1)
    return 1 - written % 2
