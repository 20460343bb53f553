"""In: the stitches of each part as it is worked. Out: those of the whole, by yarn, with parts made again.

It knows what "Make the second sleeve the same way" means, so it also makes the course of the size longer by that part.
"""

import re
from collections import Counter
from dataclasses import dataclass, field, replace

from sizewright.read.notation.direction_tree import SameAgain
from sizewright.read.pattern import Header
from sizewright.work.course import Leg
from sizewright.work.needle import Needle

# A heading may say how many are made, as in Sleeves (make 2).
_MAKE = re.compile(r"\((?:make|knit|work) (?P<times>\d{1,2}|two|three|four|five|six)\b[^()]*\)", re.IGNORECASE)
_MOST = 50  # times that a course tells of; nobody makes a part so often
_WORDS = ("two", "three", "four", "five", "six")


def times_made(heading: str) -> int:
    """How many are made of what stands below a heading: 2 for "Sleeves (make 2)", 1 where nothing is said."""
    found = _MAKE.search(heading)
    word = found["times"].casefold() if found else "1"
    return _WORDS.index(word) + 2 if word in _WORDS else int(word)


@dataclass(frozen=True, slots=True)
class _Before:
    """How far the work was where a part begins: the stitches until then, and the directions."""

    stitches: Counter[str] = field(default_factory=Counter)
    legs: int = 0


class Tally:
    """The stitches worked in one size. A part begins with its heading; a piece, with its cast-on."""

    def __init__(self, header: Header, course: list[Leg]) -> None:
        self._made = f"{header.title} {header.kind.text if header.kind else ''}".casefold()
        self.stitches: Counter[str] = Counter()
        self._course = course
        self._headings: list[tuple[str, _Before]] = []
        self._cast_on = self._part = _Before()
        self._several: list[tuple[int, int, _Before]] = []

    def add(self, stitches: Counter[str]) -> None:
        """Stitches that were worked since."""
        self.stitches.update(stitches)

    def so_far(self, needle: Needle | None) -> tuple[tuple[str, int], ...]:
        """All stitches up to here, by yarn: those added, and those worked on the needle since."""
        total = self.stitches if needle is None else self.stitches + needle.worked
        return tuple(sorted(total.items()))

    def edge(self, yarn: str, count: int) -> None:
        """An edge is cast on or bound off: it takes yarn like a row."""
        self.stitches[yarn] += count

    def enter(self, heading: str, level: int) -> None:
        """A heading stands here; what stands below one that says "(make 2)" is worked twice."""
        self.close(level)
        self._headings.append((heading.casefold(), self._now()))
        times = times_made(heading)
        if times > 1:
            self._several.append((level, times, self._now()))

    def close(self, level: int = 0) -> None:
        """All headings of this level and below it end."""
        while self._several and self._several[-1][0] >= level:
            _, times, before = self._several.pop()
            self._again(before, times - 1)

    def begin(self, *, cast_on: bool) -> None:
        """A part begins, with stitches that are cast on or with others."""
        self._part = self._now()
        if cast_on:
            self._cast_on = self._part

    def same(self, part: str, times: int) -> None:
        """A part is made so many more times: all from the last heading that names it on.

        Where none does, it is what was begun last, or, where the whole pattern makes such a thing, the last piece that
        was cast on, with all its parts.
        """
        noun = (part.casefold().split() or ["?"])[-1]
        named = (before for heading, before in reversed(self._headings) if noun in heading)
        self._again(next(named, self._cast_on if noun in self._made else self._part), times)

    def _now(self) -> _Before:
        return _Before(self.stitches.copy(), len(self._course))

    def _again(self, before: _Before, times: int) -> None:
        for yarn, count in (self.stitches - before.stitches).items():
            self.stitches[yarn] += count * times
        part = [leg for leg in self._course[before.legs :] if not isinstance(leg.direction, SameAgain)]
        for number in range(1, min(times, _MOST) + 1):
            self._course.extend(replace(leg, again=leg.again + number) for leg in part)
