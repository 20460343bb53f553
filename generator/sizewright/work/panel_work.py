"""In: a row that works a stitch pattern over a part of it. Out: the pattern's row worked over just those stitches."""

from abc import ABC, abstractmethod
from collections.abc import Sequence
from dataclasses import replace

from sizewright.read.notation.direction_tree import Row
from sizewright.read.notation.fabric_names import plain_words
from sizewright.read.notation.kinds import Side
from sizewright.read.notation.tree import Action, Landmark, Panel, Place
from sizewright.work.fabrics import fabric_rows
from sizewright.work.faults import LeftOver, NoMarker, NoRow, NotJoined, Stopped, UnknownFabric, WrongSide
from sizewright.work.holding_work import HoldingWork
from sizewright.work.needle import Lies
from sizewright.work.row_parts import row_parts

_END = Place(Landmark.END)


class PanelWork(HoldingWork, ABC):
    """Stitch patterns over parts of one row."""

    @abstractmethod
    def all(self, actions: Sequence[Action]) -> None:
        """Works actions one after the other."""

    def panel(self, action: Panel) -> None:
        """A row of a stitch pattern, whose "to end" is the end of its stitches. Raises `Stopped`."""
        fabric = self._usual(action)
        if fabric:
            self._over(action, self._fabric_row(action, fabric), action.name, action.name)
            return
        name = self.counts.patterns.called(action.name, action.span, self.counts.size)
        rows = self.counts.patterns.blocks[name]
        place = self._row_of(action, name, rows)
        row, label = rows[place], self._label(rows, place, action.name)
        self._judge_row(row, label, action)
        self.panels[name] = (place + 1) % len(rows)
        self._over(action, row.actions, label, name)

    def _usual(self, action: Panel) -> tuple[tuple[Action, ...], ...]:
        """The rows of a fabric that all know by its name; none where it is a stitch pattern of the source.

        Moss is not the same in every country, so it must be written out.
        """
        own = self.counts.patterns.found(action.name) is not None
        if action.row is not None or own or "moss" in action.name.casefold():
            return ()
        return fabric_rows(action.name, action.span, in_the_round=bool(self.needle.in_the_round)) or ()

    def _fabric_row(self, action: Panel, rows: Sequence[tuple[Action, ...]]) -> tuple[Action, ...]:
        """The row that comes next: by its side, in the round the one behind that of the round before."""
        key = plain_words(action.name)
        place = self.needle.panels.get(key, 0) if self.needle.in_the_round else int(self.needle.wrong_side)
        self.panels[key] = (place + 1) % len(rows)
        return rows[place % len(rows)]

    def _over(self, action: Panel, actions: Sequence[Action], label: str, name: str) -> None:
        """These actions over the stitches of the panel alone. Raises `Stopped`."""
        outer = self.limit, self.label, self.before, self.inside
        reach = self._reach(action)
        self.limit, self.label, self.before, self.inside = self.here + reach, label, reach, (*self.inside, name)
        try:
            self.all(actions)
            if self.remaining:
                raise Stopped(LeftOver(action.span, self.counts.size, label, self.remaining, reach))
        except Stopped as stopped:
            fault = stopped.fault  # told where the panel stands, which is not the place of the pattern's row
            raise Stopped(fault and replace(fault, span=action.span)) from None
        self.limit, self.label, self.before, self.inside = outer

    def _row_of(self, action: Panel, name: str, rows: Sequence[Row]) -> int:
        """The place of the row among those of the pattern: the one that is said, else the one that comes next."""
        if action.row is None:
            return self.needle.panels.get(name, 0)
        number = self.counts(action.row)
        found = next((place for place, row in enumerate(rows) if number in row.numbers.listed), None)
        if found is None and 0 < number <= len(rows) and not rows[number - 1].numbers.listed:
            found = number - 1  # a row that is told as a repeat of others has no number of its own
        if found is None:
            raise Stopped(NoRow(action.span, self.counts.size, f"{number} of {action.name}"))
        return found

    @staticmethod
    def _label(rows: Sequence[Row], place: int, name: str) -> str:
        word = "Rnd" if rows[place].in_the_round else "Row"
        listed = rows[place].numbers.listed
        return f"{word} {listed[0] if listed else place + 1} of {name}"

    def _judge_row(self, row: Row, label: str, action: Panel) -> None:
        """A row must be worked as it is written: in rounds or in rows, on its side; and it must not be turned."""
        size, around = self.counts.size, bool(self.needle.in_the_round)
        known = self.counts.patterns.called(action.name, action.span, size)
        if known in self.inside or len(row_parts(row.actions, self.counts)) > 1:
            raise Stopped(UnknownFabric(action.span, size, label))
        if row.in_the_round != around and self.needle.in_the_round is not None:
            raise Stopped(NotJoined(action.span, size, label, row.in_the_round))
        if not around and row.side is not None and (row.side is Side.WRONG) != self.needle.wrong_side:
            raise Stopped(WrongSide(action.span, size, label, row.side.value))

    def _reach(self, action: Panel) -> int:
        """The stitches of the panel. Raises `Stopped`."""
        if action.count is not None:
            return self.counts(action.count)
        if action.between and not self._at_marker():
            known = tuple(pin.name for pin in self.needle.pins if pin.kind is Lies.MARKER)
            raise Stopped(NoMarker(action.span, self.counts.size, self.label, "", known))
        return self.distance(action.place or _END, action.span)

    def _at_marker(self) -> bool:
        ahead = any(pin.kind is Lies.MARKER and pin.place == self.here for pin in self.ahead)
        return ahead or any(pin.kind is Lies.MARKER and pin.place == self.done for pin in self.passed)
