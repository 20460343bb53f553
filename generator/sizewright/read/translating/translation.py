"""The words of one source in one language, as they were read from the file beside it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from sizewright.base.place import Lines, Span
from sizewright.read.acceptance import Acceptance
from sizewright.read.inserts import Told
from sizewright.read.term import Term
from sizewright.read.trade_words import Country
from sizewright.read.translating.pairs import Pair, key_of


@dataclass(frozen=True, slots=True)
class Translation:
    """The pairs of a file. `into` is the language it is in, `of` that of its source.

    `told` are the translations by the key of their words: those of the file, and behind them those of the base that the
    source is an adaptation of. In a source that is told in the language, `names` are all of its texts but the passages,
    by the words of the source, with the words of its headings, `country` is whose terms that is in, and `lines_told`
    are those lines of instructions that were translated by hand, by the place of the line they begin with. `accepted`
    are findings in it that are let pass, and `listed` the studio's own abbreviations in the language.
    """

    of: str
    into: str
    lines: Lines = field(repr=False, compare=False)
    pairs: tuple[Pair, ...]
    told: Mapping[str, str] = field(repr=False, compare=False)
    names: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}), repr=False, compare=False)
    lines_told: Mapping[Span, Told] = field(default_factory=lambda: MappingProxyType({}), repr=False, compare=False)
    country: Country | None = None
    accepted: tuple[Acceptance, ...] = field(default=(), repr=False, compare=False)
    listed: tuple[Term, ...] = field(default=(), repr=False, compare=False)

    @property
    def source(self) -> str:
        """The path as a person would type it."""
        return self.lines.source

    def tell(self, _: Span, words: str) -> str:
        """A text that is no passage in the language of the translation, as it is where it is not translated."""
        return " ".join(self.of_words(words).split()) or words

    def of_words(self, words: str) -> str:
        """The translation of some words, "" where there is none."""
        return self.told.get(key_of(words), "")
