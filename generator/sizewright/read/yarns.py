"""In: the `yarn:` of a header. Out: the yarns of a pattern, each with its weight in the words of the standard."""

from dataclasses import replace

from sizewright.base.nearest import did_you_mean
from sizewright.base.units import LENGTH, MASS
from sizewright.read.pattern import Gauge, Words, Yarn
from sizewright.read.swatches import judge_gauge, read_reserve, read_swatch
from sizewright.read.values import Values
from sizewright.read.yaml_tree import Node, Table
from sizewright.read.yarn_weights import YARN_WEIGHTS, weight_named, weights_sold_as

_EXAMPLE = "{weight: light, fibre: wool, length: 105 m, mass: 50 g}"


def read_yarns(values: Values, key: str, node: Node, gauges: tuple[Gauge, ...] = ()) -> tuple[Yarn, ...]:
    """The yarns by their names; one alone may stand without a name, and is "main"."""
    if not isinstance(node, Table):
        values.table(key, node, f"{{main: {_EXAMPLE}}}")
        return ()
    named = all(isinstance(entry, Table) and name.text != "swatch" for name, entry in node.entries)
    entries = [(name.text, entry) for name, entry in node.entries] if named else [("main", node)]
    return tuple(yarn for name, entry in entries if (yarn := _yarn(values, name, entry, gauges)))


def _yarn(values: Values, name: str, node: Node, gauges: tuple[Gauge, ...]) -> Yarn | None:
    keys = values.table(name, node, _EXAMPLE)
    if keys is None:
        return None
    yarn = Yarn(
        keys.span,
        name,
        keys.take("weight", lambda key, node: _weight(values, key, node)),
        keys.take("fibre", values.words),
        keys.take("length", lambda key, node: values.measure(key, node, LENGTH, "105 m")),
        keys.take("mass", lambda key, node: values.measure(key, node, MASS, "50 g")),
        keys.take("colour", values.words),
        keys.take("note", values.words),
        keys.take("called", values.many) or (),
        keys.take("swatch", lambda key, node: read_swatch(values, key, node)),
        keys.take("reserve", lambda key, node: read_reserve(values, key, node)),
        keys.take("shade", values.shade),
    )
    keys.close()
    if yarn.swatch is None or judge_gauge(values, yarn.swatch, gauges):
        return yarn
    return replace(yarn, swatch=None)


def _weight(values: Values, key: str, node: Node) -> Words | None:
    """The standard name of a weight, for which its number may stand; a name of the shops is told what it is."""
    words = values.words(key, node)
    if words is None:
        return None
    weight = weight_named(words.text)
    if weight is not None:
        return Words(words.span, weight.name)
    values.fault(words.span, f"“{words.text}” is no value of “{key}”.", _mend(words.text))
    return None


def _mend(text: str) -> str:
    sold = [f"“{weight.name}” ({weight.number})" for weight in weights_sold_as(text)]
    if sold:
        return f"In the standard such yarn is {' or '.join(sold)}."
    known = [weight.name for weight in YARN_WEIGHTS]
    return did_you_mean(text, known, f"Known are: {', '.join(known)}.")
