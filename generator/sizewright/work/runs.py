"""In: actions. Out: what they do to any needle, where that does not depend on what lies on it; it can be multiplied."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from sizewright.read.notation.tree import Action, Aside, Colour, IntoOne, PassOver, Repeat, Work
from sizewright.work.counts import MOST, Counts
from sizewright.work.needle import PASSED_OVER


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch whose effect does not depend on what lies on the needle: it can be multiplied.

    `looks` are those of the stitches it leaves; `colours` counts those that take yarn; `colour` is the yarn behind it,
    None where that is the one before it. `slipped` are the stitches that keep the face they have: their places among
    those it uses and those it leaves.
    """

    uses: int
    looks: bytes
    colours: tuple[tuple[str, int], ...]
    colour: str | None = None
    slipped: tuple[tuple[int, int], ...] = ()


_MOST_SLIPPED = 1_000


class _Gathered:
    """What the actions of a stretch do together, one after the other."""

    def __init__(self, counts: Counts, colour: str) -> None:
        self.counts = counts
        self.before = colour
        self.colour: str | None = None
        self.uses = 0
        self.looks = b""
        self.colours = Counter[str]()
        self.slipped: list[tuple[int, int]] = []

    @property
    def yarn(self) -> str:
        """The yarn in the hand."""
        return self.before if self.colour is None else self.colour

    def all(self, actions: Sequence[Action]) -> Run | None:
        """The run of all actions; None where one of them depends on the needle."""
        if not all(self.one(action) for action in actions):
            return None
        if self.colour not in (None, self.before) and not isinstance(actions[0], Colour):
            return None  # the first time begins with another yarn than those that follow
        return Run(self.uses, self.looks, tuple(self.colours.items()), self.colour, tuple(self.slipped))

    def one(self, action: Action) -> bool:
        """Adds an action; False where its effect depends on the needle."""
        match action:
            case Work(place=None):
                times = 1 if action.count is None else self.counts(action.count)
                slips = times if action.stitch.looks == "s" else 0
                if self.too_long(action.stitch.uses * times, action.stitch.makes * times, slips):
                    return False
                if slips:
                    self.slipped += [(self.uses + place, len(self.looks) + place) for place in range(times)]
                self.uses += action.stitch.uses * times
                self.looks += action.stitch.looks.encode() * times
                self.colours[action.colour or self.yarn] += action.stitch.worked * times
            case Repeat(place=None) if action.times is not None and not action.ending:
                return self.many(action.actions, self.counts(action.times) + (1 if action.more else 0))
            case IntoOne(double=False):
                return self.many(action.actions, 1, uses=1)
            case PassOver() if len(self.looks) >= action.slipped + action.over:
                kept = self.looks[: -(action.slipped + action.over)]
                self.slipped = [(use, look) for use, look in self.slipped if look < len(kept)]
                self.looks = kept + self.looks[-1:].translate(PASSED_OVER)
            case Colour():
                self.colour = action.name
            case Aside():
                pass
            case _:
                return False
        return True

    def too_long(self, uses: int, makes: int, slips: int) -> bool:
        """Whether so many stitches more would be more than any piece has, or more slipped ones than are remembered."""
        longest = max(self.uses + uses, len(self.looks) + makes)
        return longest > MOST or len(self.slipped) + slips > _MOST_SLIPPED

    def many(self, actions: Sequence[Action], times: int, uses: int | None = None) -> bool:
        """Adds a stretch so many times."""
        inner = run_of(actions, self.counts, self.yarn)
        if inner is None or self.too_long(inner.uses * times, len(inner.looks) * times, len(inner.slipped) * times):
            return False
        if uses is None:
            self.slipped += [
                (self.uses + inner.uses * number + use, len(self.looks) + len(inner.looks) * number + look)
                for number in range(times if inner.slipped else 0)
                for use, look in inner.slipped
            ]
        self.uses += (inner.uses if uses is None else uses) * times
        self.looks += inner.looks * times
        self.colours.update({name: count * times for name, count in inner.colours})
        self.colour = self.colour if inner.colour is None else inner.colour
        return True


def run_of(actions: Sequence[Action], counts: Counts, colour: str) -> Run | None:
    """What a stretch does, where that is the same whatever lies on the needle; `colour` is the yarn it begins with."""
    return _Gathered(counts, colour).all(actions)
