"""In: how far rows go on, or how often one comes. Out: its words: "until piece measures 5 cm", "every 4th row"."""

from sizewright.base.language import ENGLISH, later, spoken
from sizewright.base.spoken_units import as_typed
from sizewright.read.inserts import Insert, Told
from sizewright.read.notation.direction_tree import Even, Extent, RepeatRows, Spaced, Spacing
from sizewright.read.notation.kinds import Side
from sizewright.read.notation.phrasing import phrase, phrase_as, phrase_many, told_word
from sizewright.read.notation.printed_actions import printed_actions
from sizewright.read.notation.printed_changes import printed_shape
from sizewright.read.notation.printed_pieces import listed, number, said, stitches, times
from sizewright.read.notation.row_names import row_called
from sizewright.read.notation.tree import Add, AtEdges, BindOff, Count
from sizewright.read.notation.usual_names import fabric_name, measured_name, since_name
from sizewright.read.notation.usual_phrases import usual
from sizewright.read.notation.words import NUMBER_WORDS

_SPELLED = {value: word for word, value in NUMBER_WORDS.items()}
_ORDINALS = {1: later("{n}st"), 2: later("{n}nd"), 3: later("{n}rd")}
_BEGINS = {
    Side.RIGHT: later("{work}, beginning with a RS row,"),
    Side.WRONG: later("{work}, beginning with a WS row,"),
}
_ENDS = {
    Side.RIGHT: later("{work}, ending with a RS row"),
    Side.WRONG: later("{work}, ending with a WS row"),
}
# By the side of the rows, and whether they are rounds.
_EVERY = {
    (None, False): later("every row"),
    (None, True): later("every rnd"),
    (Side.RIGHT, False): later("every RS row"),
    (Side.RIGHT, True): later("every RS rnd"),
    (Side.WRONG, False): later("every WS row"),
    (Side.WRONG, True): later("every WS rnd"),
}
_EVERY_NTH = {
    (None, False): later("every {nth} row"),
    (None, True): later("every {nth} rnd"),
    (Side.RIGHT, False): later("every {nth} RS row"),
    (Side.RIGHT, True): later("every {nth} RS rnd"),
    (Side.WRONG, False): later("every {nth} WS row"),
    (Side.WRONG, True): later("every {nth} WS rnd"),
}
_OTHER = {False: later("every other row"), True: later("every other rnd")}
_NEXT = {False: later("next row"), True: later("next rnd")}
_FOLLOWING = {False: later("following {nth} row"), True: later("following {nth} rnd")}
_LAST = {False: later("last row"), True: later("last rnd")}


def extended(work: Told, extent: Extent, far: Told = ()) -> Told:
    """What is worked and how far it goes on, with the sides of its first and its last row; `far` is how often or how
    many rows, where `work` does not say it.
    """
    if extent.begins is not None:
        work = phrase(_BEGINS[extent.begins], work=work)
    work = phrase("{work} {far}", work=work, far=far) if far else _until(work, extent)
    if extent.told and not extent.left and not _other(extent):
        work = phrase("{work}, ending {where}", work=work, where=usual(extent.told))
    return phrase(_ENDS[extent.ends], work=work) if extent.ends is not None else work


def _until(work: Told, extent: Extent) -> Told:
    """Until what it goes on, where it is not so many times or rows."""
    if extent.left is not None:
        left = stitches(extent.left)
        if extent.told:
            return phrase("{work} until {stitches} remain {told}", work=work, stitches=left, told=usual(extent.told))
        return phrase("{work} until {stitches} remain", work=work, stitches=left)
    if not _measured(extent) or extent.since == "here":
        return work
    part, length = measured_name(extent.part or "piece"), said(_length(extent), _other(extent))
    if extent.since in ("", extent.part):
        return phrase("{work} until {part} measures {length}", work=work, part=part, length=length)
    since = since_name(extent.since)
    return phrase(
        "{work} until {part} measures {length} from {since}", work=work, part=part, length=length, since=since
    )


def how_far(direction: RepeatRows | Even, before: Told, *, more: bool) -> tuple[Told, bool]:
    """How often or how many rows, nothing where it goes on until something; and whether a comma stands before it.

    Behind the number of a row how often is written in letters, or behind a comma: "Rep Row 2 five more times".
    """
    extent = direction.extent
    if extent.times is not None:
        numbered = not isinstance(before[-1], str) or before[-1][-1:].isdecimal()
        value = extent.times.value if isinstance(extent.times.value, int) else None
        spelled = _SPELLED.get(value) if value is not None and value not in (1, 2) else None
        if numbered and spelled and spoken().code == ENGLISH:
            return (f"{spelled}{' more' if more else ''} times",), False
        return times(extent.times, more=more), numbered and value not in (1, 2)
    if extent.rows is not None:
        return phrase("for {rows}", rows=rows_counted(extent.rows, in_the_round=direction.in_the_round)), False
    if _measured(extent) and extent.since == "here":
        return phrase("for {length}", length=said(_length(extent), _other(extent))), False
    return (), False


def _measured(extent: Extent) -> bool:
    return extent.length is not None or bool(extent.typed_length)


def rows_counted(count: Count, *, in_the_round: bool) -> Told:
    """ "6 rows", "1 rnd"."""
    return phrase_many("{n} rnd", "{n} rnds", count) if in_the_round else phrase_many("{n} row", "{n} rows", count)


def _length(extent: Extent) -> Told:
    if extent.length is None:
        return (as_typed(extent.typed_length),)
    return said(extent.length, f" {as_typed(extent.typed_length)}".rstrip())


def _other(extent: Extent) -> Told:
    """ " [5 cm]" behind a length in another unit."""
    if not extent.told or str(extent.told[0])[:1] not in ("[", "("):
        return ()
    return said(" ", tuple(as_typed(one) if isinstance(one, str) else one for one in extent.told))


def called(name: str, *, in_the_round: bool) -> str:
    """A row by its name: "Dec Row", "Set-up Rnd"."""
    words = [word[:1].upper() + word[1:] for word in name.split()]
    return row_called(" ".join("Rnd" if word == "Row" and in_the_round else word for word in words))


def last_rows(back: int, *, in_the_round: bool) -> Told:
    """ "last row", "last 2 rnds"."""
    if back == 1:
        return phrase(_LAST[in_the_round])
    return phrase("last {n} rnds", n=str(back)) if in_the_round else phrase("last {n} rows", n=str(back))


def printed_spacings(direction: Spaced) -> Told:
    """ "rep Dec Row every 4th row 3 times", "dec 1 st at each end of every RS row until 20 sts remain"."""
    rounds = direction.in_the_round
    rows = listed((_spacing(one, rounds=rounds) for one in direction.spacings), told_word(", then "))
    if direction.name:
        last = direction.name == "last row"
        row: Told = last_rows(1, in_the_round=rounds) if last else (called(direction.name, in_the_round=rounds),)
        here = direction.spacings[0].here
        work = (
            phrase("rep {row} on {rows}", row=row, rows=rows)
            if here
            else phrase("rep {row} {rows}", row=row, rows=rows)
        )
    else:
        work = _shaping(direction, rows)
    if not direction.fabric:
        return work
    return phrase("{work}, working in {fabric} between", work=work, fabric=fabric_name(direction.fabric))


def _shaping(direction: Spaced, rows: Told) -> Told:
    first, spacings = direction.actions[0], direction.spacings
    once = len(spacings) == 1 and spacings[0].here and (spacings[0].times is None or spacings[0].times.value == 1)
    if isinstance(first, Add | BindOff):
        shaping = printed_actions(direction.actions[:1], inside=True)
        if once:
            return phrase("{shaping} at beginning of {rows}", shaping=shaping, rows=rows)
        return phrase_as("done more than once", "{shaping} at beginning of {rows}", shaping=shaping, rows=rows)
    if isinstance(first, AtEdges):
        return phrase("{shaping} of {rows}", shaping=printed_shape(first, several=not once), rows=rows)
    return phrase("{shaping} on {rows}", shaping=printed_actions(direction.actions, inside=True), rows=rows)


def _spacing(spacing: Spacing, *, rounds: bool) -> Told:
    rows = _which(spacing, rounds=rounds)
    if spacing.here:
        return rows
    if spacing.until is not None:
        return phrase("{rows} until {stitches} remain", rows=rows, stitches=stitches(spacing.until))
    return phrase("{rows} {times}", rows=rows, times=times(spacing.times)) if spacing.times is not None else rows


def _which(spacing: Spacing, *, rounds: bool) -> Told:
    """ "next row", "following 4th row", "every other row", "every 4th RS row"."""
    every, side = spacing.every, spacing.side
    if spacing.here:
        if spacing.times is not None and spacing.times.value != 1:
            return phrase("next {rows}", rows=rows_counted(spacing.times, in_the_round=rounds))
        if every is None or every.value == 1:
            return phrase(_NEXT[rounds])
        return phrase(_FOLLOWING[rounds], nth=_ordinal(every))
    if every is None or (every.value == 1 and side is None):
        return phrase(_EVERY[side, rounds])
    if every.value == 2 and side is None:
        return phrase(_OTHER[rounds])
    return phrase(_EVERY_NTH[side, rounds], nth=_ordinal(every))


def _ordinal(count: Count) -> Told:
    """ "4th"; "{n:ordinal}" says it itself."""
    value = count.value
    if isinstance(value, int):
        teen = value % 100 in (11, 12, 13)
        ending = None if teen else _ORDINALS.get(value % 10)
        return phrase(ending, n=str(value)) if ending else phrase("{n}th", n=str(value))
    styled = isinstance(value, Insert) and value.style is not None and value.style.text == "ordinal"
    return (value,) if styled else phrase("{n}th", n=number(count))
