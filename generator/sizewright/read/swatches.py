"""In: the `swatch:` and `reserve:` of a yarn. Out: what was counted or measured and weighed, and the share to add."""

from sizewright.base.units import LENGTH, MASS, STITCHES
from sizewright.read.pattern import Gauge, Reserve, Swatch
from sizewright.read.values import Values
from sizewright.read.yaml_tree import Node

EXAMPLE = "{stitches: 2400 st, mass: 12 g}"
_MOST = 1  # a reserve of more than the yarn itself is a mistyped one


def read_swatch(values: Values, key: str, node: Node) -> Swatch | None:
    """A swatch; one that lacks what an amount needs is a finding."""
    keys = values.table(key, node, EXAMPLE)
    if keys is None:
        return None
    swatch = Swatch(
        keys.span,
        keys.take("stitches", lambda key, node: values.measure(key, node, STITCHES, "2400 st")),
        keys.take("width", lambda key, node: values.measure(key, node, LENGTH, "20 cm")),
        keys.take("height", lambda key, node: values.measure(key, node, LENGTH, "22 cm")),
        keys.take("gauge", values.words),
        keys.take("mass", lambda key, node: values.measure(key, node, MASS, "12 g")),
        keys.take("length", lambda key, node: values.measure(key, node, LENGTH, "31 m")),
    )
    keys.close()
    wrong = _wrong(keys.given)
    if wrong is not None:
        values.fault(swatch.span, *wrong)
    told = (swatch.mass or swatch.length, swatch.stitches or (swatch.width and swatch.height))
    return None if wrong is not None or None in told else swatch  # what is wrong with a value is told already


def _wrong(given: frozenset[str]) -> tuple[str, str] | None:
    """What is missing of a swatch or told twice, and how to mend it."""
    if "stitches" in given and given & {"width", "height", "gauge"}:
        return "This swatch is counted and measured.", "Keep its stitches, or its width and height."
    if "stitches" not in given and not {"width", "height"} <= given:
        mend = f"Count its stitches, “{EXAMPLE}”, or measure it: “{{width: 20 cm, height: 22 cm, mass: 14 g}}”."
        return "This swatch has no stitches, and no width and height.", mend
    if len(given & {"mass", "length"}) != 1:
        found = "has both a mass and a length" if "mass" in given else "has no mass and no length"
        return f"This swatch {found}.", "Give one of the two: “mass: 12 g” or “length: 31 m” of yarn."
    return None


def judge_gauge(values: Values, swatch: Swatch, gauges: tuple[Gauge, ...]) -> bool:
    """Whether a swatch that was measured has a gauge to count its stitches by; one that has none is a finding."""
    whole = tuple(gauge for gauge in gauges if gauge.stitches and gauge.rows)
    if swatch.stitches is not None or gauge_of(swatch, gauges) is not None:
        return True
    names = ", ".join(f"“{gauge.name}”" for gauge in whole)
    if swatch.gauge is not None:
        mend = f"Name one of: {names}." if names else "Leave “gauge” out: the pattern has one gauge."
        values.fault(swatch.gauge.span, f"“{swatch.gauge.text}” is no gauge with stitches and rows.", mend)
    elif whole:
        mend = f"Add “gauge: {whole[0].name}”, or one of: {names}."
        values.fault(swatch.span, "It is not said to which gauge this swatch was knitted.", mend)
    else:
        mend = "Give the gauge in stitches and rows, or count the stitches of the swatch."
        values.fault(swatch.span, "This swatch is measured, but no gauge says how many stitches that are.", mend)
    return False


def gauge_of(swatch: Swatch, gauges: tuple[Gauge, ...]) -> Gauge | None:
    """The gauge a measured swatch was knitted to: the one it names, or the only one there is."""
    whole = tuple(gauge for gauge in gauges if gauge.stitches and gauge.rows)
    if swatch.gauge is not None:
        return next((gauge for gauge in whole if gauge.name == swatch.gauge.text), None)
    return whole[0] if len(whole) == len(gauges) == 1 else None


def read_reserve(values: Values, key: str, node: Node) -> Reserve | None:
    """A share that is added, "10 %"."""
    words = values.words(key, node)
    if words is None:
        return None
    share = values.share(words.text)
    if share is None or not 0 <= share <= _MOST:
        values.fault(words.span, f"“{key}: {words.text}” is no share.", "Write how much is added: “reserve: 10 %”.")
        return None
    return Reserve(words.span, share)
