"""In: a source that is translated. Out: it in the other language: its tree, its names, and lines told by hand.

Numbers and instructions are those of the source: every block, every `{…}` and every anchor is its own, so nothing is
graded or worked again. What is printed of the instructions is printed in the language that is spoken.
"""

from collections.abc import Mapping
from dataclasses import replace

from sizewright.base.place import Span
from sizewright.read.inserts import Told
from sizewright.read.pattern import Adaptation, Pattern
from sizewright.read.translating.body import told_body
from sizewright.read.translating.header import told_called, told_header
from sizewright.read.translating.lines import hand_lines, told_line
from sizewright.read.translating.texts import texts_of
from sizewright.read.translating.translation import Translation


def translation_of(pattern: Pattern, language: str) -> Translation | None:
    """The translation of a source into a language; None where there is none."""
    return next((one for one in pattern.translations if one.into == language), None)


def in_language(pattern: Pattern, language: str) -> Pattern:
    """A source in a language that it is translated into, itself in every other.

    Header, passages and reasons of departures are in that language; what is not translated is left as it is, in the
    body with its language told. Names by which a thing is known (sizes, yarns, stitch patterns, pieces) stay.
    """
    translation = translation_of(pattern, language)
    if translation is None:
        return pattern
    tell = _Teller(translation)
    return replace(
        pattern,
        header=told_header(pattern.header, tell, lambda *_: None),
        body=told_body(pattern, translation),
        adapts=_adaptation(pattern.adapts, tell) if pattern.adapts else None,
    )


class _Teller:
    def __init__(self, translation: Translation) -> None:
        self._translation = translation

    def __call__(self, span: Span, words: str) -> str:  # noqa: ARG002 (the same words are told alike everywhere)
        """The words in the other language, as they are where they are not translated."""
        return " ".join(self._translation.of_words(words).split()) or words


def _adaptation(adapts: Adaptation, tell: _Teller) -> Adaptation:
    """An adaptation with the reasons of its departures and its credit."""
    departures = tuple(replace(one, called=told_called(one.called, tell)) for one in adapts.departures)
    return replace(adapts, departures=departures)


def names_in(pattern: Pattern, language: str) -> Mapping[str, str]:
    """What a source calls by a name, and every other text of its header, by what it is called in a language.

    Headings of its body are among them, by their words alone.
    """
    translation = translation_of(pattern, language)
    if translation is None:
        return {}
    found: dict[str, str] = {}
    for text in texts_of(pattern):
        told = " ".join(translation.of_words(text.words).split())
        if told and text.passage is None:
            found[text.words] = told
        elif told and text.passage is not None and text.passage.heading:
            found.setdefault(_bare(text.words), _bare(told))
    return found


def _bare(heading: str) -> str:
    return heading.strip("# ")


def lines_in(pattern: Pattern, language: str) -> Mapping[Span, Told]:
    """The lines of instructions that are translated by hand, by the place of the line they begin with."""
    translation = translation_of(pattern, language)
    if translation is None:
        return {}
    found = ((line, translation.of_words(line.typed)) for line in hand_lines(pattern))
    return {line.span: told_line(line, told) for line, told in found if told}
