"""In: values, one a size. Out: the markup of a number: every size's value in the page once, in its own element.

The style sheet hides the values of the sizes that were not chosen, and the punctuation between them. In the same way
each unit system has an element of its own where both are given, and so has what stands between the two.
"""

import re
from collections.abc import Sequence

from markupsafe import Markup, escape

from sizewright.base.printing import Series, between_sizes, bracketed, decimal, printed, quarters
from sizewright.base.spoken_units import with_unit
from sizewright.grade.graded import Values
from sizewright.read.pattern import TypedList

_HARD_SPACE = "\u00a0"  # between a number and its unit
_FIRST = '</span><span class="zp"> (</span>'
_NEXT = '</span><span class="zp">{}</span>'
_LAST = '</span><span class="zp">)</span></span>'
_OPEN = tuple(f'<span class="z z{place}">' for place in range(64))
_BETWEEN = '<span class="between"> / </span>'
_GRADED = re.compile(r'(?<=<span class="graded">)(?:<span class="z(?:p| z\d+)">[^<]*</span>)+')
_OF_SIZE = re.compile(r'<span class="z z\d+">([^<]*)</span>')
_TAG = re.compile(r"<[^>]*>")
_NONE = "–"  # a size that has no value in a list typed by hand


def size_class(place: int) -> str:
    """The class that marks what belongs to one size."""
    return f"z{place}"


def graded_html(values: Sequence[str], places: Sequence[int], only: int | None = None) -> str:
    """ "72 (80, 88)" with each value in an element of its size; plain text where all agree, or for one size `only`.

    `places` says to which size each value belongs. What one size is told is printed as it is among all the others.
    """
    if len(set(values)) == 1:
        return escape(values[0])
    if only is not None:
        return escape(values[places.index(only)])
    opened = [f"{_open(place)}{escape(value)}" for place, value in zip(places, values, strict=True)]
    return f'<span class="graded">{opened[0]}{_FIRST}{_NEXT.format(between_sizes()).join(opened[1:])}{_LAST}'


def as_text(page: str) -> str:
    """A page that hides nothing: numbers for all sizes as text alone, which is broken between the sizes only.

    On paper an element a size is half of the page to the renderer, and a tag each in the PDF.
    """
    return _GRADED.sub(lambda number: _TAG.sub("", _OF_SIZE.sub(_unbroken, number[0])), page)


def _unbroken(value: re.Match[str]) -> str:
    return value[1].replace(" ", _HARD_SPACE)


def insert_html(
    values: Values, style: str | None, places: Sequence[int], *, metric_first: bool, only: int | None = None
) -> Markup:
    """A number of the text in both unit systems, for the sizes that read it: "4 (4, 5) cm / 1½ (1½, 2) in"."""
    read = tuple(values.values[place] for place in places)
    series = printed(read, values.dimension, style, metric_first=metric_first)
    return _in_systems(
        [(with_unit(graded_html(one.values, places, only), one.unit, _HARD_SPACE), one.system) for one in series]
    )


def measure_html(series: Sequence[Series]) -> Markup:
    """A quantity that is the same in every size, in both unit systems: "105 m / 115 yd"."""
    return _in_systems([(escape(with_unit(bracketed(one.values), one.unit)), one.system) for one in series])


def _in_systems(told: Sequence[tuple[str, str]]) -> Markup:
    """Finished markup, each with its system; one that has no other beside it is never to be hidden."""
    if len(told) == 1:
        return Markup(told[0][0])  # noqa: S704 (markup of this module)
    return Markup(_BETWEEN.join(f'<span class="{system}">{html}</span>' for html, system in told))  # noqa: S704


def typed_html(typed: TypedList, places: Sequence[int], only: int | None = None) -> str:
    """A bracket list typed by hand, in the kind of fractions it was typed in."""
    if not typed.values:  # only a refused pattern, in the preview, has a list that does not answer to its sizes
        return escape(typed.text)
    read = [typed.values[place] for place in places]
    text = decimal if "." in typed.text or any(value and 4 % value.denominator for value in read) else quarters
    return graded_html([_NONE if value is None else text(value) for value in read], places, only)


def cell_html(series: Sequence[Series], place: int) -> Markup:
    """The printed value of one size, each unit system in its own element: "41 cm", "16¼ in"."""
    return Markup(" ").join(_measure(one, place, alone=len(series) == 1) for one in series)


def _measure(one: Series, place: int, *, alone: bool) -> Markup:
    text = with_unit(one.values[place if len(one.values) > 1 else 0], one.unit, _HARD_SPACE)
    return Markup('<span class="{}">{}</span>').format("measure" if alone else f"measure {one.system}", text)


def _open(place: int) -> str:
    return _OPEN[place] if place < len(_OPEN) else f'<span class="z {size_class(place)}">'
