"""In: the abbreviations and techniques of a pattern. Out: its words, each of those marked where it stands first.

A word is marked once in each section, since a page full of links is read by nobody. An abbreviation opens its meaning,
which stands once on the page; a word of a technique that the pattern lists, and that has no abbreviation, leads to it.
"""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from markupsafe import Markup, escape

from sizewright.base.language import in_english
from sizewright.publish.view import Link, TermView
from sizewright.publish.view_words import MARKUP, WordsView, in_both_terms, told_both, told_stretches
from sizewright.read.pattern import Pattern
from sizewright.read.trade_words import Country

_OPENING = re.compile(r"<(/?)(?:a|h[1-6]|summary)\b")
_BUTTON = Markup('<button type="button" class="told" popovertarget="told--{}">{}</button>')
# An abbreviation of two short parts, "zus-str", which no line may end within; English has none.
_TWO_PARTS = re.compile(r"(?<![\w-])\w{1,4}-\w{1,4}(?![\w-])")
_WHOLE = '<span class="whole">{}</span>'
WHOLE = re.compile(_WHOLE.format("(.*?)"))
_LINK = Markup('<a class="taught" href="{}">{}</a>')


@dataclass(slots=True)
class Explained:
    """What can be explained in one pattern, and what has been in the section that is read."""

    marks: Mapping[str, TermView | Link] = field(default_factory=dict)
    found: re.Pattern[str] | None = None
    words: WordsView | None = None  # whose terms they are; without, they are not told in those of the other country
    seen: set[str] = field(default_factory=set)
    inside: int = 0  # how many links, headings and the like are open: in them nothing is marked
    for_some: int = 0  # how many passages for some sizes are open: what they say, the others have not read

    @classmethod
    def of(cls, terms: Iterable[TermView], techniques: Iterable[tuple[Link, Pattern]], words: WordsView) -> "Explained":
        """Those of the terms that occur in a pattern, and of the techniques that it lists."""
        marks: dict[str, TermView | Link] = {}
        for link, technique in techniques:
            marks |= dict.fromkeys(_words_of(technique), link)
        for term in terms:
            marks |= dict.fromkeys((spelling.casefold() for spelling in (term.term, *term.spellings)), term)
        longest = sorted(marks, key=len, reverse=True)
        found = "|".join(re.escape(word) + (r"\d*" if word.isalpha() else "") for word in longest)
        return cls(marks, re.compile(rf"(?<!\w)(?:{found})(?!\w)", re.IGNORECASE) if longest else None, words)

    def heading(self) -> None:
        """A heading is opened: what is said in its section first is explained again."""
        self.seen.clear()
        self.inside += 1

    def plain(self, text: str) -> Markup:
        """Words in which nothing is marked: a label, a count."""
        return whole(in_both_terms(text, self.words) if self.words else escape(text))

    def line(self, text: str) -> Markup:
        """The words of an instruction."""
        return Markup().join(self._words(text, 1, escape))

    def markup(self, html: str) -> str:
        """Finished markup of the text; nothing is marked within a link, a heading or code."""
        return "".join(part if at % 2 else self._between(part) for at, part in enumerate(self._parts(html)))

    def _parts(self, html: str) -> Iterator[str]:
        """Text and markup in turn; links and headings are counted as they are opened and closed."""
        for at, part in enumerate(MARKUP.split(html)):
            yield part
            tag = _OPENING.match(part) if at % 2 else None
            if tag is not None:
                self.inside += -1 if tag[1] else 1

    def _between(self, text: str) -> str:
        if self.inside > 0:
            return str(self.plain(Markup(text)))  # noqa: S704 (of the reader)
        return str(Markup().join(self._words(text, 2, Markup)))

    def yarn_over(self, word: str, in_uk: str) -> Markup | None:
        """A yarn over in the terms of both, explained where it stands first; None where it is told in one alone."""
        if self.words is None or self.words.country is Country.UK or not in_english():
            return None
        other = in_uk.capitalize() if word[:1].isupper() else in_uk
        mark = self._mark(word)
        twice = told_both(word, other)
        return marked(twice, mark) if mark and not self._known(mark) else twice

    def _words(self, text: str, shortest: int, as_markup: Callable[[str], Markup]) -> Iterator[Markup]:
        """Words told in both terms and marked; a word of fewer letters than `shortest` is no abbreviation."""
        for typed, twice in told_stretches(text, self.words):
            if twice is None:
                for words, mark in self._stretches(typed, shortest):
                    told = whole(as_markup(words))
                    yield marked(told, mark) if mark else told
                continue
            mark = self._mark(typed)
            new = mark is not None and not self._known(mark)
            yield marked(twice, mark) if mark and new else twice

    def _stretches(self, text: str, shortest: int) -> Iterator[tuple[str, TermView | Link | None]]:
        """Words that are the same in both terms, each with what explains it."""
        at = 0
        for match in self.found.finditer(text) if self.found else ():
            mark = self._mark(match.group())
            if mark is None or len(match.group()) < shortest or self._known(mark):
                continue
            yield text[at : match.start()], None
            yield match.group(), mark
            at = match.end()
        yield text[at:], None

    def _mark(self, word: str) -> TermView | Link | None:
        known = word.casefold()
        mark = self.marks.get(known) or self.marks.get(known.rstrip("0123456789"))
        exact = isinstance(mark, TermView) and mark.exact and word not in (mark.term, *mark.spellings)
        return None if exact else mark

    def _known(self, mark: TermView | Link) -> bool:
        """Whether it was explained in this section already; from now on it was."""
        name = mark.anchor if isinstance(mark, TermView) else mark.href
        known = name in self.seen
        if not self.for_some:
            self.seen.add(name)
        return known


def whole(words: Markup) -> Markup:
    """Words in which no line ends at the hyphen of an abbreviation; copied, they are what they were."""
    if in_english():
        return words
    return Markup(_TWO_PARTS.sub(lambda found: _WHOLE.format(found[0]), words))  # noqa: S704 (was markup)


def marked(words: Markup, mark: TermView | Link) -> Markup:
    """Words that open their meaning, or lead to their technique."""
    if isinstance(mark, TermView):
        return _BUTTON.format(mark.anchor, words)
    return _LINK.format(mark.href, words) if mark.href else words


def _words_of(technique: Pattern) -> Iterator[str]:
    """The words of a technique that mean it wherever they stand: several words, or one that its title is made of."""
    title = technique.header.title.casefold()
    for words in technique.header.terms:
        known = words.text.casefold()
        if len(known.split()) > 1 or known in re.findall(r"\w+", title) or title.startswith(known):
            yield known
