"""What templates are given of a schematic: plain frozen data, like that of `view.py`."""

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class EdgeView:
    """A measurement of a schematic: its letter on the drawing, its label, and its value in every size."""

    letter: str
    label: str
    value: Markup


@dataclass(frozen=True, slots=True)
class PieceView:
    """A piece of a schematic: its name, its drawing (SVG), and its measurements."""

    name: str
    drawing: Markup
    edges: tuple[EdgeView, ...]


@dataclass(frozen=True, slots=True)
class SchematicView:
    """Pieces drawn to one scale. `folded`: some lie folded in half; `nested`: several sizes lie one in another."""

    pieces: tuple[PieceView, ...]
    folded: bool
    nested: bool
