"""In: what one size should come to. Out: its sheet as plain frozen data, numbers as text, and a name for every box."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import groupby

from sizewright.base.printing import as_text, decimal, printed
from sizewright.base.units import LENGTH, MASS, ROW_GAUGE, STITCH_GAUGE
from sizewright.proof.expected import ASKED, KNITTER, Expectation, Expected, Kind


@dataclass(frozen=True, slots=True)
class Box:
    """A box to write in: its name in the form, what it is for (read aloud), and the unit that stands behind it."""

    name: str
    label: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class LineView:
    """A line of a stage: where, what is expected there, and the box for what the knitter has."""

    at: str
    expected: str
    box: Box


@dataclass(frozen=True, slots=True)
class StageView:
    """A stage with its lines, and a box for words."""

    name: str
    lines: tuple[LineView, ...]
    remarks: Box


@dataclass(frozen=True, slots=True)
class FormView:
    """One sheet. `asked` are the boxes for words about the knitter."""

    title: str
    pattern: str
    size: str
    version: str
    studio: str
    asked: tuple[tuple[str, Box], ...]
    stages: tuple[StageView, ...]


def form_view(expectation: Expectation, studio: str, *, metric_first: bool) -> FormView:
    """The sheet of one size."""
    asked = ((about, Box(f"knitter-{number}", f"{KNITTER}: {about}")) for number, about in enumerate(ASKED, 1))
    return FormView(
        expectation.title,
        expectation.pattern,
        expectation.size,
        expectation.version,
        studio,
        tuple(asked),
        tuple(_stages(expectation, metric_first=metric_first)),
    )


def _stages(expectation: Expectation, *, metric_first: bool) -> Iterator[StageView]:
    numbered = enumerate(expectation.lines, 1)
    for number, (name, lines) in enumerate(groupby(numbered, key=lambda one: one[1].stage), 1):
        views = tuple(_line(place, line, metric_first=metric_first) for place, line in lines)
        yield StageView(name, views, Box(f"remarks-{number}", f"{name}: remarks"))


def _line(number: int, line: Expected, *, metric_first: bool) -> LineView:
    box = Box(f"line-{number}", f"{line.stage}, {line.at}: what you have, in {line.unit}", line.unit)
    return LineView(line.at, expected_text(line, metric_first=metric_first), box)


def expected_text(line: Expected, *, metric_first: bool = True) -> str:
    """What is expected, in both units: "24 sts", "about 40 rnds", "51 cm / 20 in", "12 g / 0.42 oz, 27 m / 29 yd"."""
    match line.kind:
        case Kind.COUNT | Kind.ROWS:
            text = f"{decimal(line.value)} {line.unit}" if line.value != 1 else f"1 {line.unit[:-1]}"
            text = f"about {text}" if line.to_length else text
        case Kind.GAUGE:
            gauge = STITCH_GAUGE if line.unit.startswith("sts") else ROW_GAUGE
            series = printed((line.value / 10,), gauge, metric_first=metric_first)
            word = line.unit.split()[0]
            text = as_text(tuple(replace(one, unit=one.unit.replace("rows", word)) for one in series))
        case Kind.LENGTH:
            text = as_text(printed((line.value,), LENGTH, metric_first=metric_first))
        case Kind.YARN:
            text = _yarn(line, metric_first=metric_first)
    return f"at least {text}" if line.least else text


def _yarn(line: Expected, *, metric_first: bool) -> str:
    if line.unit == "m":
        return as_text(printed((line.value * 100,), LENGTH, "long", metric_first=metric_first))
    mass = as_text(printed((line.value,), MASS, metric_first=metric_first))
    if line.length is None:
        return mass
    return f"{mass}, {as_text(printed((line.length,), LENGTH, 'long', metric_first=metric_first))}"
