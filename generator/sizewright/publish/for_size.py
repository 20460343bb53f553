"""In: a pattern made for several sizes. Out: what one of them reads of it, and nothing that tells of another."""

import re
from collections.abc import Iterable, Iterator, Sequence

from sizewright.read.pattern import PassageClose, PassageOpen, Piece

_LIST = re.compile(r"\d\S*\s*\(\s*\d[\d./ ¼½¾]*(?:[,;][^()]*)?\)")


def pieces_for(size: str, pieces: Iterable[Piece]) -> Iterator[Piece]:
    """The body as a size reads it: passages of others are left out, and its own have no frame any more."""
    reads: list[bool] = []
    for piece in pieces:
        match piece:
            case PassageOpen(sizes=sizes):
                reads.append(size in sizes)
            case PassageClose():
                reads.pop()
            case _ if all(reads):
                yield piece


def tells_of_others(text: str, size: str, sizes: Sequence[str]) -> bool:
    """Whether words of the designer's name another size, or have a number for each: "72 (80, 88)"."""
    rest = text
    for name in sorted(sizes, key=len, reverse=True):  # "Large adult" before "Adult"
        found = re.compile(rf"(?<!\w){re.escape(name)}(?!\w)")
        if name != size and found.search(rest):
            return True
        rest = found.sub(" ", rest)
    return _LIST.search(rest) is not None
