"""A plan in one size: its members by name, its words with the numbers in them, and those words knitted."""

from fractions import Fraction

from sizewright.grade.run import grade
from sizewright.grade.shaping.table import PLANS
from sizewright.read.folder import read_text
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


def in_words(name: str, *values: Value) -> tuple[str, ...]:
    """The lines of a plan as a reader of one size reads them."""
    plan = PLANS[name]
    named = dict(zip((argument.name for argument in plan.arguments), given(name, *values), strict=True))
    return tuple(line.format(**named, **members(name, *values)) for line in plan.words)


def knitted(*lines: str) -> tuple[Entry, ...]:
    """Lines of instructions carried out; what is not understood or does not come out fails the test."""
    text = "\n".join(("---", "title: A", "---", "```work", *lines, "```", ""))
    project = read_text(text, "a.md")
    assert [finding.message for finding in project.findings] == [], text
    worked = work(grade(project.patterns[0]))
    assert worked.faults == (), text
    return worked.entries
