"""In: the `ease` of a finished measurement, "-10 % to -5 %". Out: the least and the most of it."""

import re

from sizewright.base.units import LENGTH, PLAIN, spoken
from sizewright.read.pattern import Ease
from sizewright.read.values import Values
from sizewright.read.yaml_tree import Node, Scalar

_EXAMPLE = "Write the least and the most: “ease: 5 cm to 10 cm”, “ease: -10 % to -5 %”."
_TO = re.compile(r"\s+to\s+")


def read_ease(values: Values, key: str, node: Node) -> Ease | None:
    """The range, or a finding and None."""
    words = values.words(key, node)
    if words is None or not isinstance(node, Scalar):
        return None
    joint = _TO.search(node.text)
    if joint is None or _TO.search(node.text, joint.end()):
        values.fault(words.span, f"“{words.text}” is no range of ease.", _EXAMPLE)
        return None
    least = values.quantity(_end(values, node, 0, joint.start()), _EXAMPLE)
    most = values.quantity(_end(values, node, joint.end(), len(node.text)), _EXAMPLE) if least else None
    if least is None or most is None:
        return None
    return _checked(values, Ease(words.span, least, most, words.text))


def _end(values: Values, node: Scalar, start: int, end: int) -> Scalar:
    """One end of the range, in its own place."""
    first, last = node.start + start, node.start + end
    return Scalar(values.lines.span(first, last), node.text[start:end], first, node.quoted)


def _checked(values: Values, ease: Ease) -> Ease | None:
    kinds = ease.least.dimension, ease.most.dimension
    if kinds not in ((LENGTH, LENGTH), (PLAIN, PLAIN)):
        message = f"“{ease.typed}” goes from {spoken(kinds[0])} to {spoken(kinds[1])}."
        values.fault(ease.span, message, _EXAMPLE)
    elif kinds[0] == PLAIN and max(abs(ease.least.value), abs(ease.most.value)) > 1:
        values.fault(ease.span, f"“{ease.typed}” is more than the whole body: a unit is missing.", _EXAMPLE)
    elif ease.least.value > ease.most.value:
        values.fault(ease.span, f"“{ease.typed}” has its larger end first.", _EXAMPLE)
    else:
        return ease
    return None
