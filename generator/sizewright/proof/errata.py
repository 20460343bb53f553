"""In: two versions of a pattern, carried out. Out: what a reader of the old one must correct, for each size.

Only what both versions say can be wrong: a changed wording, a row under another name, a passage at another place, a
count that is said now and was not before are no errata, and neither are sentences of the text that came or went.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from sizewright.proof.line import Kind, Line
from sizewright.proof.matched import Item, Match, matched
from sizewright.proof.printed_lines import printed_lines
from sizewright.work.worked import Worked


class Change(StrEnum):
    """What became of a line or of a size."""

    CORRECTED = "corrected"
    ADDED = "added"
    LEFT_OUT = "left-out"
    MOVED = "moved"
    SIZE_ADDED = "size-added"
    SIZE_LEFT_OUT = "size-left-out"


@dataclass(frozen=True, slots=True)
class Erratum:
    """One correction, for all `sizes` that it is the same for; "" is the size of a pattern that names none.

    `old` and `new` are the whole line as those sizes read it, "" where there is none. `every` where it concerns every
    size there is in both versions. `after` is the line an added one stands behind. `plain` where its name stands only
    once in the new version, so that nobody has to be told where. `line` is where it stands there, 0 where it does not.
    """

    change: Change
    kind: Kind
    section: str
    name: str
    sizes: tuple[str, ...]
    old: str
    new: str
    every: bool = False
    after: str = ""
    plain: bool = False
    line: int = 0


@dataclass(frozen=True, slots=True)
class _Versions:
    """The lines of both, and the places of the sizes that both have."""

    old: Sequence[Line]
    new: Sequence[Line]
    sizes: tuple[tuple[str, int, int], ...]

    def plain(self, line: Line) -> bool:
        """Whether a name stands only once in the new version."""
        return bool(line.name) and sum(other.name == line.name for other in self.new) == 1

    def said(self, line: Line, *, new: bool) -> Item:
        places = [after if new else before for _, before, after in self.sizes]
        return Item(line.kind, line.name, tuple(line.counts[place] for place in places))


def errata(old: Worked, new: Worked) -> tuple[Erratum, ...]:
    """The corrections, those of sizes first, then in the order of the new version."""
    before, after = old.graded.sizes or ("",), new.graded.sizes or ("",)
    both = tuple((size, before.index(size), place) for place, size in enumerate(after) if size in before)
    if not both and len(before) == len(after) == 1:  # a pattern of one size may have got a name for it
        both = ((after[0], 0, 0),)
    versions = _Versions(printed_lines(old), printed_lines(new), both)
    named = {size for size, _, _ in both} | {before[place] for _, place, _ in both}
    found = [_of_size(Change.SIZE_LEFT_OUT, size) for size in before if size not in named]
    found += [_of_size(Change.SIZE_ADDED, size) for size in after if size not in named]
    corrections = list(dict.fromkeys(_corrections(versions) if both else ()))
    return (*found, *(one for one in corrections if not _drawn_again(one, corrections)))


def _drawn_again(one: Erratum, corrections: Sequence[Erratum]) -> bool:
    """Whether a schematic only shows what is told of a finished measurement already."""
    return one.kind is Kind.DRAWN and any(
        other.kind is Kind.FACT and (other.sizes, other.old, other.new) == (one.sizes, one.old, one.new)
        for other in corrections
    )


def _of_size(change: Change, size: str) -> Erratum:
    return Erratum(change, Kind.FACT, "", size, (size,), "", "")


def _corrections(versions: _Versions) -> Iterator[Erratum]:
    old, new = (
        [versions.said(line, new=is_new) for line in lines]
        for lines, is_new in ((versions.old, False), (versions.new, True))
    )
    behind: Line | None = None
    matches = matched(old, new)
    for match in matches:
        before, after = match.old, match.new
        if match.moved and _out_of_order(versions, match, matches):
            yield from _moved(versions, versions.new[after or 0], behind)
        elif before is not None and after is not None:
            yield from _changed(versions, versions.old[before], versions.new[after])
        elif before is not None:
            yield from _alone(versions, versions.old[before], None, new=False)
        elif after is not None:
            yield from _alone(versions, versions.new[after], behind, new=True)
        behind = versions.new[after] if after is not None else behind


def _out_of_order(versions: _Versions, match: Match, matches: Sequence[Match]) -> bool:
    """Whether a line stands elsewhere among those of its own passage, which did not move with it."""
    if match.old is None or match.new is None or versions.new[match.new].kind is Kind.TEXT:
        return False
    section = versions.new[match.new].section
    if versions.old[match.old].section != section:
        return True
    beside = [one for one in matches if one.new is not None and versions.new[one.new].section == section]
    return any(one.old is not None and (one.old < match.old) != ((one.new or 0) < match.new) for one in beside)


def _moved(versions: _Versions, line: Line, behind: Line | None) -> Iterator[Erratum]:
    for one in _alone(versions, line, behind, new=True):
        yield replace(one, change=Change.MOVED, old=one.new)


def _changed(versions: _Versions, old: Line, new: Line) -> Iterator[Erratum]:
    told: dict[tuple[str, str], list[str]] = {}
    for size, before, after in versions.sizes:
        if old.differs(before, new, after):
            pair = _compared(old, before, new, after)
            if pair[0] == pair[1]:  # the difference is in the label, which says how many rows or on which side
                pair = f"{old.name}: {pair[0]}", f"{new.name}: {pair[1]}"
            told.setdefault(pair, []).append(size)
    for (was, is_now), sizes in told.items():
        change = Change.ADDED if not was else Change.LEFT_OUT if not is_now else Change.CORRECTED
        every = len(sizes) == len(versions.sizes)
        yield Erratum(
            change,
            new.kind,
            new.section,
            new.name,
            tuple(sizes),
            was,
            is_now,
            every,
            plain=versions.plain(new),
            line=new.span.shown.line,
        )


def _compared(old: Line, before: int, new: Line, after: int) -> tuple[str, str]:
    """Both as their sizes read them, with the counts behind them only where these are what differs."""
    if old.promised(before) and new.promised(after) and old.promised(before) != new.promised(after):
        return _whole(old, before), _whole(new, after)
    return old.said[before] or "", new.said[after] or ""


def _whole(line: Line, size: int) -> str:
    """A line as a size reads it, with the count behind it."""
    said = line.said[size]
    return "" if said is None else f"{said} {line.promised(size)}".strip()


def _alone(versions: _Versions, line: Line, behind: Line | None, *, new: bool) -> Iterator[Erratum]:
    if line.kind is Kind.TEXT:
        return
    told: dict[str, list[tuple[str, int]]] = {}
    for size, before, after in versions.sizes:
        place = after if new else before
        if line.said[place] is not None:
            told.setdefault(_whole(line, place), []).append((size, place))
    for words, sizes in told.items():
        names = tuple(size for size, _ in sizes)
        after_it = behind is not None and behind.kind not in (Kind.FACT, Kind.DRAWN) and behind.section == line.section
        yield Erratum(
            Change.ADDED if new else Change.LEFT_OUT,
            line.kind,
            line.section,
            line.name,
            names,
            "" if new else words,
            words if new else "",
            len(names) == len(versions.sizes),
            (behind.name or _whole(behind, sizes[0][1])) if after_it and behind is not None else "",
            line=line.span.shown.line if new else 0,
        )
