"""In: the studio and its published patterns. Out: the Atom feed (RFC 4287): patterns and what was changed in them.

No clock is read: an entry is as old as the pattern says, so a pattern without a date is not in the feed.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from urllib.parse import quote
from uuid import UUID, uuid5
from xml.etree.ElementTree import Element, SubElement

from sizewright.base.language import tr
from sizewright.publish.card import Card
from sizewright.publish.xml_text import as_xml
from sizewright.read.project import Studio

FEED = "feed.xml"
_ATOM = "http://www.w3.org/2005/Atom"

# The space of names that all ids of this program are in (RFC 4122, 4.3); drawn once, never to be changed.
_IDS = UUID("8d1b0b52-7a0e-4c55-9a3f-6f0c6c1f9a41")

# Where a pattern's page tells what was changed.
_CHANGES = "#part--changes"

# RFC 4287 asks for a date even of a feed that has nothing in it yet.
_NO_DAY = "1970-01-01"


@dataclass(frozen=True, slots=True)
class Correction:
    """One change a reader must see; `day` is ISO 8601."""

    day: str
    text: str


@dataclass(frozen=True, slots=True)
class Listed:
    """A published pattern as the feed tells it; corrections newest first."""

    card: Card
    corrections: tuple[Correction, ...] = ()


@dataclass(frozen=True, slots=True)
class _Entry:
    identity: str
    title: str
    summary: str
    author: str
    link: str
    published: str
    updated: str


def feed(studio: Studio, patterns: Sequence[Listed], below: str = "") -> bytes:
    """The feed, newest first. With the studio's address its links are full, without it relative.

    `below` is where the pages of its language are in the site.
    """
    address = f"{studio.address.rstrip('/')}/{below}" if studio.address else ""
    return _feed(replace(studio, address=address), patterns, below)


def _feed(studio: Studio, patterns: Sequence[Listed], below: str) -> bytes:
    entries = sorted(_entries(studio, patterns, below), key=lambda entry: (entry.updated, entry.identity), reverse=True)
    root = Element("feed", {"xmlns": _ATOM, "xml:lang": studio.language})
    _text(root, "id", _identity(studio, *_language(below)))
    _text(root, "title", studio.name)
    if studio.description:
        _text(root, "subtitle", studio.description)
    _text(root, "updated", _moment(entries[0].updated if entries else _NO_DAY))
    _author(root, studio.author or studio.name)
    if studio.address:
        SubElement(root, "link", {"rel": "self", "type": "application/atom+xml", "href": _address(studio, FEED)})
    SubElement(root, "link", {"rel": "alternate", "type": "text/html", "href": _address(studio, "") or "index.html"})
    for entry in entries:
        _write(SubElement(root, "entry"), entry)
    return as_xml(root)


def _language(below: str) -> tuple[str, ...]:
    """What tells the ids of a language from those of the first, which stay as they are when another comes."""
    return (below,) if below else ()


def _entries(studio: Studio, patterns: Sequence[Listed], below: str) -> Iterator[_Entry]:
    for listed in patterns:
        card = listed.card
        link = _address(studio, f"patterns/{quote(card.name)}.html")
        days = [card.published, card.revised, *(correction.day for correction in listed.corrections)]
        if not any(days):
            continue
        first = card.published or min(filter(None, days))
        yield _Entry(
            _identity(studio, *_language(below), card.name),
            card.title,
            card.summary,
            card.designer,
            link,
            first,
            max(first, *days),
        )
        for number, correction in _numbered(listed.corrections):
            title = tr("{title}: changed {day}", title=card.title, day=correction.day)
            identity = _identity(studio, *_language(below), card.name, correction.day, str(number))
            yield _Entry(
                identity, title, correction.text, card.designer, link + _CHANGES, correction.day, correction.day
            )


def _numbered(corrections: Sequence[Correction]) -> Iterator[tuple[int, Correction]]:
    """Each correction with its number on its day, the oldest 0: a newer one does not change the ids of the others."""
    seen: dict[str, int] = {}
    for correction in reversed(corrections):
        number = seen.get(correction.day, 0)
        seen[correction.day] = number + 1
        yield number, correction


def _identity(studio: Studio, *names: str) -> str:
    """An id that stays when the site moves to another address or a text is mended; another studio never has it."""
    return uuid5(_IDS, "\0".join((studio.name, *names))).urn


def _address(studio: Studio, path: str) -> str:
    return f"{studio.address.rstrip('/')}/{path}" if studio.address else path


def _write(element: Element, entry: _Entry) -> None:
    _text(element, "id", entry.identity)
    _text(element, "title", entry.title)
    _text(element, "updated", _moment(entry.updated))
    _text(element, "published", _moment(entry.published))
    if entry.author:
        _author(element, entry.author)
    SubElement(element, "link", {"rel": "alternate", "type": "text/html", "href": entry.link})
    _text(element, "summary", entry.summary or entry.title)


def _author(element: Element, name: str) -> None:
    _text(SubElement(element, "author"), "name", name)


def _text(element: Element, tag: str, text: str) -> None:
    SubElement(element, tag).text = text


def _moment(day: str) -> str:
    """A day as RFC 3339 writes a moment: its first one, in universal time."""
    return f"{day}T00:00:00Z"
