"""In: how far rows go on, or how often one comes. Out: its words: "until piece measures 5 cm", "every 4th row"."""

from sizewright.read.inserts import Insert, Told
from sizewright.read.notation.direction_tree import Even, Extent, RepeatRows, Spaced, Spacing
from sizewright.read.notation.printed_actions import printed_actions
from sizewright.read.notation.printed_pieces import listed, number, said, stitches, times
from sizewright.read.notation.tree import AtEdges, BindOff, Count
from sizewright.read.notation.words import NUMBER_WORDS

_SPELLED = {value: word for word, value in NUMBER_WORDS.items()}
_ORDINALS = {1: "st", 2: "nd", 3: "rd"}


def printed_extent(direction: RepeatRows | Even, before: Told, *, more: bool) -> Told:
    """How far rows go on, with the space before it, and the sides of their first and last; `before` are the words it
    follows.
    """
    extent = direction.extent
    begins = f", beginning with a {extent.begins.value} row," if extent.begins is not None else ""
    ends = f", ending with a {extent.ends.value} row" if extent.ends is not None else ""
    return said(begins, _how_far(direction, before, more=more), ends)


def _how_far(direction: RepeatRows | Even, before: Told, *, more: bool) -> Told:  # noqa: PLR0911 -- one arm a kind
    """How far they go on.

    Behind the number of a row how often is written in letters, or behind a comma: "Rep Row 2 five more times".
    """
    extent = direction.extent
    if extent.times is not None:
        numbered = not isinstance(before[-1], str) or before[-1][-1:].isdecimal()
        words = times(extent.times, more=more)
        spelled = _SPELLED.get(extent.times.value) if isinstance(extent.times.value, int) else None
        if numbered and spelled and extent.times.value not in (1, 2):
            return (f" {spelled}{' more' if more else ''} times",)
        return said(", " if numbered and words[0] not in _NO_FIGURES else " ", words)
    if extent.rows is not None:
        return said(" for ", rows_counted(extent.rows, in_the_round=direction.in_the_round), _aside(extent))
    if extent.left is not None:
        return said(" until ", stitches(extent.left), " remain", " " if extent.told else "", extent.told)
    if extent.length is None and not extent.typed_length:
        return ()
    if extent.since == "here":
        return said(" for ", _length(extent), _aside(extent))
    since = "" if extent.since in ("", extent.part) else f" from {extent.since}"
    return said(f" until {extent.part or 'piece'} measures ", _length(extent), _other(extent), since, _aside(extent))


_NO_FIGURES = ("once", "twice", "once more", "twice more")


def rows_counted(count: Count, *, in_the_round: bool) -> Told:
    """ "6 rows", "1 rnd"."""
    word = "rnd" if in_the_round else "row"
    return said(number(count), f" {word}" if count.value == 1 else f" {word}s")


def _length(extent: Extent) -> Told:
    if extent.length is None:
        return (extent.typed_length,)
    return said(extent.length, f" {extent.typed_length}".rstrip())


def _other(extent: Extent) -> Told:
    """ " [5 cm]" behind a length in another unit."""
    return said(" ", extent.told) if extent.told and str(extent.told[0])[:1] in ("[", "(") else ()


def _aside(extent: Extent) -> Told:
    """ ", ending at marker"."""
    return said(", ending ", extent.told) if extent.told and not _other(extent) else ()


def called(name: str, *, in_the_round: bool) -> str:
    """A row by its name: "Dec Row", "Set-up Rnd"."""
    words = [word[:1].upper() + word[1:] for word in name.split()]
    return " ".join("Rnd" if word == "Row" and in_the_round else word for word in words)


def printed_spacings(direction: Spaced) -> Told:
    """ "rep Dec Row every 4th row 3 times", "dec 1 st at each end of every RS row until 20 sts remain"."""
    rounds = direction.in_the_round
    if direction.name:
        name = "last rnd" if rounds else "last row"
        row: Told = (f"rep {name if direction.name == 'last row' else called(direction.name, in_the_round=rounds)}",)
        link = " on " if direction.spacings[0].here else " "
    else:
        bound = isinstance(direction.actions[0], BindOff)
        row = printed_actions(direction.actions[:1] if bound else direction.actions, inside=True)
        row = said(row, " at beginning") if bound else row
        link = " of " if isinstance(direction.actions[0], AtEdges | BindOff) else " on "
    spaced = listed((_spacing(one, "rnd" if rounds else "row") for one in direction.spacings), ", then ")
    return said(row, link, spaced, f", working in {direction.fabric} between" if direction.fabric else "")


def _spacing(spacing: Spacing, word: str) -> Told:
    side = f"{spacing.side.value} " if spacing.side is not None else ""
    every = spacing.every
    if spacing.here:
        if spacing.times is not None and spacing.times.value != 1:
            return said("next ", rows_counted(spacing.times, in_the_round=word == "rnd"))
        return (
            (f"next {word}",) if every is None or every.value == 1 else said("following ", _ordinal(every), f" {word}")
        )
    if every is None or (every.value == 1 and not side):
        which: Told = (f"every {side}{word}",)
    elif every.value == 2 and not side:
        which = (f"every other {word}",)
    else:
        which = said("every ", _ordinal(every), f" {side}{word}")
    if spacing.until is not None:
        return said(which, " until ", stitches(spacing.until), " remain")
    return said(which, " ", times(spacing.times)) if spacing.times is not None else which


def _ordinal(count: Count) -> Told:
    """ "4th"; "{n:ordinal}" says it itself."""
    value = count.value
    if isinstance(value, int):
        teen = value % 100 in (11, 12, 13)
        return (f"{value}{'th' if teen else _ORDINALS.get(value % 10, 'th')}",)
    styled = isinstance(value, Insert) and value.style is not None and value.style.text == "ordinal"
    return said(value, "" if styled else "th")
