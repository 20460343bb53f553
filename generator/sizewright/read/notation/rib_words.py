"""In: actions. Out: whether they are one repeat of a rib, "k2, p2"."""

from collections.abc import Sequence

from sizewright.read.notation.tree import Action, Work


def is_rib(actions: Sequence[Action]) -> bool:
    """Whether these are so many knit and so many purl stitches, and nothing else."""
    plain = [action for action in actions if isinstance(action, Work) and action.count is not None]
    return len(plain) == len(actions) == 2 and {action.stitch.term for action in plain} == {"k", "p"}
