"""What a plan of shaping is: arguments in, whole numbers of one size out, and the words that hold them."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.printing import decimal
from sizewright.base.units import LENGTH, PLAIN, ROW_GAUGE, ROWS, STITCH_GAUGE, STITCHES, Dimension

Result = Mapping[str, int | Fraction]


class Impossible(Exception):  # noqa: N818 -- said to the designer, as a finding at the call
    """Why one size cannot be worked so: what stands there and what would fit, in a sentence."""


@dataclass(frozen=True, slots=True)
class Argument:
    """A value a plan is given, in base units; any of `dimensions` will do ("8" and "8 st" are as good).

    Those that are `whole` must be whole numbers; none may be below `least`, a `positive` one must be above 0.
    """

    name: str
    dimensions: tuple[Dimension, ...]
    default: Fraction | None = None
    whole: bool = True
    least: int = 0
    positive: bool = False


@dataclass(frozen=True, slots=True)
class Member:
    """A number a plan gives, used in formulas as `name.member`."""

    name: str
    dimension: Dimension


@dataclass(frozen=True, slots=True)
class Plan:
    """A plan of shaping by the name it has in a formula.

    Its sentence stands in `read/plans.py`, under the same name. `work` takes the arguments in their order, ints where
    they are whole, and gives a value for each member, or raises
    `Impossible`. `page` says what it does, units in and out, source and an example.
    """

    name: str
    arguments: tuple[Argument, ...]
    members: tuple[Member, ...]
    work: Callable[..., Result]
    page: str

    @property
    def gist(self) -> str:
        """What it does, in a sentence."""
        return f"{self.page.split('. ')[0]}."

    def worked(self, values: Sequence[Fraction]) -> tuple[Fraction, ...]:
        """The members, in their order, for the arguments of one size (defaults filled in). Raises `Impossible`."""
        given = [_suited(*pair) for pair in zip(self.arguments, values, strict=True)]
        result = self.work(*given)
        return tuple(Fraction(result[member.name]) for member in self.members)


def _suited(argument: Argument, value: Fraction) -> int | Fraction:
    name = argument.name.replace("_", " ")
    if value < argument.least:
        raise Impossible(f"{name} is {decimal(value)}; it must be at least {argument.least}.")
    if argument.positive and not value:
        raise Impossible(f"{name} is 0; it must be more.")
    if not argument.whole:
        return value
    if value.denominator != 1:
        raise Impossible(f"{name} is {decimal(value)}, which is not whole; round it: “, nearest whole”.")
    return int(value)


# Arguments and members that many plans have.


def stitches(name: str, default: int | None = None, least: int = 0) -> Argument:
    """A whole number of stitches; a plain number is taken for one."""
    return Argument(name, (STITCHES, PLAIN), None if default is None else Fraction(default), least=least)


def rows(name: str, default: int | None = None, least: int = 0) -> Argument:
    """A whole number of rows or rounds; a plain number is taken for one."""
    return Argument(name, (ROWS, PLAIN), None if default is None else Fraction(default), least=least)


def number(name: str, default: int | None = None, least: int = 0) -> Argument:
    """A whole plain number; a count of stitches is taken for one, since each change is of one stitch."""
    return Argument(name, (PLAIN, STITCHES), None if default is None else Fraction(default), least=least)


def share(name: str, percent: int) -> Argument:
    """A percentage, with its usual value."""
    return Argument(name, (PLAIN,), Fraction(percent, 100), whole=False)


def length(name: str, default: int | None = None) -> Argument:
    """A length in cm."""
    return Argument(name, (LENGTH,), None if default is None else Fraction(default), whole=False)


def gauges() -> tuple[Argument, Argument]:
    """The two gauges, in stitches and rows to the cm."""
    stitch = Argument("stitch_gauge", (STITCH_GAUGE,), whole=False, positive=True)
    return stitch, Argument("row_gauge", (ROW_GAUGE,), whole=False, positive=True)


def of_stitches(*names: str) -> tuple[Member, ...]:
    """Members that are stitches."""
    return tuple(Member(name, STITCHES) for name in names)


def of_rows(*names: str) -> tuple[Member, ...]:
    """Members that are rows."""
    return tuple(Member(name, ROWS) for name in names)


def plain(*names: str) -> tuple[Member, ...]:
    """Members that are plain numbers, such as times."""
    return tuple(Member(name, PLAIN) for name in names)
