"""What the start page is given: each pattern as a card, and what the collection can be asked. Plain frozen data."""

from dataclasses import dataclass

from markupsafe import Markup

from sizewright.publish.card import Card
from sizewright.publish.view import Choice, Picture
from sizewright.publish.view_words import WordsView


@dataclass(frozen=True, slots=True)
class FindView:
    """What the collection can be asked beside its filters: the bodies to find a size for, and yarn at hand.

    `data` is what the script knows of every card, in the order of the cards.
    """

    measures: tuple[Choice, ...]
    yarn: bool
    metric_first: bool
    data: Markup


@dataclass(frozen=True, slots=True)
class CardView:
    """A pattern in the collection; `keys` are its words in each filter, in the order of the filters.

    `kind`, `sizes` and `weights` are told in the spoken language; those of the card are the source's own.
    `words` says in whose terms its summary is.
    """

    card: Card
    href: str
    address: str
    picture: Picture | None
    kind: str
    sizes: str
    weights: str
    keys: tuple[tuple[str, str], ...]
    words: WordsView
