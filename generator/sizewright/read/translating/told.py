"""In: a source that is translated. Out: it in the other language: its tree, its names, and lines told by hand.

Numbers and instructions are those of the source: every block, every `{…}` and every anchor is its own, so nothing is
graded or worked again. What is printed of the instructions is printed in the language that is spoken.
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from unicodedata import normalize

from sizewright.base.place import Span
from sizewright.read.inserts import Told
from sizewright.read.pattern import Adaptation, Heading, Pattern, Piece
from sizewright.read.project import Project
from sizewright.read.source_terms import country_of_source
from sizewright.read.term import Term
from sizewright.read.terms import terms_in
from sizewright.read.translating.body import told_body
from sizewright.read.translating.departures import places_told
from sizewright.read.translating.header import Tell, told_called, told_header
from sizewright.read.translating.lines import hand_lines, told_line
from sizewright.read.translating.shared import told_studio, told_terms
from sizewright.read.translating.texts import texts_apart
from sizewright.read.translating.translation import Translation


def translation_of(pattern: Pattern, language: str) -> Translation | None:
    """The translation of a source into a language; None where there is none."""
    return next((one for one in pattern.translations if one.into == language), None)


def in_language(pattern: Pattern, language: str) -> Pattern:
    """A source in a language that it is translated into, itself in every other.

    Header, passages and reasons of departures are in that language; what is not translated is left as it is, in the
    body with its language told. Names by which a thing is known (sizes, yarns, stitch patterns, pieces) stay; what they
    are called is in `names` of the translation, and lines of instructions translated by hand in its `lines_told`.
    """
    translation = translation_of(pattern, language)
    if translation is None:
        return pattern
    body = told_body(pattern, translation)
    names = _headings(pattern.body, body) | _names(pattern, translation)
    country = country_of_source(pattern)
    told = replace(translation, names=names, lines_told=_lines(pattern, translation), country=country)
    return replace(
        pattern,
        header=told_header(pattern.header, translation.tell, translation.tell),
        body=body,
        adapts=_adaptation(pattern.adapts, translation) if pattern.adapts else None,
        translations=(told,),
    )


def _adaptation(adapts: Adaptation, translation: Translation) -> Adaptation:
    """An adaptation with the reasons of its departures."""
    called = (told_called(one.called, translation.tell) for one in adapts.departures)
    departures = tuple(replace(one, called=told) for one, told in zip(adapts.departures, called, strict=True))
    return replace(adapts, departures=departures)


def _names(pattern: Pattern, translation: Translation) -> dict[str, str]:
    """The texts that are no passages, those of its base as well."""
    of_base = texts_apart(pattern.adapts.base) if pattern.adapts else ()
    found = {text.words: translation.tell(text.span, text.words) for text in (*of_base, *texts_apart(pattern))}
    return (places_told(pattern.adapts, translation) if pattern.adapts else {}) | found


def _headings(before: Iterable[Piece], behind: Iterable[Piece]) -> dict[str, str]:
    """The words of the headings by those of the source."""
    first, second = ([piece for piece in body if isinstance(piece, Heading)] for body in (before, behind))
    return {one.text: other.text for one, other in zip(first, second, strict=True)}


def _lines(pattern: Pattern, translation: Translation) -> Mapping[Span, Told]:
    found = ((line, translation.of_words(line.typed)) for line in hand_lines(pattern))
    return {line.span: told_line(line, told) for line, told in found if told}


def shared_in(project: Project, language: str) -> Project:
    """The project with the words of its studio and of its own stitches in a language; its sources stay as they are."""
    translation = next((one for one in project.translations if one.into == language), None)
    if translation is None:
        return replace(project, terms=_terms(project, language, lambda _, words: words), translations=())
    own = [term for term in project.terms if term.span is not None]
    told = {word: translation.of_words(term.term) for term in own for word in (term.term, *term.spellings)}
    names = {word: said for word, said in told.items() if said}
    return replace(
        project,
        studio=told_studio(project.studio, translation.tell),
        terms=_terms(project, language, translation.tell),
        translations=(replace(translation, names=names),),
    )


def _terms(project: Project, language: str, tell: Tell) -> tuple[Term, ...]:
    """The usual terms of a language and the studio's own as `tell` has them, which win."""
    own = told_terms(tuple(term for term in project.terms if term.span is not None), tell)
    known = {term.term for term in own}
    usual = (term for term in terms_in(language, project.studio.listed.get(language, ())) if term.term not in known)
    return tuple(sorted((*usual, *own), key=lambda term: normalize("NFKD", term.term.casefold())))
