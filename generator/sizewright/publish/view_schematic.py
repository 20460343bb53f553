"""In: a graded schematic. Out: what a page shows of it: its pieces drawn, and a table of their measurements."""

from collections.abc import Collection

from markupsafe import Markup

from sizewright.base.language import tr
from sizewright.base.telling import ranged
from sizewright.draw.schematic import Drawing, drawing_of
from sizewright.draw.schematic_piece import Figure, Lettered
from sizewright.draw.schematic_svg import figure_svg
from sizewright.grade.graded import Schematic
from sizewright.publish.usual_names import spoken_name
from sizewright.publish.view_numbers import insert_html
from sizewright.publish.view_piece import EdgeView, PieceView, SchematicView


def schematic_view(
    schematic: Schematic, *, metric_first: bool, only: int | None = None, sizes: Collection[str] = ()
) -> SchematicView | None:
    """The schematic, of one size `only` where that is given, its letters other than the names of the pattern's `sizes`.

    None where there is nothing to draw.
    """
    drawing = drawing_of(schematic, metric_first=metric_first, only=only, sizes=sizes)
    if drawing is None:
        return None
    pieces = tuple(_piece(figure, drawing, metric_first=metric_first, only=only) for figure in drawing.figures)
    return SchematicView(pieces, drawing.folded, any(figure.alone for figure in drawing.figures))


def _piece(figure: Figure, drawing: Drawing, *, metric_first: bool, only: int | None) -> PieceView:
    legend = [one for one in drawing.legend if one.piece == figure.name]
    edges = tuple(_edge(one, metric_first=metric_first, only=only) for one in legend)
    name = spoken_name(figure.name)
    letters = ranged(legend[0].letter, legend[-1].letter) if len(legend) > 1 else legend[0].letter
    title = tr(
        "Outline of the piece “{name}”, to scale; its measurements {letters} stand in the table beside it",
        name=name,
        letters=letters,
    )
    return PieceView(name, Markup(figure_svg(figure, title)), edges)  # noqa: S704 (markup of the drawing stage)


def _edge(one: Lettered, *, metric_first: bool, only: int | None) -> EdgeView:
    value = insert_html(one.edge.values, None, one.places, metric_first=metric_first, only=only)
    return EdgeView(one.letter, tr(one.edge.edge.label), value)
