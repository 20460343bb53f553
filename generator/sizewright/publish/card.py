"""In: a proofed pattern. Out: its card: what the start page, the feed and a technique's page show of it.

The card is kept in the pattern's data file, so that a pattern refused today is still listed beside its last good pages.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from datetime import date

from sizewright.proof.proofed import Proofed
from sizewright.publish.drawn import drawn, drawn_path
from sizewright.publish.findable import findable, read_findable
from sizewright.publish.in_language import telling
from sizewright.publish.view_words import WordsView
from sizewright.publish.yarn_range import yarn_range
from sizewright.read.project import Studio
from sizewright.read.source_terms import country_of_source
from sizewright.read.trade_words import Country


@dataclass(frozen=True, slots=True)
class Card:
    """A pattern in the collection. `name` is its address, the dates are ISO 8601 or "" where none is given.

    `picture` is the path of its picture in the site, one of its own or one drawn of its cloth; `finding` is what a
    search asks of it beside its words, as JSON. `terms` is the country that its words are of, "" where they show
    none, and `names` are those of its stitch patterns.
    """

    name: str
    title: str
    summary: str = ""
    kind: str = ""
    designer: str = ""
    picture: str = ""
    alt: str = ""
    published: str = ""
    revised: str = ""
    sizes: tuple[str, ...] = ()
    weights: tuple[str, ...] = ()
    techniques: tuple[str, ...] = ()
    yarn: str = ""
    finding: str = ""
    terms: str = ""
    names: tuple[str, ...] = ()

    @classmethod
    def of(cls, proofed: Proofed) -> "Card":
        """The card of a pattern."""
        with telling(proofed.graded.pattern):
            return cls._of(proofed)

    @classmethod
    def _of(cls, proofed: Proofed) -> "Card":
        pattern = proofed.graded.pattern
        header = pattern.header
        picture, alt = _picture(proofed)
        weights = dict.fromkeys(yarn.weight.text for yarn in header.yarns if yarn.weight)
        return cls(
            name=pattern.name,
            title=header.title,
            summary=header.summary.text if header.summary else "",
            kind=header.kind.text if header.kind else "",
            designer=header.designer.text if header.designer else "",
            picture=picture,
            alt=alt,
            published=header.published.date.isoformat() if header.published else "",
            revised=header.revised.date.isoformat() if header.revised else "",
            sizes=pattern.size_names,
            weights=tuple(weights),
            techniques=tuple(technique.text for technique in header.techniques),
            yarn=yarn_range(proofed.worked),
            finding=findable(proofed),
            terms=country_of_source(pattern) or "",
            names=WordsView.of(pattern, Studio()).names,
        )

    def as_json(self) -> dict[str, str | list[str]]:
        """The card as JSON values."""
        return {name: list(value) if isinstance(value, tuple) else value for name, value in _items(self)}

    @classmethod
    def from_json(cls, value: object) -> "Card":
        """The card again. Raises ValueError where the value is not one that `as_json` wrote."""
        if not isinstance(value, Mapping):
            raise ValueError("a card is an object")
        read = {name: _value(name, value.get(name, default), default) for name, default in _items(cls("", ""))}
        card = cls(**read)  # type: ignore[arg-type]  # _value has checked each against its field
        for day in filter(None, (card.published, card.revised)):
            date.fromisoformat(day)
        read_findable(card.finding)
        if card.terms:
            Country(card.terms)
        if not card.name or not card.title:
            raise ValueError("a card has a name and a title")
        return card


def _picture(proofed: Proofed) -> tuple[str, str]:
    """The path of the picture of a pattern and its words: its own, else one drawn of its cloth."""
    own, piece = proofed.graded.pattern.header.picture, drawn(proofed.worked).piece
    if own is not None:
        return f"media/{own.file}", own.alt
    return (drawn_path(proofed.worked), piece.words) if piece is not None else ("", "")


def _items(card: Card) -> list[tuple[str, str | tuple[str, ...]]]:
    return [(field.name, getattr(card, field.name)) for field in fields(card)]


def _value(name: str, value: object, default: str | tuple[str, ...]) -> str | tuple[str, ...]:
    """One field as its own kind."""
    if isinstance(default, str) and isinstance(value, str):
        return value
    if isinstance(default, tuple) and isinstance(value, list) and all(isinstance(item, str) for item in value):
        return tuple(value)
    raise ValueError(f"a card's “{name}” is not what it should be")
