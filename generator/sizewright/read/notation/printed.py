"""In: a direction, read or built by hand. Out: its line in the trade's notation, in one house style.

Parsing the English line gives the same direction, places apart. In another language the same printer prints the
messages of its catalogue. Numbers that differ by size stay pieces of their own, so that a page can print them for every
size; `source_text` makes them the braces and bracket lists a source has.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import assert_never

from sizewright.base.language import ENGLISH, language, later, named, speaking, spoken
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
from sizewright.read.notation.phrasing import NotTold, phrase, phrase_many, told_or_english
from sizewright.read.notation.printed_actions import printed_actions
from sizewright.read.notation.printed_extents import (
    called,
    extended,
    how_far,
    last_rows,
    printed_spacings,
    rows_counted,
)
from sizewright.read.notation.printed_pieces import capitalised, number, said, stitches
from sizewright.read.notation.printed_rows import Line, printed_row, row_line, rows_numbered, sentence
from sizewright.read.notation.tree import Count
from sizewright.read.notation.usual_names import fabric_name, part_name, yarn_name
from sizewright.read.notation.usual_phrases import usual

__all__ = ["NO_LANGUAGE", "line_of", "printable", "printed", "printed_row", "source_text"]

NO_LANGUAGE = replace(
    language(ENGLISH), code="zxx"
)  # one without any message, in which only words with a message can be told
_KNITTED = {"knit": later("Knit"), "purl": later("Purl")}
_KNITTED_ROUNDS = {"knit": later("Knit every rnd"), "purl": later("Purl every rnd")}
_KNITTED_ROWS = {"knit": later("knit {rows}"), "purl": later("purl {rows}"), "even": later("work {rows} even")}
# By whether they were worked before, and whether a comma parts a number from the one before it.
_REPEATED = {
    (True, True): later("Rep {rows}, {far}"),
    (True, False): later("Rep {rows} {far}"),
    (False, True): later("Work {rows}, {far}"),
    (False, False): later("Work {rows} {far}"),
}


def printed(direction: Direction) -> Told:
    """The line of a direction in the spoken language; in its own where it holds words that have no message."""
    return told_or_english(lambda: line_of(direction).whole)


def printable(direction: Direction) -> bool:
    """Whether all a direction says can be printed in another language; else it holds the designer's own words."""
    with speaking(NO_LANGUAGE):
        try:
            line_of(direction)
        except NotTold:
            return False
    return True


def line_of(direction: Direction) -> Line:  # noqa: C901, PLR0911 -- one arm a kind
    """The line of a direction in its parts. Raises `NotTold` for words that cannot be told in the spoken language."""
    match direction:
        case Row():
            return row_line(direction)
        case RepeatRows():
            return sentence(capitalised(_repeat(direction)), direction.promise)
        case Even():
            return sentence(capitalised(_even(direction)), direction.promise)
        case Spaced():
            return sentence(capitalised(printed_spacings(direction)), direction.promise)
        case Meanwhile():
            return sentence(capitalised(_meanwhile(direction)), direction.promise)
        case Declared():
            return Line((), said(_own(direction.words), "   # declared: ", _declared(direction)))
        case Unread():
            return sentence(_own(direction.words), direction.promise)
        case CastOn():
            begun = usual(direction.words) or phrase("Cast on {stitches}", stitches=stitches(direction.count))
            behind = printed_actions(direction.behind, inside=True)
            return sentence(said(begun, ", " if behind else "", behind), direction.promise)
        case Join() | Apart():
            return sentence(usual(direction.words) or _plain(direction), direction.promise)
        case TakeYarn():
            own = direction.words if spoken().code == ENGLISH else ()  # all they say beside the yarn is to take it
            return sentence(own or phrase("With {name}", name=yarn_name(direction.name)), None)
        case SameAgain():
            return sentence(_again(direction), None)
        case TakeUp() | BindOffAll() | Gather():
            return Line((), said(usual(direction.words) or _plain(direction), "."))
    assert_never(direction)


def source_text(words: Iterable[LinePiece]) -> str:
    """Printed words as a source has them, `{...}` and typed lists as they were typed."""
    return "".join(map(typed_piece, words))


def _own(words: Told) -> Told:
    """Words that are the designer's own."""
    if spoken().code != ENGLISH:
        raise NotTold(source_text(words))
    return words


Wordless = Join | Apart | TakeUp | BindOffAll | Gather


def _plain(direction: Wordless) -> Told:
    """What these say where the sentence tells no more."""
    match direction:
        case Join():
            return (
                phrase("Place marker and join to work in the round")
                if direction.marked
                else phrase("Join to work in the round")
            )
        case Apart():
            return phrase("Work back and forth in rows")
        case TakeUp():
            held = _held(direction)
            return (
                phrase("Join yarn to the {held}", held=held)
                if direction.rejoined
                else phrase("Place the {held} on needles", held=held)
            )
        case BindOffAll():
            if direction.count is not None:
                return phrase("Bind off remaining {stitches}", stitches=stitches(direction.count))
            return phrase("Bind off all sts")
        case Gather():
            return phrase("Cut yarn and thread tail through remaining {stitches}", stitches=_remaining(direction.count))
    assert_never(direction)


def _remaining(count: Count | None) -> Told:
    return phrase("sts") if count is None else stitches(count)


def _held(direction: TakeUp) -> Told:
    """ "held sts", "40 held sleeve sts"."""
    count = direction.count
    if not direction.name:
        return phrase("held sts") if count is None else phrase_many("{n} held st", "{n} held sts", count)
    part = part_name(direction.name)
    if count is None:
        return phrase("held {part} sts", part=part)
    return phrase_many("{n} held {part} st", "{n} held {part} sts", count, part=part)


def _again(direction: SameAgain) -> Told:
    """ "Make 2 more sleeve the same way"; in another language its tree says all that the sentence does."""
    if direction.words and spoken().code == ENGLISH:
        return direction.words
    count = number(direction.times)
    if not direction.part:
        return (
            phrase("Make {n} the same way", n=count)
            if direction.total
            else phrase("Make {n} more the same way", n=count)
        )
    part = part_name(direction.part)
    if direction.total:
        return phrase("Make {n} {part} the same way", n=count, part=part)
    if spoken().code != ENGLISH and direction.times.value == 1:
        return phrase("Make the second {part} the same way", part=part)
    return phrase("Make {n} more {part} the same way", n=count, part=part)


def _declared(direction: Declared) -> Told:
    if direction.rows is None:
        return stitches(direction.count)
    return said(stitches(direction.count), ", ", number(direction.rows), " rows")


def _meanwhile(direction: Meanwhile) -> Told:
    rows = _repeat(direction.rows) if isinstance(direction.rows, RepeatRows) else _even(direction.rows)
    return phrase("{work} and at the same time {shaping}", work=rows, shaping=printed_spacings(direction.shaping))


def _repeat(direction: RepeatRows) -> Told:
    """ "Rep Rows 1 to 4 five more times", "Work Rows 1 to 4 of Old shale 6 times", "Rep last 2 rnds until ..."."""
    rounds, extent = direction.in_the_round, direction.extent
    again = not (direction.name or (direction.of and direction.numbers is not None)) and extent != Extent()
    if direction.name:
        rows: Told = (called(direction.name, in_the_round=rounds),)
    elif direction.numbers is not None:
        rows = rows_numbered(direction.numbers, in_the_round=rounds)
    else:
        rows = last_rows(direction.back, in_the_round=rounds)
    if direction.of:
        rows = phrase("{rows} of {name}", rows=rows, name=named(direction.of))
    far, comma = how_far(direction, rows, more=again)
    if not far or extent.begins is not None:
        work = phrase("Rep {rows}", rows=rows) if again else phrase("Work {rows}", rows=rows)
        return extended(work, extent, far)
    if comma:
        work = (
            phrase("Rep {rows}, {far}", rows=rows, far=far)
            if again
            else phrase("Work {rows}, {far}", rows=rows, far=far)
        )
    else:
        work = (
            phrase("Rep {rows} {far}", rows=rows, far=far) if again else phrase("Work {rows} {far}", rows=rows, far=far)
        )
    return extended(work, extent)


def _even(direction: Even) -> Told:
    """ "Knit 4 rows", "Work in garter stitch until piece measures 5 cm", "Work as established for 6 rows"."""
    fabric, extent = direction.fabric, direction.extent
    if fabric in _KNITTED_ROWS and extent == Extent(rows=extent.rows, ends=extent.ends) and extent.rows is not None:
        rows = rows_counted(extent.rows, in_the_round=direction.in_the_round)
        return extended(phrase(_KNITTED_ROWS[fabric], rows=rows), extent)
    if fabric in _KNITTED:
        lead = phrase(_KNITTED_ROUNDS[fabric] if direction.in_the_round else _KNITTED[fabric])
        return extended(lead, extent, how_far(direction, lead, more=False)[0])
    name, established = fabric_name(fabric), fabric.startswith("as ")
    lead = phrase("Work {fabric}", fabric=name) if established else phrase("Work in {fabric}", fabric=name)
    far, _ = how_far(direction, lead, more=False)
    if not far or extent.begins is not None:
        return extended(lead, extent, far)
    if established:
        return extended(phrase("Work {fabric} {far}", fabric=name, far=far), extent)
    if extent.rows is not None:
        rows = rows_counted(extent.rows, in_the_round=direction.in_the_round)
        return extended(phrase("Work in {fabric} for {rows}", fabric=name, rows=rows), extent)
    return extended(phrase("Work in {fabric} {far}", fabric=name, far=far), extent)
