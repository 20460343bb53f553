"""In: the yarn every size needs. Out: the yarns that tell how much, and their range in a few words."""

from fractions import Fraction

from sizewright.base.language import tr
from sizewright.base.printing import bought
from sizewright.base.spoken_units import with_unit
from sizewright.base.telling import ranged
from sizewright.base.units import LENGTH, MASS, Dimension
from sizewright.publish.usual_names import as_words
from sizewright.work.worked import Worked
from sizewright.work.yarn_need import Amount, YarnNeed


def known(worked: Worked) -> tuple[YarnNeed, ...]:
    """The yarns whose amounts can be told: those with a swatch."""
    return tuple(need for need in worked.yarns if need.reserved)


def measured(amount: Amount, dimension: Dimension) -> Fraction | None:
    """The length or the mass of an amount, None where it is not known."""
    return amount.length if dimension == LENGTH else amount.mass


def yarn_range(worked: Worked) -> str:
    """The yarn from the size that needs least to the one that needs most: "46 to 112 m / 51 to 123 yd"."""
    return "; ".join(filter(None, (_range(need, alone=len(worked.yarns) == 1) for need in known(worked))))


def _range(need: YarnNeed, *, alone: bool) -> str:
    for dimension in (LENGTH, MASS):
        values = [value for amount in need.reserved if (value := measured(amount, dimension)) is not None]
        if values:
            least, most = bought((min(values),), dimension), bought((max(values),), dimension)
            told = " / ".join(_from_to(a.values[0], b.values[0], a.unit) for a, b in zip(least, most, strict=True))
            told = tr("at least {amount}", amount=told) if any(need.incomplete) else told
            return told if alone else f"{as_words(need.yarn.name)} {told}"
    return ""


def _from_to(least: str, most: str, unit: str) -> str:
    return with_unit(least if least == most else ranged(least, most), unit)
