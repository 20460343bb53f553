"""In: a message and the parts that stand in it. Out: the message in the spoken language, as pieces.

Like `tr`, but what is filled in may be numbers that differ by size: they stay the very same nodes, so that a count
cannot differ from one language to another. Names that a source gives freely have no message; where they would be told
in another language than their own, `NotTold` is raised, and the words of the source stand.
"""

from collections.abc import Callable, Iterable, Mapping
from functools import cache
from string import Formatter
from typing import TypeVar

from sizewright.base.language import ENGLISH, language, speaking, spoken
from sizewright.read.inserts import LinePiece, Told, joined
from sizewright.read.notation.tree import Count

Part = LinePiece | Told
_Told = TypeVar("_Told")
CONTEXT = "instructions"  # that of messages without one of their own: "turn" and "row" are other words elsewhere
_SEVERAL = 2  # stands for a number that differs by size


class NotTold(Exception):  # noqa: N818 -- what is the matter, not that it is an error
    """Words of a source that no message says in the spoken language."""


def phrase(message: str, /, **parts: Part) -> Told:
    """A message, each `{name}` filled in with the part of that name."""
    return _filled(told_word(message), parts)


def told_word(message: str, /) -> str:
    """A message without parts."""
    return str(spoken().messages.upgettext(CONTEXT, message))


def phrase_many(one: str, many: str, count: Count, /, **parts: Part) -> Told:
    """The form of a message for a count, which fills in `{n}`."""
    value = count.value if isinstance(count.value, int) else _SEVERAL
    return _filled(str(spoken().messages.unpgettext(CONTEXT, one, many, value)), {"n": number(count), **parts})


def phrase_as(context: str, message: str, /, **parts: Part) -> Told:
    """A message that means several things in English, told apart by its context."""
    return _filled(str(spoken().messages.upgettext(context, message)), parts)


def name_as(context: str, name: str, known: Iterable[str]) -> str:
    """A name from a table of usual ones. Raises `NotTold` for another, save in English, where it stands as it is."""
    if spoken().code == ENGLISH:
        return name
    if name not in known:
        raise NotTold(name)
    return str(spoken().messages.upgettext(context, name))


def told_or_english(tell: Callable[[], _Told]) -> _Told:
    """What is told in the spoken language; in English where it holds words that have no message."""
    try:
        return tell()
    except NotTold:
        with speaking(language(ENGLISH)):
            return tell()


def number(count: Count) -> LinePiece:
    """A count by itself."""
    return str(count.value) if isinstance(count.value, int) else count.value


def _filled(message: str, parts: Mapping[str, Part]) -> Told:
    found: list[LinePiece] = []
    for words, name in _cut(message):
        found.append(words)
        if name:
            part = parts[name]
            found.extend(part if isinstance(part, tuple) else (part,))
    return joined(found)


@cache
def _cut(message: str) -> tuple[tuple[str, str], ...]:
    """The words of a message, each with the name of the place behind them, "" at the end."""
    return tuple((words, name or "") for words, name, _, _ in Formatter().parse(message))
