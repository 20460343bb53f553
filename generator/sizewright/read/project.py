"""The tree of a whole project: the studio, its patterns, pages, techniques and shared size tables."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path
from types import MappingProxyType

from sizewright.base.finding import Finding
from sizewright.base.language import ENGLISH
from sizewright.base.place import Span
from sizewright.read.acceptance import LevelSet
from sizewright.read.cautions import StudioCaution
from sizewright.read.pattern import Pattern, Size, Words
from sizewright.read.term import Term as Term  # noqa: PLC0414 -- a node of this tree too
from sizewright.read.trade_words import Country
from sizewright.read.translating.translation import Translation


class Sheet(StrEnum):
    """A sheet of paper that PDFs are made for, by its word in `site.yaml`."""

    A4 = "a4"
    LETTER = "letter"


@dataclass(frozen=True, slots=True)
class PaperChoice:
    """Which PDFs a site has beside the usual one with all sizes: `papers` of `site.yaml`.

    `sheets` are those of every edition, the first the one that a reader is offered first.
    """

    sheets: tuple[Sheet, ...] = (Sheet.A4, Sheet.LETTER)
    each_size: bool = True
    large_print: bool = True


@dataclass(frozen=True, slots=True)
class Studio:
    """`content/site.yaml`: who publishes, where, and how numbers are printed."""

    span: Span | None = None
    name: str = "A knitting studio"
    description: str = ""
    address: str = ""  # the base address the site is served from, with its path; "" where it is not known yet
    author: str = ""
    languages: tuple[str, ...] = (ENGLISH,)  # that of the sources first, then those they are translated into
    metric_first: bool = True
    theme: str = "studio"
    terms: Country | None = None  # whose words are printed first; those of each source where nothing is said
    notice: str = ""  # a line every page shows, for example that the studio is invented
    publish_only: str = ""  # "signed-off" where only patterns that somebody signed off may be published
    cautions: tuple[StudioCaution, ...] = ()  # beside those of the tool
    papers: PaperChoice = field(default_factory=PaperChoice)
    levels: tuple[LevelSet, ...] = ()  # how rules are weighed here, where it is not as the tool would
    listed: Mapping[str, tuple[Term, ...]] = field(default_factory=lambda: MappingProxyType({}))  # terms by language

    @property
    def language(self) -> str:
        """The language of the sources."""
        return self.languages[0]


@dataclass(frozen=True, slots=True)
class SizeTable:
    """`content/sizes/NAME.yaml`: body measurements several patterns share, with the source they were published in."""

    name: str
    title: str
    source: Words
    sizes: tuple[Size, ...]


@dataclass(frozen=True, slots=True)
class Project:
    """A project folder, read. Pages and techniques are read as patterns without sizes.

    It is `whole` where all of the folder was read, and not one pattern alone.
    """

    folder: Path
    studio: Studio
    patterns: tuple[Pattern, ...]
    pages: tuple[Pattern, ...]
    techniques: tuple[Pattern, ...]
    tables: Mapping[str, SizeTable]
    terms: tuple[Term, ...]
    media: frozenset[str]
    findings: tuple[Finding, ...]
    whole: bool = True
    translations: tuple[Translation, ...] = ()  # of what the studio says itself and of its own stitches

    def with_adaptations(self, names: Iterable[str]) -> frozenset[str]:
        """Names of patterns, and those of all that are based on them."""
        changed = frozenset(names)
        based = ((pattern.name, pattern.header.based_on) for pattern in self.patterns)
        return changed | {name for name, told in based if told is not None and told.pattern.text in changed}

    def with_bases(self, names: Iterable[str]) -> frozenset[str]:
        """Names of patterns, and those of all that they are based on."""
        changed = frozenset(names)
        told = (pattern.header.based_on for pattern in self.patterns if pattern.name in changed)
        return changed | {one.pattern.text for one in told if one is not None}
