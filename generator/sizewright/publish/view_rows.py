"""In: a pattern carried out. Out: what each size has on the needles one after the other, as data for the page's script.

Rows are folded to runs, so that a pullover of ten sizes and thousands of rows stays a few kilobytes. Every text stands
once, in `words`; elsewhere its place stands.
"""

import json
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import TypeVar

from markupsafe import Markup

from sizewright.base.language import Language, language, named, speaking, spoken
from sizewright.grade.graded import Graded
from sizewright.publish.row_words import SIGNS, RowWords, Said
from sizewright.publish.view_table import SizeChoice
from sizewright.publish.view_words import WordsView
from sizewright.read.notation.direction_tree import Direction
from sizewright.read.translating.told import translation_of
from sizewright.work.course import Leg, Pass, Spell
from sizewright.work.worked import Worked

# What is no plain text of a page: the beginnings of markup, and the signs around what is told twice.
_ESCAPED = ("&", "<", *SIGNS)

# The form of the data; raised when a script of before could not read it.
FORM = 1

_Segment = tuple[Pass, int]  # a row, and how often it is worked in a breath
_Run = tuple[int, tuple[_Segment, ...]]  # how often the segments are worked one after the other
_Told = list[object]
_Answer = TypeVar("_Answer")


def rows_data(worked: Worked, sizes: Sequence[SizeChoice], terms: WordsView, *, metric_first: bool) -> Markup:
    """The data as JSON that may stand in a script element.

    `{"form": 1, "words": [text], "sizes": {key: [leg]}}` with a leg `[heading, block, label, words, count, before,
    again, runs]`, a run `[times, [segment]]` and a segment `[label, words, times, change of the count, rows, stitch
    pattern]`. A translated pattern has `base` too: for each of `words` what it is in the language of the source, so
    that who has begun in one language goes on in the other.
    """
    told = _Telling(tuple(_tellers(worked.graded, terms, metric_first=metric_first)))
    keys = [size.key for size in sizes] or [""]
    legs = {key: list(told.size(worked.courses[place], place)) for place, key in enumerate(keys)}
    shown, *base = zip(*told.places, strict=True)
    data = {"form": FORM, "words": shown, **({"base": base[0]} if base else {}), "sizes": legs}
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    for sign in _ESCAPED:
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return Markup(text)  # noqa: S704 (no markup can begin in it)


def runs_of(leg: Leg) -> tuple[_Run, ...]:
    """The rows of a leg folded: "inc every 4th row 10 times" is one run, 10 times three rows even and the increase."""
    found: list[_Run] = []
    singles: list[_Segment] = []
    for spell in leg.spells:
        if len(spell.passes) == 1:
            singles.append((spell.passes[0], spell.times))
            continue
        found.extend(_folded(singles))
        singles = []
        found.append(_joined(spell))
    found.extend(_folded(singles))
    return tuple(found)


def _joined(spell: Spell) -> _Run:
    """The rows of a spell, those that are alike and follow one another as one segment."""
    segments: list[_Segment] = []
    for one in spell.passes:
        if segments and segments[-1][0].like(one):
            segments[-1] = (segments[-1][0], segments[-1][1] + 1)
        else:
            segments.append((one, 1))
    return spell.times, tuple(segments)


_LONGEST = 4  # segments that are looked for again: rows even and a row of shaping, on one side or on both


def _folded(segments: Sequence[_Segment]) -> Iterator[_Run]:
    """Segments that come again and again as one run."""
    at = 0
    while at < len(segments):
        length, times = max(
            ((length, _times(segments, at, length)) for length in range(1, _LONGEST + 1)),
            key=lambda found: (found[0] * found[1] if found[1] > 1 else 0, -found[0]),
        )
        if times < 2:
            length, times = 1, 1
        yield times, tuple(segments[at : at + length])
        at += length * times


def _times(segments: Sequence[_Segment], at: int, length: int) -> int:
    """How often the next segments come one after the other."""
    first = segments[at : at + length]
    times = 0
    while len(first) == length and all(map(_same, first, segments[at + times * length :])):
        if len(segments) < at + (times + 1) * length:
            break
        times += 1
    return times


def _same(first: _Segment, second: _Segment) -> bool:
    return first[1] == second[1] and first[0].like(second[0])


@dataclass(frozen=True, slots=True)
class _Teller:
    """Finds the words in one language."""

    language: Language
    words: RowWords

    def tells(self, ask: Callable[[RowWords], _Answer]) -> _Answer:
        with speaking(self.language):
            return ask(self.words)


def _tellers(graded: Graded, terms: WordsView, *, metric_first: bool) -> Iterator[_Teller]:
    """The language that is spoken and, for a translated pattern, that of its source."""
    yield _teller(spoken(), graded, terms, metric_first=metric_first)
    translation = translation_of(graded.pattern, spoken().code)
    if translation is not None:
        yield _teller(language(translation.of), graded, terms, metric_first=metric_first)


def _teller(own: Language, graded: Graded, terms: WordsView, *, metric_first: bool) -> _Teller:
    with speaking(own):
        return _Teller(own, RowWords(graded, terms, metric_first=metric_first))


class _Telling:
    """Puts the legs of sizes into places of words. A text is a tuple: one for each language."""

    def __init__(self, tellers: tuple[_Teller, ...]) -> None:
        self.tellers = tellers
        self.places: dict[tuple[str, ...], int] = {("",) * len(tellers): 0}

    def told(self, ask: Callable[[RowWords], _Answer]) -> tuple[_Answer, ...]:
        return tuple(teller.tells(ask) for teller in self.tellers)

    def size(self, course: Sequence[Leg], size: int) -> Iterator[_Told]:
        block, line, heading = -1, 0, ""
        for together in _by_line(course):
            first = together[0]
            if first.block != block or first.direction.span.line < line:
                yield from self.silent(heading, block, line, size)
                block, line, heading = first.block, 0, first.heading
            yield from self.silent(heading, block, line, size, first.direction.span.line)
            line = together[-1].direction.span.line
            one = self.together([leg.direction for leg in together], size)
            if one:
                yield self.leg(together[0], one, size)
                continue
            for leg in together:
                yield self.leg(leg, self.direction(leg.direction, size), size)
        yield from self.silent(heading, block, line, size)

    def direction(self, direction: Direction, size: int) -> tuple[Said, ...]:
        return self.told(lambda words: words.direction(direction, size))

    def together(self, directions: Sequence[Direction], size: int) -> tuple[Said, ...]:
        """One line of several directions in every language; none where it is not to be told as one."""
        if len(directions) < 2:
            return ()
        found = self.told(lambda words: words.together(directions, size))
        return tuple(said for said in found if said is not None) if None not in found else ()

    def silent(self, heading: str, block: int, behind: int, size: int, before: int = sys.maxsize) -> Iterator[_Told]:
        """Lines that change no stitch, but are to be done: each a leg without rows."""
        found = self.told(lambda words: tuple(words.silent(block, behind, before, size))) if block >= 0 else ()
        for said in (one for one in zip(*found, strict=True) if one[0].words or one[0].label):
            yield [self.head(heading), block, *self.parts(said), None, 0, []]

    def leg(self, leg: Leg, said: tuple[Said, ...], size: int) -> _Told:
        runs = [
            [times, [self.segment(leg, one, alike, size) for one, alike in segments]]
            for times, segments in runs_of(leg)
        ]
        rest = leg.rows - sum(spell.rows for spell in leg.spells)
        if rest > 0:  # rows that are only declared
            label, words, _ = self.parts(said)
            runs.append([rest, [[label, words, 1, 0, 1, 0]]])
        return [self.head(leg.heading), leg.block, *self.parts(said), leg.before, leg.again, runs]

    def segment(self, leg: Leg, one: Pass, alike: int, size: int) -> _Told:
        label, words, _ = self.parts(self.told(lambda words: words.row(one, leg.direction, size)))
        pattern = self.place(self.told(lambda words: words.pattern(one)))
        return [label, words, alike, one.after - one.before, one.rows, pattern]

    def head(self, heading: str) -> int:
        return self.place(self.told(lambda _: named(heading)))

    def parts(self, said: tuple[Said, ...]) -> tuple[int, int, int]:
        """The places of the label, the words and the count."""
        label, words, count = zip(*((one.label, one.words, one.count) for one in said), strict=True)
        return self.place(label), self.place(words), self.place(count)

    def place(self, text: tuple[str, ...]) -> int:
        return self.places.setdefault(text, len(self.places))


def _by_line(course: Sequence[Leg]) -> Iterator[tuple[Leg, ...]]:
    """The legs, those of one line that work no row together."""
    for (_, rows, _), legs in groupby(course, lambda leg: (leg.direction.span.line, bool(leg.rows), leg.again)):
        if rows:
            yield from ((leg,) for leg in legs)
        else:
            yield tuple(legs)
