"""In: the cards of all patterns. Out: the collection of the start page and the questions it can be narrowed by."""

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence

from sizewright.base.language import later, named, tr
from sizewright.base.telling import ranged
from sizewright.publish.card import Card
from sizewright.publish.findable import read_findable
from sizewright.publish.links import Links
from sizewright.publish.script_data import Value, script_data
from sizewright.publish.usual_names import name_within, spoken_kind, spoken_weight
from sizewright.publish.view import Choice, Filter, Picture
from sizewright.publish.view_card import CardView, FindView
from sizewright.publish.view_pattern import pattern_path
from sizewright.publish.view_sizes import slug
from sizewright.publish.view_words import WordsView
from sizewright.read.pattern import Pattern
from sizewright.read.trade_words import Country
from sizewright.read.yarn_weights import YARN_WEIGHTS

_WEIGHTS = {weight.name: weight.number for weight in YARN_WEIGHTS}
_ONE_SIZE = later("One size")


def card_views(cards: Iterable[Card], links: Links) -> tuple[CardView, ...]:
    """The collection, newest first, then by title."""
    by_title = sorted(cards, key=lambda card: (card.title.casefold(), card.name))
    newest_first = sorted(by_title, key=lambda card: card.published, reverse=True)
    return tuple(_card_view(card, links) for card in newest_first)


def filters(cards: Sequence[CardView]) -> tuple[Filter, ...]:
    """The questions that tell at least two kinds of patterns apart."""
    kinds = sorted({view.card.kind for view in cards if view.card.kind}, key=lambda kind: spoken_kind(kind).casefold())
    weights = sorted({weight for view in cards for weight in view.card.weights}, key=_weight_order)
    asked = (
        ("kind", tr("Kind"), kinds, spoken_kind),
        ("size", tr("Size"), _in_size_order([view.card.sizes or (_ONE_SIZE,) for view in cards]), _spoken_size),
        ("weight", tr("Yarn weight"), weights, spoken_weight),
    )
    return tuple(Filter(name, label, _choices(words, told)) for name, label, words, told in asked if len(words) > 1)


def find_view(cards: Sequence[CardView], techniques: Sequence[Pattern], *, metric_first: bool) -> FindView:
    """What the page can be asked beside its choices, and all that its script has to know of every card.

    A pattern is found by the titles of the techniques it uses, as the spoken language has them. The terms that these
    explain are no words of the pattern: that of grafting is at home on a mitten too.
    """
    titles = {one.name: one.header.title for one in techniques}
    told = [read_findable(view.card.finding) for view in cards]
    bodies = [one for some, _ in told for one in some if isinstance(one, Mapping)]
    measures = Counter(str(one["key"]) for one in bodies)
    yarns = any(isinstance(one, Mapping) and (one["length"] or one["mass"]) for _, some in told for one in some)
    data: list[Value] = [
        {"words": _words(view.card, titles), "sizes": _sizes(view.card), "measures": own, "yarns": needs}
        for view, (own, needs) in zip(cards, told, strict=True)
    ]
    often = sorted(measures, key=lambda one: (-measures[one], one))
    choices = tuple(Choice(key, _heading(name_within(key))) for key in often)
    return FindView(choices, yarns, metric_first, script_data(data))


def _words(card: Card, titles: Mapping[str, str]) -> str:
    """Everything that a word is looked for in."""
    techniques = (word for name in card.techniques for word in (name, titles.get(name, "")))
    told = (*map(named, card.sizes), *map(spoken_weight, card.weights), *techniques)
    return " ".join((card.title, card.summary, spoken_kind(card.kind), card.designer, *told))


def _sizes(card: Card) -> list[Value]:
    return [{"key": slug(size), "name": _spoken_size(size)} for size in card.sizes or (_ONE_SIZE,)]


def _card_view(card: Card, links: Links) -> CardView:
    path = pattern_path(card.name)
    sizes = card.sizes or (_ONE_SIZE,)
    country = Country(card.terms) if card.terms else Country.US
    first, last = _spoken_size(sizes[0]), _spoken_size(sizes[-1])
    return CardView(
        card,
        links.to(path),
        links.absolute(path),
        Picture(links.file(card.picture), card.alt) if card.picture else None,
        spoken_kind(card.kind),
        ranged(first, last) if len(sizes) > 1 else first,
        ", ".join(map(spoken_weight, card.weights)),
        (("kind", slug(card.kind)), ("size", _keys(sizes)), ("weight", _keys(card.weights))),
        WordsView(country, country, card.names),
    )


def _keys(words: Iterable[str]) -> str:
    return " ".join(filter(None, map(slug, words)))


def _heading(words: str) -> str:
    return words[:1].upper() + words[1:]


def _spoken_size(size: str) -> str:
    return tr(size) if size == _ONE_SIZE else named(size)


def _choices(words: Iterable[str], told: Callable[[str], str]) -> tuple[Choice, ...]:
    """One entry for each word of an address; words that differ in capitals only are the same."""
    by_key = {slug(word): word for word in reversed(list(words))}
    return tuple(Choice(key, told(by_key[key])) for key in reversed(by_key) if key)


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
