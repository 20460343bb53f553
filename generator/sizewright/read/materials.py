"""The materials of a header, each with its place: gauges, yarns with their swatches, and the measures in them."""

from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.place import Span
from sizewright.base.quantity import Quantity
from sizewright.read.inserts import Words
from sizewright.read.needles import Needle


@dataclass(frozen=True, slots=True)
class Measure:
    """A quantity from the header: exact, and as it was typed."""

    span: Span
    quantity: Quantity
    typed: str


@dataclass(frozen=True, slots=True)
class Gauge:
    """The stitches and rows of one fabric. `name` is "" where the pattern has one gauge only."""

    span: Span
    name: str
    stitches: Measure | None
    rows: Measure | None
    over: Words | None
    needle: Needle | None
    in_the_round: bool


@dataclass(frozen=True, slots=True)
class Swatch:
    """A swatch that was counted, or measured, and weighed: its stitches or its width and height, its mass or length.

    `gauge` names the gauge it was knitted to, where the pattern has several and the swatch was measured.
    """

    span: Span
    stitches: Measure | None = None
    width: Measure | None = None
    height: Measure | None = None
    gauge: Words | None = None
    mass: Measure | None = None
    length: Measure | None = None


@dataclass(frozen=True, slots=True)
class Reserve:
    """What is added to the yarn that was worked out, as a share of it (1/10 for "10 %")."""

    span: Span
    share: Fraction


@dataclass(frozen=True, slots=True)
class Yarn:
    """One yarn of the materials, under the name the pattern uses for it.

    `called` is what the rows call it, `shade` the colour it is drawn in, as #rrggbb.
    """

    span: Span
    name: str
    weight: Words | None = None
    fibre: Words | None = None
    length: Measure | None = None
    mass: Measure | None = None
    colour: Words | None = None
    note: Words | None = None
    called: tuple[Words, ...] = ()
    swatch: Swatch | None = None
    reserve: Reserve | None = None
    shade: Words | None = None
