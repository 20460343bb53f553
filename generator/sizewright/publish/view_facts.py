"""In: the header of a pattern. Out: its gauges, yarns and dates as a page says them."""

import re
from collections.abc import Iterable
from datetime import date

from sizewright.base.needle_sizes import SYSTEMS
from sizewright.base.printing import as_text, decimal, needle_size, printed, quarters
from sizewright.base.units import LENGTH, MASS, unit_named
from sizewright.publish.view import ChangeView, DayView, GaugeView, YarnView
from sizewright.read.needles import NamedSize
from sizewright.read.pattern import Change, Gauge, Measure, Needle, Words, Yarn
from sizewright.read.typed_numbers import exact

# "22 st / 10 cm", "5 1/2 sts/in": the count, the word for it, the length it is counted over.
_GAUGE = re.compile(
    r"\s*(?P<count>[\d./ ¼½¾⅛]*[\d¼½¾⅛])\s*(?:st|row|rnd|round)[a-z]*"
    r"\s*/\s*(?P<length>[\d./ ¼½¾⅛]*?)\s*(?P<unit>[a-z]+|[″\"])\s*",
    re.IGNORECASE,
)


def text_of(words: Words | None) -> str:
    """The text, "" where there is none."""
    return words.text if words else ""


def spoken_name(name: str) -> str:
    """A name of the formulas as words of a heading: "upper_arm" is "Upper arm"."""
    words = name.replace("_", " ")
    return words[:1].upper() + words[1:]


def day_view(day: date) -> DayView:
    """A date: "12 October 2026"."""
    return DayView(f"{day.day} {day:%B %Y}", day.isoformat())


def change_views(changes: Iterable[Change]) -> tuple[ChangeView, ...]:
    """The errata, as the header has them: newest first."""
    return tuple(ChangeView(day_view(change.date.date), change.text.text) for change in changes)


def gauge_view(gauge: Gauge) -> GaugeView:
    """ "22 sts and 30 rnds over 10 cm": the length is the one the source states, 4 in never taken for 10 cm."""
    counted = []
    if gauge.stitches:
        counted.append((f"{_count(gauge.stitches)} sts", _over(gauge.stitches)))
    if gauge.rows:
        counted.append((f"{_count(gauge.rows)} {'rnds' if gauge.in_the_round else 'rows'}", _over(gauge.rows)))
    if len({over for _, over in counted}) == 1:
        counts = f"{' and '.join(count for count, _ in counted)} over {counted[0][1]}"
    else:
        counts = ", ".join(f"{count} over {over}" for count, over in counted)
    return GaugeView(spoken_name(gauge.name), counts, text_of(gauge.over), needle_text(gauge.needle))


def _count(measure: Measure) -> str:
    """The count as it was typed; of a gauge that was typed in another way, the count over 10 cm."""
    found = _GAUGE.fullmatch(measure.typed)
    if found is None:
        return decimal(measure.quantity.value * 10)
    count = found["count"].strip()
    return count if "/" not in count or 4 % exact(count).denominator else quarters(exact(count))


def _over(measure: Measure) -> str:
    found = _GAUGE.fullmatch(measure.typed)
    unit = unit_named(found["unit"]) if found else None
    if found is None or unit is None:
        return "10 cm"
    length = found["length"].strip() or "1"
    if unit.name == "inch":
        return f"{length} in ({decimal(exact(length) * unit.factor)} cm)"
    return f"{length} {found['unit']}"


def needle_text(needle: Needle | None) -> str:
    """A needle as typed, each size in it in mm with its US and UK labels: "4 mm (US 6, UK 8) circular needle"."""
    if needle is None:
        return ""
    text, at = "", 0
    for size in needle.sizes:
        text += needle.text[at : size.start] + _size_text(needle.text, size)
        at = size.end
    return text + needle.text[at:]


def _size_text(text: str, size: NamedSize) -> str:
    """The words of one size; what is not sure, or labelled in another way than in the table, stays as typed."""
    typed = text[size.start : size.end]
    if len(size.needles) != 1 or not size.whole:
        return typed
    first, *others = needle_size(size.needles[0])
    stated = {f"{label.system} {label.number}" for label in size.labels if label.system in SYSTEMS}
    if not others or not stated <= set(others):
        return typed
    within = text.count("(", 0, size.start) > text.count(")", 0, size.start)
    return ", ".join((first, *others)) if within else f"{first} ({', '.join(others)})"


def yarn_view(yarn: Yarn, *, metric_first: bool) -> YarnView:
    """One yarn: fibre, metres and yards to grams and ounces, colour, note."""
    ball = " per ".join(
        as_text(printed((measure.quantity.value,), dimension, style, metric_first=metric_first))
        for measure, dimension, style in ((yarn.length, LENGTH, "long"), (yarn.mass, MASS, None))
        if measure
    )
    facts = (text_of(yarn.fibre), ball, text_of(yarn.colour), text_of(yarn.note))
    return YarnView(spoken_name(yarn.name), text_of(yarn.weight), tuple(fact for fact in facts if fact))
