"""In: the header of a pattern. Out: its yarns and dates as a page says them."""

from collections.abc import Iterable, Sequence
from datetime import date

from markupsafe import Markup

from sizewright.base.language import later, named, tr
from sizewright.base.printing import printed
from sizewright.base.telling import day_text
from sizewright.base.units import LENGTH, MASS
from sizewright.publish.for_size import tells_of_others
from sizewright.publish.message_html import message_html
from sizewright.publish.usual_names import spoken_name, spoken_weight
from sizewright.publish.view import ChangeView, DayView, YarnView
from sizewright.publish.view_numbers import measure_html
from sizewright.read.pattern import Change, Words, Yarn

# What a paper for one size says in place of a correction that tells of several.
ELSEWHERE = later(
    "A correction that tells of several sizes: it is on the pattern’s page and in the paper for all sizes."
)


def text_of(words: Words | None) -> str:
    """The text, "" where there is none."""
    return words.text if words else ""


def day_view(day: date) -> DayView:
    """A date: "12 October 2026"."""
    return DayView(day_text(day), day.isoformat())


def change_views(
    changes: Iterable[Change], sizes: Sequence[str] = (), only: int | None = None
) -> tuple[ChangeView, ...]:
    """The errata, as the header has them: newest first.

    `sizes` are their names as readers are told them.
    For one size `only`, one that has words or numbers of others is not cut up: it is said where it stands in full.
    """
    return tuple(
        ChangeView(
            day_view(change.date.date),
            tr(ELSEWHERE)
            if only is not None and tells_of_others(change.text.text, sizes[only], sizes)
            else change.text.text,
        )
        for change in changes
    )


def yarn_view(yarn: Yarn, *, metric_first: bool) -> YarnView:
    """One yarn: fibre, metres and yards to grams and ounces, colour, note."""
    ball = _ball(yarn, metric_first=metric_first)
    facts = (named(text_of(yarn.fibre)), ball, named(text_of(yarn.colour)), text_of(yarn.note))
    return YarnView(spoken_name(yarn.name), spoken_weight(text_of(yarn.weight)), tuple(fact for fact in facts if fact))


def _ball(yarn: Yarn, *, metric_first: bool) -> Markup:
    """ "112 m / 122 yd per 50 g", or what is known of it."""
    told = [
        measure_html(printed((measure.quantity.value,), dimension, style, metric_first=metric_first))
        for measure, dimension, style in ((yarn.length, LENGTH, "long"), (yarn.mass, MASS, None))
        if measure
    ]
    if len(told) < 2:
        return Markup().join(told)
    return message_html(tr("{length} per {mass}"), length=told[0], mass=told[1])
