"""In: the sound patterns of a project. Out: the site in each of its languages: what of it there is, and where."""

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, replace

from sizewright.base.language import Language, language, speaking
from sizewright.proof.proofed import Proofed
from sizewright.publish.card import Card
from sizewright.publish.feed import FEED, Correction, Listed, feed
from sizewright.publish.in_language import names_in, told_in
from sizewright.publish.kept import Kept
from sizewright.publish.offline import NoNetwork
from sizewright.publish.output import Output
from sizewright.publish.pages import data_page, page_paths
from sizewright.publish.theme import Theme
from sizewright.publish.view_pattern import pattern_path
from sizewright.publish.within import Among, Within, folder_of
from sizewright.read.pattern import Pattern
from sizewright.read.project import Project


@dataclass(frozen=True, slots=True)
class SiteIn:
    """The site in one language: the project and its sound patterns as they are told in it.

    `kept` are refused patterns that keep the pages they had in this language.
    """

    language: Language
    within: Within
    project: Project
    proofed: tuple[Proofed, ...]
    kept: tuple[Kept, ...]

    @property
    def cards(self) -> tuple[Card, ...]:
        """The cards of all patterns, those of the kept ones behind."""
        return tuple(listed.card for listed in self.listed)

    @property
    def listed(self) -> tuple[Listed, ...]:
        """The patterns as a feed tells them."""
        fresh = (Listed(Card.of(each), corrections(each.graded.pattern)) for each in self.proofed)
        return (*fresh, *(each.listed for each in self.kept))

    def without_network(self) -> NoNetwork:
        """What is said in this language where a page cannot be had."""
        with speaking(self.language):
            return NoNetwork.told()

    def data(self) -> Iterator[Output]:
        """What machines read: the numbers of every pattern, and the feed."""
        below = self.within.below
        for each in self.proofed:
            yield Output(below + pattern_path(each.graded.pattern.name, "json"), data_page(each, self.project))
        yield Output(below + FEED, feed(self.project.studio, self.listed, below))


def sites(
    project: Project,
    sound: Sequence[Proofed],
    theme: Theme,
    kept_in: Callable[[str], tuple[Kept, ...]] = lambda _: (),
    refused: Collection[str] = (),
) -> tuple[SiteIn, ...]:
    """The site in every language, the first first; `kept_in` gives what is kept below a folder of the site.

    Of the `refused` patterns a site has only what is kept.
    """
    codes = project.studio.languages
    folders = (*(folder / "catalogues" for folder in theme.folders), project.folder / "content" / "catalogues")
    made = []
    for code in codes:
        below = folder_of(code, codes)
        (told, proofed), kept = told_in(code, project, sound), kept_in(below)
        spoken = language(code, folders).naming(names_in(told))
        there = _without(told, set(refused) - {one.listed.card.name for one in kept})
        paths = page_paths(told, proofed, kept, first=not below)
        own = Among(code, spoken.own_name, below, paths)
        made.append(SiteIn(spoken, Within(own), there, proofed, kept))
    among = tuple(site.within.own for site in made if site.within.own)
    return tuple(replace(site, within=replace(site.within, all=among)) for site in made)


def _without(project: Project, names: Collection[str]) -> Project:
    """A project without these patterns: nothing is to lead to a page that is not there."""
    return replace(project, patterns=tuple(one for one in project.patterns if one.name not in names))


def corrections(pattern: Pattern) -> tuple[Correction, ...]:
    """What a feed tells of changes."""
    return tuple(Correction(change.date.date.isoformat(), change.text.text) for change in pattern.header.changes)
