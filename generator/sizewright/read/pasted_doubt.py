"""In: what was read in the lines of a pasted pattern. Out: the same, and which of the rest look like instructions.

Such a line is lost in a text: nothing would be carried out, and the proof would not say so.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from sizewright.read.notation.direction_tree import CastOn
from sizewright.read.pasted_passages import tells_sizes
from sizewright.read.pasted_source import LABEL, Group, can_stand, passage_at

_CAST_ON = re.compile(r"\b(?:cast on|co)\b.*\d", re.IGNORECASE)
_THINGS = r"(?:sts?|stitch(?:es)?|rows?|rnds?|rounds?)"
_COUNTED = re.compile(
    rf"\d[\d\s()\[\],.:½¼¾-]*(?:(?:st|nd|rd|th)\b[^.]*?)?(?:[a-z]+ ){{0,3}}?(?:{_THINGS}|(?:more )?times|dec|inc)\b"
    r"|\b(?:k|p|sl|m)\d+\b|\b(?:k|p)\d+tog\b",
    re.IGNORECASE,
)
_VERB = (
    r"(?:knit|purl|work|rep|repeat|dec|inc|decrease|increase|cast (?:on|off)|bind off|co|bo|join|rejoin|place|pm|remove"
    r"|slip|sl|pick up|transfer|turn|change|switch|continue|cont|graft|divide|return|(?:with|using)(?! care))\b"
)
_BEGUN = re.compile(
    rf"(?:^|[.;:]\s+){_VERB}[^.]*?\b(?:{_THINGS}|markers?|needles?|dpns?|bor|rib\w*|\d+)\b", re.IGNORECASE
)
_MOST_WRAPPED = 8


def with_doubtful(groups: Sequence[Group], sizes: tuple[str, ...]) -> list[Group]:
    """The groups; those behind the cast-on that look like instructions and are not understood are marked.

    A marked one takes the lines with it that it is wrapped over. One that only tells of counts, in a paragraph of its
    own, is as likely a note.
    """
    begins = next((group.first for group in groups if _casts_on(group)), None)
    if begins is None:
        begins = next((group.first for group in groups if group.kinds), len(groups) and groups[-1].end)
    return list(_marked(groups, begins, sizes))


def _casts_on(group: Group) -> bool:
    return CastOn in group.kinds if group.kinds is not None else bool(_CAST_ON.search(" ".join(group.lines)))


def _marked(groups: Sequence[Group], begins: int, sizes: tuple[str, ...]) -> Iterator[Group]:
    waiting: Group | None = None
    for place, group in enumerate(groups):
        if waiting is not None and _goes_on(waiting, group):
            waiting = replace(waiting.joined(group), doubtful=True)
            continue
        if waiting is not None:
            yield waiting
        behind = group.first >= begins
        above = waiting is not None and waiting.works and waiting.end == group.first
        some = tells_sizes(group.lines[0]) and not passage_at(groups, place, sizes)
        doubtful = some or (
            behind and (orders(group) or ((above or _above_work(groups, place)) and tells_counts(group)))
        )
        waiting = replace(group, doubtful=doubtful and group.kinds is None and can_stand(group))
    if waiting is not None:
        yield waiting


def _above_work(groups: Sequence[Group], place: int) -> bool:
    below = groups[place + 1 : place + 2]
    return any(one.kinds is not None and one.first == groups[place].end for one in below)


def orders(group: Group) -> bool:
    """Whether lines that are not understood begin as instructions do."""
    text = " ".join(map(str.strip, group.lines))
    return group.kinds is None and bool(LABEL.match(text) or _BEGUN.search(text))


def tells_counts(group: Group) -> bool:
    """Whether lines that are not understood hold counts of stitches, rows or times."""
    return group.kinds is None and bool(_COUNTED.search(" ".join(map(str.strip, group.lines))))


def _goes_on(doubtful: Group, group: Group) -> bool:
    """Whether a line is the rest of the one before it."""
    if not doubtful.doubtful or group.kinds is not None or group.first != doubtful.end or not can_stand(group):
        return False
    text = group.lines[0].strip()
    return not text[0].isupper() and not LABEL.match(text) and len(doubtful.lines) < _MOST_WRAPPED
