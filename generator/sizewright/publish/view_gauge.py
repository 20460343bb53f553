"""In: a gauge or a needle of a header. Out: it as a page says it, what belongs to one system in its own element.

What the designer stated stays what it is: 4 in are never taken for 10 cm. What it comes to in the other unit system
stands beside it, and a style sheet may leave that away.
"""

import re
from collections.abc import Iterable, Sequence

from markupsafe import Markup, escape

from sizewright.base.language import named, tr
from sizewright.base.needle_sizes import SYSTEMS
from sizewright.base.printing import counted, decimal, needle_size, quarters
from sizewright.base.spoken_units import figures_typed, with_unit
from sizewright.base.telling import listed
from sizewright.base.units import Unit, unit_named
from sizewright.publish.usual_names import spoken_name
from sizewright.publish.view import GaugeView
from sizewright.publish.view_facts import text_of
from sizewright.read.needles import NamedSize
from sizewright.read.pattern import Gauge, Measure, Needle
from sizewright.read.typed_numbers import exact

# "22 st / 10 cm", "5 1/2 sts/in": the count, the word for it, the length it is counted over.
_GAUGE = re.compile(
    r"\s*(?P<count>[\d./ ¼½¾⅛]*[\d¼½¾⅛])\s*(?:st|row|rnd|round)[a-z]*"
    r"\s*/\s*(?P<length>[\d./ ¼½¾⅛]*?)\s*(?P<unit>[a-z]+|[″\"])\s*",
    re.IGNORECASE,
)
_IMPERIAL = ("inch", "foot", "yard")
_OTHER = {True: ("metric", "10", "cm"), False: ("imperial", "4", "in")}  # by whether it is stated in inches
_SIZED = Markup('<span class="{}">{}</span>')
_BESIDE = Markup('<span class="beside">{}</span>')


def gauge_view(gauge: Gauge) -> GaugeView:
    """ "22 sts and 30 rnds over 10 cm": the length is the one the source states."""
    told = [(measure, word) for measure, word in ((gauge.stitches, "sts"), (gauge.rows, _rows(gauge))) if measure]
    counted = [(with_unit(_count(measure), word), _over(measure)) for measure, word in told]
    if len({over for _, over in counted}) == 1:
        counted = [(listed([count for count, _ in counted]), counted[0][1])]
    counts = ", ".join(tr("{counts} over {length}", counts=count, length=over) for count, over in counted)
    name, over = spoken_name(gauge.name), named(text_of(gauge.over))
    return GaugeView(name, counts, _again(told), over, needle_html(gauge.needle))


def _rows(gauge: Gauge) -> str:
    return "rnds" if gauge.in_the_round else "rows"


def _again(told: Sequence[tuple[Measure, str]]) -> Markup:
    """The same in the other system, "about 22¼ sts over 4 in"; nothing where stitches and rows are told in both."""
    systems = {_in_inches(measure) for measure, _ in told}
    if len(systems) != 1:
        return Markup()
    system, length, over = _OTHER[systems.pop()]
    unit = unit_named(over)
    wide = exact(length) * (unit.factor if unit else 1)
    found = [counted(measure.quantity.value * wide) for measure, _ in told]
    counts = listed([with_unit(count, word) for (count, _), (_, word) in zip(found, told, strict=True)])
    parts = {"counts": counts, "length": with_unit(length, over)}
    if any(rounded for _, rounded in found):
        again = tr("; that is about {counts} over {length}", **parts)
    else:
        again = tr("; that is {counts} over {length}", **parts)
    return _SIZED.format(system, again)


def _count(measure: Measure) -> str:
    """The count as it was typed; of a gauge that was typed in another way, the count over 10 cm."""
    found = _GAUGE.fullmatch(measure.typed)
    if found is None:
        return decimal(measure.quantity.value * 10)
    count = found["count"].strip()
    return figures_typed(count) if "/" not in count or 4 % exact(count).denominator else quarters(exact(count))


def _over(measure: Measure) -> str:
    found, unit = _GAUGE.fullmatch(measure.typed), _unit(measure)
    if found is None or unit is None:
        return "10 cm"
    length = found["length"].strip() or "1"
    if unit.name == "inch":
        return f"{with_unit(figures_typed(length), 'in')} ({with_unit(decimal(exact(length) * unit.factor), 'cm')})"
    return with_unit(figures_typed(length), found["unit"])


def _unit(measure: Measure) -> Unit | None:
    found = _GAUGE.fullmatch(measure.typed)
    return unit_named(found["unit"]) if found else None


def _in_inches(measure: Measure) -> bool:
    unit = _unit(measure)
    return unit is not None and unit.name in _IMPERIAL


def needle_html(needle: Needle | None) -> Markup:
    """A needle as typed, each size in it in mm with its US and UK labels: "4 mm (US 6, UK 8) circular needle"."""
    if needle is None:
        return Markup()
    text, at = Markup(), 0
    for size in needle.sizes:
        text += escape(needle.text[at : size.start]) + _size_html(needle.text, size)
        at = size.end
    return text + escape(needle.text[at:])


def _size_html(text: str, size: NamedSize) -> Markup:
    """The words of one size; what is not sure, or labelled in another way than in the table, stays as typed."""
    typed = escape(text[size.start : size.end])
    if len(size.needles) != 1 or not size.whole:
        return typed
    first, *others = needle_size(size.needles[0])
    stated = {f"{label.system} {label.number}" for label in size.labels if label.system in SYSTEMS}
    if not others or not stated <= set(others):
        return typed
    within = text.count("(", 0, size.start) > text.count(")", 0, size.start)
    return _labelled(first, others, *((", ", "") if within else (" (", ")")))


def _labelled(mm: str, labels: Iterable[str], opening: str, closing: str) -> Markup:
    """Each label of a needle in an element of its own, and so what stands between them."""
    named = _BESIDE.format(", ").join(_SIZED.format(f"{label[:2].lower()}-size", label) for label in labels)
    behind = _BESIDE.format(closing) if closing else ""
    return _SIZED.format("needle-size", _SIZED.format("mm", mm) + _BESIDE.format(opening) + named + behind)
