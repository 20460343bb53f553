"""The numbers that stand among words: `{...}` and typed bracket lists, and words of their own with their place."""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.place import Span
from sizewright.read.formula import Formula


@dataclass(frozen=True, slots=True)
class Words:
    """A text from the header, with its place."""

    span: Span
    text: str


@dataclass(frozen=True, slots=True)
class Insert:
    """`{formula:style}` in the text: printed for every size, or for those of the passage around it (`sizes`).

    A plan puts several numbers where one brace stands; `part` tells them apart.
    """

    span: Span
    formula: Formula
    style: Words | None
    sizes: tuple[str, ...] | None = None
    part: int = 0

    @property
    def key(self) -> tuple[Span, int]:
        """By what its values are found."""
        return self.span, self.part


@dataclass(frozen=True, slots=True)
class TypedList:
    """A bracket list typed by hand among the instructions, "8 (9, 10)": one value a size, None where a dash stands.

    `values` is empty where the list does not answer to the sizes, which is a finding.
    `sizes` are those of the passage around it, None outside one.
    """

    span: Span
    text: str
    values: tuple[Fraction | None, ...]
    sizes: tuple[str, ...] | None = None


LinePiece = str | Words | Insert | TypedList
# Words of instructions that are kept as they were typed, with the numbers among them.
Told = tuple[LinePiece, ...]


def typed_piece(piece: LinePiece) -> str:
    """A piece as it stands in a source."""
    match piece:
        case Insert():
            return f"{{{piece.formula.text}{f':{piece.style.text}' if piece.style else ''}}}"
        case TypedList() | Words():
            return piece.text
    return piece.replace("{", "\\{").replace("}", "\\}")


def joined(pieces: Iterable[LinePiece]) -> Told:
    """The pieces with neighbouring words made one and empty ones left out."""
    found: list[LinePiece] = []
    words = ""
    for piece in pieces:
        if isinstance(piece, str):
            words += piece
            continue
        found.extend((words, piece) if words else (piece,))
        words = ""
    return (*found, words) if words else tuple(found)
