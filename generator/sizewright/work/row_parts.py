"""In: the actions of a row. Out: the same in parts, each worked in one direction: a row may be turned in its middle."""

import re
from collections.abc import Iterator, Sequence

from sizewright.read.notation.direction_tree import Row
from sizewright.read.notation.kinds import Side
from sizewright.read.notation.tree import Action, Add, Adding, Aside, Colour, Mark, Marking, Repeat, Turn, Turning, Work
from sizewright.work.counts import Counts
from sizewright.work.faults import NoCount, Stopped
from sizewright.work.needle_work import BOR

_MOST = 5_000  # actions of a row that is turned; nobody turns so often
DOUBLING = "make double st"
_WRONG = re.compile(r"\b(?:ws|wrong side)\b", re.IGNORECASE)


def row_parts(actions: Sequence[Action], counts: Counts) -> tuple[tuple[Action, ...], ...]:
    """The parts of a row, one where it is neither turned nor begun anew. Raises `Stopped`."""
    if not _parted(actions):
        return (tuple(actions),)
    parts: list[tuple[Action, ...]] = []
    part: list[Action] = []
    for number, action in enumerate(_unrolled(actions, counts)):
        if number > _MOST:
            raise Stopped(NoCount(action.span, counts.size, "So many turns", too_many=True))
        part.append(action)
        if _ends(action):
            parts.append(tuple(part))
            part = []
    if part:
        parts.append(tuple(part))
    return _doubled(parts)


def picks_up(actions: Sequence[Action]) -> bool:
    """Whether stitches are picked up."""
    return any(isinstance(action, Add) and action.how is not Adding.CAST_ON for action in actions)


def side_picked_up(row: Row) -> Side:
    """The side that faces where stitches are picked up: as the row says, else the right one, as is usual."""
    if row.side is not None:
        return row.side
    words = "".join(str(word) for action in row.actions if isinstance(action, Aside) for word in action.words)
    return Side.WRONG if _WRONG.search(words) else Side.RIGHT


def picks_up_alone(actions: Sequence[Action]) -> bool:
    """Whether nothing is done but to pick stitches up, with markers between them."""
    picked = [isinstance(action, Add) and action.how is not Adding.CAST_ON for action in actions]
    beside = (isinstance(action, Mark | Colour | Aside) for action in actions)
    return any(picked) and all(one or other for one, other in zip(picked, beside, strict=True))


def casts_on_alone(actions: Sequence[Action]) -> bool:
    """Whether nothing is done but to cast stitches on."""
    return bool(actions) and all(isinstance(action, Add) and action.how is Adding.CAST_ON for action in actions)


def _parted(actions: Sequence[Action]) -> bool:
    inside = any(isinstance(action, Repeat) and _parted(action.actions) for action in actions)
    return inside or any(_ends(action) for action in actions)


def _ends(action: Action) -> bool:
    begins_round = isinstance(action, Mark) and action.what is Marking.PLACE and action.name == BOR
    return isinstance(action, Turn) or begins_round


def _unrolled(actions: Sequence[Action], counts: Counts) -> Iterator[Action]:
    """The actions with repeats that turn the work written out."""
    for action in actions:
        if isinstance(action, Repeat) and action.times is not None and _parted(action.actions):
            for _ in range(counts(action.times) + (1 if action.more else 0)):
                yield from _unrolled(action.actions, counts)
        else:
            yield action


def _doubled(parts: list[tuple[Action, ...]]) -> tuple[tuple[Action, ...], ...]:
    """ "turn, make double st" at the end of a row is one thing: the next row goes on behind the double stitch."""
    if len(parts) < 2 or not isinstance(parts[-2][-1], Turn) or len(parts[-1]) != 1:
        return tuple(parts)
    (last,) = parts[-1]
    if not (isinstance(last, Work) and last.stitch.term == DOUBLING):
        return tuple(parts)
    turned = (*parts[-2][:-1], Turn(parts[-2][-1].span, Turning.DOUBLE))
    return (*parts[:-2], turned)
