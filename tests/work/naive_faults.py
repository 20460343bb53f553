"""In: pieces whose rows fit. Out: the same for hypothesis, with a fault planted in one row."""

from collections.abc import Iterator
from dataclasses import replace

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn
from tests.work.naive_rows import GROWING, pieces, takes
from tests.work.naive_words import (
    Again,
    Count,
    Marking,
    Off,
    On,
    Over,
    Part,
    Some,
    Upto,
    Written,
    WrittenAgain,
    WrittenRow,
)


def counts_off(count: Count) -> Iterator[Count]:
    """A count one more and one less, in all sizes and in the last alone."""
    for off in (1, -1):
        for changed in (tuple(one + off for one in count), (*count[:-1], count[-1] + off)):
            if min(changed) >= 0:
                yield changed


OTHERS = {
    "k": ("k2tog", "m1", "kfb"),
    "p": ("p2tog",),
    "k2tog": ("k", "k3tog", "skp"),
    "ssk": ("k", "sssk"),
    "yo": ("k",),
}


def parts_off(part: Part) -> Iterator[Part]:
    """One part with one thing changed in it."""
    match part:
        case Some(name, count):
            if name not in GROWING:
                yield from (replace(part, count=one) for one in counts_off(count))
            yield from (replace(part, name=other) for other in OTHERS.get(name, ()))
        case Upto(_, place):
            yield from (replace(part, place=replace(place, before=one)) for one in counts_off(place.before))
        case Again():
            yield from (replace(part, body=body) for body in rows_off(part.body))
            yield from (replace(part, ending=ending) for ending in rows_off(part.ending))
            if part.times is not None:
                yield from (replace(part, times=one) for one in counts_off(part.times) if min(one))
            elif not part.ending:
                unit = takes(part.body)
                fewer = tuple(one + unit for one in part.place.before)
                before = (*counts_off(part.place.before), fewer)
                yield from (replace(part, place=replace(part.place, before=one)) for one in before)
        case Off(count) | On(count):
            yield from (replace(part, count=one) for one in counts_off(count))
        case Marking(word):
            yield Marking("rm" if word != "rm" else "sm")


def rows_off(parts: tuple[Part, ...]) -> Iterator[tuple[Part, ...]]:
    """A row with one thing changed in it, or one part left out."""
    for place, part in enumerate(parts):
        yield from ((*parts[:place], one, *parts[place + 1 :]) for one in parts_off(part))
        if len(parts) > 1 and not isinstance(part, Over):
            yield (*parts[:place], *parts[place + 1 :])


def written_off(row: WrittenRow | WrittenAgain) -> Iterator[WrittenRow | WrittenAgain]:
    """A row with one fault planted."""
    if isinstance(row, WrittenAgain):
        yield from (replace(row, times=one) for one in counts_off(row.times) if min(one))
        return
    yield from (replace(row, parts=parts) for parts in rows_off(row.parts))
    if row.promise is not None:
        yield from (replace(row, promise=(row.promise[0], one)) for one in counts_off(row.promise[1]))
    if row.side:
        yield replace(row, side="RS" if row.side == "WS" else "WS")


@st.composite
def faulty(draw: DrawFn) -> Written:
    """A piece with one fault planted in one of its rows; some of them are other but valid knitting."""
    piece = draw(pieces())
    place = draw(st.integers(0, len(piece.rows) - 1))
    faults = list(written_off(piece.rows[place]))
    fault = draw(st.sampled_from(faults)) if faults else piece.rows[place]
    return replace(piece, rows=(*piece.rows[:place], fault, *piece.rows[place + 1 :]))
