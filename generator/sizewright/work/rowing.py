"""In: rows and how often they are worked. Out: the needles behind them, and what the rows promised and did not keep."""

import re
from collections import Counter
from collections.abc import Sequence

from sizewright.base.place import Span
from sizewright.read.notation.direction_tree import Promise, Row
from sizewright.read.notation.tree import Promised, Side, Turn
from sizewright.work.counts import Counts
from sizewright.work.course import Pass, Spell, noted
from sizewright.work.faults import Fault, NeverReached, NoCount, NotJoined, Stopped, WrongCount, WrongSide
from sizewright.work.needle import Needle, Pin
from sizewright.work.row_parts import row_parts
from sizewright.work.row_work import RowWork

# More rows than anybody knits: a repeat that would go on so long has no end.
ENDLESS = 5_000


class Rowing:
    """Works rows in one size."""

    def __init__(self, counts: Counts, faults: list[Fault]) -> None:
        self._counts = counts
        self._faults = faults
        self.spells: list[Spell] = []  # what was worked since somebody took them

    def taken(self) -> tuple[Spell, ...]:
        """The rows worked since this was asked last."""
        spells, self.spells = tuple(self.spells), []
        return spells

    def again(self, needle: Needle, rows: Sequence[Row], times: int) -> None:
        """The rows so many times; where they leave everything as it was, the rest is only counted.

        Raises `Stopped` for a row that cannot be worked, and for more rows than anybody knits.
        """
        for done in range(min(times, ENDLESS)):
            state = _state(needle)
            rows_before, worked_before = needle.rows, Counter(needle.worked)
            passes = [self.once(needle, row) for row in rows]
            same = state == _state(needle)
            noted(self.spells, passes, times - done if same else 1)
            if same:
                rest = times - done - 1
                needle.rows += (needle.rows - rows_before) * rest
                for colour, count in (needle.worked - worked_before).items():
                    needle.worked[colour] += count * rest
                return
        if times > ENDLESS:
            raise Stopped(NoCount(rows[0].span, self._counts.size, f"{times} rows", too_many=True))

    def once(self, needle: Needle, row: Row) -> Pass:
        """One row, with its parts where it is turned. Raises `Stopped`."""
        rows, before = needle.rows, needle.total
        for number, part in enumerate(row_parts(row.actions, self._counts)):
            work = RowWork(needle, self._counts, row.label, row.span)
            work.work(part, turned=number > 0)
            self._faults.extend(work.told)
        return Pass(row, needle.rows - rows, before, needle.total, bool(needle.in_the_round))

    def partly(self, needle: Needle, rows: Sequence[Row], count: int) -> None:
        """So many rows of a sequence, beginning with its first."""
        times, rest = divmod(count, len(rows))
        self.again(needle, rows, times)
        self.again(needle, rows[:rest], 1 if rest else 0)

    def until_left(self, needle: Needle, rows: Sequence[Row], wanted: int, span: Span) -> None:
        """Rows until so many stitches are left."""
        while needle.total > wanted:
            before = needle.total
            self.again(needle, rows, 1)
            if needle.total >= before:
                break
        if needle.total != wanted:
            raise Stopped(NeverReached(span, self._counts.size, wanted, needle.total))

    def judge_promise(self, needle: Needle, promise: Promise | None, label: str, before: int) -> None:
        """The count behind rows must come true; work goes on with the count found, so that it is told once."""
        if promise is None:
            return
        self.judge_promise(needle, promise.also, label, before)
        said = self._counts(promise.count)
        match promise.what:
            case Promised.TOTAL:
                found, what = needle.total, "sts"
            case Promised.FEWER:
                found, what = before - needle.total, "sts decreased"
            case Promised.MORE:
                found, what = needle.total - before, "sts increased"
        if said != found:
            self._faults.append(WrongCount(promise.span, self._counts.size, label, what, said, found))

    def judge_called_side(self, needle: Needle, row: Row, span: Span) -> None:
        """A row that is called by its name must fall on the side it was written for."""
        if row.side is None or needle.in_the_round:
            return
        if needle.side_known and needle.wrong_side != (row.side is Side.WRONG):
            self._faults.append(WrongSide(span, self._counts.size, row.label, row.side.value))

    def judge_side(self, needle: Needle, row: Row) -> None:
        """What a row says of its side and of working in the round must be so; the row is believed."""
        self._open(needle, row)
        short = needle.turned_back or _turns(row) or len(row_parts(row.actions, self._counts)) > 1
        if needle.in_the_round and not row.in_the_round and short:
            self._judge_turned(needle, row)
            return
        if row.in_the_round and needle.in_the_round is False and _JOINING.search(row.heading):
            needle.join()
        says = bool(row.numbers.listed) or row.in_the_round
        if needle.in_the_round is not None and says and row.in_the_round != needle.in_the_round:
            self._faults.append(NotJoined(row.span, self._counts.size, row.label, row.in_the_round))
        if needle.in_the_round is None or says:
            needle.in_the_round = row.in_the_round
        if not needle.in_the_round:
            self._judge_turned(needle, row)

    @staticmethod
    def _open(needle: Needle, row: Row) -> None:
        """Where stitches of the round wait on a holder, a row goes back and forth over the others."""
        if not needle.opened or not (row.in_the_round or row.label):
            return
        if not row.in_the_round:
            needle.part()
            if row.side is Side.WRONG and not needle.wrong_side:
                needle.reverse()
                needle.wrong_side = True
        needle.opened = False

    def _judge_turned(self, needle: Needle, row: Row) -> None:
        """A row that is worked flat, or a short row of a round, must be on the side it says."""
        if row.side is None:
            return
        wrong = row.side is Side.WRONG
        placed = needle.rows and needle.total and needle.side_known  # what is all bound off lies as one likes
        if placed and wrong != needle.wrong_side:
            self._faults.append(WrongSide(row.span, self._counts.size, row.label, row.side.value))
        self.show(needle, row.side)

    @staticmethod
    def show(needle: Needle, side: Side) -> None:
        """This side of the work faces the knitter."""
        if needle.taken_up and not needle.rows and side is Side.WRONG:
            needle.reverse()
        needle.wrong_side = side is Side.WRONG
        needle.side_known = True


_JOINING = re.compile(r"join", re.IGNORECASE)  # "Joining Rnd: ..."
_State = tuple[bytes, bytes, tuple[Pin, ...], bool, str, int, dict[str, int]]


def _state(needle: Needle) -> _State:
    pins, held = tuple(needle.pins), len(needle.held)
    return needle.left, needle.behind, pins, needle.wrong_side, needle.colour, held, needle.panels


def _turns(row: Row) -> bool:
    """Whether the row is turned before its end."""
    return bool(row.actions) and isinstance(row.actions[-1], Turn)
