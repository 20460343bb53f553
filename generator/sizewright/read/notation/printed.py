"""In: a direction, read or built by hand. Out: its line in the trade's notation, in one house style.

Parsing the line gives the same direction, places apart. Numbers that differ by size stay pieces of their own, so that a
page can print them for every size; `source_text` makes them the braces and bracket lists a source has.
"""

from collections.abc import Iterable
from typing import assert_never

from sizewright.read.inserts import LinePiece, Told, typed_piece
from sizewright.read.notation.direction_tree import (
    Apart,
    BindOffAll,
    CastOn,
    Declared,
    Direction,
    Even,
    Extent,
    Gather,
    Join,
    Meanwhile,
    RepeatRows,
    Row,
    SameAgain,
    Spaced,
    TakeUp,
    TakeYarn,
    Unread,
)
from sizewright.read.notation.printed_actions import printed_actions
from sizewright.read.notation.printed_extents import called, printed_extent, printed_spacings, rows_counted
from sizewright.read.notation.printed_pieces import capitalised, number, said, stitches
from sizewright.read.notation.printed_rows import printed_numbers, printed_row, sentence
from sizewright.read.notation.tree import Count

__all__ = ["printed", "printed_row", "source_text"]


def printed(direction: Direction) -> Told:  # noqa: C901, PLR0911 -- one arm a kind
    """The line of a direction."""
    match direction:
        case Row():
            return printed_row(direction)
        case RepeatRows():
            return sentence(_repeat(direction), direction.promise)
        case Even():
            return sentence(_even(direction), direction.promise)
        case Spaced():
            return sentence(capitalised(printed_spacings(direction)), direction.promise)
        case Meanwhile():
            rows = _repeat(direction.rows) if isinstance(direction.rows, RepeatRows) else _even(direction.rows)
            shaping = printed_spacings(direction.shaping)
            return sentence(said(rows, " and at the same time ", shaping), direction.promise)
        case Declared():
            return said(direction.words, "   # declared: ", _declared(direction))
        case Unread():
            return sentence(direction.words, direction.promise)
        case CastOn():
            begun = direction.words or said("Cast on ", stitches(direction.count))
            behind = printed_actions(direction.behind, inside=True)
            return sentence(said(begun, ", " if behind else "", behind), direction.promise)
        case Join() | Apart():
            return sentence(direction.words or _plain(direction), direction.promise)
        case TakeUp() | BindOffAll() | Gather() | TakeYarn() | SameAgain():
            return said(direction.words or _plain(direction), ".")
    assert_never(direction)


def source_text(words: Iterable[LinePiece]) -> str:
    """Printed words as a source has them, `{...}` and typed lists as they were typed."""
    return "".join(map(typed_piece, words))


Wordless = Join | Apart | TakeUp | BindOffAll | Gather | TakeYarn | SameAgain


def _plain(direction: Wordless) -> Told:  # noqa: PLR0911 -- one arm a kind
    """What these say where the sentence tells no more."""
    match direction:
        case Join():
            return ("Place marker and join to work in the round" if direction.marked else "Join to work in the round",)
        case Apart():
            return ("Work back and forth in rows",)
        case TakeUp():
            held = _counted(direction.count, f"held {direction.name} " if direction.name else "held ")
            return said("Join yarn to the ", held) if direction.rejoined else said("Place the ", held, " on needles")
        case BindOffAll():
            return ("Bind off all sts",)
        case Gather():
            return said("Cut yarn and thread tail through remaining ", _counted(direction.count, ""))
        case TakeYarn():
            return (f"With {direction.name}",)
        case SameAgain():
            more = "" if direction.total else "more "
            return said("Make ", number(direction.times), f" {more}{direction.part} the same way")
    assert_never(direction)


def _counted(count: Count | None, kind: str) -> Told:
    if count is None:
        return (f"{kind}sts",)
    return said(number(count), f" {kind}", "st" if count.value == 1 else "sts")


def _declared(direction: Declared) -> Told:
    if direction.rows is None:
        return stitches(direction.count)
    return said(stitches(direction.count), ", ", number(direction.rows), " rows")


def _repeat(direction: RepeatRows) -> Told:
    """ "Rep Rows 1 to 4 five more times", "Work Rows 1 to 4 of Old shale 6 times", "Rep last 2 rnds until ..."."""
    word = "Rnd" if direction.in_the_round else "Row"
    extent = direction.extent
    again = not (direction.name or (direction.of and direction.numbers is not None)) and extent != Extent()
    if direction.name:
        rows: Told = (called(direction.name, in_the_round=direction.in_the_round),)
    elif direction.numbers is not None:
        plural = len(direction.numbers.listed) > 1 or direction.numbers.last is not None
        rows = said(word, "s " if plural else " ", printed_numbers(direction.numbers))
    else:
        small = word.casefold()
        rows = (f"last {small}" if direction.back == 1 else f"last {direction.back} {small}s",)
    named = said(rows, f" of {direction.of}" if direction.of else "")
    return said("Rep " if again else "Work ", named, printed_extent(direction, named, more=again))


def _even(direction: Even) -> Told:
    """ "Knit 4 rows", "Work in garter stitch until piece measures 5 cm", "Work as established for 6 rows"."""
    fabric, extent = direction.fabric, direction.extent
    if fabric in ("knit", "purl"):
        if extent == Extent(rows=extent.rows) and extent.rows is not None:
            return capitalised(said(f"{fabric} ", rows_counted(extent.rows, in_the_round=direction.in_the_round)))
        lead: Told = (f"{fabric.capitalize()} every rnd" if direction.in_the_round else fabric.capitalize(),)
    else:
        lead = (f"Work {fabric}" if fabric.startswith("as ") else f"Work in {fabric}",)
    return said(lead, printed_extent(direction, lead, more=False))
