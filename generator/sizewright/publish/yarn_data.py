"""In: the yarn every size needs. Out: the same as JSON values, exact values as strings."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from sizewright.base.printing import exact_text
from sizewright.work.yarn_need import YarnNeed

Value = str | int | None | Sequence["Value"]


def yarn_data(need: YarnNeed) -> Mapping[str, Value]:
    """One yarn by size: its stitches, and with the reserve its length in cm, mass in g and balls, where they are known.

    `incomplete` is true for a size in which a part of the instructions could not be counted.
    """
    return {
        "name": need.yarn.name,
        "stitches": list(need.stitches),
        "reserve": exact_text(need.reserve),
        "length": [_exact(amount.length) for amount in need.reserved],
        "mass": [_exact(amount.mass) for amount in need.reserved],
        "balls": [amount.balls for amount in need.reserved],
        "incomplete": list(need.incomplete),
    }


def _exact(value: Fraction | None) -> str | None:
    return None if value is None else exact_text(value)
