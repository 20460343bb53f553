"""In: printed pieces of a line, and the numbers behind them. Out: what a reader of one size reads, and its numbers."""

import re
from collections.abc import Iterable

from sizewright.base.printing import STYLES, Series, decimal, printed
from sizewright.base.spoken_units import with_unit
from sizewright.grade.graded import Inserts, Values
from sizewright.read.inserts import Insert, LinePiece, TypedList, Words, typed_piece

_NUMBER = re.compile(r"\d+(?:\.\d+|/\d+)?[¼½¾⅛]?|[¼½¾⅛]")


def said_in(pieces: Iterable[LinePiece], inserts: Inserts, size: int) -> str:
    """The words with the numbers of one size, from 0; what has no value stands as it was typed."""
    return " ".join("".join(_said(piece, inserts, size) for piece in pieces).split())


def numbers_of(text: str) -> str:
    """The numbers of a text, one after another."""
    return " ".join(_NUMBER.findall(text))


def value_in(values: Values, size: int, style: str | None = None) -> str:
    """One size of a quantity as the page has it, where all sizes are printed alike: "41 cm / 16¼ in"."""
    return series_in(printed(values.values, values.dimension, style), size)


def series_in(series: Iterable[Series], size: int) -> str:
    """The text of one size, in every unit."""
    return " / ".join(with_unit(one.values[size if len(one.values) > 1 else 0], one.unit) for one in series)


def _said(piece: LinePiece, inserts: Inserts, size: int) -> str:
    match piece:
        case Insert():
            values = inserts.get(piece.key)
            if values is None:
                return typed_piece(piece)
            style = piece.style.text if piece.style else None
            fits = style is None or (style in STYLES and values.dimension in STYLES[style][1])
            return value_in(values, size, style if fits else None)
        case TypedList():
            value = piece.values[size] if piece.values else None
            return piece.text if not piece.values else "–" if value is None else decimal(value)
        case Words():
            return piece.text
    return piece
