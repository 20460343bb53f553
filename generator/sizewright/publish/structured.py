"""In: the view of a pattern. Out: the same as data for search engines, JSON-LD with the words of schema.org.

Nothing is fetched: "https://schema.org" is only the name of the vocabulary.
"""

from collections.abc import Iterable, Mapping

from markupsafe import Markup

from sizewright.publish.script_data import Value, script_data
from sizewright.publish.view import PatternView
from sizewright.publish.view_card import CardView
from sizewright.publish.view_site import Site

_CONTEXT = "https://schema.org"


def pattern_data(view: PatternView, site: Site, *, picture: str) -> Markup:
    """A pattern as a HowTo; `picture` is the address of its picture, "" where it has none."""
    modified = view.revised or view.published
    return _script(
        {
            "@type": "HowTo",
            "name": view.title,
            "description": view.summary,
            "url": view.address,
            "image": picture,
            "inLanguage": site.language,
            "author": _named("Person", view.designer),
            "publisher": _named("Organization", site.studio),
            "datePublished": view.published.iso if view.published else "",
            "dateModified": modified.iso if modified else "",
            "license": _named("CreativeWork", view.licence),
            "genre": view.kind,
            "educationalLevel": view.skill,
            "material": [", ".join(filter(None, (yarn.weight, *map(_plain, yarn.facts)))) for yarn in view.yarns],
            "tool": [_named("HowToTool", _plain(needle)) for needle in view.needles],
            "supply": [_named("HowToSupply", notion) for notion in view.notions],
            "step": [_named("HowToSection", heading.text) for heading in view.body.headings if heading.level == 2],
        }
    )


def collection_data(site: Site, address: str, cards: Iterable[CardView]) -> Markup:
    """The start page as a collection."""
    return _script(
        {
            "@type": "CollectionPage",
            "name": site.studio,
            "description": site.description,
            "url": address,
            "inLanguage": site.language,
            "hasPart": [
                {"@type": "HowTo", "name": shown.card.title, "url": shown.address or shown.href} for shown in cards
            ],
        }
    )


def _named(kind: str, name: str) -> Value:
    return {"@type": kind, "name": name} if name else ""


def _script(value: Mapping[str, Value]) -> Markup:
    """The content of a script element; what is empty is left out."""
    told = {"@context": _CONTEXT, **{name: part for name, part in value.items() if part}}
    return script_data(told)


def _plain(words: str | Markup) -> str:
    return words.striptags() if isinstance(words, Markup) else words
