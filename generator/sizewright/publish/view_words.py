"""In: the words of a text. Out: them in the terms of the US and of the UK, where those differ, each in its own element.

The style sheet leaves the one that is not wanted away. Which words differ is the table of `read/trade_words.py`; what a
designer has called a thing (a stitch pattern, a title, words in quotation marks) stays as it is. Headings are words of
the text and change with it. In another language nothing is told twice.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from markupsafe import Markup, escape

from sizewright.base.language import in_english
from sizewright.read.pattern import Pattern, StitchBlock
from sizewright.read.project import Studio
from sizewright.read.source_terms import country_of_source
from sizewright.read.trade_words import Country, told_twice

# What is markup and stays: drawings and code as a whole, else a tag.
MARKUP = re.compile(r"(<(?:svg|pre|code)\b.*?</(?:svg|pre|code)>|<[^>]*>)", re.DOTALL)
_TWICE = Markup('<span class="us">{}</span><span class="uk">{}</span>')


@dataclass(frozen=True, slots=True)
class WordsView:
    """Whose terms a text is written in (`country`), whose are shown first, and the names in it that stay."""

    country: Country
    first: Country
    names: tuple[str, ...] = ()

    @classmethod
    def of(cls, pattern: Pattern, studio: Studio) -> "WordsView":
        """Those of a pattern or technique: the studio says whose terms come first, else the text itself."""
        country = country_of_source(pattern) or studio.terms or Country.US
        names = (piece.name.text for piece in pattern.body if isinstance(piece, StitchBlock))
        return cls(country, studio.terms or country, tuple(dict.fromkeys(names)))

    def told(self, text: str) -> Iterator[tuple[str, str]]:
        """A text in stretches, each in the terms of the US and of the UK; they differ in English alone."""
        if not in_english():
            return iter(((text, text),))
        stretches = told_twice(text, self.country, self.names)
        return stretches if self.country is Country.US else ((us, uk) for uk, us in stretches)

    def differs(self, text: str) -> bool:
        """Whether a text says anything in other words in the other country."""
        return any(us != uk for us, uk in self.told(text))


INTERFACE = WordsView(Country.US, Country.US)  # the words of templates and of the tool's own tables


def in_both_terms(text: str | Markup, words: WordsView = INTERFACE) -> Markup:
    """A text with what differs told twice; templates have it as the filter `terms`."""
    if not in_english():
        return escape(text)
    if not isinstance(text, Markup):
        return _joined(text, words, escape)
    parts = MARKUP.split(text)  # no word of the table has a sign that markup escapes
    told = (Markup(part) if at % 2 else _joined(part, words, Markup) for at, part in enumerate(parts))  # noqa: S704 (its markup)
    return Markup().join(told)


def told_stretches(text: str, words: WordsView | None) -> Iterator[tuple[str, Markup | None]]:
    """A text in stretches, each with what it is told twice as; None where it is the same in both terms."""
    if words is None or not in_english():
        yield text, None
        return
    typed = words.country is Country.UK
    for both in words.told(text):
        yield both[typed], None if both[0] == both[1] else told_both(*both)


def told_both(us: str, uk: str) -> Markup:
    """A word as it is in the terms of the US and of the UK, of which the style sheet leaves one away."""
    return _TWICE.format(us, uk)


def _joined(text: str, words: WordsView, as_markup: Callable[[str], Markup]) -> Markup:
    return Markup().join(twice or as_markup(typed) for typed, twice in told_stretches(text, words))
