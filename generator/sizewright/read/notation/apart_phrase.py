"""In: a sentence that says to go on back and forth. Out: a joined piece is worked in rows from there."""

from sizewright.read.notation.direction_tree import Apart, Direction, Promise
from sizewright.read.notation.phrase_match import Match
from sizewright.read.notation.tree import Promised
from sizewright.read.notation.words import told_sentence

_STS = r"\b(?:sts?|stitch|stitches)\b"
APART = (
    r"(?:(?:now )?(?:work|continue|cont|knit)(?: to work)? back and forth)(?P<rows> in rows)?"
    rf"(?P<over> (?:over|on) (?:[a-z]+ )*?(?:(?P<count>#) )?(?:[a-z]+ )*?{_STS})?(?: only)?"
)


def apart(match: Match) -> tuple[Direction, ...]:
    """What it says; a count in it is a promise."""
    count = match.count("count")
    promise = Promise(count.span, Promised.TOTAL, count) if count is not None else None
    plain = match.has("rows") and not match.has("over")
    return (Apart(match.span, () if plain or promise is not None else told_sentence(match.tokens), promise),)
