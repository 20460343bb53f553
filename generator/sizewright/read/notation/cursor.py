"""A cursor over the tokens of a row: words, counts, brackets, and what is said of words that are not understood."""

import re
from collections.abc import Iterable

from sizewright.base.nearest import nearest
from sizewright.base.place import Span
from sizewright.read.inserts import Told
from sizewright.read.notation.not_understood import NotUnderstood
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.notation.tree import Count
from sizewright.read.notation.words import Kind, Sentence, Token, spanned, told

STITCH_WORDS = ("st", "sts", "stitch", "stitches")
ROW_WORDS = ("row", "rows", "rnd", "rnds", "round", "rounds")
_DEEPEST = 24  # no row a person wrote has brackets in brackets so deep
COLOUR = re.compile(r"(?:[A-H]|MC|CC\d?|C\d)")
# Words of rows that are no stitches, so that a misspelt one finds its neighbour too.
_ROW_WORDS = (
    "rep from",
    "to end",
    "times",
    "work",
    "turn",
    "bind off",
    "cast on",
    "marker",
    "slip marker",
    "place marker",
)
_VERY_LIKE = 0.75  # words of rows are short: "rnd" is two thirds like "yrn"
# Words of the trade with a place of their own, so that no misspelt stitch is meant by them.
_ELSEWHERE = frozenset(
    (*ROW_WORDS, "panel", "chart", "toe", "heel", "gusset", "flap", "crown", "brim", "cuff", "thumb", "sleeve", "body")
)


class Cursor:
    """A cursor over the tokens of a row."""

    def __init__(self, tokens: Sentence, words: Vocabulary) -> None:
        self._tokens = tokens
        self.words = words
        self.position = 0
        self._depth = 0

    @property
    def done(self) -> bool:
        """Whether all tokens are read."""
        return self.position >= len(self._tokens)

    @property
    def token(self) -> Token:
        """The token to be read next."""
        return self._tokens[self.position]

    def coming(self, count: int) -> Sentence:
        """The next few tokens."""
        return self._tokens[self.position : self.position + count]

    def texts(self, count: int) -> tuple[str, ...]:
        """The next few words."""
        return tuple(token.text for token in self._tokens[self.position : self.position + count])

    def peek(self, ahead: int) -> str:
        """A word further on, "" behind the end."""
        place = self.position + ahead
        return self._tokens[place].text if place < len(self._tokens) else ""

    def at(self, *texts: str) -> bool:
        """Whether one of these words is next."""
        return not self.done and self.token.text in texts

    def step(self) -> Token:
        """Reads one token."""
        if self.done:
            raise self.fault("The row ends too early.")
        self.position += 1
        return self._tokens[self.position - 1]

    def skip(self, *texts: str) -> None:
        """Reads such words as long as they come."""
        while self.at(*texts):
            self.step()

    def since(self, start: int) -> Span:
        """The stretch from a token up to the one read last."""
        return spanned(self._tokens[start : max(self.position, start + 1)])

    def between(self, start: int, end: int) -> Sentence:
        """The tokens from one place up to another."""
        return self._tokens[start:end]

    def read_since(self, start: int) -> Sentence:
        """The tokens from one up to the one read last."""
        return self._tokens[start : self.position]

    def told_since(self, start: int) -> Told:
        """The words from a token up to the one read last, as they are typed."""
        return told(self.read_since(start))

    def phrase(self, phrases: Iterable[tuple[str, ...]]) -> tuple[str, ...] | None:
        """The first of some phrases that comes next, read; None where none does."""
        for words in phrases:
            if self.texts(len(words)) == words:
                self.position += len(words)
                return words
        return None

    def deeper(self) -> None:
        """One bracket further in."""
        self._depth += 1
        if self._depth > _DEEPEST:
            raise self.fault("These brackets are nested too deeply.")

    def shallower(self) -> None:
        """One bracket further out."""
        self._depth -= 1

    def fault(self, mend: str = "") -> NotUnderstood:
        """What stands here is not understood."""
        if self.done:
            last = self._tokens[-1]
            return NotUnderstood(last.span, f"{last.typed} …", mend or "Say what is to be done with the stitches.")
        token = self.token
        known = (*self.words.by_spelling, *_ROW_WORDS)
        guessed = token.kind is Kind.WORD and token.text not in _ELSEWHERE
        meant = nearest(token.text, known, _VERY_LIKE) if guessed else None
        unclosed = "A bracket before this full stop is not closed." if token.text == "." else ""
        mend = mend or unclosed
        hint = f"Did you mean “{meant}”?" if meant else "Write it in stitches the tool knows, or declare it."
        return NotUnderstood(token.span, token.typed, mend or hint)

    # Numbers

    def number_ahead(self) -> bool:
        """Whether a number is next."""
        return not self.done and self.token.kind is Kind.NUMBER

    def count(self) -> Count:
        """A number of stitches, rows or times."""
        if not self.number_ahead():
            raise self.fault("A number is missing here.")
        token = self.step()
        if token.count is None:
            self.position -= 1
            raise self.fault("A count must be a whole number below 100 000.")
        return token.count

    def one(self) -> Count:
        """One, where a number may be left out."""
        return Count(self._tokens[max(self.position - 1, 0)].span, 1)

    def fixed(self) -> int | None:
        """The number next, where it is the same in every size."""
        value = self.count().value
        return value if isinstance(value, int) else None

    def glued_ahead(self, term: str) -> int | None:
        """The count of a word such as "sl3", where that is next and of this stitch."""
        found = None if self.done else self.words.glued(self.token.text)
        return found[1] if found is not None and found[0].term == term else None

    def stitch_words(self) -> None:
        """ "sts" behind a number says nothing new."""
        self.skip(*STITCH_WORDS)

    def colour_word(self, ahead: int) -> bool:
        """Whether the name of a yarn stands there: one capital letter, MC or CC."""
        place = self.position + ahead
        return place < len(self._tokens) and COLOUR.fullmatch(self._tokens[place].typed) is not None
