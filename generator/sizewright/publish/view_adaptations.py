"""In: a pattern and the patterns of the site. Out: the adaptations of it that the site has, as its page lists them."""

from sizewright.publish.links import Links
from sizewright.publish.view_departed import AdaptationView
from sizewright.publish.view_facts import text_of
from sizewright.publish.view_words import WordsView
from sizewright.read.pattern import Pattern
from sizewright.read.project import Project


def adaptation_views(base: Pattern, project: Project, links: Links) -> tuple[AdaptationView, ...]:
    """Those that the site has in the language of the project, by their titles."""
    found = (one for one in project.patterns if one.header.based_on and one.header.based_on.pattern.text == base.name)
    return tuple(_view(one, project, links) for one in sorted(found, key=lambda one: (one.header.title, one.name)))


def _view(pattern: Pattern, project: Project, links: Links) -> AdaptationView:
    header = pattern.header
    return AdaptationView(
        header.title,
        text_of(header.designer),
        text_of(header.summary),
        links.to(f"patterns/{pattern.name}.html"),
        WordsView.of(pattern, project.studio),
    )
