"""In: a proofed pattern. Out: everything its page and its paper show."""

from collections.abc import Iterator
from dataclasses import replace
from urllib.parse import quote

from markupsafe import Markup

from sizewright.base.language import named
from sizewright.base.printing import bracketed
from sizewright.publish.in_language import telling
from sizewright.publish.links import Links
from sizewright.publish.usual_names import spoken_kind, spoken_skill
from sizewright.publish.view import Body, DayView, Link, PatternView, Picture
from sizewright.publish.view_adaptations import adaptation_views
from sizewright.publish.view_beside import beside_groups
from sizewright.publish.view_body import body_view
from sizewright.publish.view_cautions import caution_views
from sizewright.publish.view_departures import departures_view
from sizewright.publish.view_drawn import figures, piece_picture
from sizewright.publish.view_explained import Explained
from sizewright.publish.view_facts import (
    change_views,
    day_view,
    text_of,
    yarn_view,
)
from sizewright.publish.view_fit import fit_view
from sizewright.publish.view_gauge import gauge_view, needle_html
from sizewright.publish.view_my_gauge import my_gauge_view
from sizewright.publish.view_rows import rows_data
from sizewright.publish.view_sizes import size_choices, size_table
from sizewright.publish.view_start import untitled
from sizewright.publish.view_terms import Terms
from sizewright.publish.view_words import WordsView
from sizewright.publish.view_yarn import amount_notes, amount_table
from sizewright.read.care_words import care_lines
from sizewright.read.pattern import Day, Pattern, Piece
from sizewright.read.pattern import Picture as HeaderPicture
from sizewright.read.project import Project
from sizewright.work.worked import Worked


def pattern_path(name: str, ending: str = "html") -> str:
    """Where a pattern's page, paper ("pdf") or data ("json") is in the site."""
    return f"patterns/{name}.{ending}"


def picture_view(picture: HeaderPicture | None, links: Links) -> Picture | None:
    """A picture of a header."""
    if picture is None:
        return None
    return Picture(links.media(picture.file), picture.alt, size=links.size(picture.file))


def pattern_view(worked: Worked, project: Project, links: Links, terms: Terms) -> PatternView:
    """The whole pattern; `links` and `terms` are made for the place where it is shown."""
    with telling(worked.graded.pattern):
        return _pattern_view(worked, project, links, terms)


def _pattern_view(worked: Worked, project: Project, links: Links, terms: Terms) -> PatternView:
    graded, metric_first = worked.graded, project.studio.metric_first
    pattern = graded.pattern
    sizes, words = size_choices(pattern.header.sizes), WordsView.of(pattern, project.studio)
    own_title, pieces = untitled(pattern.body)
    used, techniques = terms.used(pattern, words), tuple(_techniques(pattern, project, links))
    explained = Explained.of(() if links.paper else used, () if links.paper else techniques, words)
    told = _header_view(pattern, project, links, words)
    table = size_table(graded, sizes, metric_first=metric_first)
    amounts = amount_table(worked, sizes, metric_first=metric_first)
    return replace(
        told,
        picture=told.picture or piece_picture(worked, links),
        sizes=sizes,
        order=bracketed(tuple(map(named, pattern.size_names))) if sizes else "",
        fit=fit_view(graded, sizes, metric_first=metric_first),
        beside=() if links.paper else beside_groups(worked, table, amounts),
        table=table,
        my_gauge=my_gauge_view(worked, sizes, metric_first=metric_first),
        amounts=amounts,
        amount_notes=amount_notes(worked, metric_first=metric_first),
        terms=used,
        techniques=tuple(link for link, _ in techniques),
        own_title=own_title,
        body=body_of(worked, pieces, links, explained, metric_first=metric_first),
        rows=Markup() if links.paper else rows_data(worked, sizes, words, metric_first=metric_first),
        departures=departures_view(worked, project, links, sizes, metric_first=metric_first),
        adaptations=adaptation_views(pattern, project, links),
    )


def _header_view(pattern: Pattern, project: Project, links: Links, words: WordsView) -> PatternView:
    """What a header says by itself; what is worked out is left empty."""
    header, metric_first = pattern.header, project.studio.metric_first
    return PatternView(
        title=header.title,
        summary=text_of(header.summary),
        kind=spoken_kind(text_of(header.kind)),
        skill=spoken_skill(text_of(header.skill)),
        picture=picture_view(header.picture, links),
        gauges=tuple(gauge_view(gauge) for gauge in header.gauges),
        needles=tuple(map(needle_html, header.needles)),
        yarns=tuple(yarn_view(yarn, metric_first=metric_first) for yarn in header.yarns),
        notions=tuple(words.text for words in header.notions),
        cautions=caution_views(header, project.studio),
        care=care_lines(header.care),
        words=words,
        changes=change_views(header.changes),
        designer=text_of(header.designer),
        licence=text_of(header.licence),
        credits=tuple(words.text for words in header.credits),
        published=_day(header.published),
        revised=_day(header.revised),
        address=links.absolute(pattern_path(pattern.name)),
        pdf=quote(f"{pattern.name}.pdf"),
        data=quote(f"{pattern.name}.json"),
    )


def body_of(
    worked: Worked,
    pieces: tuple[Piece, ...],
    links: Links,
    explained: Explained,
    *,
    metric_first: bool,
    only: int | None = None,
) -> Body:
    """The body of these pieces, as the size at the place `only` reads it where that is given."""
    graded, drawn = worked.graded, figures(worked, links)
    return body_view(
        replace(graded.pattern, body=pieces),
        graded.inserts,
        links,
        metric_first=metric_first,
        drawn=drawn,
        schematics=graded.schematics,
        explained=explained,
        only=only,
    )


def _day(day: Day | None) -> DayView | None:
    return day_view(day.date) if day else None


def _techniques(pattern: Pattern, project: Project, links: Links) -> Iterator[tuple[Link, Pattern]]:
    """The techniques that a pattern lists, and the links that lead to them."""
    known = {technique.name: technique for technique in project.techniques}
    for words in pattern.header.techniques:
        technique = known.get(words.text)
        if technique is not None:
            header = technique.header
            yield Link(header.title, links.to(f"techniques/{words.text}.html"), text_of(header.summary)), technique
