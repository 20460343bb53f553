"""In: a sentence and the set phrase it matched. Out: the counts, row numbers and extents its groups stand for."""

import re
from dataclasses import dataclass, replace

from sizewright.base.place import Span
from sizewright.read.inserts import Insert, Told, TypedList
from sizewright.read.notation.direction_tree import Extent, Numbers
from sizewright.read.notation.kinds import Side
from sizewright.read.notation.not_understood import NotUnderstood
from sizewright.read.notation.tree import Count
from sizewright.read.notation.words import Kind, Sentence, Token, spanned, told, typed


@dataclass(frozen=True, slots=True)
class Match:
    """A sentence that matched: its tokens, and which of them each group of the phrase stands for."""

    tokens: Sentence
    found: re.Match[str]

    @property
    def span(self) -> Span:
        """The place of the sentence."""
        return spanned(self.tokens)

    def has(self, group: str) -> bool:
        """Whether a group stands in the sentence."""
        return group in self.found.re.groupindex and self.found[group] is not None

    def words(self, group: str) -> str:
        """The words of a group, in small letters."""
        return self.found[group].strip() if self.has(group) else ""

    def part(self, group: str) -> Sentence:
        """The tokens of a group."""
        if not self.has(group):
            return ()
        text, words = self.found.string, self.found[group]
        if not words.strip():
            return ()
        before = text.count(" ", 0, self.found.start(group) + len(words) - len(words.lstrip()))
        inside = words.strip().count(" ")
        return self.tokens[before : before + inside + 1]

    def count(self, group: str) -> Count | None:
        """The first number of a group."""
        return next((token.count for token in self.part(group) if token.kind is Kind.NUMBER), None)

    def numbers(self) -> Numbers:
        """The row numbers of the group of that name."""
        return numbers_of(self.part("numbers"))

    def extent(self) -> Extent:
        """How far rows go on, and the sides of the first and the last of them."""
        last = self.words("ends") or self.words("last") or self.words("done")
        aside = [*self.part("other"), *self.part("also"), *self.part("at"), *self.part("there")]
        found = self._extent()
        ends = _side(last) or _other(_side(self.words("facing") or self.words("faces")))
        return replace(found, begins=_side(self.words("begins")), ends=ends, told=found.told or _closed(told(aside)))

    def _extent(self) -> Extent:
        words = self.words("times")
        if words:
            count = self.count("times") or Count(self.span, 2 if words.startswith("twice") else 1)
            return Extent(times=count)
        if self.has("length"):
            part = "" if self.words("what") in _WHOLE else self.words("what")
            since = typed(self.part("since")).casefold()
            return replace(_length_extent(self.part("length"), since or part), part=part)
        if self.has("left"):
            behind = self.part("behind")
            said = behind[1:] if behind[:1] and behind[0].text == "," else behind
            if said and said[0].text in _ENDING:
                raise NotUnderstood(spanned(said), typed(said), _HOW_IT_ENDS)
            return Extent(left=self.count("left"), told=told(behind))
        if self.has("rows"):
            return Extent(rows=self.count("for"))
        if self.has("for"):
            return _length_extent(self.part("for") + self.part("unit"), "here")
        return Extent()


_MOST_ROWS = 10_000
_ENDING = ("ending", "end", "finishing")
_HOW_IT_ENDS = "Say how often all are worked, then what is left: “Rep Rows 1-4 6 more times. Work Row 1 once more.”"
_WHOLE = ("piece", "work", "body", "scarf", "cloth", "hat", "cowl", "it")


def _length_extent(tokens: Sentence, since: str) -> Extent:
    """A length: `{...}` or a list with the unit it is printed in, or a typed number with its unit."""
    number = next(token for token in tokens if token.kind is Kind.NUMBER)
    value = number.count.value if number.count is not None else None
    if isinstance(value, Insert | TypedList):
        unit = "" if isinstance(value, Insert) or len(tokens) < 2 else _unit(tokens[-1])
        return Extent(length=value, typed_length=unit, since=since)
    return Extent(typed_length=" ".join((number.typed, *map(_unit, tokens[1:]))), since=since)


def _closed(words: Told) -> Told:
    """Words without a space inside their brackets, where these were put for another sign."""
    return tuple(one.replace("( ", "(").replace(" )", ")") if isinstance(one, str) else one for one in words)


def _unit(token: Token) -> str:
    return "in" if token.text in ("inch", "inches", '"', "″") else token.text


def _side(words: str) -> Side | None:
    return None if not words else Side.WRONG if words.startswith("w") else Side.RIGHT


def _other(side: Side | None) -> Side | None:
    """The side of the row before the one that faces next."""
    return None if side is None else Side.WRONG if side is Side.RIGHT else Side.RIGHT


def numbers_of(tokens: Sentence) -> Numbers:
    """ "1", "1 and 3", "1-4", "1 to {rows}"."""
    listed: list[int] = []
    ranged = False
    for token in tokens:
        if token.kind is not Kind.NUMBER:
            ranged = token.text in ("-", "to", "through")
        elif token.count is not None and isinstance(token.count.value, int):
            if token.count.value > _MOST_ROWS:
                raise NotUnderstood(token.span, token.typed, "No piece has so many rows.")
            listed.extend(range(listed[-1] + 1 if ranged and listed else token.count.value, token.count.value + 1))
        elif ranged and token.count is not None:
            return Numbers(tuple(listed[:-1]), listed[-1] if listed else 1, token.count)
    return Numbers(tuple(listed))
