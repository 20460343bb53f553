"""In: the stitches worked in each size, by the words of the rows, and the yarns. Out: the yarn every size needs.

The method: a swatch tells what one stitch takes, and the piece takes that for each of its stitches; a swatch that was
measured and not counted has the stitches of its area (jenniesitsandknits.blogspot.com, 2008: 60 yd for 96 sq in, so
625.6 yd for 1001 sq in). All values are exact; nothing is rounded here but balls, up.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from sizewright.read.pattern import Gauge, Header, Measure, Swatch, Yarn
from sizewright.read.swatches import gauge_of
from sizewright.read.yarn_names import YarnNames


@dataclass(frozen=True, slots=True)
class Amount:
    """What one size takes of a yarn: its length in cm and its mass in g, None where only the other is known.

    `balls` are whole; None where the yarn's ball does not tell.
    """

    length: Fraction | None
    mass: Fraction | None
    balls: int | None


@dataclass(frozen=True, slots=True)
class YarnNeed:
    """A yarn by size: the stitches worked in it, what they take, and that with the reserve.

    `incomplete` says which sizes take more than that, since not all of their instructions can be counted. Without a
    swatch there are stitches and no amounts.
    """

    yarn: Yarn
    stitches: tuple[int, ...]
    worked: tuple[Amount, ...]
    reserved: tuple[Amount, ...]
    incomplete: tuple[bool, ...]

    @property
    def reserve(self) -> Fraction:
        """The share that is added, 1/10 for 10 %."""
        return self.yarn.reserve.share if self.yarn.reserve else Fraction(0)

    @property
    def ball(self) -> Amount:
        """What one ball holds."""
        return Amount(_value(self.yarn.length), _value(self.yarn.mass), 1)

    def reserve_takes_ball(self, size: int) -> bool:
        """Whether a ball is needed only for the reserve; a reserve of a whole ball and more is one anyway."""
        bare, full = self.worked[size].balls, self.reserved[size].balls
        return bare is not None and full == bare + 1 and self.over(size) is not None and not self._whole_ball(size)

    def over(self, size: int) -> Amount | None:
        """What the reserve takes of its last ball, where it needs one more than the stitches alone."""
        bare, full = self.worked[size], self.reserved[size]
        if bare.balls is None or full.balls is None or full.balls == bare.balls:
            return None
        return _less(full, self.ball, full.balls - 1)

    def _whole_ball(self, size: int) -> bool:
        bare, full, ball = self.worked[size], self.reserved[size], self.ball
        pairs = ((full.length, bare.length, ball.length), (full.mass, bare.mass, ball.mass))
        return any(a is not None and b is not None and c is not None and a - b >= c for a, b, c in pairs)


def yarn_needs(
    header: Header, stitches: Mapping[str, Sequence[int]], incomplete: Sequence[bool]
) -> tuple[YarnNeed, ...]:
    """Every yarn of a header. Stitches in a yarn that no header yarn answers to leave the others incomplete."""
    answered = YarnNames(header.yarns).calls(stitches)
    sizes = range(len(incomplete))
    unknown = [any(not answered[word] and counts[size] for word, counts in stitches.items()) for size in sizes]
    lacking = tuple(incomplete[size] or unknown[size] for size in sizes)
    found = []
    for yarn in header.yarns:
        own = [counts for word, counts in stitches.items() if yarn in answered[word]]
        totals = tuple(sum(counts[size] for counts in own) for size in sizes)
        found.append(_need(yarn, totals, lacking, header.gauges))
    return tuple(found)


def amounts_of(header: Header, stitches: Mapping[str, int]) -> tuple[Amount | None, ...]:
    """What so many stitches, by yarn as the rows call it, take of each yarn of a header; None where no swatch tells."""
    needs = yarn_needs(header, {word: (count,) for word, count in stitches.items()}, (False,))
    return tuple(need.worked[0] if need.worked else None for need in needs)


def _need(yarn: Yarn, stitches: tuple[int, ...], incomplete: tuple[bool, ...], gauges: tuple[Gauge, ...]) -> YarnNeed:
    swatch = yarn.swatch
    counted = stitches_of(swatch, gauges) if swatch is not None else None
    if swatch is None or counted is None:
        return YarnNeed(yarn, stitches, (), (), incomplete)
    share = yarn.reserve.share if yarn.reserve else Fraction(0)
    worked = tuple(amount(yarn, swatch, Fraction(count) / counted) for count in stitches)
    reserved = tuple(amount(yarn, swatch, Fraction(count) / counted * (1 + share)) for count in stitches)
    return YarnNeed(yarn, stitches, worked, reserved, incomplete)


def stitches_of(swatch: Swatch, gauges: tuple[Gauge, ...]) -> Fraction | None:
    """The stitches of a swatch: as counted, or its area by the gauge it was knitted to."""
    if swatch.stitches is not None:
        return swatch.stitches.quantity.value
    gauge = gauge_of(swatch, gauges)
    if gauge is None or None in (gauge.stitches, gauge.rows, swatch.width, swatch.height):
        return None
    across, up = (_value(swatch.width) or 0) * (_value(gauge.stitches) or 0), (_value(swatch.height) or 0)
    return Fraction(across * up * (_value(gauge.rows) or 0))


def amount(yarn: Yarn, swatch: Swatch, swatches: Fraction) -> Amount:
    """The yarn in so many swatches; length and mass are turned into each other by what a ball holds of both."""
    length, mass = _value(swatch.length), _value(swatch.mass)
    ball_length, ball_mass = _value(yarn.length), _value(yarn.mass)
    if ball_length is not None and ball_mass is not None:
        if length is None and mass is not None:
            length = mass * ball_length / ball_mass
        elif mass is None and length is not None:
            mass = length * ball_mass / ball_length
    total = Amount(_times(length, swatches), _times(mass, swatches), None)
    if total.length is not None and ball_length is not None:
        return Amount(total.length, total.mass, ceil(total.length / ball_length))
    if total.mass is not None and ball_mass is not None:
        return Amount(total.length, total.mass, ceil(total.mass / ball_mass))
    return total


def _value(measure: Measure | None) -> Fraction | None:
    return None if measure is None else measure.quantity.value


def _times(value: Fraction | None, times: Fraction) -> Fraction | None:
    return None if value is None else value * times


def _less(whole: Amount, ball: Amount, balls: int) -> Amount:
    """An amount less so many balls."""
    pairs = ((whole.length, ball.length), (whole.mass, ball.mass))
    length, mass = (None if a is None or b is None else a - b * balls for a, b in pairs)
    return Amount(length, mass, None)
