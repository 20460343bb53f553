"""In: the licence of a base and that of its adaptation. Out: whether the one allows to publish the other.

Source: the licences of Creative Commons, creativecommons.org (their elements BY, NC, SA and ND; told from memory).
"""

import re
from dataclasses import dataclass
from enum import StrEnum

_NAMED = re.compile(
    r"\b(?:cc[ -]*)?by(?P<rest>(?:[ -]*(?:nc|sa|nd))*)(?![a-z])|licenses/by(?P<path>(?:-(?:nc|sa|nd))*)/", re.I
)
_FREE = re.compile(r"\bcc[ -]*0\b|\bcc[ -]*zero\b|public domain|publicdomain/zero", re.I)
_CREATIVE = re.compile(r"\bcc\b|creative ?commons", re.I)


class Adapting(StrEnum):
    """What a licence says to a changed version; the words go on behind its name."""

    ALLOWED = "allows it."
    FORBIDDEN = "allows no changed version (ND), and no permission is stated."
    SAME = "asks for the same licence on a changed version (SA), and no permission is stated."
    NO_GAIN = "allows a changed version only under a licence that keeps NC, and no permission is stated."
    UNKNOWN = "does not say that it may be changed, and no permission is stated."


@dataclass(frozen=True, slots=True)
class Licence:
    """The elements of a Creative Commons licence beside BY; all of them False is CC BY, `free` CC0."""

    no_gain: bool = False
    same: bool = False
    unchanged: bool = False
    free: bool = False


def licence_of(text: str) -> Licence | None:
    """The licence some words name; None for any that the table does not know."""
    if _FREE.search(text):
        return Licence(free=True)
    found = _NAMED.search(text) if _CREATIVE.search(text) else None
    if found is None:
        return None
    elements = (found["rest"] or found["path"] or "").casefold()
    return Licence("nc" in elements, "sa" in elements, "nd" in elements)


def allows(base: str, adaptation: str) -> Adapting:
    """Whether the licence of a base allows an adaptation under another."""
    given, taken = licence_of(base), licence_of(adaptation)
    if given is None:
        return Adapting.UNKNOWN
    if given.unchanged:
        return Adapting.FORBIDDEN
    if given.same and taken != given:
        return Adapting.SAME
    if given.no_gain and (taken is None or not taken.no_gain):
        return Adapting.NO_GAIN
    return Adapting.ALLOWED
