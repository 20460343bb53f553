"""In: a project and its sound patterns. Out: both as they are told in one of its languages."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from itertools import chain

from sizewright.base.language import speaking, spoken
from sizewright.proof.proofed import Proofed
from sizewright.read.pattern import Pattern
from sizewright.read.project import Project
from sizewright.read.translating.pictures import with_pictures_in
from sizewright.read.translating.told import in_language, shared_in, translation_of


def sound_in(code: str, project: Project, sound: Sequence[Proofed]) -> tuple[Proofed, ...]:
    """Those that there are in a language, as they are in that of the sources."""
    first = code == project.studio.language
    return tuple(each for each in sound if first or translation_of(each.graded.pattern, code) is not None)


def told_in(code: str, project: Project, sound: Sequence[Proofed]) -> tuple[Project, tuple[Proofed, ...]]:
    """What there is in a language: all in the first, in another one what has been translated."""
    if code == project.studio.language:
        return project, tuple(sound)
    shared = shared_in(project, code)
    patterns = _translated(project.patterns, code, project.media)
    told = replace(
        shared,
        studio=replace(shared.studio, languages=(code,)),
        patterns=tuple(patterns.values()),
        pages=tuple(_translated(project.pages, code, project.media).values()),
        techniques=tuple(_translated(project.techniques, code, project.media).values()),
    )
    names = ((each, patterns.get(each.graded.pattern.name)) for each in sound)
    return told, tuple(_proofed(each, pattern) for each, pattern in names if pattern is not None)


def _translated(sources: Sequence[Pattern], code: str, media: Collection[str]) -> Mapping[str, Pattern]:
    translated = (in_language(one, code) for one in sources if translation_of(one, code) is not None)
    return {one.name: with_pictures_in(one, code, media) for one in translated}


def _proofed(each: Proofed, pattern: Pattern) -> Proofed:
    """A proofed pattern as it is told: the same numbers, rows and findings, with the words of its translation."""
    return replace(each, worked=replace(each.worked, graded=replace(each.graded, pattern=pattern)))


def names_in(project: Project) -> Mapping[str, str]:
    """What a project that is told in a language calls by a name: in what its studio says, and in all its patterns."""
    found: dict[str, str] = {}
    of_all = (project.translations, *(pattern.translations for pattern in project.patterns))
    for translation in chain.from_iterable(of_all):
        found |= translation.names
    return found


@contextmanager
def telling(pattern: Pattern) -> Iterator[None]:
    """What is written within is told of this source: `named` knows what it calls its sizes, yarns and pieces."""
    translation = translation_of(pattern, spoken().code)
    own = translation.names if translation is not None else {}
    with speaking(spoken().naming({**spoken().names, **own})):
        yield
