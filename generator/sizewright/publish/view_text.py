"""In: a technique or a page of plain content. Out: what its page shows."""

from dataclasses import replace

from sizewright.grade.run import grade
from sizewright.proof.wording import Wording
from sizewright.publish.links import Links, film_address
from sizewright.publish.usual_names import spoken_skill
from sizewright.publish.view import Body, FilmView, TechniqueView, TextView
from sizewright.publish.view_body import body_view
from sizewright.publish.view_explained import Explained
from sizewright.publish.view_facts import text_of
from sizewright.publish.view_pattern import picture_view
from sizewright.publish.view_terms import Terms
from sizewright.publish.view_words import WordsView
from sizewright.read.pattern import Film, Insert, Pattern, SchematicBlock
from sizewright.read.project import Project


def text_view(source: Pattern, project: Project, links: Links) -> TextView:
    """A page of plain content."""
    words = WordsView.of(source, project.studio)
    summary = text_of(source.header.summary)
    differs = words.differs(summary) or words.differs(Wording.of(source).body)
    return replace(introduction(source, project, links, words), words=words, switched=differs)


def introduction(source: Pattern, project: Project, links: Links, words: WordsView | None = None) -> TextView:
    """What the studio says at the top of a page that every site has."""
    header, body = source.header, _body(source, project, links, words)
    return TextView(header.title, text_of(header.summary), picture_view(header.picture, links), body)


def technique_view(source: Pattern, project: Project, links: Links, terms: Terms) -> TechniqueView:
    """One technique."""
    header, words = source.header, WordsView.of(source, project.studio)
    return TechniqueView(
        title=header.title,
        summary=text_of(header.summary),
        skill=spoken_skill(text_of(header.skill)),
        picture=picture_view(header.picture, links),
        body=_body(source, project, links, words),
        films=tuple(map(_film, header.films)),
        terms=terms.taught_by(source, words),
        words=words,
        switched=words.differs(Wording.of(source).body),
    )


def _body(source: Pattern, project: Project, links: Links, words: WordsView | None = None) -> Body:
    """The text; it has no sizes, but may convert a length for its reader."""
    metric_first, told = project.studio.metric_first, Explained(words=words)
    if not any(isinstance(piece, Insert | SchematicBlock) for piece in source.body):
        return body_view(source, {}, links, metric_first=metric_first, drawn={}, schematics=(), explained=told)
    graded = grade(source)
    return body_view(
        source,
        graded.inserts,
        links,
        metric_first=metric_first,
        drawn={},
        schematics=graded.schematics,
        explained=told,
    )


def _film(film: Film) -> FilmView:
    minutes, seconds = divmod(film.start, 60)
    start = f"{minutes}:{seconds:02}" if film.start else ""
    return FilmView(film.title, film_address(film.address, film.start), start)
