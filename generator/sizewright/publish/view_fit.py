"""In: a graded pattern. Out: what its page needs to find a size by the reader's own measures, as data for a script."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.language import named
from sizewright.base.printing import exact_text
from sizewright.base.units import LENGTH, PLAIN
from sizewright.grade.graded import Graded, Measured
from sizewright.publish.script_data import Value, script_data
from sizewright.publish.usual_names import name_within, spoken_name
from sizewright.publish.view_choice import FitView, MeasureView
from sizewright.publish.view_sizes import body_names
from sizewright.publish.view_table import SizeChoice
from sizewright.read.pattern import Ease

# What is measured with a tape, in cm: beyond it print gives metres and yards, and nobody measures a body in those.
_MOST = 300


def fit_view(graded: Graded, choices: Sequence[SizeChoice], *, metric_first: bool) -> FitView | None:
    """The measures that finished ones are compared with; where there are none, those the sizes are made by.

    None where there is nothing to choose, or nothing to choose by.
    """
    found = _measures(graded)
    if len(choices) < 2 or not found:
        return None
    sizes: list[Value] = [{"key": choice.key, "name": choice.name} for choice in choices]
    data = script_data({"sizes": sizes, "measures": [measure.data() for measure in found]})
    return FitView(tuple(measure.view() for measure in found), "cm" if metric_first else "in", data)


def measures_of(graded: Graded) -> list[Value]:
    """The same measures as data alone, also where there is only one size."""
    return [measure.data() for measure in _measures(graded)]


def _measures(graded: Graded) -> tuple["_Measure", ...]:
    return tuple(_compared(graded)) or tuple(_alone(graded))


@dataclass(frozen=True, slots=True)
class _Measure:
    key: str
    body: tuple[Fraction, ...]
    label: str = ""
    finished: tuple[Fraction, ...] = ()
    meant: Ease | None = None

    def view(self) -> MeasureView:
        return MeasureView(self.key, spoken_name(self.key), bool(self.finished))

    def data(self) -> Value:
        return {
            "key": self.key,
            "name": name_within(self.key),
            "label": self.label,
            "body": list(map(exact_text, self.body)),
            "finished": list(map(exact_text, self.finished)),
            "meant": _meant(self.meant) if self.meant else None,
        }


def _meant(ease: Ease) -> Value:
    of = "body" if ease.least.dimension == PLAIN else "cm"
    return {"of": of, "least": exact_text(ease.least.value), "most": exact_text(ease.most.value)}


def _compared(graded: Graded) -> Iterator[_Measure]:
    """One for each body; of several measurements on one body that whose ease is stated, else the first."""
    found: dict[str, Measured] = {}
    for measured in graded.finished:
        if measured.body is not None and measured.ease is not None and _tape(measured):
            name = measured.body.name
            if name not in found or (found[name].told.ease is None and measured.told.ease is not None):
                found[name] = measured
    for name, measured in found.items():
        body = measured.body.result.values if measured.body else ()
        yield _Measure(name, body, named(measured.label), measured.finished.values, measured.told.ease)


def _tape(measured: Measured) -> bool:
    values = (*measured.finished.values, *(measured.body.result.values if measured.body else ()))
    return measured.finished.dimension == LENGTH and max(map(abs, values)) < _MOST


def _alone(graded: Graded) -> Iterator[_Measure]:
    for name in body_names(graded):
        named = graded.quantities.get(name)
        if named is not None and named.result.dimension == LENGTH and max(map(abs, named.result.values)) < _MOST:
            yield _Measure(name, named.result.values)
