"""In: a pattern carried out. Out: for each size, what a test knitter should have at every stage of it, in order.

A stage is what stands under one heading, or a further piece begun there. Counts are asked for where they change; rows,
length and yarn at the end of a stage. All values are exact.
"""

import hashlib
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction

from sizewright.base.units import LENGTH
from sizewright.proof.actions import actions_in, directions_of
from sizewright.proof.printed_lines import printed_lines
from sizewright.read.notation.tree import Turn
from sizewright.read.pattern import Gauge, Heading, Yarn
from sizewright.work.worked import Entry, Part, Worked
from sizewright.work.yarn_need import Amount, amounts_of

ONE_SIZE = "One size"
GAUGE, FINISHED, IN_ALL, KNITTER = "Gauge", "Finished measurements", "Yarn in all", "The knitter"
NAME, REMARKS = "Name", "Remarks"
ASKED = (NAME, "Date", "Needle used for the gauge", "Yarn used", REMARKS)  # told in words; nothing is expected of it
_END = "at the end"
_SHORTEST = 2  # cm; what is less than that nobody measures to any purpose
_LONGEST = 90  # signs of a direction by which a count is placed


class Kind(StrEnum):
    """What is measured."""

    GAUGE = "gauge"
    COUNT = "count"
    ROWS = "rows"
    LENGTH = "length"
    YARN = "yarn"


@dataclass(frozen=True, slots=True)
class Expected:
    """One number that is expected at a place of a stage, in its unit; the three texts tell it from all others.

    `to_length` are rows worked until a length was measured. Yarn in g has its `length` in cm beside it, where it is
    known. `least` where more is used, since a part of the instructions cannot be counted.
    """

    kind: Kind
    stage: str
    at: str
    unit: str
    value: Fraction
    to_length: bool = False
    length: Fraction | None = None
    least: bool = False

    @property
    def key(self) -> tuple[str, str, str]:
        """What tells it from all others."""
        return self.stage, self.at, self.unit


@dataclass(frozen=True, slots=True)
class Expectation:
    """What one size should come to. `version` changes with any value or place in it, and with nothing else."""

    pattern: str
    title: str
    size: str
    lines: tuple[Expected, ...]
    version: str


def expectations(worked: Worked) -> tuple[Expectation, ...]:
    """One for every size."""
    pattern = worked.graded.pattern
    told = []
    for place, size in enumerate(worked.graded.sizes or (ONE_SIZE,)):
        lines = tuple(_told_apart(_Size(worked, place).lines()))
        told.append(Expectation(pattern.name, pattern.header.title or pattern.name, size, lines, _version(size, lines)))
    return tuple(told)


def _version(size: str, lines: Sequence[Expected]) -> str:
    """Letters before its figures, or a spreadsheet would take it for a number."""
    parts = [size, *("\0".join((*line.key, str(line.value))) for line in lines)]
    digest = hashlib.sha256("\1".join(parts).encode("utf-8", "backslashreplace")).hexdigest()
    return f"v-{digest[:12]}"


def _told_apart(lines: Iterable[Expected]) -> Iterator[Expected]:
    """A place that comes again in a stage has a number."""
    taken = Counter[tuple[str, str, str]]()
    for line in lines:
        taken[line.key] += 1
        again = taken[line.key]
        yield line if again == 1 else replace(line, at=f"{line.at} ({again})")


class _Size:
    """What one size should have; its place in every tuple of values."""

    def __init__(self, worked: Worked, place: int) -> None:
        self.worked = worked
        self.place = place
        self.header = worked.graded.pattern.header
        self.begins: dict[object, Part] = {part.span: part for part in worked.parts}
        self.headings = [one for one in worked.graded.pattern.body if isinstance(one, Heading)]
        self.said = {one.span: one.said[place] for one in reversed(printed_lines(worked))}
        self.turned = {
            one.span
            for one in directions_of(worked.graded.pattern)
            if any(isinstance(action, Turn) for action in actions_in(one))
        }
        self.in_rounds: dict[object, bool] = {}
        for leg in worked.courses[place]:
            for one in (one for spell in leg.spells for one in spell.passes):
                rounds = self.in_rounds.get(leg.direction.span, True)
                self.in_rounds[leg.direction.span] = rounds and one.in_the_round
        self.least = any(need.incomplete[place] for need in worked.yarns)

    def lines(self) -> Iterator[Expected]:
        for gauge in self.header.gauges:
            yield from _of_gauge(gauge)
        taken = Counter[str]()
        part = None
        for name, entries in self.stages():
            taken[name] += 1
            stage = name if taken[name] == 1 else f"{name} ({taken[name]})"
            part = self.begins.get(entries[0].span, part)
            yield from self.counts(stage, entries)
            if any(entry.rows[self.place] for entry in entries):
                yield from self.rows(stage, part, entries)
                yield from self.yarn(stage, entries[-1])
        yield from self.finished()
        yield from self.in_all()

    def stages(self) -> Iterator[tuple[str, list[Entry]]]:
        """The directions this size reads, by heading and piece."""
        stage: list[Entry] = []
        now = ""
        for entry in self.worked.entries:
            if entry.before[self.place] is None and entry.after[self.place] is None:
                continue
            heading = self.heading(entry)
            begins = entry.span in self.begins and (not stage or entry.span != stage[-1].span)
            if stage and (begins or heading != now):
                yield now, stage
                stage = []
            now = heading
            stage.append(entry)
        if stage:
            yield now, stage

    def heading(self, entry: Entry) -> str:
        above = [one.text for one in self.headings if one.span < entry.span]
        return " ".join(above[-1].split()) if above else self.header.title or "The piece"

    def counts(self, stage: str, entries: Sequence[Entry]) -> Iterator[Expected]:
        """The stitches wherever they change, and at the end where nothing changed them."""
        told = False
        for entry in entries:
            before, after = entry.before[self.place], entry.after[self.place]
            if after and before != after:
                told = True
                yield Expected(Kind.COUNT, stage, f"after “{self.label(entry)}”", "sts", Fraction(after))
        last = entries[-1].after[self.place]
        if last and not told:
            yield Expected(Kind.COUNT, stage, _END, "sts", Fraction(last))

    def label(self, entry: Entry) -> str:
        """What the row is called; where that has a formula in it, the direction as this size reads it."""
        said = self.said.get(entry.span) if "{" in entry.label or entry.label == "Row" else None
        words = " ".join((said or entry.label).split())
        return words if len(words) <= _LONGEST else f"{words[:_LONGEST]}…"

    def rows(self, stage: str, part: Part | None, entries: Sequence[Entry]) -> Iterator[Expected]:
        """The rows or rounds of the stage, and how long they are by the row gauge; short rows cannot be measured."""
        rows = sum(entry.rows[self.place] for entry in entries)
        far = any(entry.to_length for entry in entries)
        told = [self.in_rounds[entry.span] for entry in entries if entry.span in self.in_rounds]
        word, unit = ("rounds", "rnds") if told and all(told) else ("rows", "rows")
        yield Expected(Kind.ROWS, stage, f"{_END}, {word} of this part", unit, Fraction(rows), far)
        whole, length = (part.rows[self.place], part.lengths[self.place]) if part else (None, None)
        if not whole or not length or any(entry.span in self.turned for entry in entries):
            return
        if length * rows / whole >= _SHORTEST:
            yield Expected(Kind.LENGTH, stage, f"{_END}, length of this part", "cm", length * rows / whole)

    def yarn(self, stage: str, entry: Entry) -> Iterator[Expected]:
        """What was used from the first stitch of the pattern to here."""
        amounts = amounts_of(self.header, dict(entry.used[self.place]))
        for yarn, amount in zip(self.header.yarns, amounts, strict=True):
            if amount is not None and (amount.length or amount.mass):
                yield from self.amount(stage, f"{_END}, {self.yarn_name(yarn)} used so far", amount)

    def in_all(self) -> Iterator[Expected]:
        for need in self.worked.yarns:
            if need.worked and need.stitches[self.place]:
                yield from self.amount(IN_ALL, self.yarn_name(need.yarn), need.worked[self.place])

    def yarn_name(self, yarn: Yarn) -> str:
        return "yarn" if len(self.header.yarns) == 1 else f"{_spoken(yarn.name)} yarn"

    def amount(self, stage: str, at: str, amount: Amount) -> Iterator[Expected]:
        if amount.mass is not None:
            length = amount.length
            yield Expected(Kind.YARN, stage, at, "g", amount.mass, length=length, least=self.least)
        elif amount.length is not None:
            yield Expected(Kind.YARN, stage, at, "m", amount.length / 100, least=self.least)

    def finished(self) -> Iterator[Expected]:
        for one in self.worked.graded.finished:
            if one.finished.dimension == LENGTH:
                yield Expected(Kind.LENGTH, FINISHED, one.label, "cm", one.finished.values[self.place])


def _of_gauge(gauge: Gauge) -> Iterator[Expected]:
    at = " in ".join(filter(None, (_spoken(gauge.name) or "swatch", gauge.over.text if gauge.over else "")))
    for measure, word in ((gauge.stitches, "sts"), (gauge.rows, "rnds" if gauge.in_the_round else "rows")):
        if measure is not None:
            yield Expected(Kind.GAUGE, GAUGE, at, f"{word} in 10 cm", measure.quantity.value * 10)


def _spoken(name: str) -> str:
    return name.replace("_", " ")
