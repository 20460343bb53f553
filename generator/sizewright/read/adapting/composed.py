"""In: the lines of an adaptation and of its base, and its departures. Out: the two put together, as one text.

It holds the adaptation's header, behind it that of the base, then the body of the base with the departures carried out.
Each line of either file stands in it once at most, so that every place in it has one home.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from sizewright.base.finding import Finding
from sizewright.base.place import Home, Lines
from sizewright.read.adapting.places import Place
from sizewright.read.adapting.rules import clash
from sizewright.read.departure import Called, Departure, Part, Verb


@dataclass(frozen=True, slots=True)
class Placed:
    """A departure and its place in the base."""

    called: Called
    place: Place

    @property
    def cut(self) -> tuple[int, int]:
        """The lines of the base that it takes up, end exclusive; none where it only adds."""
        at = self.place.first if self.called.verb is Verb.BEFORE else self.place.end
        return (at, at) if self.called.verb.adds else (self.place.first, self.place.end)


def apart(placed: Sequence[Placed]) -> tuple[tuple[Placed, ...], tuple[Finding, ...]]:
    """The departures as they follow in the base, without those at a place that another has taken, and these."""
    good: list[Placed] = []
    findings: list[Finding] = []
    for one in placed:
        other = next((other for other in good if _together(one, other)), None)
        if other is None:
            good.append(one)
        else:
            findings.append(clash(one.called, other.called))
    order = {Verb.AFTER: 0, Verb.BEFORE: 1}
    return tuple(sorted(good, key=lambda one: (one.cut, order.get(one.called.verb, 2)))), tuple(findings)


def _together(one: Placed, other: Placed) -> bool:
    if _within(one, other) or _within(other, one):
        return False
    (first, end), (others_first, others_end) = one.cut, other.cut
    if first == end and others_first == others_end:
        return first == others_first and one.called.verb is other.called.verb
    if first == end:
        return others_first < first < others_end
    if others_first == others_end:
        return first < others_first < end
    return first < others_end and others_first < end


def _within(one: Placed, other: Placed) -> bool:
    """Whether a paragraph or a number changes in a section whose stitches are turned, which touches none of them."""
    return other.called.verb is Verb.INSIDE_OUT and one.called.part in (Part.TEXT, Part.QUANTITY)


class Composer:
    """Puts the lines together; `headers` are the last lines of the two headers, the own and that of the base."""

    def __init__(self, own: Lines, base: Lines, headers: tuple[int, int]) -> None:
        self._own = own
        self._base = base
        self._last = headers[1]
        self._texts: list[str] = []
        self._homes: list[Home] = []
        self._departures: list[Departure] = []
        self._open: list[tuple[int, int]] = []  # departures that go on over lines of the base, and where they end there
        self._take(own, 1, headers[0] + 1)
        self._take(base, 1, headers[1] + 1)

    @property
    def lines(self) -> Lines:
        """All that is put together."""
        return Lines(self._own.source, "\n".join(self._texts), self._homes)

    def departures(self, placed: Sequence[Placed], first: int) -> tuple[Departure, ...]:
        """Carries the departures out in the body; `first` is the number of the first of them."""
        at = self._last + 1
        for number, one in enumerate(placed, start=first):
            start, end = one.cut
            self._until(at, start)
            at = start
            self._departures.append(self._begun(number, one))
            if one.called.verb is Verb.INSIDE_OUT:
                self._open.append((len(self._departures) - 1, end))
                continue
            self._put(one)
            at = end
        self._until(at, len(self._base.lines) + 1)
        self._closed(len(self._base.lines) + 1)
        return tuple(self._departures)

    def _begun(self, number: int, one: Placed) -> Departure:
        start, end = one.cut
        stood = "\n".join(self._base.lines[start - 1 : end - 1])
        here = len(self._texts) + 1
        return Departure(number, one.called, here, here, stood, self._base.whole_line(one.place.first), one.place.block)

    def _put(self, one: Placed) -> None:
        """The lines of a departure; text has an empty line before and behind it."""
        called = one.called
        if called.first >= called.end:
            return
        if not one.place.block:
            self._blank(called.first)
        here = len(self._texts) + 1
        self._take(self._own, called.first, called.end)
        self._departures[-1] = replace(self._departures[-1], first=here, end=len(self._texts) + 1)
        if not one.place.block:
            self._blank(called.end - 1)

    def _until(self, at: int, end: int) -> None:
        """The lines of the base up to one, and the ends of what goes on over them."""
        for number in range(at, end):
            self._closed(number)
            self._take(self._base, number, number + 1)

    def _closed(self, number: int) -> None:
        for at, end in self._open:
            if end <= number:
                self._departures[at] = replace(self._departures[at], end=len(self._texts) + 1)
        self._open = [one for one in self._open if one[1] > number]

    def _take(self, lines: Lines, first: int, end: int) -> None:
        if first < end:
            self._homes.extend(self._home(lines, first))
            self._texts.extend(lines.lines[first - 1 : end - 1])

    def _blank(self, number: int) -> None:
        self._homes.append(Home(len(self._texts) + 1, self._own.source, number))
        self._texts.append("")

    def _home(self, lines: Lines, first: int) -> Iterator[Home]:
        """Where lines stand that are taken; nothing new where they follow those before."""
        here, last = len(self._texts) + 1, self._homes[-1] if self._homes else None
        if last is None or last.source != lines.source or last.there + here - last.first != first:
            yield Home(here, lines.source, first)
