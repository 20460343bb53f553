"""A passage or a note for learners that holds nothing, or a size in which nothing is worked though others are.

**Why it matters.** The reader of that size turns the page and finds no instructions: either they were lost, or the size
should not be offered.

**Example.** `::: sizes Small`, and in the next line `:::`

**Instead.** Write what those sizes are to do, or take the passage out.
"""

from collections.abc import Iterator
from itertools import pairwise

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.pattern import Markup, NoteClose, NoteOpen, PassageClose, PassageOpen, Piece
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("empty-passage", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each empty passage, and one at each size without work."""
    pieces = [piece for piece in worked.graded.pattern.body if not _blank(piece)]
    for opened, closed in pairwise(pieces):
        if isinstance(opened, PassageOpen) and isinstance(closed, PassageClose):
            message = f"This passage for {', '.join(opened.sizes)} holds nothing."
            yield RULE.at(opened.span, message, "Write what is meant for them, or take it out.", opened.sizes)
        elif isinstance(opened, NoteOpen) and isinstance(closed, NoteClose):
            yield RULE.at(opened.span, "This note for learners holds nothing.", "Write it, or take it out.")
    worked_in = [any(entry.after[at] is not None for entry in worked.entries) for at in range(len(worked.graded.sizes))]
    for at, size in enumerate(worked.graded.pattern.header.sizes):
        if any(worked_in) and not worked_in[at]:
            mend = "Write its rows, or take the size out of the header."
            yield RULE.at(size.span, f"Nothing is worked in “{size.name}”.", mend, (size.name,))


def _blank(piece: Piece) -> bool:
    return isinstance(piece, Markup) and not piece.html.strip()
