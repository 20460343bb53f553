"""What one size made: its steps, what went wrong, the stitches by yarn; and how the ledger names a step."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import assert_never

from sizewright.base.place import Span
from sizewright.read.notation.direction_tree import (
    Apart,
    BindOffAll,
    CastOn,
    Declared,
    Direction,
    Even,
    Gather,
    Join,
    Meanwhile,
    RepeatRows,
    Row,
    SameAgain,
    Spaced,
    TakeUp,
    TakeYarn,
    Unread,
)
from sizewright.work.at_row_gauge import Stretch
from sizewright.work.course import Leg
from sizewright.work.faults import Fault, Forgotten


@dataclass(frozen=True, slots=True)
class Step:
    """One written direction as one size worked it.

    `to_length` where its rows go on until a length is reached; `used` are the stitches worked so far, by yarn.
    """

    piece: str
    label: str
    span: Span
    before: int | None
    after: int | None
    rows: int
    declared: bool = False
    to_length: bool = False
    used: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class MadePart:
    """A part as one size made it: its rows and their length in cm, None where they are not known.

    `gauge` is the name of the row gauge it is measured by, "" where there is none; `stretches` are worked to a length.
    `headings` are those it is worked under, each with the rows before it.
    """

    piece: str
    span: Span
    rows: int | None
    length: Fraction | None
    gauge: str
    stretches: tuple[Stretch, ...]
    headings: tuple[tuple[str, int], ...]


@dataclass(slots=True)
class Made:
    """What one size made: steps, its course and parts, what went wrong, stitches by yarn, and what was not counted."""

    steps: list[Step] = field(default_factory=list)
    course: list[Leg] = field(default_factory=list)
    parts: list[MadePart] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    forgotten: list[Forgotten] = field(default_factory=list)
    worked: Counter[str] = field(default_factory=Counter)
    uncounted: list[Span] = field(default_factory=list)


def label_of(direction: Direction) -> str:
    """The words by which the ledger names a direction; "" for one that has no place in it."""
    match direction:
        case Row():
            label = direction.label or "Row"
        case Even():
            label = f"Work {direction.fabric}"
        case RepeatRows():
            words = direction.words or "rows above"
            label = words if words.casefold().startswith(("rep", "work")) else f"Rep {words}"
        case Spaced():
            label = direction.words
        case Meanwhile():
            label = f"{label_of(direction.rows)}, {direction.shaping.words}"
        case Join() | Apart() | TakeYarn() | SameAgain() | Unread():
            label = ""
        case CastOn() | TakeUp() | Declared() | BindOffAll() | Gather():
            label = _LABELS[type(direction)]
        case _:
            assert_never(direction)
    return label


def goes_to_length(direction: Direction) -> bool:
    """Whether rows go on until a length is measured, so that their number is the row gauge's and not the words'."""
    match direction:
        case RepeatRows() | Even():
            return direction.extent.length is not None or bool(direction.extent.typed_length)
        case Meanwhile():
            return goes_to_length(direction.rows)
    return False


_LABELS: Mapping[type[Direction], str] = {
    CastOn: "Cast on",
    TakeUp: "Take up",
    Declared: "Declared",
    BindOffAll: "Bind off",
    Gather: "Close",
}
