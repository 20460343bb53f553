"""In: the header of a pattern and the studio. Out: the cautions a reader sees: those declared, and those that follow.

What follows from the pattern itself is shown though nobody wrote it: a reader's child is no safer for a line that was
forgotten. The rule `child-without-caution` still asks the designer to say it.
"""

from collections.abc import Iterator
from itertools import combinations

from sizewright.draw.yarn_colours import contrast, told_colour
from sizewright.proof.ages import for_a_child
from sizewright.publish.view import CautionView
from sizewright.read.cautions import caution
from sizewright.read.pattern import Header, Yarn
from sizewright.read.project import Studio
from sizewright.read.yarn_fibres import of_animals

# From here on two yarns are strongly different: what WCAG asks of things to be told apart; for bleeding our own choice.
_STRONG = 3.0


def caution_views(header: Header, studio: Studio) -> tuple[CautionView, ...]:
    """The cautions in the order declared, then those that follow; one of the designer's own has no title and source."""
    kind = header.kind.text if header.kind else ""
    declared = [words.text for words in header.cautions]
    names = dict.fromkeys((*declared, *_following(header, studio)))
    return tuple(_view(name, kind, studio) for name in names)


def _view(name: str, kind: str, studio: Studio) -> CautionView:
    known = caution(name, kind, studio.cautions)
    return CautionView(known.heading, known.text, known.source) if known else CautionView("", name, "")


def _following(header: Header, studio: Studio) -> Iterator[str]:
    children = any(map(for_a_child, header.sizes))
    if children:
        yield "small-children"
    if _may_bleed(header.yarns):
        yield "dye"
    if any(yarn.fibre and of_animals(yarn.fibre.text) for yarn in header.yarns):
        yield "animal-fibre"
    for own in studio.cautions:
        if own.where == "everywhere" or (own.where == "children" and children):
            yield own.name


def _may_bleed(yarns: tuple[Yarn, ...]) -> bool:
    """Whether two yarns of told colours are strongly different."""
    colours = [colour for yarn in yarns if (colour := told_colour(yarn))]
    return any(contrast(one, other) >= _STRONG for one, other in combinations(colours, 2))
