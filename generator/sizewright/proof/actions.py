"""In: a pattern. Out: its directions in reading order, and every single action in them, those in brackets too."""

from collections.abc import Iterator, Sequence

from sizewright.read.notation.direction_tree import CastOn, Direction, Meanwhile, Row, Spaced
from sizewright.read.notation.tree import Action, IntoOne, Repeat
from sizewright.read.pattern import Pattern, StitchBlock, WorkBlock


def directions_of(pattern: Pattern) -> Iterator[Direction]:
    """Every direction of the work and stitch blocks."""
    for piece in pattern.body:
        if isinstance(piece, WorkBlock | StitchBlock):
            yield from piece.directions


def actions_of(pattern: Pattern) -> Iterator[Action]:
    """Every action of every row, one within another behind it."""
    for direction in directions_of(pattern):
        yield from actions_in(direction)


def actions_in(direction: Direction) -> Iterator[Action]:
    """Every action of a direction."""
    match direction:
        case Meanwhile(shaping=shaping):
            yield from actions_in(shaping)
        case Row(actions=actions) | Spaced(actions=actions) | CastOn(behind=actions):
            yield from _flat(actions)
        case _:
            return


def _flat(actions: Sequence[Action]) -> Iterator[Action]:
    for action in actions:
        yield action
        match action:
            case Repeat(actions=within, ending=ending):
                yield from _flat((*within, *ending))
            case IntoOne(actions=within):
                yield from _flat(within)
            case _:
                pass
