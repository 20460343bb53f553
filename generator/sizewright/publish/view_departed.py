"""What is told of adaptations and their departures: plain data, every number already text or markup."""

from dataclasses import dataclass

from markupsafe import Markup

from sizewright.publish.view_table import SizeTable
from sizewright.publish.view_words import WordsView


@dataclass(frozen=True, slots=True)
class DepartureView:
    """One departure: `told` is the fragment of its entry in the list, `anchor` that of its mark, "" where it has none.

    `where` is the place it begins at, and `changes` what it does to counts, rows and yarn.
    """

    number: int
    title: str
    because: str
    told: str
    anchor: str
    section: str
    where: Markup
    changes: tuple[Markup, ...]


@dataclass(frozen=True, slots=True)
class DeparturesView:
    """What a pattern is based on and what it does otherwise; `totals` has base and adaptation side by side, by size."""

    base: str
    designer: str
    href: str
    permission: str
    credit: str
    licence: str
    items: tuple[DepartureView, ...]
    totals: SizeTable | None

    def within(self, section: str) -> tuple[DepartureView, ...]:
        """Those that are marked at the top of a section of the page."""
        return tuple(one for one in self.items if one.section == section and one.anchor)


@dataclass(frozen=True, slots=True)
class AdaptationView:
    """A pattern that is based on the one that is shown; `words` says in whose terms its summary is."""

    title: str
    designer: str
    summary: str
    href: str
    words: WordsView
