"""What is let pass: the nodes of `accepted` in a header or a translation, and of `rules` in `site.yaml`."""

from dataclasses import dataclass

from sizewright.base.place import Span
from sizewright.read.inserts import Words


@dataclass(frozen=True, slots=True)
class Acceptance:
    """A finding that is let pass: its rule, words of the line it stands on, the heading above it, its sizes, and why.

    `text` None means what is found of the header as a whole; no `sizes` means whichever are concerned. One in a file
    of translations is a remark, and is for the lines in `beside` alone: those of the pair that follows.
    """

    span: Span
    rule: Words
    reason: Words
    text: Words | None = None
    under: Words | None = None
    sizes: tuple[Words, ...] = ()
    beside: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class LevelSet:
    """What a studio says of a rule: "off", "warning" or "error", and why."""

    span: Span
    rule: Words
    level: Words
    reason: Words | None = None
