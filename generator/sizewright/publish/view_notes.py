"""In: the pieces of a body. Out: the markup around a note for learners, folded until it is opened; or none of it."""

from collections.abc import Iterable, Iterator

from markupsafe import Markup

from sizewright.base.language import tr
from sizewright.read.pattern import NoteClose, NoteOpen, Piece

NOTE_CLOSING = Markup("</div>\n</details>\n")


def note_opening(title: str) -> Markup:
    """The markup before a note; "" is a note without a title of its own."""
    words = Markup('<b class="for">{}</b> {}').format(tr("For learners"), title) if title else tr("For learners")
    return Markup('<details class="learners"><summary>{}</summary>\n<div>\n').format(words)


def without_notes(pieces: Iterable[Piece]) -> Iterator[Piece]:
    """What is left for somebody who does not want them."""
    open_notes = 0
    for piece in pieces:
        open_notes += isinstance(piece, NoteOpen)
        if not open_notes:
            yield piece
        open_notes -= isinstance(piece, NoteClose)
