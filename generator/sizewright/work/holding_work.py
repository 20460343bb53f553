"""In: a row that speaks of holders and turns. Out: stitches put on holders and worked off them, stitches doubled."""

from dataclasses import replace

from sizewright.read.notation.tree import Across, Hold
from sizewright.work.faults import NoStitches, Stopped
from sizewright.work.holders import held_as, names_of
from sizewright.work.needle import Held, Lies
from sizewright.work.needle_work import NeedleWork


class HoldingWork(NeedleWork):
    """Holders and double stitches in one row."""

    def hold(self, action: Hold) -> None:
        """Stitches go onto a holder, where they keep their looks."""
        begins = self._these(action)
        if begins is None:
            count = self.remaining if action.count is None else self.counts(action.count)
            looks = self.needle.left[self.at : self.at + count]
            self.take(action.span, count, makes=0)
        else:
            looks = bytes(self.right[begins:])
            del self.right[begins:]
            self.passed = [replace(pin, place=min(pin.place, self.done)) for pin in self.passed]
        self.lot = len(self.right)
        self.needle.opened = bool(self.needle.in_the_round)
        self.needle.held.append(Held(action.name, looks[::-1] if self.needle.wrong_side else looks, action.span))

    def _these(self, action: Hold) -> int | None:
        """Where on the right needle begin "these 22 sts"; None where they are the next ones.

        They are those worked since the last binding off, or in this row, where these are as many.
        """
        if not action.worked:
            return None
        fitting = (begins for begins in (self.lot, 0) if begins < len(self.right))
        if action.count is None:
            return next(fitting, None)
        count = self.counts(action.count)
        return next((begins for begins in fitting if len(self.right) - begins == count), None)

    def across(self, action: Across) -> None:
        """Stitches are worked off the holder they wait on; where none waits under that name, off the needle."""
        count = None if action.count is None else self.counts(action.count)
        held = (
            held_as(self.needle.held, action.name, None, nameless=action.held) if action.name or action.held else None
        )
        if held is None and (count is None or action.held):
            raise self._nothing_held(action, count)
        if held is None:
            count = count or 0
            self.take(action.span, count)
        else:
            count = len(held.looks) if count is None else count
            if count > len(held.looks):
                raise self._nothing_held(action, count)
            self.needle.held.remove(held)
            if count < len(held.looks):
                self.needle.held.append(replace(held, looks=held.looks[count:]))
        self.give(self.worked_looks(action.stitch.looks.encode()) * count)
        self.worked[self.colour] += count

    def _nothing_held(self, action: Across, count: int | None) -> Stopped:
        held = self.needle.held
        counts, names = tuple(len(one.looks) for one in held), names_of(held)
        return Stopped(NoStitches(action.span, self.counts.size, count, counts, action.name, names))

    def double(self) -> None:
        """The first stitch behind a turn is doubled: the turn is known by it from now on."""
        here = (at for at, pin in enumerate(self.passed) if pin.kind is Lies.TURN and pin.place == self.done)
        place = next(here, None)
        if place is not None:
            self.passed[place] = replace(self.passed[place], kind=Lies.DOUBLE, beyond=True)
