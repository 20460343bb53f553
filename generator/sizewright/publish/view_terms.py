"""In: the words of a pattern. Out: the abbreviations that occur in it, each with its meaning and where it is explained.

A term occurs where any of its spellings stands as a whole word, capitals aside, the longest spelling first: "k2tog" is
not a "k", and "K2" is one. A spelling of one letter counts in instructions only: in running text it is a letter.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from html import unescape
from unicodedata import normalize

from sizewright.publish.links import Links
from sizewright.publish.told_lines import ToldLines
from sizewright.publish.view import Link, TermView
from sizewright.publish.view_words import INTERFACE, WordsView
from sizewright.read.pattern import Markup, Pattern, StitchBlock, WorkBlock
from sizewright.read.project import Project, Term
from sizewright.read.trade_words import AMBIGUOUS, Country, country_of

PATH = "abbreviations.html"
_TAG = re.compile(r"<[^>]*>")
_WORD = re.compile(r"\w+")


@dataclass(frozen=True, slots=True)
class Terms:
    """The terms of a project, ready to be found and shown on pages of one depth; `views` is in their order."""

    views: tuple[TermView, ...]
    taught: Mapping[int, Pattern]
    phrases: tuple[tuple[str, re.Pattern[str], int], ...]
    words: Mapping[str, int]

    @classmethod
    def of(cls, project: Project, links: Links) -> "Terms":
        """The terms of a project, for the pages that these links are made for."""
        terms = project.terms
        spellings = {
            spelling.casefold(): index
            for index, term in reversed(list(enumerate(terms)))
            for spelling in (*term.spellings, term.term)
            if spelling.strip()
        }
        taught = dict(_taught(project, spellings))
        own = project.studio.terms or Country.US
        phrases = sorted((spelling for spelling in spellings if not _WORD.fullmatch(spelling)), key=len, reverse=True)
        return cls(
            tuple(
                _view(term, anchor, taught.get(at), links, own) for at, (term, anchor) in enumerate(_anchored(terms))
            ),
            taught,
            tuple((phrase, _whole(phrase), spellings[phrase]) for phrase in phrases),
            {spelling: index for spelling, index in spellings.items() if _WORD.fullmatch(spelling)},
        )

    def used(self, pattern: Pattern, words: WordsView) -> tuple[TermView, ...]:
        """The terms that occur in the body of a pattern; ambiguous names by the rows they have in its terms."""
        instructions, text = "\n".join(_instructions(pattern)), "\n".join(_text(pattern))
        found = {*self._found(instructions.casefold(), 1), *self._found(text.casefold(), 2)}
        views = (self.views[index] for index in sorted(found))
        return tuple(_settled((one for one in views if not one.exact or _stands(one, instructions, text)), words))

    def taught_by(self, technique: Pattern, words: WordsView) -> tuple[TermView, ...]:
        """The terms that a technique explains, and the ambiguous names that occur in it."""
        taught = tuple(view for index, view in enumerate(self.views) if self.taught.get(index) is technique)
        ambiguous = (view for view in self.used(technique, words) if _rows(view.term, words.country)[1])
        return tuple(dict.fromkeys((*taught, *ambiguous)))

    def _found(self, text: str, shortest: int) -> Iterator[int]:
        for phrase, whole, index in self.phrases:
            if phrase in text:
                text, count = whole.subn(" ", text)
                if count:
                    yield index
        for word in set(_WORD.findall(text)):
            bare = word if word in self.words else word.rstrip("0123456789")
            if len(bare) >= shortest and bare in self.words:
                yield self.words[bare]


def _stands(term: TermView, *texts: str) -> bool:
    """Whether a term stands somewhere with its own capitals."""
    spelled = "|".join(map(re.escape, (term.term, *term.spellings)))
    return any(re.search(rf"(?<!\w)(?:{spelled})(?!\w)", text) for text in texts)


def _taught(project: Project, spellings: Mapping[str, int]) -> Iterator[tuple[int, Pattern]]:
    """Each term some technique explains: the technique names the term, or the studio's own term the technique."""
    by_name = {technique.name: technique for technique in project.techniques}
    for technique in project.techniques:
        for words in technique.header.terms:
            index = spellings.get(words.text.casefold())
            if index is not None:
                yield index, technique
    for index, term in enumerate(project.terms):
        if term.technique in by_name:
            yield index, by_name[term.technique]


def _view(term: Term, anchor: str, technique: Pattern | None, links: Links, own: Country) -> TermView:
    link = Link(technique.header.title, links.to(f"techniques/{technique.name}.html")) if technique else None
    others = tuple(spelling for spelling in term.spellings if spelling != term.term)
    words = INTERFACE if term.span is None else _words_of(term, own)
    return TermView(term.term, term.meaning, anchor, links.to(PATH, anchor), link, others, words, term.exact)


def _words_of(term: Term, own: Country) -> WordsView:
    """Whose terms a studio explains one of its own words in."""
    country = country_of(f"{term.term}: {term.meaning}") or own
    return WordsView(country, country)


def _settled(terms: Iterable[TermView], words: WordsView) -> Iterator[TermView]:
    """Ambiguous names told by their rows; one that has a block of rows here needs none."""
    own = " ".join(words.names).casefold()
    for term in terms:
        country, rows = _rows(term.term, words.country)
        if not rows or term.words is not INTERFACE:  # a studio's own meaning wins
            yield term
        elif term.term not in own:
            yield replace(term, meaning=rows, words=WordsView(country, words.first))


def _rows(name: str, country: Country) -> tuple[Country, str]:
    """What an ambiguous name means, and where: in the text's own country if it is a name there."""
    found = ((one, AMBIGUOUS[one].get(name, "")) for one in (country, country.other))
    return next(((one, rows) for one, rows in found if rows), (country, ""))


def _anchored(terms: tuple[Term, ...]) -> Iterator[tuple[Term, str]]:
    """Each term with its fragment; terms without letters, or with the letters of another, get a number."""
    taken = set()
    for number, term in enumerate(terms, start=1):
        plain = normalize("NFKD", term.term.casefold()).encode("ascii", "ignore").decode()
        slug = "-".join(_WORD.findall(plain))
        anchor = f"term-{slug}" if slug and f"term-{slug}" not in taken else f"term-{number}-{slug}".rstrip("-")
        taken.add(anchor)
        yield term, anchor


def _whole(phrase: str) -> re.Pattern[str]:
    """The phrase where it does not go on to either side as a word."""
    before = r"(?<!\w)" if _WORD.match(phrase) else ""
    after = r"(?!\w)" if _WORD.fullmatch(phrase[-1]) else ""
    return re.compile(before + re.escape(phrase) + after)


def _instructions(pattern: Pattern) -> Iterator[str]:
    lines_told = ToldLines.of(pattern)
    for piece in pattern.body:
        match piece:
            case WorkBlock(lines=lines) | StitchBlock(lines=lines):
                yield from map(lines_told.words, lines_told.whole(lines))


def _text(pattern: Pattern) -> Iterator[str]:
    for piece in pattern.body:
        if isinstance(piece, Markup):
            yield unescape(_TAG.sub(" ", piece.html))
