"""In: a row or round. Out: its line in house style: label, side, words, and the count behind it."""

from itertools import pairwise

from sizewright.read.inserts import LinePiece, Told
from sizewright.read.notation.direction_tree import Numbers, Promise, Row
from sizewright.read.notation.kinds import Promised
from sizewright.read.notation.printed_actions import printed_actions
from sizewright.read.notation.printed_pieces import capitalised, listed, number, said, stitches
from sizewright.read.notation.tree import Action, Colour

_KINDS = {"other": "alternate"}
_CHANGES = {Promised.TOTAL: "", Promised.FEWER: " decreased", Promised.MORE: " increased"}


def printed_row(row: Row) -> Told:
    """The whole line: "Row 3 (RS): K3, *p1, k1; rep from * to end. (42 sts)"."""
    label, actions = _label(row)
    words = capitalised(
        printed_actions(actions) if row.like is None else said("as ", _rows(row.like, row.in_the_round))
    )
    return sentence(said(label, ": " if label and words else ":" if label else "", words), row.promise)


def sentence(words: Told, promise: Promise | None) -> Told:
    """Words with their full stop, and the count behind them."""
    stop = "" if _goes_on(words) else "."
    return said(words, stop) if promise is None else said(words, stop, " ", printed_promise(promise))


def _goes_on(words: Told) -> bool:
    """Whether a full stop would not end the words: behind a label, and inside a bracket that is never closed."""
    text = "".join(word for word in words if isinstance(word, str))
    opened = sum(text.count(sign) for sign in "([") - sum(text.count(sign) for sign in ")]")
    return opened > 0 or text.endswith(":")


def printed_promise(promise: Promise) -> Told:
    """ "(42 sts)", "(8 sts decreased)"."""
    return said("(", stitches(promise.count), _CHANGES[promise.what], f" {promise.where}".rstrip(), ")")


def _label(row: Row) -> tuple[Told, tuple[Action, ...]]:
    """The label without its colon, and the actions behind it; a yarn that begins the row is told in the label."""
    first = row.actions[0] if row.actions else None
    yarn = first.name if isinstance(first, Colour) else ""
    if row.heading.endswith(":"):  # an unusual label, kept whole
        told = bool(yarn) and row.heading.endswith((f"({yarn}):", f" {yarn}):"))
        return (row.heading[:-1],), row.actions[1:] if told else row.actions
    if not (row.heading or row.numbers != Numbers() or row.side or row.in_the_round):
        return (), row.actions
    remarks = ", ".join(word for word in (row.side.value if row.side else "", yarn) if word)
    label = said(row.heading, " " if row.heading else "", _rows(row.numbers, row.in_the_round))
    return said(label, f" ({remarks})" if remarks else ""), row.actions[1:] if yarn else row.actions


def _rows(numbers: Numbers, in_the_round: bool) -> Told:  # noqa: FBT001
    """ "Row 2", "Rnds 1 to 4", "Row 2 and all WS rows", "All WS rows"."""
    word = "Rnd" if in_the_round else "Row"
    several = len(numbers.listed) > 1 or numbers.last is not None
    plain = printed_numbers(numbers)
    written = said(word, "s " if several else " ", plain) if plain else ()
    if not numbers.every:
        return written or (word,)
    every = f"all {_KINDS.get(numbers.every, numbers.every)} {word.casefold()}s"
    return said(written, f" and {every}") if written else capitalised((every,))


def printed_numbers(numbers: Numbers) -> Told:
    """ "2", "1 and 3", "1 to 4 and 7", "1 to {rows}"."""
    parts: list[Told] = [(part,) for part in _stretches(numbers.listed)]
    if numbers.last is not None:
        parts.append(said(f"{numbers.first} to ", number(numbers.last)))
    if len(parts) < 2:
        return parts[0] if parts else ()
    return said(listed(parts[:-1]), " and ", parts[-1])


def _stretches(rows: tuple[int, ...]) -> list[LinePiece]:
    """Numbers that follow one another as stretches: "1 to 4", "7"; two are no stretch."""
    found: list[list[int]] = [list(rows[:1])] if rows else []
    for before, row in pairwise(rows):
        if row == before + 1:
            found[-1].append(row)
        else:
            found.append([row])
    parts: list[LinePiece] = []
    for stretch in found:
        parts.extend(map(str, stretch) if len(stretch) < 3 else (f"{stretch[0]} to {stretch[-1]}",))
    return parts
