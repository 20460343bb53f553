"""In: two lists of printed things, old and new. Out: which of the old is which of the new, by meaning and by order.

Two ways are tried: by what is said first, so that a row put in between does not make all behind it differ, and by its
name first, so that rows under old names are compared with rows under these. The one with fewer differences is taken.
"""

import re
from collections.abc import Callable, Hashable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from itertools import groupby, takewhile

_DIGITS = re.compile(r"\d+")
_ALIKE = 0.5  # of their words; below that two lines are two lines and not one that was changed


@dataclass(frozen=True, slots=True)
class Match:
    """Places of the same thing in both lists, None where one has it not; `moved` where the order is another."""

    old: int | None
    new: int | None
    moved: bool = False


@dataclass(frozen=True, slots=True)
class Item:
    """One thing that may be matched: its kind and name, and what it says in each size (None: nothing)."""

    kind: str
    name: str
    says: tuple[str | None, ...]

    @property
    def shape(self) -> str:
        """What it says, whatever the numbers are."""
        return _DIGITS.sub("#", " | ".join(dict.fromkeys(one for one in self.says if one is not None)))


class _Nameless:
    """What has no name is like nothing else by it."""


Signature = Callable[[Item], Hashable]


def _named(item: Item) -> Hashable:
    return (item.kind, item.name) if item.name else _Nameless()


def _shaped(item: Item) -> Hashable:
    return item.kind, item.shape


def _said(item: Item) -> Hashable:
    return item.kind, item.says


def _called_and_shaped(item: Item) -> Hashable:
    return item.kind, item.name, item.shape


def _whole(item: Item) -> Hashable:
    return item


_BY_WORDS: tuple[Signature, ...] = (_said, _called_and_shaped, _named, _shaped)
_BY_NAME: tuple[Signature, ...] = (_whole, _called_and_shaped, _named, _said, _shaped)


def matched(old: Sequence[Item], new: Sequence[Item]) -> tuple[Match, ...]:
    """What is the same, in the order of the new list; what is left out comes where it stood."""
    ways = [_Way(old, new, signatures).matches() for signatures in (_BY_WORDS, _BY_NAME)]
    return min(ways, key=lambda way: sum(_differs(old, new, match) for match in way))


def _differs(old: Sequence[Item], new: Sequence[Item], match: Match) -> bool:
    return match.old is None or match.new is None or match.moved or old[match.old].says != new[match.new].says


class _Way:
    def __init__(self, old: Sequence[Item], new: Sequence[Item], signatures: tuple[Signature, ...]) -> None:
        self.old, self.new, self.signatures = old, new, signatures
        self.found: dict[int, int] = {}
        self.elsewhere: set[int] = set()

    def matches(self) -> tuple[Match, ...]:
        lead = self.alike_so_far(zip(self.old, self.new, strict=False))
        room = min(len(self.old), len(self.new)) - lead
        ends = zip(reversed(self.old), reversed(self.new), strict=False)
        tail = min(room, self.alike_so_far(ends))
        self.found.update((place, place) for place in range(lead))
        self.found.update((len(self.old) - back, len(self.new) - back) for back in range(1, tail + 1))
        self.match(range(lead, len(self.old) - tail), range(lead, len(self.new) - tail), 0)
        self.moved()
        return tuple(self.in_order())

    def alike_so_far(self, both: Iterable[tuple[Item, Item]]) -> int:
        first = self.signatures[0]
        return sum(1 for _ in takewhile(lambda pair: first(pair[0]) == first(pair[1]), both))

    def match(self, old: range, new: range, step: int) -> None:
        """Matches what is alike by one signature; what lies between is left to the next."""
        if not (old and new):
            return
        if step == len(self.signatures):
            self.changed(old, new)
            return
        signature = self.signatures[step]
        left = [signature(self.old[place]) for place in old]
        right = [signature(self.new[place]) for place in new]
        at_old, at_new = old.start, new.start
        for block in SequenceMatcher(None, left, right, autojunk=False).get_matching_blocks():
            first_old, first_new = old.start + block.a, new.start + block.b
            self.match(range(at_old, first_old), range(at_new, first_new), step + 1)
            self.found.update((first_old + place, first_new + place) for place in range(block.size))
            at_old, at_new = first_old + block.size, first_new + block.size

    def changed(self, old: range, new: range) -> None:
        """Lines of which only a part was changed, each with the next that is like it."""
        start = new.start
        for place in old:
            for other in range(start, new.stop):
                if self.alike(self.old[place], self.new[other]):
                    self.found[place], start = other, other + 1
                    break

    @staticmethod
    def alike(old: Item, new: Item) -> bool:
        if old.kind != new.kind:
            return False
        return SequenceMatcher(None, old.shape.split(), new.shape.split(), autojunk=False).ratio() >= _ALIKE

    def moved(self) -> None:
        """What says the same at another place was moved."""
        taken = set(self.found.values())
        waiting: dict[Hashable, list[int]] = {}
        for place, item in enumerate(self.new):
            if place not in taken:
                waiting.setdefault(_said(item), []).append(place)
        for place, item in enumerate(self.old):
            if place not in self.found and waiting.get(_said(item)):
                self.found[place] = waiting[_said(item)].pop(0)
                self.elsewhere.add(place)

    def in_order(self) -> Iterator[Match]:
        """By the places of the new list; an old one that is gone comes behind the one that stood before it."""
        back = {new: old for old, new in self.found.items()}
        gone = {place: place not in self.found for place in range(len(self.old))}
        lost = [list(run) for missing, run in groupby(gone, key=lambda place: gone[place]) if missing]
        behind = {run[0] - 1: run for run in lost}
        yield from (Match(place, None) for place in behind.get(-1, ()))
        for place in range(len(self.new)):
            before = back.get(place)
            yield Match(before, place, before in self.elsewhere)
            if before is not None:
                yield from (Match(other, None) for other in behind.get(before, ()))
