"""In: a pattern carried out. Out: what its page needs to tell a reader what another gauge makes of it, exact, as data.

The sums are those of `grade/at_gauge.py` and `work/at_row_gauge.py`; the page's script works them out again.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from sizewright.base.language import named, tr
from sizewright.base.printing import exact_text
from sizewright.grade.graded import Graded
from sizewright.grade.moved import is_gauge
from sizewright.grade.through_gauge import Done, Expression, Fixed, Free, through_gauge
from sizewright.publish.script_data import Value, script_data
from sizewright.publish.usual_names import spoken_name
from sizewright.publish.view_facts import text_of
from sizewright.publish.view_swatch import FabricView, MyGaugeView
from sizewright.publish.view_table import SizeChoice
from sizewright.publish.yarn_range import known
from sizewright.read.pattern import Gauge
from sizewright.work.at_row_gauge import Stretch
from sizewright.work.worked import Part, Worked
from sizewright.work.yarn_need import YarnNeed


def my_gauge_view(worked: Worked, choices: Sequence[SizeChoice], *, metric_first: bool) -> MyGaugeView | None:
    """None where the pattern has no stitch gauge to compare with."""
    graded = worked.graded
    own = {name: named.result.values for name, named in graded.quantities.items() if is_gauge(named)}
    places = {name: place for place, name in enumerate(own)}
    met = {name for name, values in own.items() if min(values) > 0}
    gauges = tuple(gauge for gauge in graded.pattern.header.gauges if _names(gauge)[0] in met)
    if not gauges:
        return None
    measures = _measures(graded, places)
    data: Value = {
        "sizes": [{"key": choice.key, "name": choice.name} for choice in choices],
        "fabrics": [_fabric(gauge, places, met) for gauge in gauges],
        "own": list(map(_exact, own.values())),
        "measures": measures,
        "parts": list(_parts(worked.parts, places)),
        "yarns": [_yarn(need, gauges, alone=len(worked.yarns) == 1) for need in known(worked)],
    }
    labels = tuple(str(measure["label"]) for measure in measures if isinstance(measure, dict))
    fabrics = tuple(_fabric_view(place, gauge, met) for place, gauge in enumerate(gauges))
    counted = [gauge.in_the_round for gauge in gauges if _names(gauge)[1] in met]
    unit = "cm" if metric_first else "in"
    return MyGaugeView(fabrics, labels, unit, script_data(data), in_rounds=bool(counted) and all(counted))


def _names(gauge: Gauge) -> tuple[str, str]:
    """The names of its stitches and of its rows in formulas."""
    return (f"{gauge.name}.stitches", f"{gauge.name}.rows") if gauge.name else ("stitch_gauge", "row_gauge")


def _fabric_view(place: int, gauge: Gauge, met: set[str]) -> FabricView:
    word = tr("rounds") if gauge.in_the_round else tr("rows")
    return FabricView(
        place, spoken_name(gauge.name), named(text_of(gauge.over)), word if _names(gauge)[1] in met else ""
    )


def _fabric(gauge: Gauge, places: dict[str, int], met: set[str]) -> Value:
    sts, rows = _names(gauge)
    word = "rnds" if gauge.in_the_round else "rows"  # by which the script knows its own
    told = places[rows] if rows in met else None
    return {"name": spoken_name(gauge.name), "sts": places[sts], "rows": told, "word": word}


def _exact(values: Sequence[Fraction]) -> str:
    return " ".join(map(exact_text, values if len(set(values)) > 1 else values[:1]))


def _measures(graded: Graded, places: dict[str, int]) -> list[Value]:
    return [
        {
            "label": named(shown.measured.label),
            "printed": _exact(shown.measured.finished.values),
            "own": _expression(shown.own, places),
            "back": None if shown.read_back is None else _expression(shown.read_back, places),
        }
        for shown in through_gauge(graded)
    ]


def _expression(one: Expression, places: dict[str, int]) -> Value:
    match one:
        case Fixed(values=values):
            return _exact(values)
        case Free(gauge=gauge):
            return places[gauge]
        case Done(what=what, parts=parts):
            return [what, *(_expression(part, places) for part in parts)]


def _parts(parts: Sequence[Part], places: dict[str, int]) -> Iterator[Value]:
    """The parts, alike ones once: by size, their rows, those that are worked to a length, and the headings."""
    told: list[Value] = []
    for part in parts:
        if part.gauge not in places:
            continue
        one: Value = {
            "gauge": places[part.gauge],
            "rows": list(part.rows),
            "worked": [[_stretch(stretch) for stretch in stretches] for stretches in part.stretches],
            "heads": [list(_heads(part, size)) for size in range(len(part.rows))],
        }
        if one not in told:
            told.append(one)
            yield one


def _heads(part: Part, size: int) -> Iterator[Value]:
    """The headings below which rows are worked, each with the rows before it."""
    headings = part.headings[size]
    for place, (text, row) in enumerate(headings):
        below = headings[place + 1][1] if place + 1 < len(headings) else part.rows[size]
        if below is not None and below > row:
            yield [named(text or part.piece), row]


def _stretch(stretch: Stretch) -> Value:
    return [stretch.first, stretch.last, stretch.since, exact_text(stretch.length)]


def _yarn(need: YarnNeed, gauges: Sequence[Gauge], *, alone: bool) -> Value:
    """A yarn by its length where that is known, else by its mass: with the reserve, and what a ball holds of it."""
    lengths = [amount.length for amount in need.reserved]
    masses = [amount.mass for amount in need.reserved]
    by_length = None not in lengths
    amounts = [amount for amount in (lengths if by_length else masses) if amount is not None]
    ball = need.ball.length if by_length else need.ball.mass
    return {
        "label": "" if alone else spoken_name(need.yarn.name),
        "kind": "length" if by_length else "mass",
        "amount": _exact(amounts),
        "ball": None if ball is None else exact_text(ball),
        "fabric": _fabric_of(need, gauges),
        "least": [int(one) for one in need.incomplete],
    }


def _fabric_of(need: YarnNeed, gauges: Sequence[Gauge]) -> int | None:
    """The fabric that tells what a stitch of a yarn takes: the only one, or that of its swatch."""
    swatch = need.yarn.swatch
    named = swatch.gauge.text if swatch is not None and swatch.gauge is not None else ""
    found = [place for place, gauge in enumerate(gauges) if len(gauges) == 1 or gauge.name == named]
    return found[0] if len(found) == 1 else None
