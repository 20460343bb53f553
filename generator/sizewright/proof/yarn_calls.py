"""In: a pattern. Out: the words by which its instructions call a yarn, each with the places where they do."""

from collections.abc import Iterator, Mapping, Sequence

from sizewright.base.place import Span
from sizewright.read.notation.direction_tree import CastOn, Direction, Meanwhile, Row, Spaced, TakeYarn, Unread
from sizewright.read.notation.tree import Action, Colour, IntoOne, Repeat, Work
from sizewright.read.pattern import Pattern, StitchBlock, WorkBlock


def directions_of(pattern: Pattern) -> Iterator[Direction]:
    """All directions of work and stitch blocks."""
    for piece in pattern.body:
        if isinstance(piece, WorkBlock | StitchBlock):
            yield from piece.directions


def is_unread(pattern: Pattern) -> bool:
    """Whether some of the instructions were not understood."""
    return any(isinstance(direction, Unread) for direction in directions_of(pattern))


def yarns_called(pattern: Pattern) -> Mapping[str, tuple[Span, ...]]:
    """The words in reading order."""
    found: dict[str, list[Span]] = {}
    for direction in directions_of(pattern):
        for name, span in _called(direction):
            found.setdefault(name, []).append(span)
    return {name: tuple(spans) for name, spans in found.items()}


def _called(direction: Direction) -> Iterator[tuple[str, Span]]:
    match direction:
        case TakeYarn():
            yield direction.name, direction.span
        case Row() | Spaced():
            yield from _within(direction.actions)
        case CastOn():
            yield from _within(direction.behind)
        case Meanwhile():
            yield from _within(direction.shaping.actions)
        case _:
            pass


def _within(actions: Sequence[Action]) -> Iterator[tuple[str, Span]]:
    for action in actions:
        match action:
            case Colour(yarn=True):
                yield action.name, action.span
            case Work() if action.colour:
                yield action.colour, action.span
            case IntoOne():
                yield from _within(action.actions)
            case Repeat():
                yield from _within((*action.actions, *action.ending))
            case _:
                pass
