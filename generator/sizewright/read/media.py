"""The nodes of what is shown beside the words: pictures and films, each with its place."""

from dataclasses import dataclass

from sizewright.base.place import Span


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture from `content/media/`, with the words that stand for it."""

    span: Span
    file: str
    alt: str


@dataclass(frozen=True, slots=True)
class Film:
    """A link to a film of a technique, with the second it should start at."""

    span: Span
    title: str
    address: str
    start: int


@dataclass(frozen=True, slots=True)
class Image:
    """A picture in the text; `file` is below `content/media/`."""

    span: Span
    file: str
    alt: str
