"""In: an adaptation carried out. Out: what it is based on and its departures as JSON values, exact ones as strings."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from sizewright.base.printing import exact_text
from sizewright.proof.departed import Before, Departed, Effect, compared
from sizewright.read.inserts import Words
from sizewright.work.worked import Worked

Value = str | int | None | Sequence["Value"] | Mapping[str, "Value"]


def departures_data(worked: Worked) -> Mapping[str, Value]:
    """`based_on`, `departures` and `changes`, what all of them come to; nothing for a pattern that is no adaptation.

    A departure that cannot be worked without the others has no `alone`.
    """
    found = compared(worked)
    if found is None:
        return {}
    told = found.adapts.based_on
    return {
        "based_on": {
            "pattern": told.pattern.text,
            "permission": _text(told.permission),
            "credit": _text(told.credit),
        },
        "departures": [_departure(one) for one in found.departed],
        "changes": _effect(found.whole),
    }


def _text(words: Words | None) -> str | None:
    return words.text if words else None


def _departure(one: Departed) -> Mapping[str, Value]:
    called = one.departure.called
    return {
        "number": one.departure.number,
        "what": called.title,
        "because": called.because.text,
        "line": called.span.shown.line,
        "from": {"section": one.section, "label": one.first.label, "rows": list(one.rows)} if one.first else None,
        "alone": _effect(one.alone) if one.alone else None,
    }


def _effect(effect: Effect) -> Mapping[str, Value]:
    """Before and after by size: rows, stitches, yarn in g and else in cm, and the quantities that are others."""
    return {
        "rows": _pair(effect.rows),
        "stitches": _pair(effect.stitches),
        "mass": [_named(one) for one in effect.masses],
        "length": [_named(one) for one in effect.lengths],
        "counts": [_named(one) for one in effect.counts],
        "quantities": [_named(one.values) for one in effect.quantities],
    }


def _named(one: Before) -> Mapping[str, Value]:
    return {"name": f"{one.name} ({one.section})" if one.section else one.name, **_pair(one)}


def _pair(one: Before) -> Mapping[str, Value]:
    return {"before": _exact(one.before), "after": _exact(one.after)}


def _exact(values: Sequence[Fraction | None]) -> list[str | None]:
    return [None if value is None else exact_text(value) for value in values]
