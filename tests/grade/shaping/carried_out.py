"""A plan in one size: its members by name, its words with the numbers in them, and those words knitted."""

import re
from collections.abc import Mapping
from fractions import Fraction

from sizewright.grade.run import grade
from sizewright.grade.shaping.table import PLANS
from sizewright.read.folder import read_text
from sizewright.read.plans import PLAN_WORDS
from sizewright.work.run import work
from sizewright.work.worked import Entry

Value = int | str | Fraction


def given(name: str, *values: Value) -> list[Fraction]:
    """The arguments of a plan, those left out with their defaults."""
    arguments = PLANS[name].arguments
    defaults = [argument.default for argument in arguments[len(values) :]]
    assert None not in defaults, f"{name} needs more than {len(values)} values"
    return [Fraction(value) for value in (*values, *defaults) if value is not None]


def members(name: str, *values: Value) -> dict[str, Fraction]:
    """The members of a plan."""
    plan = PLANS[name]
    return dict(zip((member.name for member in plan.members), plan.worked(given(name, *values)), strict=True))


def in_words(name: str, *values: Value, whole: bool = False) -> tuple[str, ...]:
    """The lines of a plan as a reader of one size reads them; `whole` with what does nothing, as they are worked."""
    numbers = members(name, *values)
    lines = (_said(words, numbers, whole=whole) for words in PLAN_WORDS[name])
    return tuple(f"{line[:1].upper()}{line[1:].removesuffix('.')}." for line in lines if line)


def _said(words: str, numbers: Mapping[str, Fraction], *, whole: bool) -> str:
    """The words with the numbers in them, without the clauses whose number is 0."""
    while found := re.search(r"<(\w+):([^<>]*)>", words):
        words = words[: found.start()] + (found[2] if numbers[found[1]] or whole else "") + words[found.end() :]
    words = re.sub(r"\{(\w+):times\}", lambda number: f"{numbers[number[1]]} times", words)
    return words.format(**numbers)


def knitted(*lines: str) -> tuple[Entry, ...]:
    """Lines of instructions carried out; what is not understood or does not come out fails the test."""
    text = "\n".join(("---", "title: A", "---", "```work", *lines, "```", ""))
    project = read_text(text, "a.md")
    assert [finding.message for finding in project.findings] == [], text
    worked = work(grade(project.patterns[0]))
    assert worked.faults == (), text
    return worked.entries
