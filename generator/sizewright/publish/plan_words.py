"""In: the words of a plan with its numbers, and which of these are one. Out: the words as a knitter says them.

The words of a plan are the same in every size: "[k8, k2tog] once", "Work 1 rows even". What is worked once needs no
brackets, one row is no rows, and every 2 rows are every other row. What is carried out are the plan's own words, which
say the same.
"""

import re
from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import partial

from sizewright.read.pattern import Insert, LinePiece, Words

_PLURAL = re.compile(r"^ (row|rnd|st)s\b")
_CLOSING = "] "


def as_said(
    pieces: Iterable[LinePiece], is_one: Callable[[Insert], bool], is_two: Callable[[Insert], bool]
) -> tuple[LinePiece, ...]:
    """The pieces of a line for the sizes in which these numbers are one or two; only those of plans are looked at."""
    told = list(pieces)
    for at, piece in enumerate(told):
        if isinstance(piece, Insert) and piece.part and is_one(piece):
            if piece.style is not None:
                _unbracket(told, at)
            elif at + 1 < len(told):
                told[at + 1] = _changed(told[at + 1], lambda words: _PLURAL.sub(r" \1", words))
        elif isinstance(piece, Insert) and piece.part and _is_every(told, at) and is_two(piece):
            told[at : at + 2] = ["other", _changed(told[at + 1], lambda words: _PLURAL.sub(r" \1", words))]
    return _begun([piece for piece in told if _text(piece) != ""])


def _is_every(told: list[LinePiece], at: int) -> bool:
    """Whether a number stands in "every 2 rows"."""
    if not 0 < at < len(told) - 1:
        return False
    before, behind = _text(told[at - 1]) or "", _text(told[at + 1]) or ""
    return before.endswith("every ") and _PLURAL.match(behind) is not None


def _begun(told: list[LinePiece]) -> tuple[LinePiece, ...]:
    """With a capital behind the label, where a plan's words begin there with a clause that some sizes leave out."""
    for at, before in enumerate(told[:-1]):
        if isinstance(before, Words) and before.text.endswith("): "):
            told[at + 1] = _changed(told[at + 1], lambda words: words[:1].upper() + words[1:])
    return tuple(told)


def _unbracket(told: list[LinePiece], at: int) -> None:
    """Takes away the brackets before "once", and "once" with them; without brackets it stays."""
    if not (at and (_text(told[at - 1]) or "").endswith(_CLOSING)):
        return
    depth = 0
    for place in range(at - 1, -1, -1):
        words = _text(told[place]) or ""
        for sign in range(len(words) - 1, -1, -1):
            depth += (words[sign] == "]") - (words[sign] == "[")
            if not depth and words[sign] == "[":
                told[at - 1] = _changed(told[at - 1], lambda text: text.removesuffix(_CLOSING))
                told[place] = _changed(told[place], partial(_without, at=sign))
                told[at] = ""
                return


def _without(text: str, at: int) -> str:
    return text[:at] + text[at + 1 :]


def _text(piece: LinePiece) -> str | None:
    return piece.text if isinstance(piece, Words) else piece if isinstance(piece, str) else None


def _changed(piece: LinePiece, change: Callable[[str], str]) -> LinePiece:
    if isinstance(piece, Words):
        return replace(piece, text=change(piece.text))
    return change(piece) if isinstance(piece, str) else piece
