"""In: a script of a page. Out: the messages in it, and what they are in the language that is spoken."""

from collections.abc import Mapping, Sequence
from functools import cache
from io import BytesIO

from babel.messages.extract import extract

from sizewright.base.language import Language

# How a script says what is a message: which of the arguments are (none told: the first one).
KEYWORDS: Mapping[str, tuple[int, ...] | None] = {"tr": None, "trNodes": None, "trMany": (1, 2)}


@cache
def script_messages(script: str) -> tuple[tuple[str, ...], ...]:
    """The messages of a script, each with its plural where it has one."""
    found = extract("javascript", BytesIO(script.encode()), KEYWORDS)
    return tuple(dict.fromkeys((one,) if isinstance(one, str) else tuple(one) for _, one, _, _ in found))


def translated(script: str, language: Language) -> Mapping[str, str | Sequence[str]]:
    """Those messages of a script that are others in a language: its words, or the forms of a plural."""
    found = {one[0]: _in(language, one) for one in script_messages(script)}
    english = {one[0]: one[0] if len(one) == 1 else one for one in script_messages(script)}
    return {message: words for message, words in found.items() if words != english[message]}


def _in(language: Language, message: Sequence[str]) -> str | tuple[str, ...]:
    if len(message) == 1:
        return str(language.messages.ugettext(message[0]))
    one, many = message
    return tuple(str(language.messages.ungettext(one, many, number)) for number in language.numbers)
