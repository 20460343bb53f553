"""In: a row or round. Out: its line in house style: label, side, words, and the count behind it."""

from dataclasses import dataclass
from itertools import pairwise

from sizewright.base.language import later
from sizewright.read.inserts import Told
from sizewright.read.notation.direction_tree import Numbers, Promise, Row
from sizewright.read.notation.kinds import Promised, Side
from sizewright.read.notation.phrasing import phrase, phrase_as, told_or_english, told_word
from sizewright.read.notation.printed_actions import colour_name, printed_actions
from sizewright.read.notation.printed_pieces import behind_label, capitalised, listed, number, said, stitches
from sizewright.read.notation.row_names import row_called, whole_label
from sizewright.read.notation.tree import Action, Colour
from sizewright.read.notation.usual_names import promised_name

# By the kind of rows, and whether they are rounds.
_EVERY = {
    ("WS", False): later("all WS rows"),
    ("WS", True): later("all WS rnds"),
    ("RS", False): later("all RS rows"),
    ("RS", True): later("all RS rnds"),
    ("even", False): later("all even rows"),
    ("even", True): later("all even rnds"),
    ("odd", False): later("all odd rows"),
    ("odd", True): later("all odd rnds"),
    ("other", False): later("all alternate rows"),
    ("other", True): later("all alternate rnds"),
}
# By whether there are several, and whether they are rounds.
_NUMBERED = {
    (False, False): later("Row {numbers}"),
    (False, True): later("Rnd {numbers}"),
    (True, False): later("Rows {numbers}"),
    (True, True): later("Rnds {numbers}"),
}
_SIDES = {Side.RIGHT: later("RS"), Side.WRONG: later("WS")}
_CHANGES = {
    Promised.TOTAL: later("{stitches}"),
    Promised.FEWER: later("{stitches} decreased"),
    Promised.MORE: later("{stitches} increased"),
}


@dataclass(frozen=True, slots=True)
class Line:
    """A printed line: its label with the colon, its words with their full stop, the count behind them in no bracket."""

    label: Told
    words: Told
    count: Told = ()

    @property
    def whole(self) -> Told:
        """ "Row 1 (RS): Knit. (42 sts)"."""
        parts = [part for part in (self.label, self.words, said("(", self.count, ")") if self.count else ()) if part]
        return listed(parts, " ")


def row_line(row: Row) -> Line:
    """The line: "Row 3 (RS): K3, *p1, k1; rep from * to end. (42 sts)". Raises `NotTold`."""
    label, actions = _label(row)
    words = printed_actions(actions) if row.like is None else phrase("as {rows}", rows=rows_named(row.like, row))
    words = behind_label(words) if label else capitalised(words)
    return sentence(words, row.promise, said(label, ":") if label else ())


def printed_row(row: Row) -> Told:
    """The whole line; in English where it holds words that cannot be told in the spoken language."""
    return told_or_english(lambda: row_line(row)).whole


def sentence(words: Told, promise: Promise | None, label: Told = ()) -> Line:
    """Words with their full stop, between their label and the count behind them."""
    stop = "" if _goes_on(said(label, words)) else "."
    return Line(label, said(words, stop), () if promise is None else promised(promise))


def _goes_on(words: Told) -> bool:
    """Whether a full stop would not end the words: behind a label, and inside a bracket that is never closed."""
    text = "".join(word for word in words if isinstance(word, str))
    opened = sum(text.count(sign) for sign in "([") - sum(text.count(sign) for sign in ")]")
    return opened > 0 or text.endswith(":")


def printed_promise(promise: Promise) -> Told:
    """ "(42 sts)", "(8 sts decreased)"."""
    return said("(", promised(promise), ")")


def promised(promise: Promise) -> Told:
    """ "42 sts", "8 sts decreased"."""
    told = phrase(_CHANGES[promise.what], stitches=stitches(promise.count))
    if promise.where:
        told = phrase("{promise} {where}", promise=told, where=promised_name(promise.where))
    return phrase("{promise}; {also}", promise=told, also=promised(promise.also)) if promise.also else told


def _label(row: Row) -> tuple[Told, tuple[Action, ...]]:
    """The label without its colon, and the actions behind it; a yarn that begins the row is told in the label."""
    first = row.actions[0] if row.actions else None
    yarn = first.name if isinstance(first, Colour) else ""
    if row.heading.endswith(":"):  # an unusual label, kept whole
        told = bool(yarn) and row.heading.endswith((f"({yarn}):", f" {yarn}):"))
        return (whole_label(row.heading[:-1]),), row.actions[1:] if told else row.actions
    if not (row.heading or row.numbers != Numbers() or row.side or row.in_the_round):
        return (), row.actions
    side = told_word(_SIDES[row.side]) if row.side else ""
    remarks = ", ".join(word for word in (side, colour_name(first) if isinstance(first, Colour) else "") if word)
    label = _headed(row)
    return said(label, f" ({remarks})" if remarks else ""), row.actions[1:] if yarn else row.actions


def _headed(row: Row) -> Told:
    """The name of a row and its number: "Dec Rnd", "Rnd 3", "Dec Rnd 3"."""
    if not row.heading:
        return rows_named(row.numbers, row)
    name = row_called(f"{row.heading} {'Rnd' if row.in_the_round else 'Row'}")
    if row.numbers == Numbers():
        return (name,)
    rows = rows_named(row.numbers, row)
    return phrase_as(
        "row", "{heading} {rows}", heading=row.heading if name.startswith(row.heading) else name, rows=rows
    )


def rows_named(numbers: Numbers, row: Row) -> Told:
    """ "Row 2", "Rnds 1 to 4", "Row 2 and all WS rows", "All WS rows"."""
    rounds = row.in_the_round
    written = rows_numbered(numbers, in_the_round=rounds)
    if not numbers.every:
        return written or (row_word(in_the_round=rounds),)
    every = phrase(_EVERY[numbers.every, rounds])
    return phrase("{rows} and {every}", rows=written, every=every) if written else capitalised(every)


def row_word(*, in_the_round: bool) -> str:
    """ "Row", "Rnd"."""
    return told_word("Rnd") if in_the_round else told_word("Row")


def rows_numbered(numbers: Numbers, *, in_the_round: bool) -> Told:
    """ "Row 2", "Rnds 1 to 4"; nothing where there is no number."""
    plain = printed_numbers(numbers)
    several = len(numbers.listed) > 1 or numbers.last is not None
    return phrase(_NUMBERED[several, in_the_round], numbers=plain) if plain else ()


def printed_numbers(numbers: Numbers) -> Told:
    """ "2", "1 and 3", "1 to 4 and 7", "1 to {rows}"."""
    parts = _stretches(numbers.listed)
    if numbers.last is not None:
        parts.append(phrase_as("rows", "{first} to {last}", first=str(numbers.first), last=number(numbers.last)))
    if len(parts) < 2:
        return parts[0] if parts else ()
    return phrase_as("rows", "{rows} and {last}", rows=listed(parts[:-1]), last=parts[-1])


def _stretches(rows: tuple[int, ...]) -> list[Told]:
    """Numbers that follow one another as stretches: "1 to 4", "7"; two are no stretch."""
    found: list[list[int]] = [list(rows[:1])] if rows else []
    for before, row in pairwise(rows):
        if row == before + 1:
            found[-1].append(row)
        else:
            found.append([row])
    parts: list[Told] = []
    for stretch in found:
        if len(stretch) < 3:
            parts.extend(phrase_as("number of a row", "{n}", n=str(one)) for one in stretch)
        else:
            parts.append(phrase_as("rows", "{first} to {last}", first=str(stretch[0]), last=str(stretch[-1])))
    return parts
