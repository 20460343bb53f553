"""In: how many stitches change over how many rows. Out: plans of the rows on which they do, in two intervals."""

from collections.abc import Iterator
from dataclasses import dataclass

from sizewright.grade.shaping.plan import Impossible, Plan, Result, of_rows, plain, rows, stitches


@dataclass(frozen=True, slots=True)
class Intervals:
    """Every `every` rows `times` times, every `then_every` rows `then_times` times, and `even` rows left over."""

    every: int
    times: int
    then_every: int
    then_times: int
    even: int

    def result(self) -> Result:
        """As members."""
        return {
            "every": self.every,
            "times": self.times,
            "then_every": self.then_every,
            "then_times": self.then_times,
            "even": self.even,
        }


def intervals(changes: int, row_count: int, step: int, *, slow_first: bool = False) -> Intervals:
    """So many shaping rows over so many rows, each interval a multiple of `step` rows, the two one step apart.

    With no change at all every row is worked even. Raises `Impossible` where the rows are too few.
    """
    fitting = row_count // step
    if changes > fitting:
        apart = f", {step} rows apart," if step > 1 else ""
        raise Impossible(
            f"{changes} shaping rows{apart} need {changes * step} rows, there are {row_count}; at most {fitting} fit."
        )
    if not changes:
        return Intervals(step, 0, 2 * step, 0, row_count)
    each, slow = divmod(fitting, changes)
    fast_every, slow_every = each * step, (each + 1) * step
    if slow_first and slow:
        return Intervals(slow_every, slow, fast_every, changes - slow, row_count % step)
    return Intervals(fast_every, changes - slow, slow_every, slow, row_count % step)


def paired(count: int, what: str) -> int:
    """Half of a count of which one is worked at either end. Raises `Impossible` for an odd one."""
    if count % 2:
        near = f"{count - 1} or {count + 1}"
        raise Impossible(f"{count} {what} cannot be worked in pairs, one at either end; {near} can.")
    return count // 2


INTERVALS = (*of_rows("every"), *plain("times"), *of_rows("then_every"), *plain("then_times"), *of_rows("even"))


@dataclass(frozen=True, slots=True)
class _Kind:
    """Which stitches change where: the word of it, both ends or one, in rows or rounds, and which interval first."""

    verb: str
    place: str
    rounds: bool
    slow_first: bool

    @property
    def name(self) -> str:
        """The name in a formula: "increase_at_both_ends", "decrease_in_round_slow_first"."""
        place = "_in_round" if self.rounds else f"_at_{self.place.replace(' ', '_')}"
        return f"{self.verb}{place}{'_slow_first' if self.slow_first else ''}"

    def work(self, count: int, row_count: int, step: int) -> Result:
        """The intervals."""
        both = self.place == "both ends"
        changes = paired(count, f"{self.verb}s") if both else count
        return intervals(changes, row_count, step, slow_first=self.slow_first).result()

    def page(self) -> str:
        """What it does, with the published example that fits."""
        both = self.place == "both ends"
        ends = "a stitch at either end of a row" if both else f"a stitch at the {self.place} of a row"
        unit = "round" if self.rounds else "row"
        order = "longer" if self.slow_first else "shorter"
        least = 1 if self.rounds else 2
        pair = ", so the stitches must be an even number" if both else ""
        count, rows_told = (84, "84 stitches are 42") if both else (42, "42 stitches are as many")
        found = (f"every 4th {unit} 34 times", f"every 5th {unit} 8 times")
        first, then = reversed(found) if self.slow_first else found
        return (
            f"So many stitches, {ends}{pair}, over so many {unit}s: `{self.name}({count} st, 176 row, 1 row)`. "
            f"The {order} interval comes first. The third value is what each interval is a multiple of, {least} "
            f"where it is left out: 2 keeps flat shaping on right-side rows. Rows that are left over are worked even "
            f"behind. In the example {rows_told} shaping {unit}s; 176 = 42 × 4 + 8, so {first} and {then}. Sources: "
            "designyourownsweater.blogspot.com 2007; “Knitting and the Magic Formula”, getknitting.com."
        )

    def plan(self) -> Plan:
        """The plan of this kind."""
        step = rows("step", 1 if self.rounds else 2, least=1)
        arguments = (stitches("count"), rows("over"), step)
        return Plan(self.name, arguments, INTERVALS, self.work, self.page())


def _kinds() -> Iterator[_Kind]:
    for verb in ("increase", "decrease"):
        for slow_first in (False, True):
            for place in ("both ends", "beginning", "end"):
                yield _Kind(verb, place, rounds=False, slow_first=slow_first)
            yield _Kind(verb, "both ends", rounds=True, slow_first=slow_first)


OVER_ROWS = tuple(kind.plan() for kind in _kinds())
