"""In: the lines of a pasted pattern, and what was read in them. Out: the source: header, text, headings and blocks."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from sizewright.read.notation.direction_tree import CastOn, Row
from sizewright.read.pasted_header import Told, header_of
from sizewright.read.pasted_passages import ends_passage, sizes_in
from sizewright.read.pasted_prose import as_prose

FENCE = "```"
_FENCES = re.compile(r"`{3}|~{3}")
# How a line begins that is meant to be carried out: a label, or a word that nothing else begins with.
LABEL = re.compile(
    r"(?=[^:]{0,60}\b(?:row|rnd|round)s?\b)[^:]{1,60}:|(?:cast on|co|bind off|bo|rep|work)\b", re.IGNORECASE
)
_MULTIPLE = re.compile(r"\(?multiple of \d", re.IGNORECASE)
_NAME = re.compile(r"[\w',&/ -]+")
_HEADING_WORDS = 6


@dataclass(frozen=True, slots=True)
class Group:
    """Lines that say one thing: where the first stands in the text, and what was read in them.

    `kinds` are the directions in them; None where something in them was not understood. Those that look like
    instructions all the same are `doubtful`: they stand among the instructions, so that the proof asks for them.
    """

    first: int
    lines: tuple[str, ...]
    kinds: tuple[type, ...] | None
    doubtful: bool = False
    explained: bool = False  # words of a list of abbreviations, which are no instructions

    @property
    def works(self) -> bool:
        """Whether they stand in a block."""
        return self.kinds is not None or self.doubtful

    @property
    def end(self) -> int:
        """The line behind the last."""
        return self.first + len(self.lines)

    def joined(self, other: "Group") -> "Group":
        """Both together, not read yet."""
        explained = self.explained or other.explained
        return Group(self.first, (*self.lines, *other.lines), None, explained=explained)


def can_stand(group: Group) -> bool:
    """Whether each of some lines says anything, and can stand in a block."""
    lines = all(any(map(str.isalnum, line)) and not _FENCES.search(line) for line in group.lines)
    return lines and not group.explained


def words_of(group: Group) -> str:
    """The lines of a group as they stand in a block: what a row goes on in is set further in."""
    stripped = [line.strip().replace("{", "\\{").replace("}", "\\}") for line in group.lines]
    return "".join(f"{'  ' if place else ''}{line}\n" for place, line in enumerate(stripped))


def written(groups: Sequence[Group], told: Told) -> tuple[str, int]:
    """The source, and how many things that are understood its blocks say, each of one line or a row of several."""
    writer = _Writer(told)
    cast_on = next((group.first for group in groups if group.kinds and CastOn in group.kinds), 0)
    for place, group in enumerate(groups):
        head = _head(groups, place)
        names = passage_at(groups, place, told.sizes)
        if writer.within and (group.first != writer.end or ends_passage(group.lines[0])):
            writer.close_passage()
        if names:
            writer.passage(names)
        elif head and _is_stitch(groups, place, cast_on):
            writer.open(f"stitch {head.rstrip(':')}")
        elif head:
            writer.heading(head)
        elif not group.works and not writer.takes(group):
            writer.prose(group)
        else:
            writer.instructions(group)
        writer.end = group.end
    writer.close()
    writer.close_passage()
    return "\n".join(writer.lines).rstrip("\n") + "\n", writer.placed


class _Writer:
    """Writes lines; `end` is the line of the text behind the last that was written."""

    def __init__(self, told: Told) -> None:
        self.lines = header_of(told).split("\n")[:-1]
        self.placed = 0
        self.opened = ""
        self.within = False
        self.end = -1

    def open(self, head: str) -> None:
        self.close()
        self.gap()
        self.lines.append(f"{FENCE}{head}")
        self.opened = head

    def close(self) -> None:
        if self.opened:
            self.lines.append(FENCE)
            self.gap()
        self.opened = ""

    def passage(self, sizes: Sequence[str]) -> None:
        self.close()
        self.gap()
        self.lines += [f"::: sizes {', '.join(sizes)}", ""]
        self.within = True

    def close_passage(self) -> None:
        if self.within:
            self.close()
            self.gap()
            self.lines += [":::", ""]
        self.within = False

    def gap(self) -> None:
        if self.lines[-1]:
            self.lines.append("")

    def takes(self, group: Group) -> bool:
        """Whether a line goes into the stitch pattern that is open, though it is no row: its multiple."""
        return self.opened.startswith("stitch") and group.first == self.end and is_multiple(group)

    def heading(self, words: str) -> None:
        self.close()
        self.gap()
        self.lines += [f"## {as_prose(words)}", ""]

    def prose(self, group: Group) -> None:
        self.close()
        if group.first != self.end:
            self.gap()
        self.lines += [as_prose(line) for line in group.lines]

    def instructions(self, group: Group) -> None:
        if not self.opened or group.first != self.end:
            self.open("work")
        self.lines += words_of(group).split("\n")[:-1]
        self.placed += not group.doubtful


def passage_at(groups: Sequence[Group], place: int, sizes: tuple[str, ...]) -> tuple[str, ...]:
    """The sizes that alone carry out the lines below one; none where it does not tell them, or nothing is below."""
    group = groups[place]
    below = place + 1 < len(groups) and groups[place + 1].first == group.end
    alone = len(group.lines) == 1 and not group.works
    return sizes_in(group.lines[0], sizes) if below and alone else ()


def is_multiple(group: Group) -> bool:
    """Whether a line states the multiple of a stitch pattern."""
    return bool(_MULTIPLE.match(group.lines[0].strip()))


def _head(groups: Sequence[Group], place: int) -> str:
    """The words of a heading: a short line with no stop, alone above instructions; "" where it is none."""
    group = groups[place]
    text = group.lines[0].strip()
    following = groups[place + 1] if place + 1 < len(groups) else None
    if group.works or len(group.lines) > 1 or following is None:
        return ""
    leads = following.works or is_multiple(following)
    short = len(text.split()) <= _HEADING_WORDS and not text.endswith((".", ",", ";")) and ":" not in text[:-1]
    return text if leads and short and not LABEL.match(text) and any(map(str.isalpha, text)) else ""


def _is_stitch(groups: Sequence[Group], place: int, cast_on: int) -> bool:
    """Whether a heading names a stitch pattern: nothing but rows stands below it, before anything is cast on."""
    below = []
    end = groups[place].end
    for group in groups[place + 1 :]:
        if group.first != end:
            break
        below.append(group)
        end = group.end
    name = groups[place].lines[0].strip().rstrip(":")
    rows = [group for group in below if group.kinds and set(group.kinds) == {Row}]
    others = [group for group in below if group not in rows]
    return bool(rows) and end <= cast_on and all(map(is_multiple, others)) and bool(_NAME.fullmatch(name))
