"""Sources of instructions read, printed and read again, for tests; places are left out where trees are compared."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

from sizewright.base.place import Span
from sizewright.read.folder import read_text
from sizewright.read.notation.direction_tree import Direction
from sizewright.read.notation.printed import printed, source_text
from sizewright.read.pattern import Pattern, StitchBlock, WorkBlock
from sizewright.read.project import Project

# What says where a node stands, or in which sizes: a block that is read by itself knows neither.
_APART = ("sizes", "values", "part")


SIZED = "title: A\nsizes:\n  S: {chest: 80 cm}\n  M: {chest: 90 cm}\n  L: {chest: 100 cm}"


def source(lines: str, header: str = SIZED) -> Project:
    """A pattern of this header, in three sizes, with these lines as its instructions."""
    return read_text(f"---\n{header}\n---\n```work\n{lines}\n```\n", "a.md")


def directions(pattern: Pattern) -> Iterator[tuple[Direction, ...]]:
    """The directions of each block."""
    for piece in pattern.body:
        if isinstance(piece, WorkBlock | StitchBlock):
            yield piece.directions


def lines_of(block: tuple[Direction, ...]) -> str:
    """A block in house style."""
    return "\n".join(source_text(printed(direction)) for direction in block)


def without_places(node: object) -> Any:  # noqa: ANN401 -- any node of a tree, as plain tuples
    """A tree as tuples, without its places and what is left out of comparisons."""
    if isinstance(node, Span):
        return None
    if is_dataclass(node):
        told = (getattr(node, field.name) for field in fields(node) if field.compare and field.name not in _APART)
        return (type(node).__name__, *map(without_places, told))
    if isinstance(node, tuple):
        return tuple(map(without_places, node))
    return node
