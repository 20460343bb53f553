"""In: words of a source and their translation. Out: the numbers, links and headings in which the two differ."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import chain

from markdown_it.token import Token

from sizewright.base.finding import Finding, Rule
from sizewright.read.instructions import TYPED_LIST
from sizewright.read.markdown import INSERT, PASSAGE_OPEN, tokens_of
from sizewright.read.translating.numbered_names import without_names
from sizewright.read.translating.pairs import Pair
from sizewright.read.translating.rules import OTHER_LINKS, OTHER_NUMBERS, OTHER_SHAPE
from sizewright.read.translating.texts import Text

_BRACES = re.compile(r"(?<!\\)\{[^{}]*\}")
# "2.5", "2,5", "1 234" with a narrow or a fixed space.
_NUMBER = re.compile(r"[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|\d+(?:[.,\u00a0\u202f]\d+)*")
_MORE = re.compile(r"[\d¼½¾⅐-⅞{\[<#]|:::|^ {0,3}(?:=+|-+) *$", re.MULTILINE)  # what is more than plain words
_MARKDOWN = re.compile(r"[{\[<#]|:::|^ {0,3}(?:=+|-+) *$", re.MULTILINE)  # where Markdown may mean more than words
_NUMBERS_MEND = (
    "Give it the numbers of the source, and no others; where the language says another one (“7 pm”, “19 Uhr”), "
    "write it in words in both."
)


def compared(pair: Pair, text: Text, into: str) -> Iterator[Finding]:
    """What a translation into a language has that its words have not, or the other way round."""
    if not _MORE.search(pair.words) and not _MORE.search(pair.translation):
        return
    before, behind = _Told(pair.words, text), _Told(pair.translation, text)
    numbers = (before.numbers, behind.numbers)
    if before.numbers != behind.numbers:
        words, told = without_names(pair.words, pair.translation, into)
        numbers = (_Told(words, text).numbers, _Told(told, text).numbers)
    for rule, mend, (here, there) in (
        (OTHER_NUMBERS, _NUMBERS_MEND, numbers),
        (OTHER_LINKS, "Give it the links and pictures of the source, and no others.", (before.links, behind.links)),
    ):
        if here != there:
            yield _differ(rule, mend, (here, there), pair, text)
    if text.passage is not None and before.shape != behind.shape:
        yield _other_shape(pair, text)


class _Told:
    """What one text holds beside its words."""

    def __init__(self, words: str, text: Text) -> None:
        tokens = tuple(_all(tokens_of(words))) if text.passage is not None and _MARKDOWN.search(words) else ()
        self.shape = _shape(tokens)
        self.links = Counter(_target(token) for token in tokens if token.type in ("link_open", "image"))
        if text.passage is not None:
            braces = [token.content for token in tokens if token.type == INSERT]
        else:
            braces = [*_BRACES.findall(words), *(found.group() for found in TYPED_LIST.finditer(words))]
        self.numbers = Counter((*braces, *_typed(_without(words, braces, self.links))))


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
