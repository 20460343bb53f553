"""In: a proofed pattern and one of its sizes. Out: everything the paper of that size shows, and nothing of another.

Nothing is hidden: what is another size's is not there. What is there is printed as it is among all sizes.
"""

from dataclasses import replace

from markupsafe import Markup

from sizewright.base.language import named
from sizewright.publish.for_size import pieces_for
from sizewright.publish.links import Links
from sizewright.publish.view import PatternView
from sizewright.publish.view_departed import DeparturesView
from sizewright.publish.view_explained import Explained
from sizewright.publish.view_facts import change_views
from sizewright.publish.view_pattern import body_of, picture_view
from sizewright.publish.view_start import untitled
from sizewright.publish.view_terms import Terms
from sizewright.publish.view_yarn import amount_notes
from sizewright.read.project import Project
from sizewright.work.worked import Worked


def one_size_view(
    every: PatternView, worked: Worked, project: Project, links: Links, terms: Terms, place: int
) -> PatternView:
    """The view of all sizes made that of the size at that place.

    A picture drawn of the piece is one of another size, so it is left out.
    """
    metric_first, pattern = project.studio.metric_first, worked.graded.pattern
    pieces = tuple(pieces_for(pattern.size_names[place], untitled(pattern.body)[1]))
    return replace(
        every,
        only=every.sizes[place],
        picture=picture_view(pattern.header.picture, links),
        sizes=(),
        order="",
        table=every.table and every.table.only(place),
        amounts=every.amounts and every.amounts.only(place),
        amount_notes=amount_notes(worked, metric_first=metric_first, only=place),
        terms=terms.used(replace(pattern, body=pieces), every.words),
        body=body_of(worked, pieces, links, Explained.of((), (), every.words), metric_first=metric_first, only=place),
        changes=change_views(pattern.header.changes, tuple(map(named, pattern.size_names)), place),
        departures=every.departures and _departures(every.departures, place),
    )


def _departures(every: DeparturesView, place: int) -> DeparturesView:
    """What is done otherwise; what that changes in every size is told by the paper for all sizes."""
    items = tuple(replace(item, where=Markup(), changes=()) for item in every.items)
    return replace(every, items=items, totals=every.totals and every.totals.only(place))
