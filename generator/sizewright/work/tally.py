"""In: the stitches of each part as it is worked. Out: those of the whole, by yarn, with parts made again."""

import re
from collections import Counter

from sizewright.read.pattern import Header
from sizewright.work.needle import Needle

# A heading may say how many are made, as in Sleeves (make 2).
_MAKE = re.compile(r"\((?:make|knit|work) (?P<times>\d{1,2}|two|three|four|five|six)\b[^()]*\)", re.IGNORECASE)
_WORDS = ("two", "three", "four", "five", "six")


def times_made(heading: str) -> int:
    """How many are made of what stands below a heading: 2 for "Sleeves (make 2)", 1 where nothing is said."""
    found = _MAKE.search(heading)
    word = found["times"].casefold() if found else "1"
    return _WORDS.index(word) + 2 if word in _WORDS else int(word)


class Tally:
    """The stitches worked in one size. A part begins with its heading; a piece, with its cast-on."""

    def __init__(self, header: Header) -> None:
        self._made = f"{header.title} {header.kind.text if header.kind else ''}".casefold()
        self.stitches: Counter[str] = Counter()
        self._headings: list[tuple[str, Counter[str]]] = []
        self._cast_on: Counter[str] = Counter()
        self._part: Counter[str] = Counter()
        self._several: list[tuple[int, int, Counter[str]]] = []

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
        self._headings.append((heading.casefold(), self.stitches.copy()))
        times = times_made(heading)
        if times > 1:
            self._several.append((level, times, self.stitches.copy()))

    def close(self, level: int = 0) -> None:
        """All headings of this level and below it end."""
        while self._several and self._several[-1][0] >= level:
            _, times, before = self._several.pop()
            self._again(before, times - 1)

    def begin(self, *, cast_on: bool) -> None:
        """A part begins, with stitches that are cast on or with others."""
        self._part = self.stitches.copy()
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

    def _again(self, before: Counter[str], times: int) -> None:
        for yarn, count in (self.stitches - before).items():
            self.stitches[yarn] += count * times
