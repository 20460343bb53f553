"""In: words of a source and their translation. Out: the numbers, links and headings in which the two differ."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import chain

from markdown_it.token import Token

from sizewright.base.finding import Finding, Rule
from sizewright.read.instructions import TYPED_LIST
from sizewright.read.markdown import INSERT, PASSAGE_OPEN, tokens_of
from sizewright.read.term import Term
from sizewright.read.translating.numbered_names import without_names
from sizewright.read.translating.numbers_in_words import InWords, in_words_of
from sizewright.read.translating.pairs import Pair, key_of
from sizewright.read.translating.rules import OTHER_LINKS, OTHER_NUMBERS, OTHER_SHAPE
from sizewright.read.translating.texts import Text
from sizewright.read.translating.times_of_day import times_alike

_BRACES = re.compile(r"(?<!\\)\{[^{}]*\}")
# "2.5", "2,5", "19:30", "1 234" with a narrow or a fixed space.
_NUMBER = re.compile(r"[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|\d+(?:[.,:\u00a0\u202f]\d+)*")
_MARKDOWN = re.compile(r"[{\[<#]|:::|^ {0,3}(?:=+|-+) *$", re.MULTILINE)  # where Markdown may mean more than words
_NUMBERS_MEND = "Give it the numbers of the source, and no others, in figures or in words."


def compared(pair: Pair, text: Text, of: str, into: str, listed: tuple[Term, ...] = ()) -> Iterator[Finding]:
    """What a translation from one language into another has that its words have not, or the other way round.

    `listed` are terms of the other language beside those that are known.
    """
    if pair.key == key_of(pair.translation):
        return  # a name, or words that are the same in both
    before, behind = _Told(pair.words, text, of), _Told(pair.translation, text, into)
    numbers = _numbers_apart((before, behind), pair, text, listed)
    for rule, mend, (here, there) in (
        (OTHER_NUMBERS, _NUMBERS_MEND, numbers),
        (OTHER_LINKS, "Give it the links and pictures of the source, and no others.", (before.links, behind.links)),
    ):
        if here != there:
            yield _differ(rule, mend, (here, there), pair, text)
    if text.passage is not None and before.shape != behind.shape:
        yield _other_shape(pair, text)


def _numbers_apart(
    sides: tuple["_Told", "_Told"], pair: Pair, text: Text, listed: tuple[Term, ...]
) -> tuple[Counter[str], Counter[str]]:
    """The numbers of both sides: those in figures, and those in words that the other side does not tell at all."""
    before, behind = sides
    if before.numbers != behind.numbers:
        words, told = without_names(pair.words, pair.translation, behind.code, listed)
        before, behind = _Told(words, text, before.code), _Told(told, text, behind.code)
    here, there = in_words_of(before.plain, before.code), in_words_of(behind.plain, behind.code)
    if here is None or there is None:
        return before.numbers, behind.numbers
    return _against(before.numbers, here, behind.numbers, there), _against(behind.numbers, there, before.numbers, here)


def _against(figures: Counter[str], own: InWords, others: Counter[str], other: InWords) -> Counter[str]:
    """Figures of one side but those that the other tells in words, and its words for numbers that are not there."""
    told = {one for one in (figures - others) if one.isdecimal() and other.may_tell(int(one))}
    left = Counter({one: times for one, times in figures.items() if one not in told})
    left.update({one: others[one] for one in told if one in others})
    words = (word for value, word in own.sure.items() if str(value) not in others and not other.may_tell(value))
    return left + Counter(words)


class _Told:
    """What one text holds beside its words."""

    def __init__(self, words: str, text: Text, code: str) -> None:
        self.code = code
        tokens = tuple(_all(tokens_of(words))) if text.passage is not None and _MARKDOWN.search(words) else ()
        self.shape = _shape(tokens)
        self.links = Counter(_target(token) for token in tokens if token.type in ("link_open", "image"))
        if text.passage is not None:
            braces = [token.content for token in tokens if token.type == INSERT]
        else:
            braces = [*_BRACES.findall(words), *(found.group() for found in TYPED_LIST.finditer(words))]
        self.plain = times_alike(_without(words, braces, self.links), code)
        self.numbers = Counter((*braces, *_typed(self.plain)))


def _without(words: str, braces: Iterable[str], links: Iterable[str]) -> str:
    for one in chain(braces, links):
        words = words.replace(one, " ")
    return words


def _typed(words: str) -> Iterator[str]:
    """The numbers in figures, in one spelling for a decimal comma and a point."""
    for found in _NUMBER.finditer(words):
        yield re.sub(r"[,\u00a0\u202f]", ".", found.group())


def _all(tokens: Iterable[Token]) -> Iterator[Token]:
    for token in tokens:
        yield token
        yield from token.children or ()


def _target(token: Token) -> str:
    return str(token.attrs.get("href", token.attrs.get("src", "")))


def _shape(tokens: tuple[Token, ...]) -> str:
    """Whether it is a heading, and of which level, or holds one; passages of its own may stand in no translation."""
    if any(token.type == PASSAGE_OPEN for token in tokens):
        return "passage"
    return " ".join(token.tag for token in tokens if token.type == "heading_open")


def _differ(rule: Rule, mend: str, sides: tuple[Counter[str], Counter[str]], pair: Pair, text: Text) -> Finding:
    here, there = sides
    lacking, added = (
        ", ".join(f"“{one}”" for one in (left - right).elements()) for left, right in (sides, (there, here))
    )
    parts = (f"lacks {lacking}" if lacking else "", f"has {added}, not in the source" if added else "")
    told = " and ".join(filter(None, parts))
    message = f"The translation of {text.span.shown} {told}."
    return rule.at(pair.at, message, mend)


def _other_shape(pair: Pair, text: Text) -> Finding:
    message = f"The translation of {text.span.shown} is not the same kind of passage: a heading, or none."
    first = " ".join(pair.words.split("\n")[0].split())
    return OTHER_SHAPE.at(pair.at, message, f"Begin it as the source does, which says “{first}”.")
