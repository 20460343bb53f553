"""In: a stitch block. Out: the multiple its rows really have, from the counts over which they can be worked."""

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from sizewright.grade.graded import Graded
from sizewright.read.notation.direction_tree import CastOn, Row
from sizewright.read.notation.kinds import Promised
from sizewright.read.notation.words import ALL_NUMBER_WORDS
from sizewright.read.pattern import StitchBlock
from sizewright.work.blocks import block_rows, understood
from sizewright.work.counts import Counts
from sizewright.work.trial import totals
from sizewright.work.widths import Tried, fitting
from sizewright.work.worked import BlockCount, Clash, StitchPattern

_STATED = re.compile(r"multiple of (\d+)(?: sts?| stitches)?(?:,? (?:plus|and|\+) (\d+))?", re.IGNORECASE)
_PANEL = re.compile(r"panel of (\d+)(?: sts?| stitches)?\b", re.IGNORECASE)
_STS = "(?:sts?|stitch|stitches)"
_OLD = re.compile(
    rf"cast on any number of {_STS} (?:that can be divided|divisible) by (?P<of>[\w-]+)"
    rf"(?:, with (?P<plus>[\w-]+) {_STS} over)?|cast on (?P<each>[\w-]+) {_STS} for each pattern",
    re.IGNORECASE,
)
_TOLD = 4  # counts that are told of those that would fit


def measured(block: StitchBlock, graded: Graded) -> StitchPattern:
    """The stitch pattern of a block, with the multiple it states."""
    rows = block_rows(block.directions)
    name, stated, cast_on = block.name.text, _stated(block), _cast_on(block)
    if not rows or not understood(block):
        return StitchPattern(name, block.span, None, 0, len(rows), stated, understood=understood(block))
    counts = Counts(graded, 0)
    found = Tried(rows, counts)
    fits = fitting(found)
    multiple, plus = _multiple(fits)
    repeats, beside = _by_repeat(found, fits, multiple, plus) if multiple is not None else ((), ())
    return StitchPattern(
        name,
        block.span,
        multiple,
        plus,
        len(rows),
        stated,
        repeats,
        beside,
        cast_on,
        tuple(_broken(found, fits, cast_on)) if fits else (),
        None if fits else _clash(found),
        next(((width, found[width][-1]) for width in range(1, found.widest) if len(found[width]) == len(rows)), None),
        panel=_panel(block),
        widths=tuple(fits),
    )


def _multiple(fits: Sequence[int]) -> tuple[int | None, int]:
    """The multiple and the stitches beside it, where the counts that fit are evenly spaced."""
    if len(fits) < 3:
        return None, 0
    step = fits[1] - fits[0]
    if any(after - before != step for before, after in pairwise(fits)):
        return None, 0
    return step, fits[0] % step


def _by_repeat(found: Tried, fits: Sequence[int], multiple: int, plus: int) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """The stitches of one repeat behind each row, and those beside the repeats."""
    least, next_to = found[fits[0]], found[fits[1]]
    repeats = tuple(more - less for less, more in zip(least, next_to, strict=True))
    times = (fits[0] - plus) // multiple
    return repeats, tuple(total - times * one for total, one in zip(least, repeats, strict=True))


def _broken(found: Tried, fits: Sequence[int], cast_on: int | None) -> Iterator[BlockCount]:
    """The counts promised in the rows that do not come true: over what is cast on, else over any width that fits.

    All must come true over the same width; where they do over none, the least one says what is found.
    """
    if not any(row.promise for row in found.rows):
        return
    widths = fits if cast_on is None else tuple(width for width in fits if width == cast_on)
    judged = [tuple(_wrong(found.rows, width, found[width])) for width in widths]
    yield from min(judged, key=len, default=())


def _wrong(rows: Sequence[Row], width: int, after: Sequence[int]) -> Iterator[BlockCount]:
    for row, before, total in zip(rows, (width, *after), after, strict=False):
        promise = row.promise
        if promise is None or not isinstance(promise.count.value, int):
            continue
        change = {Promised.TOTAL: total, Promised.FEWER: before - total, Promised.MORE: total - before}[promise.what]
        if change != promise.count.value:
            yield BlockCount(promise.span, row.label, promise.count.value, change, width)


def _clash(found: Tried) -> Clash | None:
    """The first row that cannot be worked over what those before it leave, whatever the width; None where all can."""
    rows, tried = found.rows, [found[width] for width in range(1, found.widest)]
    furthest = max(len(after) for after in tried)
    if furthest == len(rows):
        return None
    row = rows[furthest]
    alone = tuple(width for width in range(1, found.widest) if totals((row,), width, found.counts))
    leave = sorted({after[furthest - 1] for after in tried if len(after) == furthest}) if furthest else []
    before = rows[furthest - 1].label if furthest else ""
    return Clash(row.span, row.label, before, alone[:_TOLD], tuple(leave[:_TOLD]), len(alone) > _TOLD)


def _stated(block: StitchBlock) -> tuple[int, int] | None:
    """The multiple the block says, in today's words or those of older books."""
    for line in block.lines:
        words = "".join(piece for piece in line.pieces if isinstance(piece, str))
        found = _STATED.search(words)
        if found is not None:
            return int(found[1]), int(found[2] or 0)
        old = _OLD.search(words)
        if old is not None:
            of, plus = _number(old["of"] or old["each"]), _number(old["plus"] or "0")
            return None if of is None or plus is None else (of, plus)
    return None


def _panel(block: StitchBlock) -> int | None:
    """The stitches the block says it is worked over, where it is a panel."""
    words = ("".join(piece for piece in line.pieces if isinstance(piece, str)) for line in block.lines)
    found = next(filter(None, map(_PANEL.search, words)), None)
    return None if found is None else int(found[1])


def _number(word: str) -> int | None:
    return int(word) if word.isdecimal() else ALL_NUMBER_WORDS.get(word.casefold())


def _cast_on(block: StitchBlock) -> int | None:
    """The stitches the block casts on, where it says so."""
    said = next((one.count.value for one in block.directions if isinstance(one, CastOn)), None)
    return said if isinstance(said, int) else None
