"""The words of one source in one language, as they were read from the file beside it."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from sizewright.base.place import Lines
from sizewright.read.translating.pairs import Pair, key_of


@dataclass(frozen=True, slots=True)
class Translation:
    """The pairs of a file. `into` is the language it is in, `of` that of its source.

    `told` are the translations by the key of their words: those of the file, and behind them those of the base that the
    source is an adaptation of.
    """

    of: str
    into: str
    lines: Lines = field(repr=False, compare=False)
    pairs: tuple[Pair, ...]
    told: Mapping[str, str] = field(repr=False, compare=False)

    @property
    def source(self) -> str:
        """The path as a person would type it."""
        return self.lines.source

    def of_words(self, words: str) -> str:
        """The translation of some words, "" where there is none."""
        return self.told.get(key_of(words), "")
