"""In: actions. Out: what they do to any needle, where that does not depend on what lies on it; it can be multiplied."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from sizewright.read.notation.tree import Action, IntoOne, PassOver, Repeat, Work
from sizewright.work.counts import Counts


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch whose effect does not depend on what lies on the needle: it can be multiplied."""

    uses: int
    looks: bytes
    colours: tuple[tuple[str, int], ...]


def run_of(actions: Sequence[Action], counts: Counts, colour: str) -> Run | None:
    """What a stretch does, where that is the same whatever lies on the needle."""
    uses, looks, colours, yarn = 0, b"", Counter[str](), colour
    for action in actions:
        match action:
            case Work(place=None):
                times = 1 if action.count is None else counts(action.count)
                uses += action.stitch.uses * times
                looks += action.stitch.looks.encode() * times
                colours[action.colour or yarn] += action.stitch.makes * times
            case Repeat(place=None) if action.times is not None and not action.ending:
                inner = run_of(action.actions, counts, colour)
                if inner is None:
                    return None
                times = counts(action.times) + (1 if action.more else 0)
                uses += inner.uses * times
                looks += inner.looks * times
                colours.update({name: count * times for name, count in inner.colours})
            case IntoOne():
                inner = run_of(action.actions, counts, colour)
                if inner is None:
                    return None
                uses, looks = uses + 1, looks + inner.looks
                colours.update(dict(inner.colours))
            case PassOver() if len(looks) >= action.slipped + action.over:
                looks = looks[: -(action.slipped + action.over)] + b"\\"
            case _:
                return None
    return Run(uses, looks, tuple(colours.items()))
