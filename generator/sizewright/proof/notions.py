"""The things beside needles and yarn that a pattern asks for, one table: how they are listed, and what needs them.

Scissors, a tape measure, pins and the like are in every knitter's bag and in no instruction, so nothing is said of
them. The words are trade usage (common practice, no source).
"""

import re
from collections.abc import Callable
from dataclasses import dataclass

from sizewright.base.place import Span
from sizewright.proof.actions import actions_of, directions_of
from sizewright.proof.wording import Wording
from sizewright.read.notation.cables import crossing_of
from sizewright.read.notation.direction_tree import Gather, Join
from sizewright.read.notation.tree import Add, Hold, Mark, Marking, Work
from sizewright.read.pattern import Pattern

_ANY = re.compile(r"(?!)")


@dataclass(frozen=True, slots=True)
class Notion:
    """One thing: its name, what lists it, what work needs it, words that need it, and words that speak of it at all.

    `without` are words of the body that do without it.
    """

    name: str
    listed: re.Pattern[str]
    work: Callable[[Pattern], Span | None]
    needing: re.Pattern[str]
    spoken: re.Pattern[str]
    without: re.Pattern[str] = _ANY

    def needed(self, pattern: Pattern, wording: Wording) -> Span | None:
        """Where it is first needed; None where it is not, or where nobody can say."""
        if self.without.search(wording.body):
            return None
        by_work, by_words = self.work(pattern), self.needing.search(wording.body)
        places = [place for place in (by_work, wording.span(by_words) if by_words else None) if place]
        return min(places, default=None)


def _words(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{pattern})\b", re.I)


def _marking(pattern: Pattern) -> Span | None:
    marks = (action.span for action in actions_of(pattern) if isinstance(action, Mark) and action.what is Marking.PLACE)
    parted = (action.span for action in actions_of(pattern) if isinstance(action, Add) and action.parts > 1)
    joins = (one.span for one in directions_of(pattern) if isinstance(one, Join) and one.marked)
    return min((*marks, *parted, *joins), default=None)


def _crossing(pattern: Pattern) -> Span | None:
    """The first cable of more than a twist of two stitches, which can be worked without a needle for it."""
    cables = (action for action in actions_of(pattern) if isinstance(action, Work) and action.stitch.uses > 2)
    return min((one.span for one in cables if _is_cable(one)), default=None)


def _is_cable(action: Work) -> bool:
    return crossing_of(action.stitch.term) is not None or action.stitch.term.casefold().endswith("from cn")


def _holding(pattern: Pattern) -> Span | None:
    return min((action.span for action in actions_of(pattern) if isinstance(action, Hold)), default=None)


def _sewing(pattern: Pattern) -> Span | None:
    return min((one.span for one in directions_of(pattern) if isinstance(one, Gather)), default=None)


def _nowhere(pattern: Pattern) -> Span | None:  # noqa: ARG001 -- what work of the other kinds is asked the same way
    return None


_NEEDLES = "(?:tapestry|darning|yarn|wool|blunt|sewing|finishing) needles?|bodkin|needle for (?:sewing|weaving)"
_WEAVING = r"(?:weav\w+|darn\w*|sew\w*) in (?:all |the |your )*(?:loose )?(?:ends?|tails?)|mattress stitch|kitchener"
_ZIP = "zip(?:per)?s?"

NOTIONS = (
    Notion("stitch markers", _words("markers?"), _marking, _ANY, _words("markers?|pm|sm|rm")),
    Notion(
        "a cable needle",
        _words("cable needles?|cn"),
        _crossing,
        _ANY,
        _words(r"cables?|cabled|cabling|cn|[CT]\d+[FBLR]|\d/\d(?:/\d)? ?[LR]P?C"),
        _words("without (?:a |the )?cable needle"),
    ),
    Notion(
        "a stitch holder or waste yarn",
        _words(r"holders?|(?:waste|scrap|spare|contrast\w*) yarn|spare (?:needle|cable|circular)s?|lifeline|waste"),
        _holding,
        _ANY,
        _words("holders?|hold|held|waste yarn|scrap yarn|spare needle|provisional(?:ly)?|lifeline"),
    ),
    Notion(
        "a tapestry needle",
        _words(_NEEDLES),
        _sewing,
        _words(_WEAVING),
        _words(rf"weav\w+|darn\w*|sew\w*|seam\w*|graft\w*|kitchener|{_NEEDLES}|thread\w*|tails?|ends"),
    ),
    Notion(
        "a crochet hook",
        _words("(?:crochet )?hooks?"),
        _nowhere,
        _words(r"crochet(?:ed)? (?:cast[- ]on|edg\w+|chain|seam|border)|single crochet"),
        _words(r"crochet\w*|hook|provisional(?:ly)?|chain|pick(?:ing)? up|dropped"),
    ),
    Notion("buttons", _words("buttons?"), _nowhere, _words("sew (?:on )?(?:the )?buttons?"), _words("buttons?")),
    Notion("a zip", _words(_ZIP), _nowhere, _words(f"sew in (?:the )?{_ZIP}"), _words(_ZIP)),
)
