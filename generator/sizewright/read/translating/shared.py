"""In: the words of a studio and of its own stitches, and their translations. Out: both in another language."""

from collections.abc import Callable, Iterator
from dataclasses import replace

from sizewright.base.finding import Finding
from sizewright.base.place import Lines, Span
from sizewright.read.cautions import StudioCaution
from sizewright.read.project import Studio
from sizewright.read.term import Term
from sizewright.read.translating.beside import read_translation, untranslated
from sizewright.read.translating.header import Tell
from sizewright.read.translating.judged import judged
from sizewright.read.translating.texts import Text, collected
from sizewright.read.translating.translation import Translation

SITE, STITCHES = "site", "stitches"  # the files in content/ with words of their own


def told_studio(studio: Studio, tell: Tell) -> Studio:
    """A studio with its words as `tell` has them."""
    span = studio.span
    if span is None:
        return studio

    def told(words: str) -> str:
        return tell(span, words) if words else ""

    def caution(one: StudioCaution) -> StudioCaution:
        own = one.caution
        sentences, sources = tuple(map(told, own.sentences)), tuple(map(told, own.sources))
        return replace(one, caution=replace(own, title=told(own.title), sentences=sentences, sources=sources))

    return replace(
        studio,
        name=told(studio.name),
        description=told(studio.description),
        author=told(studio.author),
        notice=told(studio.notice),
        cautions=tuple(map(caution, studio.cautions)),
    )


def told_terms(terms: tuple[Term, ...], tell: Tell) -> tuple[Term, ...]:
    """The terms, those that a studio explains itself as `tell` has them; the words of the source are found as well."""
    return tuple(_told_term(term, term.span, tell) if term.span is not None else term for term in terms)


def _told_term(term: Term, span: Span, tell: Tell) -> Term:
    word, meaning = tell(span, term.term), tell(span, term.meaning)
    return replace(term, term=word, meaning=meaning, spellings=tuple(dict.fromkeys((word, *term.spellings))))


def studio_texts(studio: Studio) -> tuple[Text, ...]:
    """What a studio says, to be translated."""
    return collected(lambda tell: told_studio(studio, tell))


def term_texts(terms: tuple[Term, ...]) -> tuple[Text, ...]:
    """The words that a studio explains itself, in the order of its file, to be translated."""
    own = sorted((term for term in terms if term.span is not None), key=lambda term: term.span.line if term.span else 0)
    return collected(lambda tell: told_terms(tuple(own), tell))


def shared_texts(studio: Studio, terms: tuple[Term, ...]) -> Iterator[tuple[str, tuple[Text, ...]]]:
    """The texts of each of these files by its name."""
    yield SITE, studio_texts(studio)
    yield STITCHES, term_texts(terms)


def read_shared(
    studio: Studio, terms: tuple[Term, ...], lines_of: Callable[[str, str], Lines | None]
) -> tuple[tuple[Translation, ...], tuple[Finding, ...]]:
    """For each language the words of studio and stitches in it, and what is wrong with them."""
    found: list[Translation] = []
    findings: list[Finding] = []
    for into in studio.languages[1:]:
        before: Translation | None = None
        for name, texts in shared_texts(studio, terms):
            lines = lines_of(name, into)
            if lines is None:
                first = next((text for text in texts if text.words != studio.name), None)  # a name needs no words
                findings.extend([untranslated(first.span, name, f"content/{name}.yaml", into)] if first else [])
            else:
                own, wrong = read_translation(lines, studio.language, into, before, studio.listed.get(into, ()))
                findings.extend((*wrong, *judged(f"content/{name}.yaml", texts, texts, own)))
                accepted = before.accepted if before is not None else ()
                before = replace(own, accepted=(*accepted, *own.accepted))
        found.extend([before] if before is not None else [])
    return tuple(found), tuple(findings)
