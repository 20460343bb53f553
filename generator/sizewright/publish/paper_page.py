"""In: a proofed pattern. Out: its print pages, one for each edition; what they name, they name from `patterns/`."""

from functools import cache

from sizewright.proof.proofed import Proofed
from sizewright.publish.editions import ALL_SIZES, Edition
from sizewright.publish.in_language import telling
from sizewright.publish.links import Links
from sizewright.publish.pages import site_view
from sizewright.publish.theme import Theme
from sizewright.publish.view import PatternView
from sizewright.publish.view_one_size import one_size_view
from sizewright.publish.view_pattern import pattern_path, pattern_view
from sizewright.publish.view_site import Page
from sizewright.publish.view_terms import Terms
from sizewright.publish.within import ALONE, Within
from sizewright.read.project import Project

_USUAL, _LARGE = "paper.html", "large.html"


class PaperPages:
    """The print pages of one pattern. What several editions show is worked out once."""

    def __init__(self, proofed: Proofed, project: Project, theme: Theme, within: Within = ALONE) -> None:
        self._project, self._theme, self._worked = project, theme, proofed.worked
        address, untranslated = project.studio.address, within.untranslated
        self._links = Links("../", address, paper=True, below=within.below, untranslated=untranslated)
        self._terms = Terms.of(project, self._links)
        self._every = pattern_view(self._worked, project, self._links, self._terms)
        self._view = cache(self._of_size)

    def page(self, edition: Edition) -> str:
        """The page of an edition. Raises BadTheme where a template cannot be used."""
        view = self._view(edition.place)
        name = self._worked.graded.pattern.name
        page = Page(view.title, view.summary, pattern_path(name, "pdf"), view.address)
        template = _LARGE if edition.large else _USUAL
        return self._theme.render(template, site=site_view(self._project, self._links), page=page, pattern=view)

    def _of_size(self, place: int | None) -> PatternView:
        if place is None:
            return self._every
        with telling(self._worked.graded.pattern):
            return one_size_view(self._every, self._worked, self._project, self._links, self._terms, place)


def paper_page(proofed: Proofed, project: Project, theme: Theme, edition: Edition = ALL_SIZES) -> str:
    """One print page of a pattern. Raises BadTheme where a template cannot be used."""
    return PaperPages(proofed, project, theme).page(edition)
