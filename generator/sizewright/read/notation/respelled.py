"""In: a sentence as it is typed. Out: the same in the plain spelling of the trade, so that each thing is read once.

What is put for other words stands at their place and shows them where a finding quotes it. Spellings are common
practice, no source.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from sizewright.read.notation.spellings import SPELLINGS
from sizewright.read.notation.tree import Count
from sizewright.read.notation.words import Kind, Sentence, Token, spanned

_MOST = 12  # times one spelling is looked for in a sentence
_MARKER = re.compile(r"m[A-H]")


@dataclass(frozen=True, slots=True)
class _Spelling:
    """Words that are looked for, and the plain ones: "\\1" are the tokens of a group, others are new."""

    pattern: re.Pattern[str]
    plain: str | Callable[[re.Match[str]], str | None]


_TABLE = tuple(_Spelling(re.compile(rf"(?<!\S)(?:{words})(?!\S)"), plain) for words, plain in SPELLINGS)


def respelled(sentence: Sentence) -> Sentence:
    """The sentence in plain spelling; one that is spelled so already is the same."""
    found = tuple(part for token in sentence for part in _marker(token))
    text = _text(found)
    for spelling in _TABLE:
        for _ in range(_MOST):
            match = spelling.pattern.search(text)
            again = None if match is None else _replaced(found, match, spelling.plain)
            if not again or again == found:
                break
            found, text = again, _text(again)
    return found


def _text(sentence: Sentence) -> str:
    return " ".join(map(_word, sentence))


def _word(token: Token) -> str:
    """One word a token: a number that is the same in every size as its figures, another as "#"."""
    if token.kind is Kind.NUMBER:
        value = token.count.value if token.count is not None else None
        return str(value) if isinstance(value, int) else "#"
    return token.text.replace(" ", "")


def _marker(token: Token) -> Iterator[Token]:
    """ "mA" is marker A; "MB" a bobble."""
    if _MARKER.fullmatch(token.typed) is None:
        yield token
        return
    yield replace(token, text="marker", typed="marker")
    yield replace(token, text=token.text[1:], typed=token.typed[1:])


def _replaced(
    found: Sentence, match: re.Match[str], plain: str | Callable[[re.Match[str]], str | None]
) -> Sentence | None:
    words = plain if isinstance(plain, str) else plain(match)
    if words is None:
        return None
    start, end = _places(match, 0)
    stood = found[start:end]
    put = tuple(token for word in words.split() for token in _put(word, found, match, stood))
    if not put and len(stood) == len(found):
        return None
    return (*found[:start], *put, *found[end:])


def _put(word: str, found: Sentence, match: re.Match[str], stood: Sentence) -> Sentence:
    if word.startswith("\\"):
        start, end = _places(match, int(word[1:]))
        return found[start:end]
    span = spanned(stood)
    if word.isdecimal():
        return (Token(Kind.NUMBER, "#", word, span, Count(span, int(word))),)
    kind = Kind.WORD if word[0].isalpha() else Kind.SIGN
    return (Token(kind, word, word, span),)


def _places(match: re.Match[str], group: int) -> tuple[int, int]:
    """The tokens of a group, from the first to the one behind the last."""
    text, inside = match.string, match[group]
    if not inside or not inside.strip():
        return 0, 0
    start = match.start(group) + len(inside) - len(inside.lstrip())
    first = text.count(" ", 0, start)
    return first, first + inside.strip().count(" ") + 1
