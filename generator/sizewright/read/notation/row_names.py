"""In: what a row or round is called, beside its number. Out: it in the spoken language, where it is a usual name."""

from sizewright.base.language import later_as
from sizewright.read.notation.phrasing import name_as

_ROWS = frozenset(
    (
        later_as("name of a row", "Next Row"),
        later_as("name of a row", "Next Rnd"),
        later_as("name of a row", "Dec Row"),
        later_as("name of a row", "Dec Rnd"),
        later_as("name of a row", "Inc Row"),
        later_as("name of a row", "Inc Rnd"),
        later_as("name of a row", "Full Dec Row"),
        later_as("name of a row", "Full Dec Rnd"),
        later_as("name of a row", "Full Inc Row"),
        later_as("name of a row", "Full Inc Rnd"),
        later_as("name of a row", "First Dec Row"),
        later_as("name of a row", "First Dec Rnd"),
        later_as("name of a row", "Second Dec Row"),
        later_as("name of a row", "Second Dec Rnd"),
        later_as("name of a row", "Third Dec Row"),
        later_as("name of a row", "Third Dec Rnd"),
        later_as("name of a row", "Set-Up Row"),
        later_as("name of a row", "Set-Up Rnd"),
        later_as("name of a row", "Set-up Row"),
        later_as("name of a row", "Set-up Rnd"),
        later_as("name of a row", "Setup Row"),
        later_as("name of a row", "Setup Rnd"),
        later_as("name of a row", "Pick-Up Row"),
        later_as("name of a row", "Pick-Up Rnd"),
        later_as("name of a row", "Pick-up Row"),
        later_as("name of a row", "Pick-up Rnd"),
        later_as("name of a row", "Joining Row"),
        later_as("name of a row", "Joining Rnd"),
        later_as("name of a row", "Dividing Row"),
        later_as("name of a row", "Dividing Rnd"),
        later_as("name of a row", "Foundation Row"),
        later_as("name of a row", "Foundation Rnd"),
        later_as("name of a row", "Eyelet Row"),
        later_as("name of a row", "Eyelet Rnd"),
        later_as("name of a row", "Last Row"),
        later_as("name of a row", "Last Rnd"),
    )
)
_WHOLE_LABELS = frozenset(
    (
        later_as("label of a row", "Divide for fronts"),
        later_as("label of a row", "Divide for thumb"),
        later_as("label of a row", "Divide for sleeves"),
        later_as("label of a row", "Divide for body and sleeves"),
        later_as("label of a row", "Join body and sleeves"),
    )
)


def row_called(name: str) -> str:
    """A row by its name: "Dec Row", "Set-up Rnd"."""
    return name_as("name of a row", name, _ROWS)


def whole_label(label: str) -> str:
    """An unusual label, kept whole."""
    return name_as("label of a row", label, _WHOLE_LABELS)
