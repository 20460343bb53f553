"""In: the cards of all patterns. Out: the collection of the start page and the questions it can be narrowed by."""

from collections.abc import Iterable, Sequence

from sizewright.publish.card import Card
from sizewright.publish.links import Links
from sizewright.publish.view import CardView, Choice, Filter, Picture
from sizewright.publish.view_pattern import pattern_path
from sizewright.publish.view_sizes import slug
from sizewright.read.yarn_weights import YARN_WEIGHTS

_WEIGHTS = {weight.name: weight.number for weight in YARN_WEIGHTS}
_ONE_SIZE = "One size"


def card_views(cards: Iterable[Card], links: Links) -> tuple[CardView, ...]:
    """The collection, newest first, then by title."""
    by_title = sorted(cards, key=lambda card: (card.title.casefold(), card.name))
    newest_first = sorted(by_title, key=lambda card: card.published, reverse=True)
    return tuple(_card_view(card, links) for card in newest_first)


def filters(cards: Sequence[CardView]) -> tuple[Filter, ...]:
    """The questions that tell at least two kinds of patterns apart."""
    kinds = sorted({view.card.kind for view in cards if view.card.kind}, key=str.casefold)
    weights = sorted({weight for view in cards for weight in view.card.weights}, key=_weight_order)
    asked = (
        ("kind", "Kind", kinds),
        ("size", "Size", _in_size_order([view.card.sizes or (_ONE_SIZE,) for view in cards])),
        ("weight", "Yarn weight", weights),
    )
    return tuple(Filter(name, label, _choices(words)) for name, label, words in asked if len(words) > 1)


def _card_view(card: Card, links: Links) -> CardView:
    path = pattern_path(card.name)
    sizes = card.sizes or (_ONE_SIZE,)
    return CardView(
        card,
        links.to(path),
        links.absolute(path),
        Picture(links.file(card.picture), card.alt) if card.picture else None,
        f"{sizes[0]} to {sizes[-1]}" if len(sizes) > 1 else sizes[0],
        ", ".join(card.weights),
        (("kind", slug(card.kind)), ("size", _keys(sizes)), ("weight", _keys(card.weights))),
    )


def _keys(words: Iterable[str]) -> str:
    return " ".join(filter(None, map(slug, words)))


def _choices(words: Iterable[str]) -> tuple[Choice, ...]:
    """One entry for each word of an address; words that differ in capitals only are the same."""
    by_key = {slug(word): word for word in reversed(list(words))}
    return tuple(Choice(key, by_key[key]) for key in reversed(by_key) if key)


def _weight_order(weight: str) -> tuple[int, str]:
    return _WEIGHTS.get(weight, len(_WEIGHTS)), weight


def _in_size_order(lists: Iterable[Sequence[str]]) -> list[str]:
    """All sizes of all patterns, smallest first: each is put behind the one it follows in its own pattern."""
    merged: list[str] = []
    for sizes in sorted(lists, key=len, reverse=True):
        at = 0
        for size in sizes:
            if size in merged:
                at = merged.index(size) + 1
            else:
                merged.insert(at, size)
                at += 1
    return merged
