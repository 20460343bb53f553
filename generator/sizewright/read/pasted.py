"""In: a finished pattern as plain text. Out: a source with the same words in the same order, and what found no place.

What is read without a doubt as instructions stands in work blocks, and so does what looks like them behind the cast-on,
for the proof to ask for it; all else stays text. Nothing is guessed: what the header needs and no line says for certain
is left to the designer, as a comment.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from sizewright.read.folder import lines_of, read_text
from sizewright.read.instructions import TYPED_LIST
from sizewright.read.notation.direction_tree import Unread
from sizewright.read.pasted_doubt import tells_counts, with_doubtful
from sizewright.read.pasted_glossary import explained_lines
from sizewright.read.pasted_header import Told, told_in
from sizewright.read.pasted_source import FENCE, LABEL, Group, can_stand, words_of, written
from sizewright.read.pattern import WorkBlock
from sizewright.read.rules import NOT_UNDERSTOOD

_LONGEST_TITLE = 80
_MOST_LINES = 4  # that one row is wrapped over


@dataclass(frozen=True, slots=True)
class Unplaced:
    """A line of the text that looks like an instruction and could not be read as one; `line` is counted from 1.

    Whether it stands in a block, where the proof says what is not understood in it, or was left as text.
    """

    line: int
    text: str
    in_block: bool


@dataclass(frozen=True, slots=True)
class Pasted:
    """The source, what of the text found no place in a work block, and how many of its lines did."""

    source: str
    told: Told
    unplaced: tuple[Unplaced, ...]
    placed: int


def pasted(text: str, name: str) -> Pasted:
    """The source of a pasted text; `name` is its title where the text has none."""
    lines = [line.rstrip() for line in lines_of("pasted", text).lines]
    told = told_in(lines)
    groups = _grouped(lines, told.sizes)
    title = _title(groups)
    told = replace(told, title=" ".join(title.lines) if title else name, titled=title is not None)
    groups = [group for group in groups if group is not title]
    source, placed = written(groups, told)
    return Pasted(source, told, tuple(_unplaced(groups)), placed)


def _unplaced(groups: Sequence[Group]) -> Iterator[Unplaced]:
    working = [group.first for group in groups if group.works]
    for group in groups:
        between = bool(working) and working[0] < group.first < working[-1]
        left = group.kinds is None and (LABEL.match(group.lines[0].strip()) or (between and tells_counts(group)))
        if group.doubtful or (left and not group.explained):
            yield Unplaced(group.first + 1, " ".join(map(str.strip, group.lines)), group.doubtful)


def _grouped(lines: Sequence[str], told: tuple[str, ...]) -> list[Group]:
    """The lines of the text, those together that one row is wrapped over."""
    explained = explained_lines(lines)
    groups = [Group(place, (line,), None, explained=place in explained) for place, line in enumerate(lines) if line]
    sizes = told or _any_sizes(lines)
    groups = _read(groups, sizes)
    for _ in range(_MOST_LINES):
        found = {(group.first, group.end): group for group in _read(_longer(groups), sizes) if group.kinds is not None}
        if not found:
            break
        groups = list(_replaced(groups, found))
    return list(_with_silent(with_doubtful(groups, told)))


def _any_sizes(lines: Sequence[str]) -> tuple[str, ...]:
    """As many sizes as most bracket lists have numbers, to read the lists by."""
    lengths = [1 + len(re.split(r"[,:;]", found["rest"])) for line in lines for found in TYPED_LIST.finditer(line)]
    count = max(lengths, key=lengths.count) if lengths else 1
    return tuple(f"size {place + 1}" for place in range(count)) if count > 1 else ()


def _read(groups: Sequence[Group], sizes: tuple[str, ...]) -> list[Group]:
    """The groups with what is read in each alone."""
    readable = [place for place, group in enumerate(groups) if can_stand(group)]
    listed = f"sizes: [{', '.join(f'size {place}' for place in range(len(sizes)))}]\n" if sizes else ""
    blocks = "".join(f"{FENCE}work\n{words_of(groups[place])}{FENCE}\n" for place in readable)
    project = read_text(f"---\ntitle: pasted\n{listed}---\n{blocks}")
    told = [piece for piece in project.patterns[0].body if isinstance(piece, WorkBlock)]
    wrong = {finding.span.line for finding in project.findings if finding.rule == NOT_UNDERSTOOD.name and finding.span}
    found = list(groups)
    for place, block in zip(readable, told, strict=True):
        here = tuple(type(direction) for direction in block.directions)
        faulty = Unread in here or any(line.span.line in wrong for line in block.lines)
        found[place] = replace(groups[place], kinds=None if faulty else here)
    return found


def _longer(groups: Sequence[Group]) -> list[Group]:
    """Groups that may be wrapped lines of one row: each that is not understood, with its neighbours."""
    found = []
    for place, group in enumerate(groups):
        before = groups[place - 1] if place else None
        if group.kinds is None and before is not None and before.end == group.first and before.kinds:
            found.append(before.joined(group))
        if group.kinds is None and LABEL.match(group.lines[0].strip()):
            longer = group
            for other in groups[place + 1 : place + _MOST_LINES]:
                if other.first != longer.end or other.kinds:
                    break
                longer = longer.joined(other)
                found.append(longer)
    return found


def _replaced(groups: Sequence[Group], found: dict[tuple[int, int], Group]) -> Iterator[Group]:
    """The groups with the shortest of those found in the place of their lines."""
    done = -1
    for group in groups:
        if group.first < done:
            continue
        ends = sorted(end for first, end in found if first == group.first)
        chosen = found[group.first, ends[0]] if ends else group
        done = chosen.end
        yield chosen


def _with_silent(groups: Sequence[Group]) -> Iterator[Group]:
    """Words that are understood and do nothing, "Weave in ends.", are instructions only among others."""
    for place, group in enumerate(groups):
        beside = [groups[at] for at in (place - 1, place + 1) if 0 <= at < len(groups)]
        touching = any(
            (one.kinds or one.doubtful) and (one.end == group.first or group.end == one.first) for one in beside
        )
        yield group if group.kinds or (group.kinds == () and touching) else replace(group, kinds=None)


def _title(groups: Sequence[Group]) -> Group | None:
    """The first line, where it is neither an instruction nor a sentence."""
    if not groups or groups[0].works:
        return None
    text = groups[0].lines[0].strip()
    plain = len(text) <= _LONGEST_TITLE and not text.endswith((".", ",", ";", ":")) and not LABEL.match(text)
    alone = len(groups) < 2 or groups[1].first > groups[0].end
    return groups[0] if plain and alone and len(groups[0].lines) == 1 and ":" not in text else None
