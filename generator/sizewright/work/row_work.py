"""In: the actions of one row and the needles before it. Out: the needles after it; what cannot be worked stops."""

from collections.abc import Sequence
from typing import assert_never

from sizewright.base.place import Span
from sizewright.read.notation.tree import (
    Across,
    Action,
    Add,
    Aside,
    AtEdges,
    BindOff,
    Colour,
    Count,
    Drop,
    Evenly,
    Follow,
    Hold,
    IntoOne,
    Landmark,
    Manner,
    Mark,
    Marking,
    Panel,
    PassOver,
    Place,
    Repeat,
    Turn,
    Work,
)
from sizewright.work.faults import LeftOver, NoYarnOver, Stopped, TooFew, UnevenParts
from sizewright.work.needle import OPPOSITE, PASSED_OVER, PLAIN, SLIPPED
from sizewright.work.panel_work import PanelWork
from sizewright.work.row_parts import DOUBLING, casts_on_alone, picks_up_alone
from sizewright.work.runs import Run, run_of


class RowWork(PanelWork):
    """Works one row in one size. `label` names it in faults."""

    def work(self, actions: Sequence[Action], *, turned: bool = False) -> None:
        """Works the row, or what follows where it is turned, and leaves the needles as they are. Raises `Stopped`."""
        self.beside = casts_on_alone(actions) if turned else self.beside and picks_up_alone(actions)
        self.all(actions)
        if self.beside and not self.at and self.needle.left and not self.needle.behind:
            self.lay_beside()
            return
        if self.turned is None and not (self.shifted or self.idle) and self.remaining:
            raise Stopped(LeftOver(self.span, self.counts.size, self.label, self.remaining, self.before))
        self.finish()

    def all(self, actions: Sequence[Action]) -> None:
        """Works actions one after the other."""
        for action in actions:
            self.one(action)

    def one(self, action: Action) -> None:  # noqa: C901, PLR0912 -- one arm a kind of action
        """Works one action."""
        self.idle = self.idle and isinstance(action, Mark | Hold | Colour | Aside)
        match action:
            case Work():
                self.stitches(action)
            case Repeat():
                self.repeat(action)
            case IntoOne():
                self.into_one(action)
            case AtEdges():
                self.all(action.actions)
            case Mark():
                self.mark(action)
            case PassOver():
                self.pass_over(action)
            case BindOff():
                self.bind_off(action)
            case Drop():
                self.drop(action)
            case Hold():
                self.hold(action)
            case Across():
                self.across(action)
            case Add():
                self.add(action)
            case Follow():
                self.follow(action)
            case Panel():
                self.panel(action)
            case Turn():
                self.turned = action.manner
            case Colour():
                self.colour = action.name if action.yarn else self.colour
            case Evenly():
                self.evenly(action)
            case Aside():
                pass
            case _:
                assert_never(action)

    # Stitches

    def add(self, action: Add) -> None:
        """Stitches come onto the needle."""
        count = self.counts(action.count)
        self.needle.opened = False  # a gap is bridged
        each, over = divmod(count, action.parts)
        if over:
            raise Stopped(UnevenParts(action.span, self.counts.size, count, action.parts))
        for part in range(action.parts):
            if part:
                self.mark(Mark(action.span, Marking.PLACE))
            self.give(b"k", each)
        self.worked[self.colour] += count

    def bind_off(self, action: BindOff) -> None:
        """Stitches are worked and leave the needle."""
        count = self.counts(action.count)
        self.take(action.span, count, makes=0)
        self.lot = len(self.right)
        self.worked[self.colour] += count

    def stitches(self, action: Work) -> None:
        """A stitch so many times, or up to a place."""
        stitch = action.stitch
        if action.place is None:
            times = 1 if action.count is None else self.counts(action.count)
        elif stitch.uses == 0:
            raise Stopped(TooFew(action.span, self.counts.size, self.label, 1, 0, self.before))
        else:
            available = self.distance(action.place, action.span)
            times, over = divmod(available, stitch.uses)
            if over:
                raise Stopped(self.broken(action.span, available, stitch.uses, over))
        if stitch.term == DOUBLING:
            self.double()
        below = self.needle.left[self.at : self.at + times]
        self.take(action.span, stitch.uses * times, stitch.uses or 1, stitch.makes)
        slipped = stitch.looks == "s"
        if slipped:
            self.give(below.translate(SLIPPED))
        else:
            self.give(self.worked_looks(stitch.looks.encode()), times)
        self.worked[action.colour or self.colour] += stitch.worked * times

    def drop(self, action: Drop) -> None:
        """Stitches fall off the needle."""
        count = self.counts(action.count)
        if action.yarn_over:
            self.judge_yarn_overs(action.span, count, double=False)
        self.take(action.span, count, makes=0)

    def judge_yarn_overs(self, span: Span, count: int, *, double: bool) -> None:
        """What comes next must be yarn overs. Raises `Stopped`."""
        if self.needle.left[self.at : self.at + count] != b"o" * count:
            raise Stopped(NoYarnOver(span, self.counts.size, self.label, double))

    def into_one(self, action: IntoOne) -> None:
        """Several stitches are worked into one."""
        run = self.run(action.actions)
        if run is None:
            raise Stopped(None)
        if action.double:
            self.judge_yarn_overs(action.span, 2, double=True)
        self.take(action.span, action.uses, action.uses, len(run.looks))
        self.give(self.worked_looks(run.looks))
        self.worked.update(dict(run.colours))

    def pass_over(self, action: PassOver) -> None:
        """Slipped stitches are passed over what was worked behind them."""
        if len(self.right) < action.slipped + action.over:
            size = self.counts.size
            needs = action.slipped + action.over
            raise Stopped(TooFew(action.span, size, self.label, needs, len(self.right), self.before))
        del self.right[-(action.slipped + action.over) : -action.over]
        self.right[-1:] = self.right[-1:].translate(PASSED_OVER)

    def follow(self, action: Follow) -> None:
        """Stitches are worked as those below tell."""
        if action.count is not None:
            count = self.counts(action.count)
        else:
            count = self.distance(action.place or Place(Landmark.END), action.span)
        self.work_as(action.span, count, OPPOSITE if action.manner is Manner.OPPOSITE else PLAIN)

    def work_as(self, span: Span, count: int, manner: bytes) -> None:
        """So many stitches, each as the one below it tells."""
        below = self.needle.left[self.at : self.at + count]
        self.take(span, count)
        self.give(below.translate(manner))
        self.worked[self.colour] += count

    def evenly(self, action: Evenly) -> None:
        """So many increases or decreases with as many stitches between them as come out, the rest as they appear."""
        stitch, times = action.stitch, self.counts(action.count)
        reach = self.distance(action.place or Place(Landmark.END), action.span)
        if reach < stitch.uses * times:
            needs = stitch.uses * times
            raise Stopped(TooFew(action.span, self.counts.size, self.label, needs, reach, self.before))
        plain, after = divmod(reach - stitch.uses * times, max(times, 1))
        for number in range(times):
            self._between(action, plain + (1 if number < after else 0))
            self.stitches(Work(action.span, stitch))
        if not times:
            self._between(action, reach)

    def _between(self, action: Evenly, count: int) -> None:
        """So many stitches between two that are shaped."""
        if action.plain is None:
            self.work_as(action.span, count, PLAIN)
        else:
            self.stitches(Work(action.span, action.plain, Count(action.span, count)))

    # Repeats

    def repeat(self, action: Repeat) -> None:
        """A stretch again and again: multiplied where that can be done, else worked each time."""
        run = self.run(action.actions)
        if action.times is not None:
            times = self.counts(action.times) + (1 if action.more else 0)
            if run is not None:
                self.many(action, run, times)
            else:
                self.times_each(action, times)
            self.all(action.ending)
            return
        place = action.place or Place(Landmark.END)
        if run is not None and run.uses:
            self.repeat_to(action, run, place)
        else:
            self.repeat_each(action, place)

    def times_each(self, action: Repeat, times: int) -> None:
        """A stretch so many times, one after the other; one that leaves all as it was need not be worked again."""
        for _ in range(times):
            before, given = self.at, bytes(self.right)
            self.all(action.actions)
            if self.at == before and self.right == given:
                break

    def repeat_to(self, action: Repeat, run: Run, place: Place) -> None:
        """Repeats up to a place, all alike."""
        reserve = self.reserve(action, place)
        replaced = self.run(action.actions[-len(action.ending) :]) if action.replaces and action.ending else None
        available = self.distance(place, action.span, reserve)
        spared = replaced.uses if replaced is not None else 0
        times, over = divmod(available + spared, run.uses)
        if over or not times:
            fault = self.broken(action.span, available, run.uses, over)
            raise Stopped(fault)
        if replaced is not None:
            self.many(action, run, times - 1)
            self.all(action.actions[: -len(action.ending)])
        else:
            self.many(action, run, times)
        self.all(action.ending)

    def repeat_each(self, action: Repeat, place: Place) -> None:
        """Repeats that look at the needle, such as those that work from marker to marker."""
        reserve = self.reserve(action, place)
        while True:
            before = self.at
            self.all(action.actions)
            left = self.distance(place, action.span, reserve)
            if not left:
                break
            if self.at == before:
                raise Stopped(self.broken(action.span, left, 0, left))
        self.all(action.ending)

    def reserve(self, action: Repeat, place: Place) -> int:
        """The stitches before a place that are for the ending; in "rep from * to last 3 sts, end k3" it has its own."""
        if place.before is not None and not action.replaces:
            return 0
        ending = self.run(action.ending)
        return ending.uses if ending is not None else 0

    def many(self, action: Repeat, run: Run, times: int) -> None:
        """The stretch of a repeat so many times: at once up to a marker, and stitch by stitch past it."""
        while times:
            clear = self.clear(run.uses, times)
            if clear:
                below, given = self.needle.left[self.at : self.at + run.uses * clear], len(self.right)
                self.take(action.span, run.uses * clear)
                self.give(self.worked_looks(run.looks), clear)
                for use, look in run.slipped:
                    self.right[given + look :: len(run.looks)] = below[use :: run.uses].translate(SLIPPED)
                for colour, count in run.colours:
                    self.worked[colour] += count * clear
                self.colour = self.colour if run.colour is None else run.colour
            else:
                self.all(action.actions)
            times -= clear or 1

    def clear(self, uses: int, times: int) -> int:
        """How many of so many lots end before the next marker, or at it."""
        ahead = next((pin.place for pin in self.ahead if pin.place >= self.here), None)
        return times if ahead is None or not uses else min(times, (ahead - self.here) // uses)

    def run(self, actions: Sequence[Action]) -> Run | None:
        """What a stretch does, where that is the same whatever lies on the needle."""
        return run_of(actions, self.counts, self.colour)
